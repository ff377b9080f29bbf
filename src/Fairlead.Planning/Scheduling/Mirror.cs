using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>A problem with time turned round: what ends at <c>at - t</c> starts at <c>t</c>, and what follows comes before. So whatever is said of the
/// earliest time of a task is said, turned back, of its latest.</summary>
internal static class Mirror
{
    /// <summary>The problem seen from a moment back. Before its own start there are people and windows at all times, so that every task has a place;
    /// that a task may not start before a time is left out, and so are the windows of milestones: one may stand where a window only just opens at that moment.</summary>
    public static Problem Of(Problem problem, int at)
    {
        var after = problem.Tasks.SelectMany(t => t.After.Select(p => (p.Task, Then: new Predecessor(t.Id, p.Lag)))).ToLookup(x => x.Task, x => x.Then, StringComparer.Ordinal);
        Slot before = new(at, at + problem.Horizon);
        Sequence<Slot> Turned(IEnumerable<Slot> slots) => Hours.Joined(slots.Where(s => s.From < at).Select(s => new Slot(Math.Max(0, at - s.To), at - s.From)).Append(before));
        return new(
            before.To,
            problem.Tasks.Select(t => t with { After = after[t.Id].ToSequence(), NotBefore = 0, Windows = t.Windows.Count == 0 || t.Duration == 0 ? [] : Turned(t.Windows) }).ToSequence(),
            problem.Workers.Select(w => w with { Shifts = Turned(w.Shifts.Concat(w.Overtime)), Overtime = [] }).ToSequence(),
            problem.Resources);
    }
}
