using System.Collections.Immutable;

namespace Fairlead.Calculations.Wiring;

/// <summary>The time within which a breaker trips, read from its curve log-log between the points.</summary>
/// <param name="Shortest">Shortest time to trip.</param>
/// <param name="Longest">Longest time to trip.</param>
/// <param name="Bounded">Whether the current lies above the last point: the times are then upper bounds.</param>
public readonly record struct TripBand(Duration Shortest, Duration Longest, bool Bounded)
{
    /// <summary>The band at a multiple of the rating; null below the first point of the curve, where nothing is claimed.</summary>
    /// <param name="curve">The curve, by rising multiple.</param>
    /// <param name="multiple">Current over rating.</param>
    public static TripBand? At(ImmutableArray<TripPoint> curve, Fraction multiple)
    {
        if (curve.Length == 0 || multiple < curve[0].Multiple)
        {
            return null;
        }

        var above = 0;
        while (above < curve.Length && curve[above].Multiple < multiple)
        {
            above++;
        }

        if (above == curve.Length)
        {
            return new(curve[^1].Least, curve[^1].Most, multiple > curve[^1].Multiple);
        }

        if (above == 0)
        {
            return new(curve[0].Least, curve[0].Most, false);
        }

        var (low, high) = (curve[above - 1], curve[above]);
        var share = Math.Log(multiple / low.Multiple) / Math.Log(high.Multiple / low.Multiple);
        return new(low.Least * Math.Pow(high.Least / low.Least, share), low.Most * Math.Pow(high.Most / low.Most, share), false);
    }

    /// <summary>Whether a curve makes sense: no point's shortest time above its longest, no current twice, a greater current no later.</summary>
    public static bool InOrder(ImmutableArray<TripPoint> curve) =>
        !curve.Any(p => p.Least > p.Most) && !curve.Zip(curve.Skip(1)).Any(p => p.First.Multiple == p.Second.Multiple || p.First.Most < p.Second.Most);
}
