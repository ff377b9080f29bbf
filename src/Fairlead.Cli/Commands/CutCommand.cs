using System.CommandLine;
using System.Globalization;
using Fairlead.Cli.Output;
using Fairlead.Documents.Tables;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead cut</c>: which wire is cut from which reel or remnant.</summary>
internal static class CutCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json");
        var output = JobArguments.Output("Write the cutting plan to this file, .csv or .xlsx.");
        var command = new Command("cut", "Plan the cutting of wire, cable and coax from what is on hand.") { folder, format, output };
        command.SetAction(parsed =>
        {
            var directory = parsed.GetValue(folder)!;
            var assessment = JobArguments.Assess(terminal, directory);
            if (parsed.GetValue(output) is { } file)
            {
                TableOutput.Write(terminal, file, SupplyTables.Cuts(assessment.Cuts));
            }

            Show(terminal, assessment, parsed.GetValue(format)!, parsed.GetValue(output) is null);
            return assessment.Cuts.All(IsWhole) ? ExitCode.Holds : ExitCode.Open;
        });
        return command;
    }

    private static void Show(Terminal terminal, Assessment assessment, string format, bool lines)
    {
        if (format == "json")
        {
            terminal.Out.WriteLine(Json.Text(SupplyJson.Of(assessment.Cuts)));
            return;
        }

        foreach (var plan in assessment.Cuts)
        {
            Show(terminal, plan, lines);
        }

        terminal.Print(SheetText.Advice);
    }

    private static bool IsWhole(CutPlan plan) => plan.Unknown.Count == 0 && plan.Plan is { TooLong.Count: 0, NotPlaced.Count: 0 };

    private static void Show(Terminal terminal, CutPlan plan, bool lines)
    {
        terminal.Out.WriteLine($"{plan.Part}: {Counted.Of(plan.Pieces.Count, "piece")}, {plan.Used.As("m")} together");
        terminal.Print(CutWords.Of(plan), 2);
        if (lines && plan.Plan is { } cut)
        {
            Wrapping.Columns(terminal.Out, [.. cut.Lengths.Select(l => (IReadOnlyList<string>)
                [l.Stock.Name, string.Join(", ", l.Pieces.Select(i => string.Create(CultureInfo.InvariantCulture, $"{plan.Pieces[i].Name} {plan.Pieces[i].Millimetres}"))) + string.Create(CultureInfo.InvariantCulture, $"; {l.Left} left")])], terminal.Width, 4);
        }

        terminal.Out.WriteLine();
    }
}
