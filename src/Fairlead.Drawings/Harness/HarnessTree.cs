using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Harness;

/// <summary>What a branch of a harness is.</summary>
public enum BranchKind
{
    /// <summary>It runs along a raceway segment.</summary>
    Segment,

    /// <summary>It runs along a raceway segment whose far end lies elsewhere on the board, because a ring cannot be laid flat: the ends meet in the aircraft.</summary>
    Opened,

    /// <summary>It leads from the way to an item or point: termination, drip loop, service loop and withdrawal.</summary>
    Lead,
}

/// <summary>A branch before it is laid out.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">The raceway segment, or what a lead goes to.</param>
/// <param name="Length">Its length, mm.</param>
/// <param name="Wires">Circuits in it.</param>
/// <param name="Clamps">Clamps along it.</param>
/// <param name="End">What follows at its far end.</param>
internal sealed record Limb(BranchKind Kind, string Name, double Length, int Wires, int Clamps, Knot End)
{
    /// <summary>The longest way from its beginning to an end, mm.</summary>
    public double Reach { get; } = Length + (End.Limbs.Count == 0 ? 0 : End.Limbs.Max(l => l.Reach));
}

/// <summary>A point where branches part; without branches, an end.</summary>
internal sealed record Knot(string Name, IReadOnlyList<Limb> Limbs);

/// <summary>Makes trees of the ways that the circuits of one bundle use. Where the ways form a ring, the segment with the fewest wires is opened.</summary>
internal sealed class HarnessTree
{
    private readonly Dictionary<string, List<(string Segment, string To)>> joined = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> wires = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, SortedDictionary<string, (double Length, int Wires)>> leads = new(StringComparer.Ordinal);
    private readonly List<(string Segment, string At, string To)> opened = [];
    private readonly Assessment assessment;

    private HarnessTree(Assessment assessment, IEnumerable<CircuitResult> circuits)
    {
        this.assessment = assessment;
        foreach (var circuit in circuits)
        {
            Take(circuit);
        }

        Span();
    }

    /// <summary>The trees of a bundle, each from the middle of its longest way.</summary>
    public static IEnumerable<Knot> Of(Assessment assessment, IEnumerable<CircuitResult> circuits)
    {
        var tree = new HarnessTree(assessment, circuits);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var node in tree.leads.Keys)
        {
            if (seen.Contains(node))
            {
                continue;
            }

            var root = tree.Centre(node);
            tree.Visit(root, seen);
            yield return tree.Knot(root, from: null);
        }
    }

    private void Take(CircuitResult circuit)
    {
        if (circuit.Way is not { } way)
        {
            return;
        }

        foreach (var segment in way.Segments)
        {
            wires[segment] = wires.GetValueOrDefault(segment) + 1;
        }

        foreach (var (end, node) in new[] { (circuit.Circuit.From, way.Nodes[0]), (circuit.Circuit.To, way.Nodes[^1]) })
        {
            if (!leads.TryGetValue(node, out var here))
            {
                leads.Add(node, here = new(StringComparer.Ordinal));
            }

            var name = end.IsPoint ? end.Item : $"{end.Item} {end.Connector}";
            var before = here.GetValueOrDefault(name);
            here[name] = (Math.Max(before.Length, Lead(circuit, way, end)), before.Wires + 1);
        }
    }

    // As wires are cut: termination and drip loop, and at a box service loop and withdrawal. Of a stated length, what is beyond the way lies in halves at the ends.
    private double Lead(CircuitResult circuit, Way way, Endpoint end)
    {
        var wiring = assessment.Job.Change.Wiring;
        var length = circuit.Circuit.Length is { } stated ? (stated - way.Length) / 2 : wiring.Termination + wiring.DripLoop + (end.IsPoint ? Length.Zero : wiring.ServiceLoop + wiring.Withdrawal);
        return Math.Max(0, length.In("mm"));
    }

    // The segments with most wires first: each joins two pieces of the tree, or would close a ring and is opened.
    private void Span()
    {
        var piece = new Dictionary<string, string>(StringComparer.Ordinal);
        string Root(string node)
        {
            while (piece.TryGetValue(node, out var up) && up != node)
            {
                node = up;
            }

            return node;
        }

        foreach (var id in wires.Keys.OrderByDescending(s => wires[s]).ThenBy(s => s, StringComparer.Ordinal))
        {
            var segment = assessment.Job.Aircraft.Segments![id];
            if (Root(segment.From) == Root(segment.To))
            {
                opened.Add((id, segment.From, segment.To));
                continue;
            }

            piece[Root(segment.From)] = Root(segment.To);
            Join(segment.From, id, segment.To);
            Join(segment.To, id, segment.From);
        }
    }

    private void Join(string node, string segment, string to)
    {
        if (!joined.TryGetValue(node, out var here))
        {
            joined.Add(node, here = []);
        }

        here.Add((segment, to));
    }

    private Knot Knot(string node, string? from)
    {
        List<Limb> limbs =
        [
            .. joined.GetValueOrDefault(node, []).Where(j => j.Segment != from).Select(j => Limb(BranchKind.Segment, j.Segment, Knot(j.To, j.Segment))),
            .. opened.Where(o => o.At == node).Select(o => Limb(BranchKind.Opened, o.Segment, new Knot(o.To, []))),
            .. (leads.GetValueOrDefault(node) ?? []).Select(l => new Limb(BranchKind.Lead, l.Key, l.Value.Length, l.Value.Wires, 0, new Knot(l.Key, []))),
        ];
        return new Knot(node, limbs);
    }

    private Limb Limb(BranchKind kind, string segment, Knot end) => new(kind, segment, LengthOf(segment), wires[segment], assessment.Job.Aircraft.Segments![segment].Clamps, end);

    private double LengthOf(string id)
    {
        var (segment, nodes) = (assessment.Job.Aircraft.Segments![id], assessment.Job.Aircraft.Nodes!);
        return (segment.Length ?? nodes[segment.From].Place.To(nodes[segment.To].Place)).In("mm");
    }

    private void Visit(string node, HashSet<string> seen)
    {
        if (seen.Add(node))
        {
            joined.GetValueOrDefault(node, []).ForEach(j => Visit(j.To, seen));
        }
    }

    // The knot in the middle of the longest way: from there the board is only half as long.
    private string Centre(string start)
    {
        var from = Distances(Distances(start).MaxBy(d => d.Value).Key);
        var to = Distances(from.MaxBy(d => d.Value).Key);
        return from.Keys.MinBy(n => Math.Max(from[n], to[n]))!;
    }

    private Dictionary<string, double> Distances(string start)
    {
        var distances = new Dictionary<string, double>(StringComparer.Ordinal);
        void Go(string node, double distance)
        {
            if (!distances.TryAdd(node, distance))
            {
                return;
            }

            foreach (var (segment, to) in joined.GetValueOrDefault(node, []))
            {
                Go(to, distance + LengthOf(segment));
            }
        }

        Go(start, 0);
        return distances;
    }
}
