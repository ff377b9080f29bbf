namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>Looks at a tree's ends and key parts.</summary>
/// <param name="graph">The graph.</param>
/// <param name="isTerminal">Whether each node is a terminal.</param>
internal sealed class SteinerPruning(Graph graph, bool[] isTerminal)
{
    private readonly Dictionary<int, List<int>> at = [];

    /// <summary>The tree without ends that are no terminals.</summary>
    public List<int> Prune(List<int> tree)
    {
        Index(tree);
        var ends = new Stack<int>(at.Where(node => node.Value.Count == 1).Select(node => node.Key));
        var gone = new HashSet<int>();
        while (ends.TryPop(out var node))
        {
            if (isTerminal[node] || at[node] is not [var edge])
            {
                continue;
            }

            gone.Add(edge);
            var other = graph.Other(edge, node);
            at[node].Clear();
            at[other].Remove(edge);
            ends.Push(other);
        }

        return [.. tree.Where(edge => !gone.Contains(edge))];
    }

    /// <summary>Parts of a tree whose loss splits it: each path between key nodes (terminals and forks), then each fork with its paths.</summary>
    public List<List<int>> KeyParts(List<int> tree)
    {
        Index(tree);
        var keys = at.Keys.Where(IsKey).Order().ToList();
        var paths = keys.SelectMany(key => at[key].Select(edge => Follow(key, edge)).Where(path => key < path.End)).Select(path => path.Edges);
        var forks = keys.Where(key => !isTerminal[key]).Select(key => at[key].SelectMany(edge => Follow(key, edge).Edges).ToList());
        return [.. paths, .. forks];
    }

    private bool IsKey(int node) => isTerminal[node] || at[node].Count != 2;

    private (int End, List<int> Edges) Follow(int key, int edge)
    {
        var edges = new List<int> { edge };
        var node = graph.Other(edge, key);
        while (!IsKey(node))
        {
            edge = at[node][0] == edge ? at[node][1] : at[node][0];
            edges.Add(edge);
            node = graph.Other(edge, node);
        }

        return (node, edges);
    }

    private void Index(List<int> tree)
    {
        at.Clear();
        foreach (var edge in tree)
        {
            foreach (var node in new[] { graph[edge].From, graph[edge].To })
            {
                if (!at.TryGetValue(node, out var edges))
                {
                    at[node] = edges = [];
                }

                edges.Add(edge);
            }
        }
    }
}
