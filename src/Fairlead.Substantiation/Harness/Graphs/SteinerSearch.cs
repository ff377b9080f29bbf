namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>Best-first branch and bound of <see cref="SteinerTree"/>: in each half a node is joined or left out.</summary>
internal sealed class SteinerSearch(Graph graph, SteinerOptions options, IProgress<SteinerProgress>? progress, CancellationToken cancellation)
{
    private const int RootsAtFirst = 8;
    private const int RootsInBranches = 2;
    private readonly SteinerOrigins origins = new(graph.EdgeCount);
    private readonly bool whole = graph.Edges.ToArray().All(edge => edge.Weight < 1e9 && edge.Weight == Math.Floor(edge.Weight));
    private readonly PriorityQueue<SteinerPart, (double Bound, int Order)> open = new();
    private double weight = double.PositiveInfinity;
    private double proved;
    private int[] best = [];

    /// <summary>A part whose bound is above this holds no tree that is lighter by more than rounding.</summary>
    private double Needed => whole ? weight - 1 + 1e-6 : weight * (1 - 1e-9);

    /// <summary>Searches the whole problem.</summary>
    public SteinerResult Run(SteinerPart part)
    {
        Look(SteinerReduction.Reduce(part, origins), roots: RootsAtFirst);
        var looked = 0;
        for (; open.TryPeek(out var next, out _) && next.Bound <= Needed && looked < options.BranchLimit; looked++)
        {
            cancellation.ThrowIfCancellationRequested();
            Tell(next.Bound);
            Branch(open.Dequeue());
        }

        var bound = open.TryPeek(out var left, out _) && left.Bound <= Needed ? Math.Min(weight, Rounded(left.Bound)) : weight;
        return new SteinerResult([.. best.Order()], weight, bound, bound >= weight, []);
    }

    private double Rounded(double bound) => whole ? Math.Ceiling(bound - 1e-6) : bound;

    private void Tell(double bound)
    {
        if (bound > proved)
        {
            proved = bound;
            progress?.Report(new SteinerProgress(weight, Rounded(bound)));
        }
    }

    private void Branch(SteinerPart part)
    {
        var fork = Fork(part);
        var isTerminal = part.IsTerminal.ToArray();
        isTerminal[fork] = true;
        Look(SteinerReduction.Reduce(part with { IsTerminal = isTerminal }, origins), roots: RootsInBranches);
        var keep = part.Graph.Edges.ToArray().Select(edge => edge.From != fork && edge.To != fork).ToArray();
        Look(SteinerReduction.Reduce(part, origins, keep), roots: RootsInBranches);
    }

    /// <summary>The node to branch at: the one with most edges that is no terminal, of these the nearest to a terminal.</summary>
    private static int Fork(SteinerPart part)
    {
        var near = ShortestPaths.From(part.Graph, [.. part.Terminals]);
        return Enumerable.Range(0, part.Graph.NodeCount).Where(node => !part.IsTerminal[node])
            .OrderByDescending(node => part.Graph.At(node).Length).ThenBy(near.To).First();
    }

    /// <summary>Bounds a part, betters the best tree, cuts away what the bound allows, and keeps the part where it may hold a better tree.</summary>
    private void Look(SteinerPart part, int roots)
    {
        for (var round = 0; round < 8; round++)
        {
            var edges = part.Graph.EdgeCount;
            var terminals = part.Terminals.ToArray();
            if (terminals.Length <= 1)
            {
                Offer(part, []);
                return;
            }

            var keep = Enumerable.Repeat(element: true, edges).ToArray();
            foreach (var root in Spread(terminals, roots, round))
            {
                part = Bound(part, root, keep, wide: roots == RootsAtFirst);
                if (part.Bound > Needed)
                {
                    return;
                }
            }

            part = SteinerReduction.Reduce(part, origins, keep);
            if (part.Graph.EdgeCount > edges * 0.9)
            {
                break;
            }
        }

        Close(part);
    }

