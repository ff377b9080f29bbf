namespace Fairlead.Planning.Scheduling;

/// <summary>Times before which no plan can finish, found without search.</summary>
internal static class Bounds
{
    /// <summary>The greater of the longest chain of tasks, each in its own hours, and the work that each resource must carry.</summary>
    public static int Finish(Problem problem) => Math.Max(Chain(problem), problem.Resources.Select(r => Carried(problem, r)).DefaultIfEmpty(0).Max());

    // Every task as early as it could be if it had all people and resources to itself.
    private static int Chain(Problem problem)
    {
        var (ends, finish) = (new int[problem.Tasks.Count], 0);
        foreach (var at in problem.Order)
        {
            var task = problem.Tasks[at];
            var from = task.After.Aggregate(task.NotBefore, (latest, p) => Math.Max(latest, ends[problem.IndexOf(p.Task)] + p.Lag));
            foreach (var length in task.Pieces())
            {
                from = Earliest(problem, task, from, length) + length;
            }

            finish = Math.Max(finish, ends[at] = Math.Min(from, problem.Horizon));
        }

        return finish;
    }

    private static int Earliest(Problem problem, Work task, int from, int length)
    {
        for (var start = from; ;)
        {
            var asked = start;
            start = task.Windows.Count > 0 ? Hours.Earliest(task.Windows, start, length) : start;
            foreach (var need in task.Crew.Where(_ => length > 0))
            {
                start = problem.Workers.Where(w => w.Skills.Contains(need.Skill)).Select(w => Hours.Earliest(Hours.Joined(w.Shifts.Concat(w.Overtime)), asked, length)).Append(int.MaxValue).Min() is var ready && ready > start ? ready : start;
            }

            if (start == asked || start > problem.Horizon - length)
            {
                return Math.Min(start, problem.Horizon - length);
            }
        }
    }

    private static int Carried(Problem problem, Resource resource) => resource.Capacity <= 0 ? 0 :
        (int)((problem.Tasks.Sum(t => (long)t.Duration * t.Demands.Where(d => d.Resource == resource.Id).Sum(d => d.Amount)) + resource.Capacity - 1) / resource.Capacity);
}
