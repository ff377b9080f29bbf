namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>A part of the search space of <see cref="SteinerTree"/>: a graph without loss of the trees that may still be best, and what is decided.</summary>
/// <param name="Graph">What is left of the graph; nodes are numbered anew.</param>
/// <param name="IsTerminal">Whether each node must be joined.</param>
/// <param name="Origin">For each edge its <see cref="SteinerOrigins"/> number.</param>
/// <param name="Fixed">Origin numbers of the edges that are in the tree already.</param>
/// <param name="FixedWeight">Sum of their weights.</param>
/// <param name="Bound">No tree of this part is lighter, fixed edges included.</param>
internal sealed record SteinerPart(Graph Graph, bool[] IsTerminal, int[] Origin, IReadOnlyList<int> Fixed, double FixedWeight, double Bound)
{
    /// <summary>Numbers of the terminals.</summary>
    public IEnumerable<int> Terminals => Enumerable.Range(0, IsTerminal.Length).Where(node => IsTerminal[node]);

    /// <summary>The whole problem.</summary>
    public static SteinerPart Whole(Graph graph, IEnumerable<int> terminals)
    {
        var isTerminal = new bool[graph.NodeCount];
        foreach (var terminal in terminals)
        {
            isTerminal[terminal] = true;
        }

        return new SteinerPart(graph, isTerminal, [.. Enumerable.Range(0, graph.EdgeCount)], [], 0, 0);
    }
}

/// <summary>Which edges of the first graph an edge of a reduced graph stands for.</summary>
/// <param name="count">Number of edges of the first graph: they stand for themselves.</param>
internal sealed class SteinerOrigins(int count)
{
    private readonly List<(int First, int Second)> joined = [];

    /// <summary>An edge that stands for two in a row.</summary>
    public int Join(int first, int second)
    {
        joined.Add((first, second));
        return count + joined.Count - 1;
    }

    /// <summary>The edges of the first graph.</summary>
    public IEnumerable<int> Expand(IEnumerable<int> origins)
    {
        var open = new Stack<int>(origins);
        while (open.TryPop(out var origin))
        {
            if (origin < count)
            {
                yield return origin;
                continue;
            }

            open.Push(joined[origin - count].First);
            open.Push(joined[origin - count].Second);
        }
    }
}
