namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>Shortest distances over the reduced weights of arcs left by <see cref="DualAscent"/>.</summary>
internal static class ReducedDistances
{
    /// <summary>Distance from the root to each node along the arcs.</summary>
    public static double[] FromRoot(Graph graph, double[] reduced, int root) => Work(graph, reduced, [root], forward: true);

    /// <summary>Distance from each node along the arcs to the nearest terminal.</summary>
    public static double[] ToTerminals(Graph graph, double[] reduced, int[] terminals) => Work(graph, reduced, terminals, forward: false);

    private static double[] Work(Graph graph, double[] reduced, int[] sources, bool forward)
    {
        var distance = new double[graph.NodeCount];
        Array.Fill(distance, double.PositiveInfinity);
        var queue = new PriorityQueue<int, double>();
        foreach (var source in sources)
        {
            distance[source] = 0;
            queue.Enqueue(source, 0);
        }

        while (queue.TryDequeue(out var node, out var reached))
        {
            if (reached > distance[node])
            {
                continue;
            }

            foreach (var edge in graph.At(node))
            {
                var next = graph.Other(edge, node);
                var length = reached + reduced[DualAscent.Arc(graph, edge, forward ? node : next)];
                if (length < distance[next])
                {
                    distance[next] = length;
                    queue.Enqueue(next, length);
                }
            }
        }

        return distance;
    }
}
