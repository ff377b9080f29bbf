namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>Shortest paths from one node, or from the nearest of several, to all others (Dijkstra, Numerische Mathematik 1, 1959).</summary>
public sealed class ShortestPaths
{
    private readonly Graph graph;
    private readonly double[] distance;
    private readonly int[] before;

    private ShortestPaths(Graph graph)
    {
        this.graph = graph;
        distance = new double[graph.NodeCount];
        before = new int[graph.NodeCount];
        Array.Fill(distance, double.PositiveInfinity);
        Array.Fill(before, -1);
    }

    /// <summary>Works the shortest paths from the nearest of the sources.</summary>
    /// <param name="graph">The graph.</param>
    /// <param name="sources">Nodes at distance 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A source is not a node.</exception>
    public static ShortestPaths From(Graph graph, params ReadOnlySpan<int> sources) => From(graph, [], sources);

    /// <summary>Works the shortest paths with weights other than the graph's own.</summary>
    /// <param name="graph">The graph.</param>
    /// <param name="weights">A weight for each edge, not negative; infinite bars the edge. Empty takes the graph's own.</param>
    /// <param name="sources">Nodes at distance 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A source is not a node.</exception>
    public static ShortestPaths From(Graph graph, ReadOnlySpan<double> weights, ReadOnlySpan<int> sources)
    {
        ArgumentNullException.ThrowIfNull(graph);
        var paths = new ShortestPaths(graph);
        var queue = new PriorityQueue<int, double>();
        foreach (var source in sources)
        {
            graph.RequireNode(source, nameof(sources));
            paths.distance[source] = 0;
            queue.Enqueue(source, 0);
        }

        while (queue.TryDequeue(out var node, out var reached))
        {
            if (reached <= paths.distance[node])
            {
                paths.Relax(node, weights, queue);
            }
        }

        return paths;
    }

    /// <summary>Distance of a node from its nearest source; infinite where there is no path.</summary>
    /// <param name="node">0 to nodes − 1.</param>
    public double To(int node) => distance[node];

    /// <summary>Numbers of the edges from the source to a node, in order; empty for a source.</summary>
    /// <param name="node">A node that is reached.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no path to the node.</exception>
    public IReadOnlyList<int> PathTo(int node)
    {
        if (double.IsInfinity(distance[node]))
        {
            throw new ArgumentOutOfRangeException(nameof(node), node, "There is no path to the node.");
        }

        var path = new List<int>();
        for (var at = node; before[at] >= 0; at = graph.Other(before[at], at))
        {
            path.Add(before[at]);
        }

        path.Reverse();
        return path;
    }

    private void Relax(int node, ReadOnlySpan<double> weights, PriorityQueue<int, double> queue)
    {
        foreach (var edge in graph.At(node))
        {
            var next = graph.Other(edge, node);
            var reached = distance[node] + (weights.IsEmpty ? graph[edge].Weight : weights[edge]);
            if (reached < distance[next])
            {
                distance[next] = reached;
                before[next] = edge;
                queue.Enqueue(next, reached);
            }
        }
    }
}
