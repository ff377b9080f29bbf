using System.CommandLine;
using System.Globalization;
using System.Text;
using Fairlead.Server.Work;
using Fairlead.Cli.Output;
using Fairlead.Documents;
using Fairlead.Drawings;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead plan</c>: the tasks of a job in time, what holds the finish, and how sure it is.</summary>
internal static class PlanCommand
{
    private const double MostEffort = 1000;
    private const double MostSeconds = 24 * 3600;

    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json");
        var effort = new Option<double>("--effort") { Description = "How hard to search, in the solver's own count of work; 0 for the plan made at once.", DefaultValueFactory = _ => new PlanOptions(default).Effort, HelpName = "EFFORT" };
        var seconds = new Option<double?>("--seconds") { Description = "The most seconds to search, shared between the plan and what more would buy; the effort may end it sooner. A search that the clock cuts off may give another plan in another run.", HelpName = "SECONDS" };
        var chart = new Option<string?>("--chart") { Description = "The SVG file to write the plan to, as a chart in time.", HelpName = "FILE" };
        var command = new Command("plan", "Plan the work: who does what when, what holds the finish, and the chance of each day.") { folder, format, effort, seconds, chart };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder)!, parsed.GetValue(format)!, Effort(parsed.GetValue(effort)), Seconds(parsed.GetValue(seconds)), parsed.GetValue(chart)));
        return command;
    }

    private static int Run(Terminal terminal, string directory, string format, double effort, double? seconds, string? chart)
    {
        if (chart is not null)
        {
            JobArguments.RequireOutput(chart);
        }

        var assessment = JobArguments.Assess(terminal, directory);
        var tasks = TaskList.Of(assessment);
        var begun = terminal.Clock.GetTimestamp();
        var plan = Make(terminal, assessment, tasks, directory, effort, seconds);
        var took = terminal.Clock.GetElapsedTime(begun).TotalSeconds;
        if (chart is not null && plan.Tasks.Count > 0)
        {
            JobArguments.WriteFile(terminal, chart, Encoding.UTF8.GetBytes(SvgWriter.Write(PlanChart.Draw(PlanPages.View(plan, assessment.Job.Order.Title)))));
        }

        if (format == "json")
        {
            terminal.Out.WriteLine(Json.Text(PlanJson.Of(plan)));
        }
        else
        {
            PlanText.Write(terminal, plan);
            if (seconds is { } limit)
            {
                terminal.Print(string.Create(CultureInfo.InvariantCulture, $"Planned in {took:0} s, with a limit of {limit:0.##} s for the search. Without '--seconds' the same job gives the same plan each time."));
            }

            var today = DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime);
            if (plan.Tasks.Count > 0 && plan.Tasks.All(t => !t.Actual) && DateOnly.FromDateTime(plan.Tasks[0].Start) is var first && first < today)
            {
                terminal.Print(string.Create(CultureInfo.InvariantCulture, $"The first day, {first:yyyy-MM-dd}, is past and the log holds no work: this is the plan as it was meant. Give 'plan: start' in job.yaml another day."));
            }
        }

        return plan.Holds ? ExitCode.Holds : ExitCode.Open;
    }

    private static JobPlan Make(Terminal terminal, Assessment assessment, Calculations.Sequence<JobTask> tasks, string directory, double effort, double? seconds)
    {
        var now = terminal.Clock.GetLocalNow().DateTime;
        var options = new PlanOptions(DateOnly.FromDateTime(now), effort, Seconds: seconds)
        {
            Progress = LogProgress.Of(LogPlace.Of(terminal, directory).State(terminal.Clock), tasks, Requirements.Of(assessment), terminal.Clock.LocalTimeZone),
        };
        options = options.Progress.Count == 0 ? options : options with { Now = now };
        var line = new PlanLine(terminal.Interactive ? terminal.Error : TextWriter.Null, terminal.Clock, seconds);
        try
        {
            // A stop ends the search, and the best plan so far is shown.
            return Planner.Run(tasks, assessment.Job, options, line, terminal.Stop);
        }
        finally
        {
            line.Clear();
        }
    }

    private static double Effort(double effort) => effort is >= 0 and <= MostEffort ? effort
        : throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--effort: found {effort}, expected a number from 0 to {MostEffort}."));

    private static double? Seconds(double? seconds) => seconds is null or (> 0 and <= MostSeconds) ? seconds
        : throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--seconds: found {seconds}, expected a number above 0, up to {MostSeconds}."));

    private sealed class PlanLine(TextWriter to, TimeProvider clock, double? limit) : IProgress<PlanProgress>
    {
        private const int Width = 78;
        private readonly long begun = clock.GetTimestamp();

        public void Report(PlanProgress value) => to.Write(("\r" + string.Create(CultureInfo.InvariantCulture, $"planning {clock.GetElapsedTime(begun).TotalSeconds:0}{(limit is { } most ? $" of {most:0}" : "")} s: finish {value.Finish:MM-dd HH:mm}, none before {value.Bound:MM-dd HH:mm}; Ctrl-C ends")).PadRight(Width));

        public void Clear() => to.Write("\r" + new string(' ', Width) + "\r");
    }
}
