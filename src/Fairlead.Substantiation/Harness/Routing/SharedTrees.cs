using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Graphs;
using Fairlead.Substantiation.Interconnect;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Holds the nets of a job against the shortest tree that joins their ends (the Steiner tree in the raceways).</summary>
/// <remarks>
/// A net is what circuits make one through contacts and joints. Breakers and ground studs part nets, but those that the key
/// <c>redraw</c> names join the circuits that end there: they may then be drawn from one box to the next. A joint with a stated point is an end
/// like any other; a joint without one may stand anywhere. Segments that any circuit of the net avoids, or whose class it stays apart from, are
/// left out. Trees of few ends are exact; where the search stops early the bound says how far from the shortest the tree can be.
/// </remarks>
public static class SharedTrees
{
    private const int FewestEnds = 3;
    private static readonly SteinerOptions Effort = new(BranchLimit: 100, SubsetLimit: 10_000_000);

    /// <summary>The trees of all nets with three or more ends, in the order of their first circuits.</summary>
    /// <param name="assessment">The job with the ways of its circuits.</param>
    /// <param name="progress">Told how many nets are done.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ImmutableArray<SharedTree> Of(Assessment assessment, IProgress<WorkDone>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var job = assessment.Job;
        var raceways = new Raceways(job.Aircraft);
        var loose = job.Change.Joints.OrEmpty().Where(j => j.Node is null).Select(j => j.Id).ToHashSet(StringComparer.Ordinal);
        var known = new Dictionary<(Sequence<int> Ends, Sequence<string> Barred), (SteinerResult Tree, int[] Segments)>();
        var trees = ImmutableArray.CreateBuilder<SharedTree>();
        var (watch, nets, done) = (new Watch(stop, progress), Nets(job, assessment.Circuits).Where(n => n.All(c => c.Way is not null)).ToArray(), 0);
        foreach (var net in nets)
        {
            watch.Tell("shared trees", done++, nets.Length, "nets");
            var points = net.SelectMany(c => new[] { (c.Circuit.From.Item, Point: c.Way!.Nodes[0]), (c.Circuit.To.Item, Point: c.Way.Nodes[^1]) }).Distinct().ToLookup(e => loose.Contains(e.Item));
            var ends = points[false].Select(e => raceways.PointNumber(e.Point)).Distinct().Order().ToSequence();
            if (ends.Count < FewestEnds)
            {
                continue;
            }

            var barred = Barred(job, net).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToSequence();
            if (!known.TryGetValue((ends, barred), out var found))
            {
                known.Add((ends, barred), found = Solve(raceways, ends, barred, stop));
            }

            if (found.Tree.Unreached.Count == 0)
            {
                trees.Add(Tree(raceways, net, ends, found.Tree, found.Segments) with { Loose = [.. points[true]] });
            }
        }

        return trees.ToImmutable();
    }

    private static IEnumerable<CircuitResult[]> Nets(Job job, ImmutableArray<CircuitResult> circuits)
    {
        var netlist = new Netlist(circuits, new Terminals(job));
        var redraw = job.Change.Wiring.Redraw.ToHashSet(StringComparer.Ordinal);
        var joined = new Dictionary<string, int>(StringComparer.Ordinal);
        var leader = Enumerable.Range(0, netlist.Groups.Length).ToArray();
        int Root(int net) => leader[net] == net ? net : leader[net] = Root(leader[net]);
        for (var net = 0; net < leader.Length; net++)
        {
            foreach (var point in netlist.Groups[net].SelectMany(c => new[] { circuits[c].Circuit.From.Item, circuits[c].Circuit.To.Item }).Where(redraw.Contains))
            {
                if (!joined.TryAdd(point, net))
                {
                    var (a, b) = (Root(joined[point]), Root(net));
                    leader[Math.Max(a, b)] = Math.Min(a, b);
                }
            }
        }

        return Enumerable.Range(0, leader.Length).GroupBy(Root).Select(g => g.SelectMany(n => netlist.Groups[n]).Order().Select(c => circuits[c]).ToArray());
    }

    private static IEnumerable<string> Barred(Job job, CircuitResult[] net)
    {
        var apart = job.Change.Wiring.KeepApart.SelectMany(p => new[] { (p.One, p.Other), (p.Other, p.One) }).ToHashSet();
        var classes = net.Select(c => c.Circuit.Separation).Distinct(StringComparer.Ordinal).ToArray();
        return net.SelectMany(c => c.Circuit.Avoid)
            .Concat(apart.Count == 0 ? [] : job.Aircraft.Segments.OrEmpty().Where(s => Array.Exists(classes, c => apart.Contains((c, s.Separation)))).Select(s => s.Id));
    }

    private static (SteinerResult Tree, int[] Segments) Solve(Raceways raceways, Sequence<int> ends, Sequence<string> barred, CancellationToken stop)
    {
        var closed = barred.Select(raceways.Number).ToHashSet();
        int[] segments = [.. Enumerable.Range(0, raceways.Segments).Where(e => !closed.Contains(e) && raceways.Ends(e).From != raceways.Ends(e).To)];
        var graph = new Graph(raceways.Points, [.. segments.Select(e => new GraphEdge(raceways.Ends(e).From, raceways.Ends(e).To, raceways.Metres(e)))]);
        return (SteinerTree.Solve(graph, ends, Effort, cancellation: stop), segments);
    }

    private static SharedTree Tree(Raceways raceways, CircuitResult[] net, Sequence<int> ends, SteinerResult tree, int[] segments)
    {
        int[] used = [.. tree.Edges.Select(e => segments[e])];
        var branches = used.SelectMany(e => new[] { raceways.Ends(e).From, raceways.Ends(e).To }).CountBy(p => p).Where(p => p.Value > 2).Select(p => p.Key).Order();
        return new(
            [.. net.Select(c => c.Circuit.Id)], [.. ends.Select(raceways.Point)], new Length(net.Sum(c => c.Way!.Length.Si)), new Length(tree.Weight),
            new Length(tree.IsOptimal ? tree.Weight : tree.LowerBound), tree.IsOptimal, [.. branches.Select(raceways.Point)], [], [.. used.Select(raceways.Segment)]);
    }
}
