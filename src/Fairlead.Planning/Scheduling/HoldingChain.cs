using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Why a task does not start sooner.</summary>
public enum Hold
{
    /// <summary>Nothing holds it: it starts when the plan does, or when it is first allowed to.</summary>
    Start,

    /// <summary>A task before it must be finished, and any cure passed.</summary>
    Task,

    /// <summary>A person is busy with another task.</summary>
    Person,

    /// <summary>A shared thing is in use.</summary>
    Resource,

    /// <summary>Nobody who can do it is at work, or its window is not open.</summary>
    Hours,
}

/// <summary>One link of the chain that holds the finish.</summary>
/// <param name="Task">The task.</param>
/// <param name="Start">When it starts.</param>
/// <param name="End">When it ends.</param>
/// <param name="Hold">Why it does not start sooner.</param>
/// <param name="By">The task that holds it; empty when none does.</param>
/// <param name="Through">The person or thing through which it is held; empty when it waits for a task.</param>
public sealed record ChainLink(string Task, int Start, int End, Hold Hold, string By, string Through);

/// <summary>Follows a plan back from its finish: what each task waited for until it could start.</summary>
public static class HoldingChain
{
    /// <summary>The chain, from the first task to the last.</summary>
    public static Sequence<ChainLink> Of(Problem problem, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        var chain = new List<ChainLink>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var at = schedule.Tasks.OrderByDescending(t => t.End).ThenByDescending(t => t.Pieces.Sum(p => p.Length)).FirstOrDefault(); at is not null && seen.Add(at.Task);)
        {
            var link = Held(problem, schedule, at);
            chain.Add(link);
            at = link.By.Length > 0 ? schedule.Tasks[problem.IndexOf(link.By)] : null;
        }

        chain.Reverse();
        return chain.ToSequence();
    }

    private static ChainLink Held(Problem problem, Schedule schedule, Placed placed)
    {
        var task = problem.Tasks[problem.IndexOf(placed.Task)];
        ChainLink Link(Hold hold, string by = "", string through = "") => new(placed.Task, placed.Start, placed.End, hold, by, through);
        foreach (var before in task.After.Where(b => schedule.Tasks[problem.IndexOf(b.Task)].End + b.Lag == placed.Start).OrderByDescending(b => b.Lag))
        {
            return Link(Hold.Task, before.Task);
        }

        var others = schedule.Tasks.Where(t => t.Task != placed.Task && t.Pieces.Any(p => p.Length > 0)).ToArray();
        foreach (var other in others.Where(o => o.Pieces.Any(p => p.To == placed.Start)))
        {
            if (other.Crew.FirstOrDefault(placed.Crew.Contains) is { } person)
            {
                return Link(Hold.Person, other.Task, person);
            }

            if (problem.Tasks[problem.IndexOf(other.Task)].Demands.FirstOrDefault(d => task.Demands.Any(e => e.Resource == d.Resource)) is { } shared)
            {
                return Link(Hold.Resource, other.Task, shared.Resource);
            }
        }

        if (placed.Start == task.NotBefore)
        {
            return Link(Hold.Start);
        }

        // It waited for the hours to begin: what stood in the way before they did is what holds it.
        var latest = task.After.Select(b => (b.Task, Ready: schedule.Tasks[problem.IndexOf(b.Task)].End + b.Lag, Person: ""))
            .Concat(others.Where(o => o.End <= placed.Start).SelectMany(o => o.Crew.Where(placed.Crew.Contains).Select(w => (o.Task, Ready: o.End, Person: w))))
            .OrderByDescending(x => x.Ready).FirstOrDefault();
        return Link(Hold.Hours, latest.Task ?? "", latest.Person ?? "");
    }
}
