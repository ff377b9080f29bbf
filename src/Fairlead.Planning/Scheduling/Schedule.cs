using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>When and by whom a task is done.</summary>
/// <param name="Task">The task.</param>
/// <param name="Pieces">When each of its pieces is worked on, in order.</param>
/// <param name="Crew">Who does it: the people in the order of the needs of the task.</param>
public sealed record Placed(string Task, Sequence<Slot> Pieces, Sequence<string> Crew)
{
    /// <summary>Start of its first piece.</summary>
    public int Start => Pieces[0].From;

    /// <summary>End of its last piece.</summary>
    public int End => Pieces[^1].To;
}

/// <summary>A plan.</summary>
/// <param name="Tasks">The tasks, in the order of the problem.</param>
/// <param name="Finish">End of the last task.</param>
/// <param name="Overtime">Time worked outside shifts, over all people.</param>
public sealed record Schedule(Sequence<Placed> Tasks, int Finish, int Overtime)
{
    /// <summary>The plan of some placed tasks.</summary>
    public static Schedule Of(Problem problem, Sequence<Placed> tasks)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var shifts = problem.Workers.ToDictionary(w => w.Id, w => w.Shifts, StringComparer.Ordinal);
        var overtime = tasks.Sum(t => t.Crew.Sum(w => t.Pieces.Sum(p => p.Length - shifts[w].Sum(s => Common(s, p)))));
        return new(tasks, tasks.Count == 0 ? 0 : tasks.Max(t => t.End), overtime);
    }

    private static int Common(Slot a, Slot b) => Math.Max(0, Math.Min(a.To, b.To) - Math.Max(a.From, b.From));
}

/// <summary>What the optimiser found.</summary>
/// <param name="Schedule">The best plan found; null when there is none within the horizon.</param>
/// <param name="Bound">No plan finishes before this.</param>
/// <param name="Proved">Whether the plan is proved to finish as early as any.</param>
/// <param name="Why">Why there is no plan; empty when there is one.</param>
public sealed record ScheduleResult(Schedule? Schedule, int Bound, bool Proved, string Why = "");
