namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>The lightest Steiner tree by dynamic programming over subsets of terminals (Dreyfus and Wagner, Networks 1, 1971, with one shortest-path
/// search a subset after Erickson, Monma and Veinott, Mathematics of Operations Research 12, 1987).</summary>
internal sealed class DreyfusWagner
{
    private readonly Graph graph;
    private readonly int[] terminals;

    /// <summary>For each subset and node the weight of the lightest tree that joins them.</summary>
    private readonly double[][] weight;

    /// <summary>How it was made: an edge number from the next node, or −1 − subset for two trees that meet.</summary>
    private readonly int[][] made;

    private DreyfusWagner(Graph graph, int[] terminals)
    {
        this.graph = graph;
        this.terminals = terminals;
        weight = new double[1 << (terminals.Length - 1)][];
        made = new int[weight.Length][];
    }

    /// <summary>Whether the work stays below a limit.</summary>
    /// <param name="nodes">Nodes of the graph.</param>
    /// <param name="terminals">Terminals, 2 or more.</param>
    /// <param name="limit">Most combinations of subsets with nodes.</param>
    public static bool IsWithin(int nodes, int terminals, long limit) =>
        terminals <= 16 && Math.Pow(3, terminals - 1) * nodes <= limit && (1L << (terminals - 1)) * nodes <= 4_000_000;

    /// <summary>The edges of the lightest tree.</summary>
    /// <param name="graph">A graph in which all terminals are joined.</param>
    /// <param name="terminals">Two or more terminals.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static List<int> Solve(Graph graph, int[] terminals, CancellationToken cancellation)
    {
        var programme = new DreyfusWagner(graph, terminals);
        for (var subset = 1; subset < programme.weight.Length; subset++)
        {
            cancellation.ThrowIfCancellationRequested();
            programme.Work(subset);
        }

        return programme.Trace(programme.weight.Length - 1, terminals[^1]);
    }

    private void Work(int subset)
    {
        var (best, how) = (new double[graph.NodeCount], new int[graph.NodeCount]);
        (weight[subset], made[subset]) = (best, how);
        Array.Fill(best, double.PositiveInfinity);
        if ((subset & (subset - 1)) == 0)
        {
            best[terminals[System.Numerics.BitOperations.TrailingZeroCount(subset)]] = 0;
        }

        // Each split is met twice; the half without the highest terminal is enough.
        for (var part = (subset - 1) & subset; part > 0; part = (part - 1) & subset)
        {
            if (part < (subset ^ part))
            {
                Meet(part, subset ^ part, best, how);
            }
        }

        var queue = new PriorityQueue<int, double>();
        queue.EnqueueRange(Enumerable.Range(0, best.Length).Where(node => double.IsFinite(best[node])).Select(node => (node, best[node])));
        while (queue.TryDequeue(out var node, out var reached))
        {
            if (reached > best[node])
            {
                continue;
            }

            foreach (var edge in graph.At(node))
            {
                var next = graph.Other(edge, node);
                if (reached + graph[edge].Weight < best[next])
                {
                    best[next] = reached + graph[edge].Weight;
                    how[next] = edge;
                    queue.Enqueue(next, best[next]);
                }
            }
        }
    }

    private void Meet(int first, int second, double[] best, int[] how)
    {
        var (a, b) = (weight[first], weight[second]);
        for (var node = 0; node < best.Length; node++)
        {
            if (a[node] + b[node] < best[node])
            {
                best[node] = a[node] + b[node];
                how[node] = -1 - first;
            }
        }
    }

    private List<int> Trace(int subset, int node)
    {
        var edges = new List<int>();
        var open = new Stack<(int Subset, int Node)>([(subset, node)]);
        while (open.TryPop(out var at))
        {
            if ((at.Subset & (at.Subset - 1)) == 0 && terminals[System.Numerics.BitOperations.TrailingZeroCount(at.Subset)] == at.Node)
            {
                continue;
            }

            var how = made[at.Subset][at.Node];
            if (how >= 0)
            {
                edges.Add(how);
                open.Push((at.Subset, graph.Other(how, at.Node)));
            }
            else
            {
                open.Push((-1 - how, at.Node));
                open.Push((at.Subset ^ (-1 - how), at.Node));
            }
        }

        return edges;
    }
}
