using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>What two paths may not share.</summary>
public enum Apart
{
    /// <summary>No edge in common; they may meet at nodes.</summary>
    Edges,

    /// <summary>No edge and no node in common but the two ends.</summary>
    Nodes,
}

/// <summary>Two paths between the same ends that share nothing.</summary>
/// <param name="First">Edge numbers of the lighter path, in order.</param>
/// <param name="Second">Edge numbers of the other path, in order.</param>
/// <param name="Weight">Sum of both weights: no other such pair is lighter.</param>
public sealed record PathPair(Sequence<int> First, Sequence<int> Second, double Weight);

/// <summary>The lightest pair of paths kept apart, as for redundant systems: one shortest path, then one over the graph where the first may be
/// undone, with reduced weights (Suurballe and Tarjan, Networks 14, 1984; nodes are split for <see cref="Apart.Nodes"/>).</summary>
/// <remarks>The result is exact. Check value: where the shortest path blocks every second one the pair avoids it: nodes 0 to 3, edges 0–1 1,
/// 1–2 1, 2–3 1, 0–2 3, 1–3 3 give the pair 0–1–3 and 0–2–3 of weight 8 (by hand: the only pair).</remarks>
public static class DisjointPair
{
    /// <summary>The lightest pair, or null where there is none.</summary>
    /// <param name="graph">The graph.</param>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    /// <param name="apart">What the paths may not share.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is not a node, or both ends are one node.</exception>
    public static PathPair? Find(Graph graph, int from, int to, Apart apart)
    {
        ArgumentNullException.ThrowIfNull(graph);
        graph.RequireNode(from, nameof(from));
        graph.RequireNode(to, nameof(to));
        ArgumentOutOfRangeException.ThrowIfEqual(from, to);
        var flow = new UnitFlow(graph, from, to, apart);
        if (!flow.Augment() || !flow.Augment())
        {
            return null;
        }

        var paths = new[] { flow.TakePath(), flow.TakePath() }.OrderBy(graph.WeightOf).ToArray();
        return new PathPair([.. paths[0]], [.. paths[1]], graph.WeightOf(paths[0].Concat(paths[1])));
    }
}
