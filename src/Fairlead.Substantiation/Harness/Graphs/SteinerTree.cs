using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>The lightest tree that joins given nodes of a graph, over any others where that is lighter: the trunk of a harness.</summary>
/// <remarks>The graph is reduced without loss, bounded from below by dual ascent (Wong, Mathematical Programming 28, 1984) and from above by
/// shortest-path trees with local search; what is left is closed by dynamic programming over subsets of terminals (Dreyfus and Wagner, Networks 1,
/// 1971) where these are few, else by branch and bound. Where a limit ends the search the result says how far it can be from the lightest.
/// Check value: terminals 0, 1, 2 each joined to node 3 by 1 and to one another by 1.9 give the star of weight 3 (by hand: two sides weigh 3.8).</remarks>
public static class SteinerTree
{
    /// <summary>Joins the terminals.</summary>
    /// <param name="graph">The graph; its parts without a terminal do not matter.</param>
    /// <param name="terminals">Nodes to join; one given twice counts once, none or one gives an empty tree.</param>
    /// <param name="options">How far to go.</param>
    /// <param name="progress">Told each time the best tree or the bound gets better.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">A terminal is not a node of the graph.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SteinerResult Solve(
        Graph graph,
        IReadOnlyCollection<int> terminals,
        SteinerOptions? options = null,
        IProgress<SteinerProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(terminals);
        foreach (var terminal in terminals)
        {
            graph.RequireNode(terminal, nameof(terminals));
        }

        if (terminals.Count == 0)
        {
            return new SteinerResult([], 0, 0, IsOptimal: true, []);
        }

        var first = terminals.First();
        var reached = ShortestPaths.From(graph, first);
        var unreached = terminals.Where(terminal => double.IsInfinity(reached.To(terminal))).Distinct().Order().ToSequence();
        return unreached.Count > 0
            ? new SteinerResult([], 0, 0, IsOptimal: false, unreached)
            : new SteinerSearch(graph, options ?? new SteinerOptions(), progress, cancellation).Run(SteinerPart.Whole(graph, terminals));
    }
}
