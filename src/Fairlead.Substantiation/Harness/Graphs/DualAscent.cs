namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>A lower bound on the weight of a Steiner tree and the reduced weights that go with it, by dual ascent on the directed cut
/// formulation (Wong, Mathematical Programming 28, 1984; order of cuts after Pajor, Uchoa and Werneck, 2014).</summary>
/// <remarks>Arc 2e goes along edge e from its From to its To, arc 2e + 1 back.</remarks>
internal sealed class DualAscent
{
    private readonly Graph graph;
    private readonly int[] mark;
    private readonly List<int> component = [];
    private readonly List<int> cut = [];
    private int round;

    private DualAscent(Graph graph)
    {
        this.graph = graph;
        mark = new int[graph.NodeCount];
        Reduced = new double[2 * graph.EdgeCount];
        for (var edge = 0; edge < graph.EdgeCount; edge++)
        {
            Reduced[2 * edge] = Reduced[(2 * edge) + 1] = graph[edge].Weight;
        }
    }

    /// <summary>What is left of the weight of each arc.</summary>
    public double[] Reduced { get; }

    /// <summary>No tree is lighter; infinite where the terminals are not joined.</summary>
    public double Bound { get; private set; }

    /// <summary>Raises the bound from the cuts between one terminal and the others.</summary>
    /// <param name="graph">The graph.</param>
    /// <param name="isTerminal">Whether each node is a terminal.</param>
    /// <param name="root">The terminal the cuts leave.</param>
    public static DualAscent From(Graph graph, bool[] isTerminal, int root)
    {
        var ascent = new DualAscent(graph);
        var active = isTerminal.ToArray();
        active[root] = false;
        var queue = new PriorityQueue<int, int>();
        for (var node = 0; node < active.Length; node++)
        {
            if (active[node])
            {
                queue.Enqueue(node, graph.At(node).Length);
            }
        }

        while (queue.TryDequeue(out var terminal, out var promised) && double.IsFinite(ascent.Bound))
        {
            if (ascent.Collect(terminal, root, active) && ascent.RaiseWhileSmall(queue, promised, root, active))
            {
                queue.Enqueue(terminal, ascent.cut.Count);
            }
            else
            {
                active[terminal] = false;
            }
        }

        return ascent;
    }

    /// <summary>The number of the arc along an edge away from a node.</summary>
    public static int Arc(Graph graph, int edge, int tail) => (2 * edge) + (graph[edge].From == tail ? 0 : 1);

    /// <summary>Finds the nodes that reach a terminal over spent arcs and the arcs into them; false where the root or another active terminal is
    /// among them.</summary>
    private bool Collect(int terminal, int root, bool[] active)
    {
        round++;
        component.Clear();
        cut.Clear();
        component.Add(terminal);
        mark[terminal] = round;
        return Extend(0, root, active);
    }

    /// <summary>Raises the bound by one cut after another around a terminal while no other terminal promises a smaller cut; false once the root or
    /// another active terminal is met.</summary>
    private bool RaiseWhileSmall(PriorityQueue<int, int> queue, int promised, int root, bool[] active)
    {
        var most = queue.TryPeek(out _, out var next) ? Math.Max(promised, next) : int.MaxValue;
        while (cut.Count <= most)
        {
            var met = component.Count;
            Raise();
            if (double.IsInfinity(Bound))
            {
                return false;
            }

            foreach (var arc in cut)
            {
                if (Reduced[arc] <= 0 && !Take(Tail(arc), root, active))
                {
                    return false;
                }
            }

            if (!Extend(met, root, active))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Follows spent arcs back from the nodes of the component from a place on, and brings the cut up to date.</summary>
    private bool Extend(int place, int root, bool[] active)
    {
        var first = place;
        for (; place < component.Count; place++)
        {
            foreach (var edge in graph.At(component[place]))
            {
                var tail = graph.Other(edge, component[place]);
                if (mark[tail] != round && Reduced[Arc(graph, edge, tail)] <= 0 && !Take(tail, root, active))
                {
                    return false;
                }
            }
        }

        cut.RemoveAll(arc => mark[Tail(arc)] == round);
        foreach (var head in component.Skip(first))
        {
            foreach (var edge in graph.At(head))
            {
                var tail = graph.Other(edge, head);
                if (mark[tail] != round)
                {
                    cut.Add(Arc(graph, edge, tail));
                }
            }
        }

        return true;
    }

    private bool Take(int node, int root, bool[] active)
    {
        if (mark[node] == round)
        {
            return true;
        }

        mark[node] = round;
        component.Add(node);
        return node != root && !active[node];
    }

    private int Tail(int arc) => (arc & 1) == 0 ? graph[arc / 2].From : graph[arc / 2].To;

    private void Raise()
    {
        var rise = double.PositiveInfinity;
        foreach (var arc in cut)
        {
            rise = Math.Min(rise, Reduced[arc]);
        }

        Bound += rise;
        foreach (var arc in cut)
        {
            Reduced[arc] -= rise;
        }
    }
}
