using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Planning.Plans;

namespace Fairlead.Documents;

/// <summary>The plan of the work: its finish and what holds it, its chart, and the tasks by day and person.</summary>
public static class PlanPages
{
    private const int ChartRows = 75;

    /// <summary>The section of the pack.</summary>
    internal static IEnumerable<Block> Of(JobPlan plan)
    {
        yield return PageBreak.Soft;
        yield return new Heading(1, "Plan");
        foreach (var line in Summary(plan))
        {
            yield return new Paragraph(line);
        }

        if (plan.Tasks.Count == 0)
        {
            yield break;
        }

        yield return new Paragraph("Times are means of least, likely and most; where the job states none they are common practice, to be tuned with the shop's own clock.", Voice.Remark);
        if (plan.Unplanned.Count > 0)
        {
            yield return new Table([new("Not planned")], Unplanned(plan).Select(c => (Sequence<Cell>)[c]).ToSequence());
        }

        yield return new Table([new("What holds the finish, from the first task to the last")], plan.Chain.Select(c => (Sequence<Cell>)[c]).ToSequence());
        yield return new Table([new("What more would buy")], WhatIfs(plan).Select(c => (Sequence<Cell>)[c]).ToSequence());
        yield return new Table([new("Chance of being finished by the end of the day")], Chances(plan).Select(c => (Sequence<Cell>)[c]).ToSequence());
        foreach (var chart in plan.Tasks.Chunk(ChartRows))
        {
            yield return new Figure(PlanChart.Draw(View(plan with { Tasks = chart.ToSequence() }, "The plan in time")));
        }

        yield return new Heading(2, "Tasks by day and person");
        yield return new Table(
            [new("Day"), new("Who"), new("From"), new("To"), new("Task"), new("What is done", Most: 80)],
            plan.Tasks.SelectMany(t => t.Pieces.SelectMany(p => (t.People.Count > 0 ? t.People : ["–"]).Select(who => (Piece: p, Who: who, t.Task, t.Task.Title))).Concat(t.Second is { } second ? [(second.When, second.Who, t.Task, "Second person: " + t.Task.Title)] : []))
                .OrderBy(x => x.Piece.From.Date).ThenBy(x => x.Who, StringComparer.Ordinal).ThenBy(x => x.Piece.From)
                .Select(x => (Sequence<Cell>)[x.Piece.From.ToString("ddd yyyy-MM-dd", CultureInfo.InvariantCulture), x.Who, Clock(x.Piece.From), Clock(x.Piece.To), new Cell(x.Task.Id, Strong: true), x.Title]).ToSequence());
    }

    /// <summary>What matters first, in one line: whether the promised day holds, how surely, and when the work ends.</summary>
    public static string Headline(JobPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Why.Length > 0 ? $"There is no plan: {plan.Why}."
            : plan.Unplanned.Count > 0 ? $"{plan.Unplanned.Count.ToString(CultureInfo.InvariantCulture)} tasks cannot be planned, so no finish can be told. The rest ends {Day(plan.Finish)}."
            : plan.Promised is not { } day ? $"No day was promised. Finish {Day(plan.Finish)}."
            : string.Create(CultureInfo.InvariantCulture, $"Promised {day:yyyy-MM-dd}: {(plan.Finish <= day.AddDays(1).ToDateTime(TimeOnly.MinValue) ? "kept" : "not kept")}{(plan.PromisedChance is { } chance ? $", chance {Math.Floor(chance * 100):0} %" : "")}. Finish {Day(plan.Finish)}.");
    }

    /// <summary>Finish, bound and promise in sentences.</summary>
    public static IEnumerable<string> Summary(JobPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Why.Length > 0)
        {
            yield return $"There is no plan: {plan.Why}.";
            yield break;
        }

        yield return Headline(plan);
        yield return $"{plan.Tasks.Count.ToString(CultureInfo.InvariantCulture)} tasks; {(plan.Proved ? "no plan with these people and hours finishes sooner" : $"no plan with these people and hours finishes {(plan.Unplanned.Count > 0 ? "this much of it " : "")}before {Day(plan.Bound)}")}. Overtime {plan.OvertimeHours.ToString("0.##", CultureInfo.InvariantCulture)} h.";
        if (plan.Held.Length > 0)
        {
            yield return plan.Held;
        }
    }

    /// <summary>What is not planned and why, a line for each task that no plan can hold and one for all that follow from them.</summary>
    public static IEnumerable<string> Unplanned(JobPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var never = plan.Unplanned.Where(u => !u.Follows).ToArray();
        var follow = plan.Unplanned.Where(u => u.Follows).Select(u => u.Task.Id).ToArray();
        return never.Select(u => $"{u.Task.Id}, {u.Task.Title}: {u.Why}.").Concat(follow.Length > 0 ? [$"What follows: {string.Join(", ", follow)}."] : []);
    }

    /// <summary>What more would buy, a line each.</summary>
    public static IEnumerable<string> WhatIfs(JobPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.WhatIfs.Select(w => w.Hours > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Figures.Capital(w.What)}: finish {Day(w.Finish)}, {w.Hours:0.##} h sooner.") : $"{Figures.Capital(w.What)}: {(w.Excluded ? "nothing can be gained" : "no gain found")}.");
    }

    /// <summary>Chance by day, a line each, from the day of the first finish to the day of the last.</summary>
    public static IEnumerable<string> Chances(JobPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Chances.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Day:ddd yyyy-MM-dd}  {Math.Floor(c.Chance * 100):0} %"));
    }

    /// <summary>The chart of a plan.</summary>
    public static PlanView View(JobPlan plan, string title)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(title, plan.Tasks.Select(t => new PlanRow(t.Task.Id, string.Join(' ', t.People), t.Pieces.Select(p => (p.From, p.To)).ToSequence(), plan.Holding.Contains(t.Task.Id), t.Actual)).ToSequence(), plan.Promised);
    }

    private static string Clock(DateTime at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Day(DateTime at) => at.ToString("ddd yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
