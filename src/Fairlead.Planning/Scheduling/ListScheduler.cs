using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Makes a plan at once: takes the tasks one after the other and puts each where it fits first.
/// The plan keeps every rule but is not the best; it is where the optimiser begins, and what the forecast repeats with other durations.</summary>
public sealed class ListScheduler
{
    private readonly Problem problem;
    private readonly Sequence<Slot>[] regular;
    private readonly Sequence<Slot>[] all;
    private readonly Dictionary<string, int> workers;
    private readonly int[][][] crews;
    private readonly int[][] lengths;
    private readonly (int Before, int Lag)[][] after;
    private readonly (int Resource, int Amount)[][] demands;
    private readonly int[][] next;

    /// <summary>Prepares a problem.</summary>
    public ListScheduler(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        this.problem = problem;
        regular = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts))];
        all = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts.Concat(w.Overtime)))];
        workers = problem.Workers.Select((w, i) => (w.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        crews = new CrewChoices(problem).Of();
        lengths = [.. problem.Tasks.Select(t => t.Pieces().ToArray())];
        after = [.. problem.Tasks.Select(t => t.After.Select(p => (problem.IndexOf(p.Task), p.Lag)).ToArray())];
        var resources = problem.Resources.Select((r, i) => (r.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        demands = [.. problem.Tasks.Select(t => t.Demands.Select(d => (resources[d.Resource], d.Amount)).ToArray())];
        var following = after.SelectMany((befores, at) => befores.Select(b => b.Before).Distinct().Select(before => (before, at))).ToLookup(x => x.before, x => x.at);
        next = [.. after.Select((_, at) => following[at].ToArray())];
    }

    /// <summary>A plan that takes the tasks with the longest tail first, the better of those with and without overtime; null when none fits before the horizon.</summary>
    public Schedule? Run()
    {
        double[] keys = [.. problem.Tails().Select(t => -(double)t)];
        var plan = Run(keys, overtime: false);
        return problem.Workers.Any(w => w.Overtime.Count > 0) && Run(keys, overtime: true) is { } late && (plan is null || late.Finish < plan.Finish) ? late : plan;
    }

    /// <summary>A plan that takes, of the tasks that may start, the one with the least key first; null when one does not fit before the horizon.</summary>
    /// <param name="keys">A key for each task.</param>
    /// <param name="overtime">Whether people may work overtime.</param>
    /// <param name="durations">Durations in place of those of the tasks; null for theirs.</param>
    /// <param name="staff">People in place of those chosen here, by task; null to choose.</param>
    public Schedule? Run(IReadOnlyList<double> keys, bool overtime, IReadOnlyList<int>? durations = null, IReadOnlyList<Sequence<string>>? staff = null)
    {
        ArgumentNullException.ThrowIfNull(keys);
        var state = new State([.. problem.Workers.Select(_ => new Timeline(1))], [.. problem.Resources.Select(r => new Timeline(r.Capacity))], overtime ? all : regular);
        var placed = new Placed?[problem.Tasks.Count];
        foreach (var at in Sorted(keys))
        {
            var from = problem.Tasks[at].NotBefore;
            foreach (var (before, lag) in after[at])
            {
                from = Math.Max(from, placed[before]!.End + lag);
            }

            var sizes = durations is null || durations[at] == problem.Tasks[at].Duration ? lengths[at] : [.. (problem.Tasks[at] with { Duration = durations[at] }).Pieces()];
            var choices = staff is null ? crews[at] : [[.. staff[at].Select(w => workers[w])]];
            if ((placed[at] = Place(state, at, from, sizes, choices)) is null)
            {
                return null;
            }
        }

        return Schedule.Of(problem, placed.Select(p => p!).ToSequence());
    }

    private Placed? Place(State state, int at, int from, int[] sizes, int[][] choices)
    {
        (Slot[] Pieces, int[] Crew)? best = null;
        foreach (var crew in choices)
        {
            if (Pieces(state, at, sizes, crew, from, best?.Pieces[^1].To ?? int.MaxValue) is { } pieces)
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

            foreach (var (resource, amount) in demands[at])
            {
                state.Used[resource].Use(piece, amount);
            }
        }

        return new(problem.Tasks[at].Id, found.Pieces.ToSequence(), found.Crew.Select(w => problem.Workers[w].Id).ToSequence());
    }

    // The pieces at their earliest, or null when they do not end before the limit.
    private Slot[]? Pieces(State state, int at, int[] sizes, int[] crew, int from, int limit)
    {
        var pieces = new Slot[sizes.Length];
        for (var k = 0; k < sizes.Length; k++)
        {
            var start = Earliest(state, at, crew, from, sizes[k]);
            if (start > problem.Horizon - sizes[k] || start + sizes[k] >= limit)
            {
                return null;
            }

            pieces[k] = new(start, from = start + sizes[k]);
        }

        return pieces;
    }

    // Moves the start on until nothing objects.
    private int Earliest(State state, int at, int[] crew, int from, int length)
    {
        var windows = problem.Tasks[at].Windows;
        for (var start = from; ;)
        {
            var asked = start;
            start = windows.Count > 0 ? Hours.Earliest(windows, start, length) : start;
            for (var i = 0; length > 0 && i < crew.Length && start <= problem.Horizon; i++)
            {
                start = Hours.Earliest(state.Hours[crew[i]], start, length);
                start = start > problem.Horizon ? start : state.Busy[crew[i]].Earliest(start, length, 1);
            }

            for (var i = 0; length > 0 && i < demands[at].Length && start <= problem.Horizon; i++)
            {
                start = state.Used[demands[at][i].Resource].Earliest(start, length, demands[at][i].Amount);
            }

            if (start == asked || start > problem.Horizon)
            {
                return start;
            }
        }
    }

    private IEnumerable<int> Sorted(IReadOnlyList<double> keys)
    {
        int[] waiting = [.. after.Select(befores => befores.Select(b => b.Before).Distinct().Count())];
        var ready = new PriorityQueue<int, (double, int)>(Enumerable.Range(0, waiting.Length).Where(i => waiting[i] == 0).Select(i => (i, (keys[i], i))));
        while (ready.TryDequeue(out var at, out _))
        {
            yield return at;
            foreach (var then in next[at])
            {
                if (--waiting[then] == 0)
                {
                    ready.Enqueue(then, (keys[then], then));
                }
            }
        }
    }

    private sealed record State(Timeline[] Busy, Timeline[] Used, Sequence<Slot>[] Hours);
}
