using System.Collections.Immutable;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>A routing problem made ready for search: who uses which segment on the shortest ways, and what is a conflict.</summary>
internal sealed class RoutingField
{
    /// <summary>Stands for every segment where a conflict is put up with.</summary>
    public const int Everywhere = -1;

    private static readonly List<int> Nobody = [];
    private readonly Route[] free;
    private readonly Dictionary<int, List<int>> users = [];
    private readonly Dictionary<Side, List<int>> bySide = [];

    public RoutingField(RoutingProblem problem)
    {
        Problem = problem;
        free = [.. problem.Units.Select(u => Route.Of(u.Free, problem.Raceways))];
        for (var unit = 0; unit < free.Length; unit++)
        {
            FreeMass += problem.Units[unit].Density * free[unit].Way.Length.Si;
            foreach (var edge in free[unit].Edges)
            {
                if (!users.TryGetValue(edge, out var list))
                {
                    users.Add(edge, list = []);
                }

                list.Add(unit);
            }

            foreach (var side in problem.Units[unit].Sides)
            {
                if (!bySide.TryGetValue(side, out var list))
                {
                    bySide.Add(side, list = []);
                }

                list.Add(unit);
            }
        }
    }

    public RoutingProblem Problem { get; }

    /// <summary>Mass along the shortest ways.</summary>
    public double FreeMass { get; }

    /// <summary>The segments used on the shortest ways.</summary>
    public IEnumerable<int> Used => users.Keys;

    public Route Free(int unit) => free[unit];

    /// <summary>The units whose shortest way uses a segment.</summary>
    public IReadOnlyList<int> UsersAt(int edge) => users.GetValueOrDefault(edge, Nobody);

    /// <summary>Whether some units fit into a segment beside what is there.</summary>
    public bool Fits(int edge, IEnumerable<int> units)
    {
        var (capacity, there) = Problem.Room[edge];
        return double.IsPositiveInfinity(capacity)
            || PackedDiameter.Of(units.SelectMany(u => Problem.Units[u].Diameters).Concat(there > 0 ? [there] : [])) <= capacity * (1 + 1e-12);
    }

    /// <summary>What is wrong in a segment with some units in it, if anything.</summary>
    public Conflict? ConflictAt(int edge, int[] units, ImmutableHashSet<string> open, HashSet<(int Edge, ClashKind Kind, string Name)> tolerated)
    {
        if (units.Length == 0)
        {
            return null;
        }

        return Classes(edge, units, tolerated) ?? Sides(edge, units, tolerated) ?? Panel(edge, open)
            ?? (tolerated.Contains((edge, ClashKind.Full, "")) || Fits(edge, units) ? null : Full(edge, units));
    }

    /// <summary>The sets of units that a rule makes depend on each other where some units are in one segment; what would open a panel is not among
    /// them. Two sides of a redundant set depend on each other with all their units.</summary>
    public IEnumerable<IEnumerable<int>> Ties(int edge, int[] units)
    {
        foreach (var (one, other) in ClassesMeeting(units))
        {
            yield return units.Where(u => Problem.Units[u].Separation == one || Problem.Units[u].Separation == other);
        }

        foreach (var (one, other) in SidesMeeting(units))
        {
            yield return bySide[one].Concat(bySide[other]);
        }

        if (!Fits(edge, units))
        {
            yield return units;
        }
    }

    private Conflict? Classes(int edge, int[] units, HashSet<(int Edge, ClashKind Kind, string Name)> tolerated)
    {
        foreach (var (one, other) in ClassesMeeting(units))
        {
            if (!tolerated.Contains((edge, ClashKind.Classes, $"{one}/{other}")))
            {
                return new(ClashKind.Classes, edge, [new([$"class/{one}"], [edge]), new([$"class/{other}"], [edge])], [one, other]);
            }
        }

        return null;
    }

    private Conflict? Sides(int edge, int[] units, HashSet<(int Edge, ClashKind Kind, string Name)> tolerated)
    {
        foreach (var (one, other) in SidesMeeting(units))
        {
            var pair = $"{one.Name}/{other.Name}";
            if (!tolerated.Contains((edge, ClashKind.Redundant, pair)) && !tolerated.Contains((Everywhere, ClashKind.Redundant, pair)))
            {
                return new(ClashKind.Redundant, edge, [new([one.Group], [edge]), new([other.Group], [edge])], [one.Name, other.Name]);
            }
        }

        return null;
    }

    // In the order of their names, so that nothing depends on who comes first.
    private IEnumerable<(string One, string Other)> ClassesMeeting(int[] units)
    {
        if (Problem.Apart.Count == 0)
        {
            return [];
        }

        var present = units.Select(u => Problem.Units[u].Separation).Where(c => c.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        return present.SelectMany((a, i) => present.Skip(i + 1).Select(b => (a, b))).Where(Problem.Apart.Contains);
    }

    private IEnumerable<(Side One, Side Other)> SidesMeeting(int[] units) => bySide.Count == 0 ? [] : units.SelectMany(u => Problem.Units[u].Sides).Distinct()
        .GroupBy(s => s.Set, StringComparer.Ordinal).Select(g => g.OrderBy(s => s.Name, StringComparer.Ordinal).ToArray())
        .SelectMany(s => s.SelectMany((a, i) => s.Skip(i + 1).Select(b => (a, b))));

    private Conflict? Panel(int edge, ImmutableHashSet<string> open)
    {
        var shut = Problem.Panels.IsEmpty ? null : Problem.Panels[edge].FirstOrDefault(p => !open.Contains(p));
        return shut is null ? null : new(
            ClashKind.Panel, edge, [new(["all"], [.. Enumerable.Range(0, Problem.Panels.Length).Where(e => Problem.Panels[e].Contains(shut))], shut), new([], [], shut)], [shut]);
    }

    // Of a set that does not fit, at least one must go elsewhere: the fewest thickest that do not fit give the fewest alternatives.
    private Conflict Full(int edge, int[] units)
    {
        double Square(int unit) => Problem.Units[unit].Diameters.Sum(d => d * d);
        Remedy Leaves(int unit) => new([Problem.Units[unit].Groups[0]], [edge]);
        var cover = new List<int>();
        foreach (var unit in units.OrderByDescending(Square).ThenBy(u => u))
        {
            cover.Add(unit);
            if (!Fits(edge, cover))
            {
                break;
            }
        }

        return new(ClashKind.Full, edge, [.. cover.Select(Leaves)], [.. units.SelectMany(u => Problem.Units[u].Circuits)])
        {
            Leavers = [.. units.Select(u => (Leaves(u), Square(u)))],
        };
    }
}
