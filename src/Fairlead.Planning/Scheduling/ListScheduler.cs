using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Makes a plan at once: takes the tasks one after the other and puts each where it fits first.
/// The plan keeps every rule but is not the best; it is where the optimiser begins, and what the forecast repeats with other durations.</summary>
public sealed class ListScheduler
{
    private const int MostCrews = 64;

    private readonly Problem problem;
    private readonly Sequence<Slot>[] regular;
    private readonly Sequence<Slot>[] all;
    private readonly Dictionary<string, int> workers;
    private readonly Dictionary<string, int> resources;
    private readonly int[][][] crews;

    /// <summary>Prepares a problem.</summary>
    public ListScheduler(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        this.problem = problem;
        regular = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts))];
        all = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts.Concat(w.Overtime)))];
        workers = problem.Workers.Select((w, i) => (w.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        resources = problem.Resources.Select((r, i) => (r.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        crews = [.. problem.Tasks.Select(t => Crews(t).Take(MostCrews).Select(c => c.ToArray()).ToArray())];
    }

    /// <summary>A plan that takes the tasks with the longest tail first; null when one does not fit before the horizon.</summary>
    public Schedule? Run()
    {
        var tails = problem.Tails();
        return Run([.. tails.Select(t => -(double)t)], overtime: false) ?? Run([.. tails.Select(t => -(double)t)], overtime: true);
    }

    /// <summary>A plan that takes, of the tasks that may start, the one with the least key first; null when one does not fit before the horizon.</summary>
    /// <param name="keys">A key for each task.</param>
    /// <param name="overtime">Whether people may work overtime.</param>
    /// <param name="durations">Durations in place of those of the tasks; null for theirs.</param>
    /// <param name="staff">People in place of those chosen here, by task; null to choose.</param>
    public Schedule? Run(IReadOnlyList<double> keys, bool overtime, IReadOnlyList<int>? durations = null, IReadOnlyList<Sequence<string>>? staff = null)
    {
        ArgumentNullException.ThrowIfNull(keys);
        var state = new State(problem.Workers.Select(_ => new Timeline(1)).ToArray(), problem.Resources.Select(r => new Timeline(r.Capacity)).ToArray(), overtime ? all : regular);
        var placed = new Placed?[problem.Tasks.Count];
        foreach (var at in Sorted(keys))
        {
            var task = durations is null ? problem.Tasks[at] : problem.Tasks[at] with { Duration = durations[at] };
            var from = task.After.Aggregate(task.NotBefore, (latest, p) => Math.Max(latest, placed[problem.IndexOf(p.Task)]!.End + p.Lag));
            var choices = staff is null ? crews[at] : [[.. staff[at].Select(w => workers[w])]];
            if ((placed[at] = Place(state, task, from, choices)) is null)
            {
                return null;
            }
        }

        return Schedule.Of(problem, placed.Select(p => p!).ToSequence());
    }

    private Placed? Place(State state, Work task, int from, int[][] choices)
    {
        (Slot[] Pieces, int[] Crew)? best = null;
        foreach (var crew in choices)
        {
            if (Pieces(state, task, crew, from, best?.Pieces[^1].To ?? int.MaxValue) is { } pieces)
            {
                best = (pieces, crew);
            }
        }

        if (best is not { } found)
        {
            return null;
        }

        foreach (var piece in found.Pieces)
        {
            foreach (var worker in found.Crew)
            {
                state.Busy[worker].Use(piece, 1);
            }

            foreach (var demand in task.Demands)
            {
                state.Used[resources[demand.Resource]].Use(piece, demand.Amount);
            }
        }

        return new(task.Id, found.Pieces.ToSequence(), found.Crew.Select(w => problem.Workers[w].Id).ToSequence());
    }

    // The pieces at their earliest, or null when they do not end before the limit.
    private Slot[]? Pieces(State state, Work task, int[] crew, int from, int limit)
    {
        var pieces = new List<Slot>();
        foreach (var length in task.Pieces())
        {
            var start = Earliest(state, task, crew, from, length);
            if (start > problem.Horizon - length || start + length >= limit)
            {
                return null;
            }

            pieces.Add(new(start, from = start + length));
        }

        return [.. pieces];
    }

    // Moves the start on until nothing objects.
    private int Earliest(State state, Work task, int[] crew, int from, int length)
    {
        for (var start = from; ;)
        {
            var asked = start;
            start = task.Windows.Count > 0 ? Hours.Earliest(task.Windows, start, length) : start;
            foreach (var worker in crew.Where(_ => length > 0))
            {
                start = start > problem.Horizon ? start : Hours.Earliest(state.Hours[worker], start, length);
                start = start > problem.Horizon ? start : state.Busy[worker].Earliest(start, length, 1);
            }

            foreach (var demand in task.Demands.Where(_ => length > 0))
            {
                start = start > problem.Horizon ? start : state.Used[resources[demand.Resource]].Earliest(start, length, demand.Amount);
            }

            if (start == asked || start > problem.Horizon)
            {
                return start;
            }
        }
    }

    private IEnumerable<int> Sorted(IReadOnlyList<double> keys)
    {
        var waiting = problem.Tasks.Select(t => t.After.Select(p => p.Task).Distinct(StringComparer.Ordinal).Count()).ToArray();
        var next = problem.Tasks.Select((t, i) => (t, i)).SelectMany(x => x.t.After.Select(p => p.Task).Distinct(StringComparer.Ordinal).Select(p => (Before: problem.IndexOf(p), After: x.i))).ToLookup(x => x.Before, x => x.After);
        var ready = new PriorityQueue<int, (double, int)>(Enumerable.Range(0, waiting.Length).Where(i => waiting[i] == 0).Select(i => (i, (keys[i], i))));
        while (ready.TryDequeue(out var at, out _))
        {
            yield return at;
            foreach (var after in next[at].Where(after => --waiting[after] == 0))
            {
                ready.Enqueue(after, (keys[after], after));
            }
        }
    }

    // Every way to man a task, each group of people once for each need they could fill.
    private IEnumerable<IEnumerable<int>> Crews(Work task)
    {
        IEnumerable<int[]> chosen = [[]];
        foreach (var need in task.Crew)
        {
            int[] able = [.. Enumerable.Range(0, problem.Workers.Count).Where(w => problem.Workers[w].Skills.Contains(need.Skill))];
            chosen = chosen.SelectMany(c => Groups([.. able.Except(c)], need.Count).Select(g => c.Concat(g).ToArray()));
        }

        return chosen;
    }

    private static IEnumerable<int[]> Groups(int[] from, int count) => count == 0 ? [[]] :
        Enumerable.Range(0, Math.Max(0, from.Length - count + 1)).SelectMany(i => Groups(from[(i + 1)..], count - 1).Select(rest => (int[])[from[i], .. rest]));

    private sealed record State(Timeline[] Busy, Timeline[] Used, Sequence<Slot>[] Hours);
}
