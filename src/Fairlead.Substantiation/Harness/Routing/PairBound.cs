using Fairlead.Substantiation.Harness.Graphs;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>A lower bound of mass where units back each other up: two of different sides between the same points weigh at least what the lightest pair of ways
/// apart does, and every other unit at least what its shortest way does.</summary>
/// <remarks>With densities a ≤ b and ways x and y, a x + b y = a (x + y) + (b − a) y: the first term is least for the lightest pair, the second for the
/// shortest way; so a pair gains the lesser density times what the lightest pair is longer than both shortest ways. Each unit counts in one pair, so the pairs add up. All other rules are left out, which only lowers the bound.
/// Check value: points 0 to 3, segments 0–1 1, 1–2 1, 2–3 1, 0–2 3, 1–3 3 and two equal units from 0 to 3: 8, where the shortest ways give 6 (by hand).</remarks>
internal static class PairBound
{
    /// <summary>The bound in kilogram.</summary>
    /// <param name="field">The problem.</param>
    /// <param name="shared">Segments that two sides must share since neither has another way.</param>
    public static double Of(RoutingField field, HashSet<(int Edge, ClashKind Kind, string Name)> shared)
    {
        var units = field.Problem.Units;
        var taken = new HashSet<int>();
        var bound = field.FreeMass;
        var sets = Enumerable.Range(0, units.Length).SelectMany(u => units[u].Sides.Select(s => (Side: s, Unit: u))).GroupBy(x => x.Side.Set, StringComparer.Ordinal);
        foreach (var set in sets.Select(s => s.ToArray()))
        {
            foreach (var (side, unit) in set)
            {
                var other = set.FirstOrDefault(x => x.Side != side && x.Unit != unit && !taken.Contains(x.Unit) && SameEnds(units[unit], units[x.Unit]), (Side: side, Unit: -1));
                if (other.Unit >= 0 && !taken.Contains(unit) && Gain(field, (side, unit), other, shared) is > 0 and var gain)
                {
                    bound += gain;
                    taken.UnionWith([unit, other.Unit]);
                }
            }
        }

        return bound;
    }

    private static bool SameEnds(RoutedUnit one, RoutedUnit other) => one.Journey.From != one.Journey.To
        && ((one.Journey.From, one.Journey.To) == (other.Journey.From, other.Journey.To) || (one.Journey.From, one.Journey.To) == (other.Journey.To, other.Journey.From));

    // What a pair weighs beyond its shortest ways; nothing where there are no two ways apart.
    private static double Gain(RoutingField field, (Side Side, int Unit) one, (Side Side, int Unit) other, HashSet<(int Edge, ClashKind Kind, string Name)> shared)
    {
        var (raceways, units) = (field.Problem.Raceways, field.Problem.Units);
        var (a, b) = (units[one.Unit], units[other.Unit]);
        var name = string.Join('/', new[] { one.Side.Name, other.Side.Name }.Order(StringComparer.Ordinal));
        var edges = new List<GraphEdge>();
        for (var edge = 0; edge < raceways.Segments; edge++)
        {
            var (from, to) = raceways.Ends(edge);
            if (from != to && !(a.Journey.Avoid.Contains(raceways.Segment(edge)) && b.Journey.Avoid.Contains(raceways.Segment(edge))))
            {
                edges.AddRange(Enumerable.Repeat(new GraphEdge(from, to, raceways.Metres(edge)), shared.Contains((edge, ClashKind.Redundant, name)) ? 2 : 1));
            }
        }

        var pair = DisjointPair.Find(new Graph(raceways.Points, edges), raceways.PointNumber(a.Journey.From), raceways.PointNumber(a.Journey.To), Apart.Edges);
        return pair is null ? 0 : Math.Min(a.Density, b.Density) * (pair.Weight - a.Free.Length.Si - b.Free.Length.Si);
    }
}
