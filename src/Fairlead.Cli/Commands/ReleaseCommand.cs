using System.CommandLine;
using System.Globalization;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead release</c>: whether the release gate is open, and what keeps it shut.</summary>
internal static class ReleaseCommand
{
    private const string Advice = "The gate knows what the log was told and what the job describes. The person who certifies decides, by the approved data and with their own eyes.";

    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var command = new Command("release", "Say in plain words what still stands open before release.") { folder };
        command.SetAction(parsed =>
        {
            var place = LogPlace.Of(terminal, parsed.GetValue(folder)!);
            var open = Gate.WhatStandsOpen(place.State(terminal.Clock), place.Register.Required, terminal.Clock.GetUtcNow());
            terminal.Out.WriteLine(open.Count == 0 ? "The release gate is OPEN: the log leaves nothing open."
                : string.Create(CultureInfo.InvariantCulture, $"The release gate is SHUT: {open.Count} {(open.Count == 1 ? "thing stands" : "things stand")} open."));
            foreach (var item in open)
            {
                terminal.Print("- " + item.Text, 2);
            }

            terminal.Out.WriteLine($"Log {place.Head()}");
            terminal.Print(Advice);
            return open.Count == 0 ? ExitCode.Holds : ExitCode.Open;
        });
        return command;
    }
}