    private void Close(SteinerPart part)
    {
        var terminals = part.Terminals.ToArray();
        if (terminals.Length <= 1)
        {
            Offer(part, []);
        }
        else if (IsJoined(part.Graph, terminals))
        {
            if (DreyfusWagner.IsWithin(part.Graph.NodeCount, terminals.Length, options.SubsetLimit) || terminals.Length == part.Graph.NodeCount)
            {
                Offer(part, terminals.Length == part.Graph.NodeCount ? new SteinerHeuristic(part.Graph, part.IsTerminal).Span(part.IsTerminal)! : DreyfusWagner.Solve(part.Graph, terminals, cancellation));
            }
            else
            {
                open.Enqueue(part, (part.Bound, open.Count));
            }
        }
    }

    private static bool IsJoined(Graph graph, int[] terminals)
    {
        var paths = ShortestPaths.From(graph, terminals[0]);
        return terminals.All(terminal => double.IsFinite(paths.To(terminal)));
    }

    private static IEnumerable<int> Spread(int[] terminals, int roots, int round) =>
        Enumerable.Range(0, Math.Min(roots, terminals.Length))
            .Select(place => terminals[(((long)place * terminals.Length / Math.Min(roots, terminals.Length)) + round) % terminals.Length]).Distinct();

    private SteinerPart Bound(SteinerPart part, int root, bool[] keep, bool wide)
    {
        var ascent = DualAscent.From(part.Graph, part.IsTerminal, root);
        if (double.IsInfinity(ascent.Bound))
        {
            return part with { Bound = double.PositiveInfinity };
        }

        Improve(part, ascent, root, wide);
        Cut(part, ascent, root, keep);
        return part with { Bound = Math.Max(part.Bound, part.FixedWeight + ascent.Bound) };
    }

    /// <summary>Grows a tree over edges spent in the ascent, where a good tree lies, and betters it: before branching also where it is not the best yet.</summary>
    private void Improve(SteinerPart part, DualAscent ascent, int root, bool wide)
    {
        var heuristic = new SteinerHeuristic(part.Graph, part.IsTerminal);
        var cost = heuristic.Weights;
        for (var edge = 0; edge < cost.Length; edge++)
        {
            cost[edge] = Math.Min(ascent.Reduced[2 * edge], ascent.Reduced[(2 * edge) + 1]) > 0 ? double.PositiveInfinity : cost[edge];
        }

        if (heuristic.Grow(root, cost) is { } tree)
        {
            var close = part.FixedWeight + part.Graph.WeightOf(tree) < weight * (wide ? 1.03 : 1);
            Offer(part, close ? heuristic.Better(tree, cancellation) : tree);
        }
    }

    /// <summary>Marks the edges over which any tree weighs more than is needed.</summary>
    private void Cut(SteinerPart part, DualAscent ascent, int root, bool[] keep)
    {
        var slack = Needed - part.FixedWeight - ascent.Bound;
        var from = ReducedDistances.FromRoot(part.Graph, ascent.Reduced, root);
        var to = ReducedDistances.ToTerminals(part.Graph, ascent.Reduced, [.. part.Terminals.Where(terminal => terminal != root)]);
        for (var edge = 0; edge < keep.Length; edge++)
        {
            var (a, b, _) = part.Graph[edge];
            var least = Math.Min(from[a] + ascent.Reduced[2 * edge] + to[b], from[b] + ascent.Reduced[(2 * edge) + 1] + to[a]);
            keep[edge] &= least <= slack;
        }
    }

    private void Offer(SteinerPart part, List<int> tree)
    {
        var offered = part.FixedWeight + part.Graph.WeightOf(tree);
        if (offered < weight)
        {
            best = [.. origins.Expand([.. part.Fixed, .. tree.Select(edge => part.Origin[edge])])];
            weight = graph.WeightOf(best.Order());
            progress?.Report(new SteinerProgress(weight, Rounded(proved)));
        }
    }
}
