using System.Collections.Immutable;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Chooses ways of least mass that keep capacity, separation and redundancy.</summary>
/// <remarks>
/// Every unit starts on its shortest way. Where a segment holds a conflict, every arrangement without it keeps at least one of a few bars, so the
/// search branches over those, the lightest first (Sharon et al. 2015 search the ways of several vehicles so). The first arrangement without
/// conflicts that comes up is the lightest there is; where the search stops early, the lightest that is still open is a bound. Before
/// it, a dive takes the cheapest way out at each conflict: its arrangement is the answer where the search finds none better in its steps, and
/// at once where it weighs no more than <see cref="PairBound"/>.
/// Nothing depends on the order of edits: the problem alone decides.
/// </remarks>
internal static class RoutingSearch
{
    private const int ExactUnits = 16;
    private const int ExactSteps = 500;
    private const int BoundSteps = 48;
    private const double Noise = 1e-12;

    /// <summary>The ways.</summary>
    public static RoutingSolution Solve(RoutingProblem problem, CancellationToken stop = default)
    {
        var field = new RoutingField(problem);
        var start = Arrangement.Start(field);
        var dive = Dive(start, stop);
        var floor = dive.Whole ? PairBound.Of(field, dive.Forced) : 0;
        if (dive.Whole && dive.Found.Mass <= floor * (1 + Noise))
        {
            return Solution(problem, dive.Found, [.. dive.Clashes.Select(c => c.Clash)], dive.Found.Mass, proved: true, dive.Steps);
        }

        var most = dive.Found.Moved.Count <= ExactUnits ? ExactSteps : BoundSteps;
        var (best, bound, exhausted, looked) = Search(start, dive.Whole ? dive.Found : null, dive.Forced, most, stop);
        var found = best ?? dive.Found;
        return Solution(problem, found, [.. dive.Clashes.Where(c => best is null || c.Forced).Select(c => c.Clash), .. best is null ? Meetings(found, dive) : []], Math.Max(bound, floor), exhausted, dive.Steps + looked);
    }

    // At each conflict the cheapest way out; what has none is put up with. A redundant pair that meets where neither side can go elsewhere even
    // alone meets there and keeps apart otherwise; one that could keep apart nowhere altogether is left on its shortest ways.
    private static Dived Dive(Arrangement start, CancellationToken stop)
    {
        var dive = new Dived(start);
        while (dive.Found.FirstConflict(dive.Tolerated, out var at) is { } conflict)
        {
            stop.ThrowIfCancellationRequested();
            dive.Steps++;
            var next = conflict.Kind == ClashKind.Full ? Relieve(at, conflict, stop) : conflict.Remedies.Select(r => at.With(r, Room.First, stop)).OfType<Arrangement>().MinBy(a => a.Mass);
            dive.Found = next ?? dive.Accept(conflict, at, start);
        }

        return dive;
    }

    private static IEnumerable<Clash> Meetings(Arrangement found, Dived dive) => dive.GivenUp.SelectMany(p => found.Meetings(p.One, p.Other)
        .Where(s => !dive.Clashes.Any(c => c.Clash.Kind == ClashKind.Redundant && c.Clash.Segment == s && c.Clash.Names[0] == p.One && c.Clash.Names[1] == p.Other))
        .Select(s => new Clash(ClashKind.Redundant, s, [p.One, p.Other])));

    /// <summary>Where a dive has come to.</summary>
    private sealed class Dived(Arrangement start)
    {
        public Arrangement Found { get; set; } = start;

        public int Steps { get; set; }

        public HashSet<(int Edge, ClashKind Kind, string Name)> Tolerated { get; } = [];

        /// <summary>Of these, what no arrangement is without.</summary>
        public HashSet<(int Edge, ClashKind Kind, string Name)> Forced { get; } = [];

        public List<(Clash Clash, bool Forced)> Clashes { get; } = [];

        public List<(string One, string Other)> GivenUp { get; } = [];

        /// <summary>Whether all that is put up with is forced.</summary>
        public bool Whole => Tolerated.Count == Forced.Count;

        /// <summary>Puts up with a conflict; returns where the dive goes on.</summary>
        public Arrangement Accept(Conflict conflict, Arrangement at, Arrangement start)
        {
            var key = (conflict.Edge, conflict.Kind, conflict.Kind is ClashKind.Classes or ClashKind.Redundant ? string.Join('/', conflict.Names) : "");
            var forced = conflict.Kind != ClashKind.Full && conflict.Remedies.All(r => start.With(r, Room.Any) is null);
            if (conflict.Kind == ClashKind.Redundant && !forced)
            {
                GivenUp.Add((conflict.Names[0], conflict.Names[1]));
                Tolerated.Add(key with { Edge = RoutingField.Everywhere });
                return start;
            }

            Tolerated.Add(key);
            Clashes.Add((new(conflict.Kind, start.SegmentAt(conflict.Edge), conflict.Names), forced));
            if (forced)
            {
                Forced.Add(key);
            }

            return at;
        }
    }

    // Out of a full segment go those that gain least mass for the room they give back, until the others fit.
    private static Arrangement? Relieve(Arrangement start, Conflict conflict, CancellationToken stop)
    {
        var ranked = conflict.Leavers.Select(r => (r.Remedy, After: start.With(r.Remedy, Room.Only, stop), r.Room)).Where(r => r.After is not null)
            .OrderBy(r => (r.After!.Mass - start.Mass) / r.Room).ToArray();
        Arrangement? at = null;
        foreach (var (remedy, first, _) in ranked)
        {
            at = at is null ? first : at.With(remedy, Room.Only, stop) ?? at;
            if (at!.Fits(conflict.Edge))
            {
                return at;
            }
        }

        return null;
    }

    private static (Arrangement? Best, double Bound, bool Exhausted, int Steps) Search(
        Arrangement start, Arrangement? known, HashSet<(int Edge, ClashKind Kind, string Name)> tolerated, int most, CancellationToken stop)
    {
        var (queue, steps) = (new PriorityQueue<Arrangement, (double, int)>([(start, (start.Mass, 0))]), 0);
        while (queue.TryDequeue(out var at, out var rank))
        {
            stop.ThrowIfCancellationRequested();
            if (known is not null && rank.Item1 >= known.Mass * (1 - Noise))
            {
                return (known, known.Mass, true, steps);
            }

            if (steps >= most)
            {
                return (known, rank.Item1, false, steps);
            }

            if (at.FirstConflict(tolerated, out at) is not { } conflict)
            {
                return (at, at.Mass, true, steps);
            }

            foreach (var next in conflict.Remedies.Select(r => at.With(r, Room.Any, stop)).OfType<Arrangement>())
            {
                queue.Enqueue(next, (next.Mass, ++steps));
            }
        }

        return (known, known?.Mass ?? start.Mass, true, steps);
    }

    private static RoutingSolution Solution(RoutingProblem problem, Arrangement chosen, ImmutableArray<Clash> clashes, double bound, bool proved, int steps) => new(
        chosen.Moved.Where(m => m.Value.Way.Segments != problem.Units[m.Key].Free.Segments).SelectMany(m => problem.Units[m.Key].Circuits.Select(c => (c, m.Value.Way)))
            .ToDictionary(x => x.c, x => x.Way, StringComparer.Ordinal),
        new Mass(chosen.Mass), new Mass(Math.Min(bound, chosen.Mass)), proved, clashes, steps);
}
