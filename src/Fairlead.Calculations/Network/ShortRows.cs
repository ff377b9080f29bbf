using System.Collections.Immutable;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Network;

/// <summary>A short, or a wire that carries it.</summary>
/// <param name="Node">The point shorted.</param>
/// <param name="Open">The wire in parallel that is broken meanwhile; null when none is.</param>
/// <param name="Current">Current of the short.</param>
/// <param name="Bands">The breakers on the way, nearest first, with the time each trips in.</param>
/// <param name="Wire">The wire; null for the short itself.</param>
/// <param name="InWire">What the wire carries.</param>
/// <param name="Limit">What the wire stands; null where it is not known.</param>
internal sealed record ShortRow(
    string Node, string? Open, Current Current, ImmutableArray<(NetworkBreaker Breaker, bool Nearest, Current Current, TripBand? Band)> Bands, ShortWire? Wire = null, Current InWire = default, SquareCurrentTime? Limit = null)
{
    public ImmutableArray<(NetworkBreaker Breaker, bool Nearest, Current Current, TripBand? Band)> Nearest { get; } = [.. Bands.Where(b => b.Nearest)];

    /// <summary>Where it is, and what is broken besides.</summary>
    public string Where => Open is null ? Node : $"{Node} with {Open} broken";

    /// <summary>When the last of the nearest breakers has opened; null where one may not.</summary>
    public Duration? Time => Nearest.Any(n => n.Band is null) ? null : Nearest.Select(n => n.Band!.Value.Longest).DefaultIfEmpty().Max();

    public SquareCurrentTime? Passed => Wire is not null && Time is { } t ? new SquareCurrentTime(InWire.Si * InWire.Si * t.Si) : null;
}

/// <summary>Works every short of a survey.</summary>
internal sealed class ShortRows
{
    private readonly ShortSurveyInput input;
    private readonly FaultStudy study;
    private readonly BreakersOnTheWay way;
    private readonly Dictionary<string, NetworkBranch> branches;
    private readonly Dictionary<string, ShortWire> wires;
    private readonly HashSet<string> breakers;
    private readonly HashSet<string> looped;
    private readonly Dictionary<string, FaultStudy?> broken = new(StringComparer.Ordinal);

    private ShortRows(ShortSurveyInput input, FaultStudy study)
    {
        (this.input, this.study) = (input, study);
        way = new BreakersOnTheWay(input.Branches, input.Breakers);
        branches = input.Branches.DistinctBy(b => b.Name, StringComparer.Ordinal).ToDictionary(b => b.Name, StringComparer.Ordinal);
        wires = input.Wires.DistinctBy(w => w.Branch, StringComparer.Ordinal).ToDictionary(w => w.Branch, StringComparer.Ordinal);
        breakers = input.Breakers.Select(b => b.Branch).ToHashSet(StringComparer.Ordinal);
        looped = Looped(input.Branches);
    }

    /// <summary>Every short at an end of a wire; where wires lie in parallel, also with each of those that carry it broken.</summary>
    public static ImmutableArray<ShortRow> Of(ShortSurveyInput input, FaultStudy study)
    {
        var rows = new ShortRows(input, study);
        return [.. input.Wires.Select(w => (w.Ends, Branch: rows.branches[w.Branch])).SelectMany(x => x.Ends == ShortedEnds.Both ? new[] { x.Branch.From, x.Branch.To } : [x.Branch.To])
            .Where(n => n != NetworkNodes.Reference).Distinct(StringComparer.Ordinal).SelectMany(rows.At)];
    }

    private IEnumerable<ShortRow> At(string node)
    {
        if (study.Short(node, default) is not { Current.Si: > 0 } state)
        {
            return [];
        }

        var feed = way.To(state);
        var partners = feed.Branches.Where(b => looped.Contains(b.Name) && wires.ContainsKey(b.Name) && state.Carries(b)).OrderBy(b => b.Name, StringComparer.Ordinal);
        return Rows(state, feed, null).Concat(partners.SelectMany(b => Without(b, node)));
    }

    private IEnumerable<ShortRow> Without(NetworkBranch branch, string node)
    {
        if (!broken.TryGetValue(branch.Name, out var rest))
        {
            broken.Add(branch.Name, rest = FaultStudy.Of(DcNetwork.Of(input.Sources, input.Branches.Where(b => b.Name != branch.Name).ToSequence(), default)));
        }

        return rest?.Short(node, default) is { Current.Si: > 0 } state ? Rows(state, way.To(state), branch.Name) : [];
    }

    // One row for the short itself, and one for each wire that carries it. One fed past all wires and breakers is no matter of theirs.
    private IEnumerable<ShortRow> Rows(ShortState state, ShortFeed feed, string? open)
    {
        var bands = feed.Breakers.Select(m => (m.Breaker, m.Nearest, m.Current, Band: NetworkTrip.Band(input.Curves, m.Breaker, m.Current))).ToImmutableArray();
        var carrying = feed.Branches.Where(b => b.Name != open && wires.ContainsKey(b.Name)).OrderBy(b => b.Name, StringComparer.Ordinal)
            .Select(b => (Wire: wires[b.Name], Current: InWire(b, state))).Where(w => w.Current > state.Current * 1e-6).ToArray();
        if (carrying.Length == 0 && bands.IsEmpty)
        {
            return [];
        }

        return carrying.Select(c => new ShortRow(state.Node, open, state.Current, bands, c.Wire, c.Current, WireTable.Area(c.Wire.Gauge, c.Wire.Conductor) is { IsKnown: true } area && c.Wire.Final > c.Wire.Initial
            ? AdiabaticLimit.LetThrough(area.Value, c.Wire.Conductor, c.Wire.Initial, c.Wire.Final) : null)).Prepend(new ShortRow(state.Node, open, state.Current, bands));
    }

    // A short at an end of a wire may lie just inside it: a hand's breadth of wire then carries what comes in by that end, the rest what comes from
    // the other. Where the branch has a breaker of its own, which end that stands at is not known, and only what flows along it counts.
    private Current InWire(NetworkBranch wire, ShortState state)
    {
        var along = new Current(Math.Abs(state.Through(wire).Si));
        var inside = state.Current - along;
        return inside > along && (wire.From == state.Node || wire.To == state.Node) && !breakers.Contains(wire.Name) ? inside : along;
    }

    // What is left when dead ends are taken off again and again: the branches with another way beside them, and those between two such.
    private static HashSet<string> Looped(Sequence<NetworkBranch> all)
    {
        var left = all.Where(b => b.From != b.To).SelectMany(b => new[] { (Node: b.From, Branch: b), (Node: b.To, Branch: b) })
            .GroupBy(x => x.Node, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Select(x => x.Branch).ToHashSet<NetworkBranch>(ReferenceEqualityComparer.Instance), StringComparer.Ordinal);
        var ends = new Stack<string>(left.Where(x => x.Value.Count == 1).Select(x => x.Key));
        while (ends.TryPop(out var node))
        {
            if (left[node].FirstOrDefault() is { } last)
            {
                var other = last.From == node ? last.To : last.From;
                left[node].Clear();
                left[other].Remove(last);
                if (left[other].Count == 1)
                {
                    ends.Push(other);
                }
            }
        }

        return left.Values.SelectMany(b => b).Select(b => b.Name).ToHashSet(StringComparer.Ordinal);
    }
}
