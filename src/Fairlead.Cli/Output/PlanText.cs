using System.Globalization;
using Fairlead.Documents;
using Fairlead.Planning.Plans;

namespace Fairlead.Cli.Output;

/// <summary>A plan as text.</summary>
internal static class PlanText
{
    private const string Advice = "Labour times are common practice unless the job states its own. The approved data, the aircraft's own manuals, the local authority and licensed staff decide what is done, in which order and by whom.";

    public static void Write(Terminal terminal, JobPlan plan)
    {
        terminal.Print(PlanPages.Headline(plan));
        foreach (var finding in plan.Findings.Where(f => f.Severity > Calculations.Verdict.Caution))
        {
            terminal.Print($"{terminal.Word(finding.Severity)}: {finding.Message}");
        }

        terminal.Print(plan.Held);
        terminal.Out.WriteLine();

        Wrapping.Columns(
            terminal.Out,
            [["start", "end", "task", "people", "what"], .. plan.Tasks.Select(t => (string[])[Time(t.Start), Time(t.End), t.Task.Id, string.Join(' ', t.People), t.Task.Title + (t.Actual ? " (done)" : "") + (t.Second is { } second ? $" (second person {second.Who} {Time(second.When.From)})" : "")])], terminal.Width, 0);
        Section(terminal, "Not planned", PlanPages.Unplanned(plan));
        Section(terminal, "What holds the finish", plan.Chain);
        Section(terminal, "What more would buy", PlanPages.WhatIfs(plan));
        Section(terminal, "Chance of being finished by the end of the day", PlanPages.Chances(plan));
        foreach (var finding in plan.Findings)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine($"{terminal.Word(finding.Severity)}  {finding.Subject}  [{finding.Rule}]");
            terminal.Print($"{finding.Message}{(finding.Figures.Length > 0 ? $" ({finding.Figures})" : "")} {finding.Remedy}", 2);
        }

        terminal.Out.WriteLine();
        foreach (var line in PlanPages.Summary(plan))
        {
            terminal.Print(line);
        }

        terminal.Print(Advice);
    }

    private static void Section(Terminal terminal, string title, IEnumerable<string> lines)
    {
        string[] all = [.. lines];
        if (all.Length > 0)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine(title);
            foreach (var line in all)
            {
                terminal.Print(line, 2);
            }
        }
    }

    private static string Time(DateTime at) => at.ToString("ddd MM-dd HH:mm", CultureInfo.InvariantCulture);
}
