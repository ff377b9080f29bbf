using System.Collections.Immutable;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>A conflict in a segment and what would end it: each alternative bars one group from some segments, or opens a panel.</summary>
internal sealed record Conflict(ClashKind Kind, int Edge, ImmutableArray<Remedy> Remedies, ImmutableArray<string> Names)
{
    /// <summary>In a full segment: everything that may leave it, with the room each takes.</summary>
    public ImmutableArray<(Remedy Remedy, double Room)> Leavers { get; init; } = [];
}

/// <summary>One way out of a conflict.</summary>
/// <param name="Groups">Groups that are barred, usually one.</param>
/// <param name="Edges">The segments they are barred from; none where a panel is opened.</param>
/// <param name="Panel">The panel that is opened or stays shut; empty where there is none in it.</param>
internal sealed record Remedy(ImmutableArray<string> Groups, ImmutableArray<int> Edges, string Panel = "");

/// <summary>What who moves asks of a new way.</summary>
internal enum Room
{
    /// <summary>Nothing.</summary>
    Any,

    /// <summary>Room on all of it, if such a way exists.</summary>
    First,

    /// <summary>Room on all of it.</summary>
    Only,
}

/// <summary>A way for every unit under the bars set so far: each takes its shortest one that no bar forbids. Never changed once made.</summary>
/// <remarks>Since bars only forbid, the mass of an arrangement is a lower bound for every arrangement with the same bars and more.</remarks>
internal sealed class Arrangement
{
    private readonly RoutingField field;
    private readonly ImmutableHashSet<(int Edge, string Group)> bars;
    private readonly ImmutableHashSet<string> open;
    private readonly Moves moves;
    private readonly ImmutableSortedSet<int> suspects;

    private Arrangement(RoutingField field, ImmutableHashSet<(int Edge, string Group)> bars, ImmutableHashSet<string> open, Moves moves, ImmutableSortedSet<int> suspects, double mass) =>
        (this.field, this.bars, this.open, this.moves, this.suspects, Mass) = (field, bars, open, moves, suspects, mass);

    /// <summary>The units that do not take their shortest way.</summary>
    public ImmutableSortedDictionary<int, Route> Moved => moves.Routes;

    /// <summary>Mass along all ways and of the panels opened, in kilogram.</summary>
    public double Mass { get; }

    /// <summary>Every unit on its shortest way.</summary>
    public static Arrangement Start(RoutingField field) => new(field, [], [], Moves.None, [.. field.Used], field.FreeMass);

    /// <summary>The arrangement with one more remedy; null when a unit is left without a way.</summary>
    /// <param name="remedy">What is barred or opened.</param>
    /// <param name="room">What those who move ask of their new ways.</param>
    /// <param name="stop">Stops the work.</param>
    public Arrangement? With(Remedy remedy, Room room, CancellationToken stop = default)
    {
        if (remedy.Edges.IsEmpty)
        {
            return new(field, bars, open.Add(remedy.Panel), moves, suspects, Mass + field.Problem.PanelCost[remedy.Panel]);
        }

        var stricter = bars.Union(remedy.Edges.SelectMany(e => remedy.Groups.Select(g => (e, g))));
        var (next, mass, touched) = (moves, Mass, suspects.ToBuilder());
        var ways = new Arrangement(field, stricter, open, moves, suspects, Mass);
        foreach (var unit in remedy.Edges.SelectMany(UsersOf).Distinct().Order().ToArray())
        {
            stop.ThrowIfCancellationRequested();
            var old = RouteOf(unit);
            if (!remedy.Edges.Any(e => old.Edges.Contains(e) && ways.IsBarred(e, unit)))
            {
                continue;
            }

            var crowd = new Arrangement(field, stricter, open, next, suspects, Mass);
            if (((room != Room.Any ? crowd.Travel(unit, crowd.HasRoom) : null) ?? (room != Room.Only ? crowd.Travel(unit, static (_, _) => true) : null)) is not { } route)
            {
                return null;
            }

            next = next.With(unit, route);
            mass += field.Problem.Units[unit].Density * (route.Way.Length.Si - old.Way.Length.Si);
            touched.UnionWith(route.Edges);
        }

        return new(field, stricter, open, next, touched.ToImmutable(), mass);
    }

