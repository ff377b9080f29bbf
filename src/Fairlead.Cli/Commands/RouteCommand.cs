using System.CommandLine;
using Fairlead.Cli.Output;
using Fairlead.Substantiation.Harness.Routing;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead route</c>: the way of every circuit, how full the segments are, and how good the ways are together.</summary>
internal static class RouteCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json");
        var saving = new Option<int>("--saving") { Description = "Name nets that would save this many percent of their wire on one shared tree.", HelpName = "percent", DefaultValueFactory = _ => 15 };
        saving.Validators.Add(v =>
        {
            if (v.GetValueOrDefault<int>() is < 0 or > 100)
            {
                v.AddError("--saving is 0 to 100 percent.");
            }
        });
        var command = new Command("route", "Show the way and lengths of every circuit, how full the raceways are, and the bound on the mass.") { folder, format, saving };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder)!, parsed.GetValue(format)!, parsed.GetValue(saving)));
        return command;
    }

    private static int Run(Terminal terminal, string directory, string format, int percent)
    {
        var assessment = JobArguments.Assess(terminal, directory);
        var trees = terminal.Watch("joining nets", progress => SharedTrees.Of(assessment, progress, terminal.Stop));
        if (format == "json")
        {
            terminal.Out.WriteLine(Json.Text(RouteJson.Of(assessment, trees)));
        }
        else
        {
            RouteText.Write(terminal, assessment);
            RouteText.WriteNets(terminal, trees, percent);
        }

        return assessment.Circuits.All(c => c.Length is not null) && !assessment.Findings.Any(f => f.Rule is "no-route" or "raceway-fill" or "separation-class" or "redundant-way" && f.Accepted is null)
            ? ExitCode.Holds : ExitCode.Open;
    }
}
