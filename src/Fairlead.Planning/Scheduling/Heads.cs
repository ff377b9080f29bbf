using System.Collections;
using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>The earliest start and end of each task in any plan: no sooner than what it waits for, in the hours of those who can do it, and no sooner
/// than all the work that must come before it can be carried.</summary>
internal sealed class Heads
{
    private readonly Problem problem;
    private readonly Carrier[] carriers;
    private readonly Dictionary<string, Sequence<Slot>[]> hours;

    public Heads(Problem problem, Carrier[] carriers, bool backward)
    {
        (this.problem, this.carriers) = (problem, carriers);
        Sequence<Slot>[] people = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts.Concat(w.Overtime)))];
        hours = problem.Tasks.SelectMany(t => t.Crew).Select(c => c.Skill).Distinct(StringComparer.Ordinal)
            .ToDictionary(s => s, s => people.Where((_, w) => problem.Workers[w].Skills.Contains(s)).ToArray(), StringComparer.Ordinal);
        (Start, End) = (new int[problem.Tasks.Count], new int[problem.Tasks.Count]);
        Fill(backward);
    }

    /// <summary>Earliest start, by task.</summary>
    public int[] Start { get; }

    /// <summary>Earliest end, by task.</summary>
    public int[] End { get; }

    private void Fill(bool backward)
    {
        var before = problem.Tasks.Select(_ => new BitArray(problem.Tasks.Count)).ToArray();
        var done = new List<int>();
        foreach (var at in problem.Order)
        {
            var task = problem.Tasks[at];
            var from = task.NotBefore;
            foreach (var (i, lag) in task.After.Select(p => (problem.IndexOf(p.Task), p.Lag)))
            {
                from = Math.Max(from, End[i] + lag);
                before[at].Or(before[i]).Set(i, true);
            }

            var start = Start[at] = Math.Max(from, Carried(done, before[at]));
            var pieces = task.Pieces();
            foreach (var length in backward ? pieces.Reverse() : pieces)
            {
                start = Earliest(task, start, length) + length;
            }

            End[at] = start;
            done.Insert(~done.BinarySearch(at, Comparer<int>.Create((a, b) => (Start[b], b).CompareTo((Start[a], a)))), at);
        }
    }

    // Of the tasks before, those that start late must still fit in after their earliest start: the last moment that any such part of them asks for.
    private int Carried(List<int> latestFirst, BitArray before)
    {
        int[] tasks = [.. latestFirst.Where(i => before[i])];
        var latest = 0;
        foreach (var carrier in tasks.Length > 1 ? carriers : [])
        {
            var (work, needed) = (0, 0);
            foreach (var i in tasks)
            {
                work += carrier.Work[i];
                needed = carrier.Work[i] == 0 ? needed : Math.Max(needed, carrier.Before(Start[i]) + work);
            }

            latest = Math.Max(latest, carrier.When(needed));
        }

        return latest;
    }

    private int Earliest(Work task, int from, int length)
    {
        for (var start = from; ;)
        {
            var asked = start;
            start = task.Windows.Count > 0 ? Hours.Earliest(task.Windows, start, length) : start;
            foreach (var need in task.Crew)
            {
                var ready = length == 0 || start > problem.Horizon ? start : hours[need.Skill].Min(h => Hours.Earliest(h, start, length));
                start = Math.Max(start, ready);
            }

            if (start == asked || start > problem.Horizon - length)
            {
                return Math.Min(start, problem.Horizon - length);
            }
        }
    }
}
