using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>Which circuits make one net, by their place in the change. Rebuilt in one pass over the circuits.</summary>
internal sealed class Netlist
{
    private readonly int[] parent;
    private readonly Dictionary<Endpoint, int> first;

    public Netlist(IReadOnlyList<CircuitResult> circuits, Terminals terminals)
    {
        parent = new int[circuits.Count];
        first = new Dictionary<Endpoint, int>(2 * circuits.Count);
        for (var i = 0; i < parent.Length; i++)
        {
            parent[i] = i;
            Join(circuits[i].Circuit.From, i, terminals);
            Join(circuits[i].Circuit.To, i, terminals);
        }

        Groups = Grouped();
    }

    /// <summary>The circuits of each net, nets in the order of their first circuits.</summary>
    public int[][] Groups { get; }

    /// <summary>A circuit that ends on a contact; -1 when none does.</summary>
    public int CircuitAt(Endpoint end) => first.GetValueOrDefault(end, -1);

    /// <summary>The least circuit of a circuit's net, which names the net.</summary>
    public int Root(int circuit)
    {
        while (parent[circuit] != circuit)
        {
            circuit = parent[circuit] = parent[parent[circuit]];
        }

        return circuit;
    }

    private void Join(Endpoint end, int circuit, Terminals terminals)
    {
        if (terminals.IsGround(end) || terminals.IsBreaker(end) || first.TryAdd(end, circuit))
        {
            return;
        }

        var (a, b) = (Root(first[end]), Root(circuit));
        parent[Math.Max(a, b)] = Math.Min(a, b);
    }

    private int[][] Grouped()
    {
        var size = new int[parent.Length];
        for (var i = 0; i < parent.Length; i++)
        {
            size[Root(i)]++;
        }

        var groups = new int[parent.Length][];
        for (var i = 0; i < parent.Length; i++)
        {
            var root = Root(i);
            groups[root] ??= new int[size[root]];
            groups[root][^size[root]--] = i;
        }

        return [.. groups.Where(g => g is not null)];
    }
}
