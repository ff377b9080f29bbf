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

        while (queue.TryDequeue(out var terminal, out var promised))
        {
            if (!ascent.Collect(terminal, root, active))
            {
                active[terminal] = false;
                continue;
            }

            if (ascent.cut.Count <= promised || queue.Count == 0)
            {
                ascent.Raise();
                if (double.IsInfinity(ascent.Bound))
                {
                    break;
                }
            }

            queue.Enqueue(terminal, ascent.cut.Count);
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
        for (var place = 0; place < component.Count; place++)
        {
            var head = component[place];
            foreach (var edge in graph.At(head))
            {
                var tail = graph.Other(edge, head);
                if (mark[tail] == round || Reduced[Arc(graph, edge, tail)] > 0)
                {
                    continue;
                }

                if (tail == root || active[tail])
                {
                    return false;
                }

                mark[tail] = round;
                component.Add(tail);
            }
        }

        foreach (var head in component)
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
