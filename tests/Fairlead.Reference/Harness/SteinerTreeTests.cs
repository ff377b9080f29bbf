using CsCheck;
using Fairlead.Substantiation.Harness.Graphs;

namespace Fairlead.Tests.Reference.Harness;

/// <summary>Steiner trees against published optima, GLPK, enumeration, and the laws any lightest tree keeps.</summary>
public sealed class SteinerTreeTests
{
    private static readonly Gen<(Graph Graph, int[] Terminals)> Small =
        from nodes in Gen.Int[2, 9]
        from links in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], Gen.Int[0, 9]).List[nodes, 18]
        from terminals in Gen.Int[0, nodes - 1].List[1, 5]
        select (new Graph(nodes, [.. links.Where(l => l.Item1 != l.Item2).Select(l => new GraphEdge(l.Item1, l.Item2, l.Item3))]), terminals.ToArray());

    private static readonly Gen<(Graph Graph, int[] Terminals)> Middle =
        from nodes in Gen.Int[20, 60]
        from chain in Gen.Double[0.5, 9].List[nodes - 1]
        from links in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], Gen.Double[0.5, 9]).List[nodes, 3 * nodes]
        from terminals in Gen.Int[0, nodes - 1].List[3, 24]
        select (new Graph(nodes, [
            .. chain.Select((weight, node) => new GraphEdge(node, node + 1, weight)),
            .. links.Where(l => l.Item1 != l.Item2).Select(l => new GraphEdge(l.Item1, l.Item2, l.Item3))]), terminals.ToArray());

    /// <summary>Instances of SteinLib as given out by the PACE 2018 challenge under CC0 (repository SteinerTree-PACE-2018-instances), with the optima
    /// stated there.</summary>
    public static TheoryData<string, double> Published => new()
    {
        { "lin01", 503 }, { "lin02", 557 }, { "lin03", 926 }, { "lin04", 1239 }, { "lin05", 1703 }, { "lin06", 1348 },
        { "i080-231", 4354 }, { "i080-232", 4199 },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void A_published_instance_is_proved_at_its_published_optimum(string name, double optimum)
    {
        var (graph, terminals) = SteinLib.Read(name);
        var result = SteinerTree.Solve(graph, terminals, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(optimum, result.Weight);
        Assert.True(result.IsOptimal);
        Joins(graph, terminals, result);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void The_weight_is_that_of_glpk_by_the_flow_model(int seed)
    {
        Tools.Need("glpsol");
        var random = new Random(seed);
        const int Nodes = 18;
        var graph = new Graph(Nodes, [
            .. Enumerable.Range(1, Nodes - 1).Select(node => new GraphEdge(random.Next(node), node, random.Next(10, 60))),
            .. Enumerable.Range(0, 16).Select(_ => random.Next(Nodes)).Select(node => new GraphEdge(node, (node + 1 + random.Next(Nodes - 1)) % Nodes, random.Next(10, 60)))]);
        var terminals = Enumerable.Range(0, Nodes).OrderBy(_ => random.Next()).Take(4 + (seed % 3)).ToArray();
        foreach (var options in new[] { new SteinerOptions(), new SteinerOptions(SubsetLimit: 0) })
        {
            var result = SteinerTree.Solve(graph, terminals, options, cancellation: TestContext.Current.CancellationToken);
            Assert.True(result.IsOptimal);
            Assert.Equal(FlowModel(graph, terminals), result.Weight);
        }
    }

    [Fact]
    public void The_weight_is_the_least_of_all_sets_of_edges() => Small.Sample(
        problem =>
        {
            var result = SteinerTree.Solve(problem.Graph, problem.Terminals);
            var least = LeastOfAll(problem.Graph, problem.Terminals);
            if (least is null)
            {
                Assert.NotEmpty(result.Unreached);
                return;
            }

            Assert.Equal(least.Value, result.Weight, 1e-9);
            Assert.True(result.IsOptimal);
            Joins(problem.Graph, problem.Terminals, result);
        },
        iter: 400);

    [Fact]
    public void Branch_and_bound_and_dynamic_programming_agree() => Middle.Sample(
        problem =>
        {
            var terminals = problem.Terminals.Distinct().Take(9).ToArray();
            var subsets = SteinerTree.Solve(problem.Graph, terminals, new SteinerOptions(BranchLimit: 0));
            var branches = SteinerTree.Solve(problem.Graph, terminals, new SteinerOptions(BranchLimit: 100_000, SubsetLimit: 0));
            Assert.True(subsets.IsOptimal && branches.IsOptimal);
            Assert.Equal(subsets.Weight, branches.Weight, 1e-9 * subsets.Weight);
        },
        iter: 60);

    [Fact]
    public void A_tree_joins_its_terminals_and_is_no_lighter_than_its_bound() => Middle.Sample(
        problem =>
        {
            var first = SteinerTree.Solve(problem.Graph, problem.Terminals, new SteinerOptions(BranchLimit: 0, SubsetLimit: 0));
            var best = SteinerTree.Solve(problem.Graph, problem.Terminals);
            Joins(problem.Graph, problem.Terminals, first);
            Joins(problem.Graph, problem.Terminals, best);
            Assert.True(best.IsOptimal);
            Assert.InRange(best.Weight, first.LowerBound * (1 - 1e-9), first.Weight);
        },
        iter: 60);

    [Fact]
    public void Weights_ten_times_as_great_make_the_tree_ten_times_as_heavy() => Middle.Sample(
        problem =>
        {
            var scaled = new Graph(problem.Graph.NodeCount, [.. problem.Graph.Edges.ToArray().Select(edge => edge with { Weight = 10 * edge.Weight })]);
            var (once, ten) = (SteinerTree.Solve(problem.Graph, problem.Terminals), SteinerTree.Solve(scaled, problem.Terminals));
            Assert.Equal(10 * once.Weight, ten.Weight, 1e-7 * ten.Weight);
        },
        iter: 40);

    [Fact]
    public void One_more_terminal_never_makes_the_tree_lighter() => Middle.Sample(
        problem =>
        {
            var less = SteinerTree.Solve(problem.Graph, problem.Terminals[1..]);
            var more = SteinerTree.Solve(problem.Graph, problem.Terminals);
            Assert.True(more.Weight >= less.Weight * (1 - 1e-9));
        },
        iter: 40);

    [Fact]
    public void The_same_problem_gives_the_same_tree() => Middle.Sample(
        problem => Assert.Equal(SteinerTree.Solve(problem.Graph, problem.Terminals), SteinerTree.Solve(problem.Graph, problem.Terminals)), iter: 10);

    [Fact]
    public void Terminals_out_of_reach_are_named()
    {
        var graph = new Graph(5, [new(0, 1, 1), new(2, 3, 1)]);
        var result = SteinerTree.Solve(graph, [0, 1, 3, 4], cancellation: TestContext.Current.CancellationToken);
        Assert.Equal([3, 4], result.Unreached);
        Assert.False(result.IsOptimal);
    }

    [Fact]
    public void A_terminal_that_is_no_node_and_an_edge_that_is_none_are_refused()
    {
        var graph = new Graph(2, [new(0, 1, 1)]);
        Assert.Throws<ArgumentOutOfRangeException>(() => SteinerTree.Solve(graph, [0, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Graph(2, [new(0, 2, 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Graph(2, [new(1, 1, 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Graph(2, [new(0, 1, -1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Graph(2, [new(0, 1, double.NaN)]));
    }

    [Fact]
    public void Work_stops_when_it_is_cancelled()
    {
        var (graph, terminals) = SteinLib.Read("lin06");
        Assert.Throws<OperationCanceledException>(() => SteinerTree.Solve(graph, terminals, cancellation: new CancellationToken(canceled: true)));
    }

    private static void Joins(Graph graph, int[] terminals, SteinerResult result)
    {
        var leader = Enumerable.Range(0, graph.NodeCount).ToArray();
        int Leader(int node) => leader[node] == node ? node : Leader(leader[node]);
        foreach (var edge in result.Edges)
        {
            var (a, b) = (Leader(graph[edge].From), Leader(graph[edge].To));
            Assert.NotEqual(a, b);
            leader[a] = b;
        }

        Assert.Single(terminals.Select(Leader).Distinct());
        Assert.Equal(graph.WeightOf(result.Edges), result.Weight, 1e-9 * (1 + result.Weight));
        Assert.True(result.LowerBound <= result.Weight);
    }

    private static double? LeastOfAll(Graph graph, int[] terminals)
    {
        double? least = null;
        for (var others = 0; others < 1 << graph.NodeCount; others++)
        {
            if (terminals.Any(terminal => (others >> terminal & 1) == 0))
            {
                continue;
            }

            // The lightest tree over exactly these nodes, by Kruskal.
            var leader = Enumerable.Range(0, graph.NodeCount).ToArray();
            int Leader(int node) => leader[node] == node ? node : Leader(leader[node]);
            var weight = 0.0;
            var joined = 1;
            foreach (var edge in graph.Edges.ToArray().Where(edge => (others >> edge.From & others >> edge.To & 1) == 1).OrderBy(edge => edge.Weight))
            {
                if (Leader(edge.From) != Leader(edge.To))
                {
                    leader[Leader(edge.From)] = Leader(edge.To);
                    weight += edge.Weight;
                    joined++;
                }
            }

            least = joined == System.Numerics.BitOperations.PopCount((uint)others) && !(least <= weight) ? weight : least;
        }

        return least;
    }

    /// <summary>One unit flows from the first terminal to each other one, only over arcs that are bought.</summary>
    private static double FlowModel(Graph graph, int[] terminals)
    {
        var program = new Glpk();
        var arcs = Enumerable.Range(0, graph.EdgeCount).SelectMany(edge => new[]
        {
            (Name: $"a{edge}", graph[edge].From, graph[edge].To, graph[edge].Weight), (Name: $"b{edge}", From: graph[edge].To, To: graph[edge].From, graph[edge].Weight),
        }).ToArray();
        foreach (var arc in arcs)
        {
            program.Binary(arc.Name, arc.Weight);
        }

        foreach (var sink in terminals.Skip(1))
        {
            for (var node = 0; node < graph.NodeCount; node++)
            {
                var into = arcs.Where(arc => arc.To == node).Select(arc => (1.0, $"f{sink}{arc.Name}"));
                var away = arcs.Where(arc => arc.From == node).Select(arc => (-1.0, $"f{sink}{arc.Name}"));
                program.Row(into.Concat(away), "=", node == sink ? 1 : node == terminals[0] ? -1 : 0);
            }

            foreach (var arc in arcs)
            {
                program.Row([(1, $"f{sink}{arc.Name}"), (-1, arc.Name)], "<=", 0);
            }
        }

        return program.Least()!.Value;
    }
}