    /// <summary>The first conflict in the order of the segments that is not put up with.</summary>
    /// <param name="tolerated">Conflicts that stay.</param>
    /// <param name="settled">The arrangement, with what was looked at and found well forgotten.</param>
    public Conflict? FirstConflict(HashSet<(int Edge, ClashKind Kind, string Name)> tolerated, out Arrangement settled)
    {
        var left = suspects;
        foreach (var edge in suspects)
        {
            if (field.ConflictAt(edge, [.. UsersOf(edge)], open, tolerated) is { } conflict)
            {
                settled = new(field, bars, open, moves, left, Mass);
                return conflict;
            }

            left = left.Remove(edge);
        }

        settled = new(field, bars, open, moves, left, Mass);
        return null;
    }

    /// <summary>The name of a segment.</summary>
    public string SegmentAt(int edge) => field.Problem.Raceways.Segment(edge);

    /// <summary>The way a unit takes.</summary>
    public Route RouteOf(int unit) => Moved.GetValueOrDefault(unit) ?? field.Free(unit);

    /// <summary>The segments in which two sides of a redundant set meet.</summary>
    public IEnumerable<string> Meetings(string one, string other)
    {
        var units = field.Problem.Units;
        HashSet<int> Edges(string side) => [.. Enumerable.Range(0, units.Length).Where(u => units[u].Sides.Any(s => s.Name == side)).SelectMany(u => RouteOf(u).Edges)];
        return Edges(one).Intersect(Edges(other)).Order().Select(SegmentAt);
    }

    /// <summary>Whether what runs in a segment fits.</summary>
    public bool Fits(int edge) => field.Fits(edge, UsersOf(edge));

    private IEnumerable<int> UsersOf(int edge) => field.UsersAt(edge).Where(u => !Moved.TryGetValue(u, out var r) || r.Edges.Contains(edge))
        .Concat(moves.Along(edge).Where(u => !field.Free(u).Edges.Contains(edge))).Order();

    private bool HasRoom(int edge, int unit) => field.Fits(edge, UsersOf(edge).Where(u => u != unit).Append(unit));

    private bool IsBarred(int edge, int unit)
    {
        foreach (var group in field.Problem.Units[unit].Groups)
        {
            if (bars.Contains((edge, group)))
            {
                return true;
            }
        }

        return false;
    }

    private Route? Travel(int unit, Func<int, int, bool> may)
    {
        if (field.Problem.Units[unit].Stays)
        {
            return null;
        }

        var way = field.Problem.Raceways.Cheapest(
            field.Problem.Units[unit].Journey,
            e => field.Problem.Units[unit].Journey.Avoid.Contains(field.Problem.Raceways.Segment(e)) || IsBarred(e, unit) || !may(e, unit) ? double.PositiveInfinity : field.Problem.Raceways.Metres(e));
        return way is null ? null : Route.Of(way, field.Problem.Raceways);
    }
}

/// <summary>A way with the segments it uses by number, each once.</summary>
internal sealed record Route(Way Way, ImmutableArray<int> Edges)
{
    public static Route Of(Way way, Raceways raceways) => new(way, raceways.Numbers(way));
}

/// <summary>The units off their shortest ways, by unit and by segment. Never changed once made.</summary>
internal sealed record Moves(ImmutableSortedDictionary<int, Route> Routes, ImmutableDictionary<int, ImmutableSortedSet<int>> ByEdge)
{
    public static Moves None { get; } = new(ImmutableSortedDictionary<int, Route>.Empty, ImmutableDictionary<int, ImmutableSortedSet<int>>.Empty);

    /// <summary>The units that came to use a segment.</summary>
    public ImmutableSortedSet<int> Along(int edge) => ByEdge.GetValueOrDefault(edge, []);

    /// <summary>With one unit on another way.</summary>
    public Moves With(int unit, Route route)
    {
        var byEdge = ByEdge.ToBuilder();
        foreach (var edge in Routes.GetValueOrDefault(unit)?.Edges ?? [])
        {
            byEdge[edge] = byEdge[edge].Remove(unit);
        }

        foreach (var edge in route.Edges)
        {
            byEdge[edge] = byEdge.GetValueOrDefault(edge, []).Add(unit);
        }

        return new(Routes.SetItem(unit, route), byEdge.ToImmutable());
    }
}
