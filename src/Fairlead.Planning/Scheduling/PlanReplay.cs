using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>A plan to be run again piece by piece: the pieces keep their order and their people, and each is done as soon as it can be.</summary>
internal sealed class PlanReplay
{
    private readonly Problem problem;
    private readonly Schedule plan;
    private readonly ListScheduler lists;
    private readonly double[] keys;
    private readonly Sequence<string>[] staff;

    public PlanReplay(Problem problem, Schedule plan)
    {
        (this.problem, this.plan) = (problem, plan);
        lists = new(new Problem(problem.Horizon, problem.Tasks.SelectMany(Pieces).ToSequence(), problem.Workers, problem.Resources));
        keys = [.. plan.Tasks.SelectMany(t => t.Pieces.Select(p => (double)p.From))];
        staff = [.. plan.Tasks.SelectMany(t => t.Pieces.Select(_ => t.Crew))];
    }

    /// <summary>The plan run again with some durations; null when it does not end within the time looked at. A task that takes longer may pause as often as it needs.</summary>
    public Schedule? Run(bool overtime, IReadOnlyList<int>? durations = null)
    {
        int[]? shares = durations is null ? null : [.. plan.Tasks.SelectMany((t, i) => Work.Parts(durations[i], t.Pieces.Count))];
        if (lists.Run(keys, overtime, shares, staff) is not { } run)
        {
            return null;
        }

        var (placed, at) = (new List<Placed>(), 0);
        foreach (var task in plan.Tasks)
        {
            placed.Add(task with { Pieces = Enumerable.Range(at, task.Pieces.Count).SelectMany(k => run.Tasks[k].Pieces).ToSequence() });
            at += task.Pieces.Count;
        }

        return Schedule.Of(problem, placed.ToSequence());
    }

    private IEnumerable<Work> Pieces(Work task, int index)
    {
        foreach (var (k, part) in Work.Parts(task.Duration, plan.Tasks[index].Pieces.Count).Index())
        {
            Sequence<Predecessor> after = k > 0 ? [new(Name(task.Id, k - 1))] : task.After.Select(b => b with { Task = Name(b.Task, plan.Tasks[problem.IndexOf(b.Task)].Pieces.Count - 1) }).ToSequence();
            yield return task with { Id = Name(task.Id, k), Duration = part, After = after };
        }
    }

    private static string Name(string task, int piece) => $"{task}/{NumberFormat.Text(piece)}";
}
