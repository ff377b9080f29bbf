using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Looks whether a plan keeps every rule of its problem. Shares nothing with what makes plans.</summary>
public static class ScheduleChecker
{
    /// <summary>What is wrong with a plan, in words; empty when nothing is.</summary>
    public static IReadOnlyList<string> Faults(Problem problem, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        if (!problem.Tasks.Select(t => t.Id).SequenceEqual(schedule.Tasks.Select(t => t.Task), StringComparer.Ordinal))
        {
            return ["the plan does not hold each task once, in the order of the problem"];
        }

        return
        [
            .. problem.Tasks.Zip(schedule.Tasks).SelectMany(x => Timing(problem, schedule, x.First, x.Second)),
            .. problem.Tasks.Zip(schedule.Tasks).SelectMany(x => Manning(problem, x.First, x.Second)),
            .. problem.Workers.SelectMany(w => Twice(w, schedule)),
            .. problem.Resources.SelectMany(r => Overused(problem, schedule, r)),
            .. schedule.Finish == (schedule.Tasks.Count == 0 ? 0 : schedule.Tasks.Max(t => t.End)) ? [] : (string[])["the finish is not the end of the last task"],
        ];
    }

    private static IEnumerable<string> Timing(Problem problem, Schedule schedule, Work task, Placed placed)
    {
        if (!placed.Pieces.Select(p => p.Length).SequenceEqual(task.Pieces()))
        {
            yield return $"{task.Id} is not done in the pieces asked for";
        }

        if (placed.Start < task.NotBefore || placed.End > problem.Horizon || placed.Pieces.Zip(placed.Pieces.Skip(1)).Any(x => x.Second.From < x.First.To))
        {
            yield return $"{task.Id} starts too early, ends too late, or its pieces are out of order";
        }

        if (task.Windows.Count > 0 && placed.Pieces.Any(p => !task.Windows.Any(w => w.From <= p.From && p.To <= w.To)))
        {
            yield return $"{task.Id} is done outside its windows";
        }

        foreach (var before in task.After.Where(b => placed.Start < schedule.Tasks[problem.IndexOf(b.Task)].End + b.Lag))
        {
            yield return $"{task.Id} does not wait for {before.Task}";
        }
    }

    private static IEnumerable<string> Manning(Problem problem, Work task, Placed placed)
    {
        var needs = task.Crew.SelectMany(c => Enumerable.Repeat(c.Skill, c.Count)).ToArray();
        if (needs.Length != placed.Crew.Count || placed.Crew.Distinct(StringComparer.Ordinal).Count() != placed.Crew.Count)
        {
            yield return $"{task.Id} does not have the people asked for, each once";
            yield break;
        }

        foreach (var (skill, id) in needs.Zip(placed.Crew))
        {
            var worker = problem.Workers.FirstOrDefault(w => w.Id == id);
            if (worker is null || !worker.Skills.Contains(skill))
            {
                yield return $"{id} does not have the skill {skill} for {task.Id}";
            }
            else if (placed.Pieces.Any(p => Enumerable.Range(p.From, p.Length).Any(t => !worker.Shifts.Concat(worker.Overtime).Any(s => s.From <= t && t < s.To))))
            {
                yield return $"{id} is not at work for all of {task.Id}";
            }
        }
    }

    private static IEnumerable<string> Twice(Worker worker, Schedule schedule)
    {
        Slot[] slots = [.. schedule.Tasks.Where(t => t.Crew.Contains(worker.Id)).SelectMany(t => t.Pieces).Where(p => p.Length > 0).OrderBy(p => p.From)];
        return slots.Zip(slots.Skip(1)).Where(x => x.First.Overlaps(x.Second)).Select(x => $"{worker.Id} does two things at {NumberFormat.Text(x.Second.From)}");
    }

    private static IEnumerable<string> Overused(Problem problem, Schedule schedule, Resource resource)
    {
        var steps = problem.Tasks.Zip(schedule.Tasks)
            .SelectMany(x => x.First.Demands.Where(d => d.Resource == resource.Id).SelectMany(d => x.Second.Pieces.Where(p => p.Length > 0).SelectMany(p => new[] { (At: p.From, d.Amount), (At: p.To, Amount: -d.Amount) })))
            .GroupBy(x => x.At).OrderBy(g => g.Key).Select(g => (At: g.Key, Step: g.Sum(x => x.Amount)));
        var used = 0;
        foreach (var (at, step) in steps)
        {
            if ((used += step) > resource.Capacity)
            {
                yield return $"more of {resource.Id} is used at {NumberFormat.Text(at)} than there is";
                yield break;
            }
        }
    }
}
