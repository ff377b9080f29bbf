namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>Good Steiner trees: grown by shortest paths (Takahashi and Matsuyama, Mathematica Japonica 24, 1980), then bettered by taking nodes
/// in and key nodes and key paths out.</summary>
internal sealed class SteinerHeuristic
{
    private readonly Graph graph;
    private readonly bool[] isTerminal;
    private readonly int terminals;
    private readonly double[] weights;
    private readonly int[] byWeight;
    private readonly int[] leader;

    public SteinerHeuristic(Graph graph, bool[] isTerminal)
    {
        this.graph = graph;
        this.isTerminal = isTerminal;
        terminals = isTerminal.Count(is_ => is_);
        weights = [.. graph.Edges.ToArray().Select(edge => edge.Weight)];
        byWeight = [.. Enumerable.Range(0, graph.EdgeCount).OrderBy(edge => weights[edge])];
        leader = new int[graph.NodeCount];
    }

    /// <summary>The weights of the edges.</summary>
    public double[] Weights => [.. weights];

    /// <summary>A tree grown from a node by repeatedly taking the shortest path to the nearest terminal not yet in it; null where one is out of
    /// reach.</summary>
    /// <param name="start">Node to start from.</param>
    /// <param name="cost">Weight of each edge; infinite bars it.</param>
    public List<int>? Grow(int start, double[] cost)
    {
        var distance = new double[graph.NodeCount];
        var before = new int[graph.NodeCount];
        Array.Fill(distance, double.PositiveInfinity);
        var joined = new bool[graph.NodeCount];
        joined[start] = true;
        distance[start] = 0;
        var queue = new PriorityQueue<int, double>();
        queue.Enqueue(start, 0);
        var missing = terminals - (isTerminal[start] ? 1 : 0);
        while (missing > 0 && queue.TryDequeue(out var node, out var reached))
        {
            if (reached > distance[node])
            {
                continue;
            }

            if (isTerminal[node] && !joined[node])
            {
                missing--;
                for (var at = node; !joined[at]; at = graph.Other(before[at], at))
                {
                    joined[at] = true;
                    distance[at] = 0;
                    queue.Enqueue(at, 0);
                }
            }

            foreach (var edge in graph.At(node))
            {
                var next = graph.Other(edge, node);
                var length = distance[node] + cost[edge];
                if (length < distance[next])
                {
                    (distance[next], before[next]) = (length, edge);
                    queue.Enqueue(next, length);
                }
            }
        }

        return missing > 0 ? null : Span(joined);
    }

    /// <summary>The lightest tree over some nodes and edges between them, without ends that are no terminals; null where they are not joined.</summary>
    public List<int>? Span(bool[] nodes)
    {
        for (var node = 0; node < leader.Length; node++)
        {
            leader[node] = node;
        }

        var tree = new List<int>();
        foreach (var edge in byWeight)
        {
            var (a, b, _) = graph[edge];
            if (nodes[a] && nodes[b] && Leader(a) is var x && Leader(b) is var y && x != y)
            {
                leader[x] = y;
                tree.Add(edge);
            }
        }

        var pruned = new SteinerPruning(graph, isTerminal).Prune(tree);
        return pruned.Count == 0 || pruned.TrueForAll(edge => Leader(graph[edge].From) == Leader(graph[pruned[0]].From)) ? Complete(pruned) : null;
    }

    /// <summary>Betters a tree until neither a node taken in nor a key node or key path taken out makes it lighter.</summary>
    public List<int> Better(List<int> tree, CancellationToken cancellation)
    {
        for (var improved = true; improved;)
        {
            cancellation.ThrowIfCancellationRequested();
            var before = graph.WeightOf(tree);
            tree = TakeOut(TakeIn(tree), cancellation);
            improved = graph.WeightOf(tree) < before * (1 - 1e-12);
        }

        return tree;
    }

    private List<int>? Complete(List<int> tree)
    {
        var joined = Nodes(tree);
        var reached = Enumerable.Range(0, joined.Length).Count(node => joined[node] && isTerminal[node]);
        return reached == terminals || terminals <= 1 ? tree : null;
    }

    private List<int> TakeIn(List<int> tree)
    {
        var nodes = Nodes(tree);
        var weight = graph.WeightOf(tree);
        for (var node = 0; node < nodes.Length; node++)
        {
            if (nodes[node] || Touching(node, nodes) < 2)
            {
                continue;
            }

            nodes[node] = true;
            if (Span(nodes) is { } other && graph.WeightOf(other) < weight * (1 - 1e-12))
            {
                (tree, weight, nodes) = (other, graph.WeightOf(other), Nodes(other));
            }
            else
            {
                nodes[node] = false;
            }
        }

        return tree;
    }

    private List<int> TakeOut(List<int> tree, CancellationToken cancellation)
    {
        var weight = graph.WeightOf(tree);
        foreach (var group in new SteinerPruning(graph, isTerminal).KeyParts(tree))
        {
            cancellation.ThrowIfCancellationRequested();
            var cost = Weights;
            var barred = group.ToHashSet();
            tree.Where(edge => !barred.Contains(edge)).ToList().ForEach(edge => cost[edge] = 0);
            group.ForEach(edge => cost[edge] = double.PositiveInfinity);
            if (Grow(Array.IndexOf(isTerminal, value: true), cost) is { } other && graph.WeightOf(other) < weight * (1 - 1e-12))
            {
                return other;
            }
        }

        return tree;
    }

    private int Touching(int node, bool[] nodes)
    {
        var count = 0;
        foreach (var edge in graph.At(node))
        {
            count += nodes[graph.Other(edge, node)] ? 1 : 0;
        }

        return count;
    }

    private bool[] Nodes(List<int> tree)
    {
        var nodes = new bool[graph.NodeCount];
        foreach (var edge in tree)
        {
            nodes[graph[edge].From] = nodes[graph[edge].To] = true;
        }

        return nodes;
    }

    private int Leader(int node)
    {
        while (leader[node] != node)
        {
            node = leader[node] = leader[leader[node]];
        }

        return node;
    }
}
