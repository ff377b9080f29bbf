using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Why a circuit has no way, and what would free one.</summary>
internal static class Blocking
{
    /// <summary>The fewest barred segments that stand between the circuit and a way, with what bars each; empty where no segment is barred, or
    /// none of them would help.</summary>
    public static string Text(CircuitState state, WiringContext context)
    {
        var (raceways, circuit) = (context.Raceways, state.Circuit);
        var barred = state.Journey.Avoid.ToHashSet(StringComparer.Ordinal);

        // One barred segment outweighs all that are not, so the cheapest way passes the fewest.
        var heavy = 1 + Enumerable.Range(0, raceways.Segments).Sum(raceways.Metres);
        if (raceways.Cheapest(state.Journey, e => raceways.Metres(e) + (barred.Contains(raceways.Segment(e)) ? heavy : 0)) is not { } way)
        {
            return Cut(state, raceways);
        }

        var why = way.Segments.Where(barred.Contains).Distinct(StringComparer.Ordinal)
            .Select(s => circuit.Avoid.Contains(s) ? $"{s}, which its 'avoid' names" : $"{s}, whose class '{context.Aircraft.Segments?.Find(s)?.Separation}' stays apart from '{circuit.Separation}'");
        return $" Freeing {string.Join(" and ", why)} would give it one of {way.Length.As("in")}.";
    }

    // The raceways fall into parts: between the part reached and the point wanted, a segment must be added.
    private static string Cut(CircuitState state, Raceways raceways)
    {
        var stops = state.Journey.Via.Prepend(state.Journey.From).Append(state.Journey.To).ToArray();
        for (var i = 1; i < stops.Length; i++)
        {
            var (start, end) = (raceways.PointNumber(stops[i - 1]), raceways.PointNumber(stops[i]));
            if (start < 0 || end < 0)
            {
                return "";
            }

            if (double.IsPositiveInfinity(raceways.Tree([(start, 0)], raceways.Metres).Distance[end]))
            {
                return $" No chain of segments joins {stops[i - 1]} and {stops[i]}, whatever is freed.";
            }
        }

        return "";
    }
}
