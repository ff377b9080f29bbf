using System.CommandLine;
using System.Globalization;
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
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Handover of {place.Job.Order.Number}, {place.Job.Aircraft.Registration}, {terminal.Clock.GetLocalNow():yyyy-MM-dd HH:mm} by the clock here ({now.UtcDateTime:HH:mm} UTC; the entries are in UTC)"));
            terminal.Out.WriteLine();
            foreach (var part in Handover.Of(place.State(terminal.Clock), place.Register.Required, now))
            {
                if (part.Lines.Count == 0)
                {
                    terminal.Out.WriteLine($"{part.Title}: nothing");
                    continue;
                }

                terminal.Out.WriteLine(part.Title + ":");
                foreach (var line in part.Lines)
                {
                    terminal.Print("- " + line, 2);
                }

                terminal.Out.WriteLine();
            }

            terminal.Out.WriteLine($"Log {place.Head()}");
            terminal.Print("Go through it together at the aircraft. Outgoing: ____________  Incoming: ____________");
            return ExitCode.Holds;
        });
        return command;
    }
}
