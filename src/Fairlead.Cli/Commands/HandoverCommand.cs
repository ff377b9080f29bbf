using System.CommandLine;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead handover</c>: the sheet for the next shift, filled from the log.</summary>
internal static class HandoverCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var command = new Command("handover", "Print the handover sheet for the next shift, filled from the log.") { folder };
        command.SetAction(parsed =>
        {
            var place = LogPlace.Of(terminal, parsed.GetValue(folder)!);
            var now = terminal.Clock.GetUtcNow();
            terminal.Out.WriteLine($"Handover of {place.Job.Order.Number}, {place.Job.Aircraft.Registration}, {Instant.Text(now)}");
            foreach (var part in Handover.Of(place.State(terminal.Clock), place.Register.Required, now))
            {
                terminal.Out.WriteLine();
                terminal.Out.WriteLine(part.Title);
                foreach (var line in part.Lines.DefaultIfEmpty("nothing"))
                {
                    terminal.Print("- " + line, 2);
                }
            }

            terminal.Out.WriteLine();
            terminal.Out.WriteLine($"Log {place.Head()}");
            terminal.Print("Go through it together at the aircraft. Outgoing: ____________  Incoming: ____________");
            return ExitCode.Holds;
        });
        return command;
    }
}
