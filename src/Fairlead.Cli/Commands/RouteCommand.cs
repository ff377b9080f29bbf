using System.CommandLine;
using Fairlead.Cli.Output;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead route</c>: the way of every circuit, how full the segments are, and how good the ways are together.</summary>
internal static class RouteCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json");
        var command = new Command("route", "Show the way and lengths of every circuit, how full the raceways are, and the bound on the mass.") { folder, format };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder)!, parsed.GetValue(format)!));
        return command;
    }

    private static int Run(Terminal terminal, string directory, string format)
    {
        var assessment = JobArguments.Assess(terminal, directory, JobArguments.Load(terminal, directory));
        if (format == "json")
        {
            terminal.Out.WriteLine(Json.Text(RouteJson.Of(assessment)));
        }
        else
        {
            RouteText.Write(terminal, assessment);
        }

        return assessment.Circuits.All(c => c.Length is not null) && !assessment.Findings.Any(f => f.Rule is "no-route" or "raceway-fill" or "separation-class" or "redundant-way" && f.Accepted is null)
            ? ExitCode.Holds : ExitCode.Open;
    }
}
