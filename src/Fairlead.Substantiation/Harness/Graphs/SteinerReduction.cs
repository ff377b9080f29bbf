namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>Makes a part smaller without loss of a best tree: ends, middles of chains, and edges that a way round replaces.</summary>
internal sealed class SteinerReduction
{
    /// <summary>Most nodes looked at for a way round one edge.</summary>
    private const int Reach = 150;

    private readonly SteinerOrigins origins;
    private readonly List<(int A, int B, double Weight, int Origin)> edges = [];
    private readonly List<bool> alive = [];
    private readonly List<int>[] at;
    private readonly bool[] terminal;
    private readonly List<int> taken;
    private readonly Stack<int> changed = new();
    private readonly double[] distance;
    private double takenWeight;
    private int terminals;

    private SteinerReduction(SteinerPart part, SteinerOrigins origins)
    {
        this.origins = origins;
        terminal = [.. part.IsTerminal];
        terminals = terminal.Count(is_ => is_);
        taken = [.. part.Fixed];
        takenWeight = part.FixedWeight;
        at = [.. terminal.Select(_ => new List<int>())];
        distance = new double[terminal.Length];
        Array.Fill(distance, double.PositiveInfinity);
    }

    /// <summary>Reduces a part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="origins">Where joined edges are noted.</param>
    /// <param name="keep">Which edges to keep; null keeps all.</param>
    public static SteinerPart Reduce(SteinerPart part, SteinerOrigins origins, bool[]? keep = null)
    {
        var work = new SteinerReduction(part, origins);
        for (var edge = 0; edge < part.Graph.EdgeCount; edge++)
        {
            if (keep?[edge] ?? true)
            {
                var (a, b, weight) = part.Graph[edge];
                work.Add(a, b, weight, part.Origin[edge]);
            }
        }

        for (var node = 0; node < work.at.Length; node++)
        {
            work.changed.Push(node);
        }

        do
        {
            work.Shrink();
        }
        while (work.CutDetours());
        return work.Build(part.Bound);
    }

    private void Add(int a, int b, double weight, int origin)
    {
        at[a].Add(edges.Count);
        at[b].Add(edges.Count);
        edges.Add((a, b, weight, origin));
        alive.Add(true);
    }

    private int Other(int edge, int node) => edges[edge].A == node ? edges[edge].B : edges[edge].A;

    private void Remove(int edge)
    {
        var (a, b, _, _) = edges[edge];
        alive[edge] = false;
        at[a].Remove(edge);
        at[b].Remove(edge);
        changed.Push(a);
        changed.Push(b);
    }

    private void Shrink()
    {
        while (changed.TryPop(out var node))
        {
            if (terminals > 1 && at[node].Count == 1)
            {
                End(node, at[node][0]);
            }
            else if (at[node].Count == 2 && !terminal[node])
            {
                Middle(at[node][0], at[node][1], node);
            }
        }
    }

    /// <summary>A node with one edge: a terminal takes it, any other loses it.</summary>
    private void End(int node, int edge)
    {
        if (terminal[node])
        {
            taken.Add(edges[edge].Origin);
            takenWeight += edges[edge].Weight;
            var other = Other(edge, node);
            terminals -= terminal[other] ? 1 : 0;
            (terminal[node], terminal[other]) = (false, true);
        }

        Remove(edge);
    }

    /// <summary>A node with two edges that need not be joined: one edge stands for both.</summary>
    private void Middle(int first, int second, int node)
    {
        var (a, b) = (Other(first, node), Other(second, node));
        var (x, y) = (edges[first], edges[second]);
        Remove(first);
        Remove(second);
        if (a != b)
        {
            Add(a, b, x.Weight + y.Weight, origins.Join(x.Origin, y.Origin));
        }
    }

    private bool CutDetours()
    {
        var before = changed.Count;
        for (var edge = 0; edge < edges.Count; edge++)
        {
            if (alive[edge] && HasWayRound(edge))
            {
                Remove(edge);
            }
        }

        return changed.Count > before;
    }

    /// <summary>Whether another way joins the ends of an edge whose longest stretch between terminals is no longer than the edge: a tree with the
    /// edge is then no lighter with it than with one of those stretches.</summary>
    private bool HasWayRound(int barred)
    {
        var (from, to, limit, _) = edges[barred];
        var queue = new PriorityQueue<int, double>();
        var touched = new List<int> { from };
        distance[from] = 0;
        queue.Enqueue(from, 0);
        var found = false;
        for (var looked = 0; !found && looked < Reach && queue.TryDequeue(out var node, out var reached); looked++)
        {
            found = node == to;
            if (reached > distance[node])
            {
                continue;
            }

            foreach (var edge in at[node].Where(edge => edge != barred))
            {
                var next = Other(edge, node);
                var length = distance[node] + edges[edge].Weight;
                if (length > limit || length >= distance[next])
                {
                    continue;
                }

                touched.Add(next);
                distance[next] = terminal[next] ? 0 : length;
                queue.Enqueue(next, distance[next]);
            }
        }

        touched.ForEach(node => distance[node] = double.PositiveInfinity);
        return found;
    }

    private SteinerPart Build(double bound)
    {
        var number = new int[at.Length];
        var nodes = Enumerable.Range(0, at.Length).Where(node => terminals > 1 && (terminal[node] || at[node].Count > 0)).ToList();
        for (var place = 0; place < nodes.Count; place++)
        {
            number[nodes[place]] = place;
        }

        var left = terminals > 1 ? Enumerable.Range(0, edges.Count).Where(edge => alive[edge]).Select(edge => edges[edge]).ToList() : [];
        var graph = new Graph(nodes.Count, [.. left.Select(edge => new GraphEdge(number[edge.A], number[edge.B], edge.Weight))]);
        return new SteinerPart(graph, [.. nodes.Select(node => terminal[node])], [.. left.Select(edge => edge.Origin)], taken, takenWeight, bound);
    }
}
