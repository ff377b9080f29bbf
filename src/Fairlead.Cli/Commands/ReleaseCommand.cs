using System.CommandLine;
using System.Globalization;
using Fairlead.Server.Work;
using Fairlead.Documents;
using Fairlead.Records;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead release</c>: whether the release gate is open, and what keeps it shut; when it is open, the pack with the log.</summary>
internal static class ReleaseCommand
{
    private const string Advice = "The gate knows what the log was told and what the job describes. The person who certifies decides, by the approved data and with their own eyes.";

    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var output = JobArguments.Output("The PDF file to write when the gate is open: the release pack with results, signatures, the log, and a draft for the person who certifies.");
        var command = new Command("release", "Say in plain words what still stands open before release; when nothing does, write the pack with the log.") { folder, output };
        command.SetAction(parsed =>
        {
            var (directory, file) = (parsed.GetValue(folder)!, parsed.GetValue(output));
            if (file is not null)
            {
                JobArguments.RequireOutput(file);
            }

            var place = LogPlace.Of(terminal, directory);
            var (state, now) = (place.State(terminal.Clock), terminal.Clock.GetUtcNow());
            var open = Gate.WhatStandsOpen(state, place.Register.Required, now);
            terminal.Out.WriteLine(open.Count == 0 ? "The release gate is OPEN: the log leaves nothing open."
                : string.Create(CultureInfo.InvariantCulture, $"The release gate is SHUT: {open.Count} {(open.Count == 1 ? "thing stands" : "things stand")} open."));
            foreach (var item in open)
            {
                terminal.Print("- " + item.Text, 2);
            }

            terminal.Out.WriteLine($"Log {place.Head()}");
            if (file is not null && open.Count == 0)
            {
                PackCommand.Write(terminal, directory, file, PackCommand.Today(terminal), assessment => Record(place, state, assessment, now));
            }
            else if (file is not null)
            {
                terminal.Error.WriteLine($"{file} is not written: a pack with the log is that of a release.");
            }

            terminal.Print(Advice);
            return open.Count == 0 ? ExitCode.Holds : ExitCode.Open;
        });
        return command;
    }

    // The pack reads the job again: should somebody have changed it in the meantime, the gate is judged by what is packed.
    private static ReleaseRecord Record(LogPlace place, HangarState state, Assessment assessment, DateTimeOffset now)
    {
        var required = Requirements.Of(assessment);
        if (Gate.WhatStandsOpen(state, required, now) is { Count: > 0 } open)
        {
            throw new BadInputException(["The job was changed while it was released:", .. open.Select(o => o.Text)]);
        }

        using var store = place.Find();
        return new ReleaseRecord(state, required, place.Head(), [.. LogFile.Write(store?.Lines(0) ?? [])]) { Pictures = store is null ? ReleaseRecord.NoPictures : Pictures.Of(state, store) };
    }
}
