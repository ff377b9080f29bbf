using System.CommandLine;
using System.Globalization;
using Fairlead.Cli.Output;
using Fairlead.Documents;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead pack</c>: the release pack of a job as one PDF file.</summary>
internal static class PackCommand
{
    // A pack is not kept waiting for the last hour of the plan: 'fairlead plan' searches longer.
    private const double PlanEffort = 0.2;

    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var output = JobArguments.Output("The PDF file to write.", required: true);
        var date = new Option<string?>("--date") { Description = "The date of issue, YYYY-MM-DD; today unless given.", HelpName = "DATE" };
        var command = new Command("pack", "Write the release pack of a job as one PDF file.") { folder, output, date };
        command.SetAction(parsed =>
        {
            var issued = Date(terminal, parsed.GetValue(date));
            var verdict = Write(terminal, parsed.GetValue(folder)!, parsed.GetValue(output)!, issued).Verdict;
            terminal.Out.WriteLine("Verdict: " + terminal.Word(verdict));
            terminal.Print(SheetText.Advice);
            return ExitCode.Of(verdict);
        });
        return command;
    }

    /// <summary>Writes the pack of a job and returns what was assessed for it.</summary>
    /// <param name="terminal">Where it runs.</param>
    /// <param name="directory">The folder of the job.</param>
    /// <param name="file">The file to write.</param>
    /// <param name="issued">The date of issue.</param>
    /// <param name="recorded">The log at release, of the very job that the pack is made from; null for a pack before release.</param>
    public static Assessment Write(Terminal terminal, string directory, string file, DateTimeOffset issued, Func<Assessment, ReleaseRecord>? recorded = null)
    {
        JobArguments.RequireOutput(file);

        // One reading of the files, so that the job attached is the job assessed.
        var folder = JobArguments.Files(directory);
        var files = new MemoryFiles(folder.All.Select(path => KeyValuePair.Create(path, folder.Read(path))));
        var read = JobReader.Read(files);
        var assessment = JobArguments.Assess(terminal, directory, read);
        var plan = read.Job!.Order.Plan is { } basis
            ? terminal.Work("planning", () => Planner.Run(TaskList.Of(assessment), read.Job, new PlanOptions(basis.Start, PlanEffort, WhatIfs: false), null, terminal.Stop)) : null;
        var options = new PackOptions(issued, read.Hash, [.. JobFolder.Zip(files)]) { Plan = plan, Record = recorded?.Invoke(assessment) };
        JobArguments.WriteFile(terminal, file, terminal.Work("writing the pack", progress => ReleasePack.Write(assessment, options, progress, terminal.Stop)));
        return assessment;
    }

    /// <summary>Today, by the clock of the place.</summary>
    public static DateTimeOffset Today(Terminal terminal) => new(terminal.Clock.GetLocalNow().Date, TimeSpan.Zero);

    private static DateTimeOffset Date(Terminal terminal, string? text) => text is null ? Today(terminal)
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? new DateTimeOffset(date, default, TimeSpan.Zero)
        : throw new BadInputException($"--date: found '{text}', expected a date as 2027-03-31.");
}
