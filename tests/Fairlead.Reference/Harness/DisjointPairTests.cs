using CsCheck;
using Fairlead.Substantiation.Harness.Graphs;

namespace Fairlead.Tests.Reference.Harness;

/// <summary>Pairs of paths kept apart against the lightest of all pairs of simple paths.</summary>
public sealed class DisjointPairTests
{
    private static readonly Gen<Graph> Graphs =
        from nodes in Gen.Int[2, 7]
        from links in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], Gen.Int[0, 9]).List[2, 14]
        select new Graph(nodes, [.. links.Where(l => l.Item1 != l.Item2).Select(l => new GraphEdge(l.Item1, l.Item2, l.Item3))]);

    [Theory]
    [InlineData(Apart.Edges)]
    [InlineData(Apart.Nodes)]
    public void The_pair_is_the_lightest_of_all_pairs(Apart apart) => Graphs.Sample(
        graph =>
        {
            var to = graph.NodeCount - 1;
            var paths = Paths(graph, 0, to).ToList();
            var least = (from a in paths from b in paths where Share(graph, a, b, to, apart) == 0 select (double?)(graph.WeightOf(a) + graph.WeightOf(b))).Min();
            var pair = DisjointPair.Find(graph, 0, to, apart);
            Assert.Equal(least, pair?.Weight);
            if (pair is not null)
            {
                Assert.Equal(0, Share(graph, [.. pair.First], [.. pair.Second], to, apart));
                Assert.Equal(pair.Weight, graph.WeightOf(pair.First.Concat(pair.Second)), 1e-9);
                Assert.All([pair.First, pair.Second], path => Assert.Equal(to, path.Aggregate(0, (node, edge) => graph.Other(edge, node))));
            }
        },
        iter: 2000);

    [Fact]
    public void A_shortest_path_that_blocks_all_others_is_given_up()
    {
        // By hand: 0–1–2–3 weighs 3 but leaves no second path; 0–1–3 and 0–2–3 are the only pair, 1 + 3 + 3 + 1.
        var graph = new Graph(4, [new(0, 1, 1), new(1, 2, 1), new(2, 3, 1), new(0, 2, 3), new(1, 3, 3)]);
        Assert.Equal(8, DisjointPair.Find(graph, 0, 3, Apart.Nodes)!.Weight);
        Assert.Equal(8, DisjointPair.Find(graph, 0, 3, Apart.Edges)!.Weight);
    }

    [Fact]
    public void Paths_that_must_cross_at_a_node_are_apart_by_edges_only()
    {
        var graph = new Graph(3, [new(0, 1, 1), new(0, 1, 2), new(1, 2, 3), new(1, 2, 4)]);
        Assert.Equal(10, DisjointPair.Find(graph, 0, 2, Apart.Edges)!.Weight);
        Assert.Null(DisjointPair.Find(graph, 0, 2, Apart.Nodes));
    }

    private static int Share(Graph graph, int[] a, int[] b, int to, Apart apart) =>
        a.Intersect(b).Count() + (apart == Apart.Nodes ? Nodes(graph, a).Intersect(Nodes(graph, b)).Count(node => node != to) : 0);

    private static List<int> Nodes(Graph graph, int[] path)
    {
        var nodes = new List<int> { 0 };
        foreach (var edge in path)
        {
            nodes.Add(graph.Other(edge, nodes[^1]));
        }

        return nodes[1..];
    }

    private static IEnumerable<int[]> Paths(Graph graph, int from, int to, params int[] seen)
    {
        if (from == to)
        {
            return [[]];
        }

        return graph.At(from).ToArray().Where(edge => !seen.Contains(graph.Other(edge, from)))
            .SelectMany(edge => Paths(graph, graph.Other(edge, from), to, [.. seen, from]).Select(rest => (int[])[edge, .. rest]));
    }
}
