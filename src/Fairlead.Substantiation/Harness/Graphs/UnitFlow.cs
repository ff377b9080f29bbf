namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>A lightest flow of one unit an arc between two nodes of a graph, by successive shortest paths with reduced weights.</summary>
/// <remarks>Each node is an entry (2v) and an exit (2v + 1). Arcs come in pairs: arc a is undone by arc a ^ 1.</remarks>
internal sealed class UnitFlow
{
    private readonly int source;
    private readonly int sink;
    private readonly List<int> heads = [];
    private readonly List<double> weights = [];
    private readonly List<int> room = [];
    private readonly List<int> edgeOf = [];
    private readonly List<int>[] leaving;
    private readonly double[] potential;

    public UnitFlow(Graph graph, int from, int to, Apart apart)
    {
        leaving = [.. Enumerable.Range(0, 2 * graph.NodeCount).Select(_ => new List<int>())];
        potential = new double[leaving.Length];
        source = (2 * from) + 1;
        sink = 2 * to;
        for (var node = 0; node < graph.NodeCount; node++)
        {
            Add(2 * node, (2 * node) + 1, 0, apart == Apart.Nodes ? 1 : 2, edge: -1);
        }

        for (var edge = 0; edge < graph.EdgeCount; edge++)
        {
            var (a, b, weight) = graph[edge];
            Add((2 * a) + 1, 2 * b, weight, 1, edge);
            Add((2 * b) + 1, 2 * a, weight, 1, edge);
        }
    }

    /// <summary>Sends one more unit along a shortest path; false where there is none.</summary>
    public bool Augment()
    {
        var (distance, before) = Search();
        if (double.IsInfinity(distance[sink]))
        {
            return false;
        }

        for (var node = 0; node < potential.Length; node++)
        {
            potential[node] += Math.Min(distance[node], distance[sink]);
        }

        for (var node = sink; node != source; node = heads[before[node] ^ 1])
        {
            room[before[node]]--;
            room[before[node] ^ 1]++;
        }

        CancelOpposed();
        return true;
    }

    /// <summary>Takes one unit of the flow out as a path of edge numbers without a repeated node.</summary>
    public List<int> TakePath()
    {
        var path = new List<int>();
        var nodes = new List<int> { source / 2 };
        for (var node = source; node != sink;)
        {
            var arc = leaving[node].First(a => (a & 1) == 0 && room[a ^ 1] > 0);
            room[arc ^ 1]--;
            node = heads[arc];
            if (edgeOf[arc] < 0)
            {
                continue;
            }

            path.Add(edgeOf[arc]);
            var loop = nodes.IndexOf(node / 2);
            if (loop >= 0)
            {
                path.RemoveRange(loop, path.Count - loop);
                nodes.RemoveRange(loop + 1, nodes.Count - loop - 1);
            }
            else
            {
                nodes.Add(node / 2);
            }
        }

        return path;
    }

    private void Add(int tail, int head, double weight, int capacity, int edge)
    {
        leaving[tail].Add(heads.Count);
        heads.Add(head);
        weights.Add(weight);
        room.Add(capacity);
        edgeOf.Add(edge);
        leaving[head].Add(heads.Count);
        heads.Add(tail);
        weights.Add(-weight);
        room.Add(0);
        edgeOf.Add(edge);
    }

    private (double[] Distance, int[] Before) Search()
    {
        var distance = new double[leaving.Length];
        var before = new int[leaving.Length];
        Array.Fill(distance, double.PositiveInfinity);
        distance[source] = 0;
        var queue = new PriorityQueue<int, double>();
        queue.Enqueue(source, 0);
        var settled = new bool[leaving.Length];
        while (queue.TryDequeue(out var node, out _))
        {
            if (settled[node])
            {
                continue;
            }

            settled[node] = true;
            foreach (var arc in leaving[node].Where(arc => room[arc] > 0 && !settled[heads[arc]]))
            {
                // Reduced weights are not negative but for rounding.
                var reached = distance[node] + Math.Max(0, weights[arc] + potential[node] - potential[heads[arc]]);
                if (reached < distance[heads[arc]])
                {
                    distance[heads[arc]] = reached;
                    before[heads[arc]] = arc;
                    queue.Enqueue(heads[arc], reached);
                }
            }
        }

        return (distance, before);
    }

    /// <summary>An edge used both ways carries nothing: the turn over the edge and back is taken out. Only edges of weight 0 are left so.</summary>
    private void CancelOpposed()
    {
        for (var arc = 0; arc + 2 < heads.Count; arc += 2)
        {
            if (edgeOf[arc] >= 0 && edgeOf[arc] == edgeOf[arc + 2] && room[arc] == 0 && room[arc + 2] == 0)
            {
                (room[arc], room[arc + 1], room[arc + 2], room[arc + 3]) = (1, 0, 1, 0);
                foreach (var through in new[] { heads[arc] / 2 * 2, heads[arc + 2] / 2 * 2 })
                {
                    room[through]++;
                    room[through ^ 1]--;
                }
            }
        }
    }
}
