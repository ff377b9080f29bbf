using System.Collections.Immutable;
using System.CommandLine;
using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Records;
using Fairlead.Server.Records;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead test</c>: the test cards of a job, and what entered results say.</summary>
internal static class TestCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var card = new Option<string?>("--card") { Description = "Show one card.", HelpName = "ID" };
        var results = new Option<string?>("--results") { Description = "Judge results: a table with the columns card, line, value, unit, instrument, by, outside.", HelpName = "FILE.csv" };
        var log = new Option<bool>("--log") { Description = "Enter the results in the log as well, each in the name of who measured it." };
        var format = Formats.Option("text", "json");
        var command = new Command("test", "List the test cards in the safe order, show one, or judge results: faults are named, and the measurement to make next.") { folder, card, results, log, format };
        command.SetAction(parsed =>
        {
            var (directory, file, json) = (parsed.GetValue(folder)!, parsed.GetValue(results), parsed.GetValue(format) == "json");
            return file is null && parsed.GetValue(log) ? throw new BadInputException("--log enters results: name them with --results FILE.csv.")
                : parsed.GetValue(log) ? Enter(terminal, LogPlace.Of(terminal, directory), file!, json) : Run(terminal, directory, parsed.GetValue(card), file, json);
        });
        return command;
    }

    private static int Run(Terminal terminal, string directory, string? card, string? results, bool json)
    {
        var assessment = JobArguments.Assess(terminal, directory);
        var plan = terminal.Work("deriving the tests", () => TestPlan.Of(assessment));
        if (results is not null)
        {
            var report = TestReport.Of(plan, Read(results));
            Write(terminal, json, () => TestJson.Of(report), () => TestText.Write(terminal, report));
            return ExitCode.Of(report.Verdict);
        }

        if (card is not null)
        {
            var shown = plan.Find(card) ?? throw new BadInputException($"The job has no test card '{card}'.{Nearest.Hint(card, plan.Cards.Select(c => c.Id), $"'fairlead test {Terminal.Quoted(directory)}' lists them all.")}");
            Write(terminal, json, () => TestJson.Of(shown), () => TestText.Write(terminal, shown));
            return ExitCode.Holds;
        }

        Write(terminal, json, () => plan.Cards.Select(TestJson.Of), () => TestText.Write(terminal, plan));
        return ExitCode.Holds;
    }

    // Judged first, then entered: what the log refuses is told, and nothing that failed is left out.
    private static int Enter(Terminal terminal, LogPlace place, string file, bool json)
    {
        var plan = TestPlan.Of(place.Assessment);
        var report = TestReport.Of(plan, Read(file));
        using var store = place.Open();
        var entered = ResultEntries.Add(new LogBook(store, place.Register, terminal.Clock), report);
        Write(terminal, json, () => TestJson.Of(report), () => TestText.Write(terminal, report));
        foreach (var refused in entered.Refused)
        {
            terminal.Error.WriteLine(refused);
        }

        terminal.Error.WriteLine($"entered {Counted.Of(entered.Count, "result")} in the log, refused {NumberFormat.Text(entered.Refused.Count)}");
        return entered.Refused.Count > 0 ? ExitCode.Open : ExitCode.Of(report.Verdict);
    }

    private static ImmutableArray<TestResult> Read(string file)
    {
        if (!File.Exists(file))
        {
            throw new BadInputException($"There is no file '{file}'.");
        }

        var problems = new List<string>();
        var results = ResultFile.Read(File.ReadAllText(file), problems);
        return problems.Count > 0 ? throw new BadInputException([.. problems.Select(p => $"{file}: {p}")]) : results;
    }

    private static void Write(Terminal terminal, bool json, Func<object> asJson, Action asText)
    {
        if (json)
        {
            terminal.Out.WriteLine(Json.Text(asJson()));
        }
        else
        {
            asText();
        }
    }
}
