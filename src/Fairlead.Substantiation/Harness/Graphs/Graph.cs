using System.Globalization;

namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>An edge of a <see cref="Graph"/>, passable both ways.</summary>
/// <param name="From">One end, 0 to nodes − 1.</param>
/// <param name="To">The other end, not <paramref name="From"/>.</param>
/// <param name="Weight">Weight in the caller's unit (mm, g), finite and not negative.</param>
public readonly record struct GraphEdge(int From, int To, double Weight);

/// <summary>An undirected graph with weighted edges, held in flat arrays. Nodes and edges are numbered from 0; two nodes may be joined by
/// several edges.</summary>
public sealed class Graph
{
    private readonly GraphEdge[] edges;
    private readonly int[] starts;
    private readonly int[] incident;

    /// <summary>Builds a graph.</summary>
    /// <param name="nodeCount">Number of nodes, 0 or more.</param>
    /// <param name="edges">Edges; their places in this list are their numbers.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is not a node, both ends are one node, or a weight is negative or not finite.</exception>
    public Graph(int nodeCount, IReadOnlyList<GraphEdge> edges)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(nodeCount);
        ArgumentNullException.ThrowIfNull(edges);
        NodeCount = nodeCount;
        this.edges = [.. edges];
        starts = new int[nodeCount + 1];
        foreach (var edge in this.edges)
        {
            Require(edge);
            starts[edge.From + 1]++;
            starts[edge.To + 1]++;
        }

        for (var node = 0; node < nodeCount; node++)
        {
            starts[node + 1] += starts[node];
        }

        var next = starts[..^1];
        incident = new int[2 * this.edges.Length];
        for (var number = 0; number < this.edges.Length; number++)
        {
            incident[next[this.edges[number].From]++] = number;
            incident[next[this.edges[number].To]++] = number;
        }
    }

    /// <summary>Number of nodes.</summary>
    public int NodeCount { get; }

    /// <summary>Number of edges.</summary>
    public int EdgeCount => edges.Length;

    /// <summary>All edges by number.</summary>
    public ReadOnlySpan<GraphEdge> Edges => edges;

    /// <summary>An edge by its number.</summary>
    /// <param name="edge">0 to <see cref="EdgeCount"/> − 1.</param>
    public GraphEdge this[int edge] => edges[edge];

    /// <summary>Numbers of the edges at a node.</summary>
    /// <param name="node">0 to <see cref="NodeCount"/> − 1.</param>
    public ReadOnlySpan<int> At(int node) => incident.AsSpan(starts[node]..starts[node + 1]);

    /// <summary>The end of an edge that is not the given node.</summary>
    /// <param name="edge">0 to <see cref="EdgeCount"/> − 1.</param>
    /// <param name="node">One end of the edge.</param>
    public int Other(int edge, int node) => edges[edge].From == node ? edges[edge].To : edges[edge].From;

    /// <summary>The sum of the weights of some edges.</summary>
    /// <param name="numbers">Edge numbers.</param>
    public double WeightOf(IEnumerable<int> numbers) => numbers.Sum(number => edges[number].Weight);

    internal void RequireNode(int node, string name)
    {
        if (node < 0 || node >= NodeCount)
        {
            throw new ArgumentOutOfRangeException(name, node, string.Create(CultureInfo.InvariantCulture, $"A node is 0 to {NodeCount - 1}."));
        }
    }

    private void Require(GraphEdge edge)
    {
        RequireNode(edge.From, nameof(edge));
        RequireNode(edge.To, nameof(edge));
        if (edge.From == edge.To)
        {
            throw new ArgumentOutOfRangeException(nameof(edge), edge, "An edge joins two different nodes.");
        }

        if (!double.IsFinite(edge.Weight) || edge.Weight < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(edge), edge, "The weight of an edge is finite and not negative.");
        }
    }
}
