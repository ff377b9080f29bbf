using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>A straight limit: fuselage station against mass (SI units).</summary>
internal readonly record struct LimitLine(double Mass, double Fs, double Slope)
{
    public double At(double mass) => Fs + (Slope * (mass - Mass));
}

/// <summary>The limits between two neighbouring corner masses.</summary>
internal readonly record struct LimitSlab(double From, double To, LimitLine Forward, LimitLine Aft);

/// <summary>The envelope cut at the masses of its corners. The polygon may be non-convex as long as one interval of centre of gravity is permitted at each mass.
/// Below the lowest and above the highest corner the nearest limits are held. At a step each side is judged by the limits of its own side.</summary>
internal sealed class EnvelopeLimits
{
    private EnvelopeLimits(double lowest, double highest, ImmutableArray<LimitSlab> slabs)
    {
        Lowest = lowest;
        Highest = highest;
        Slabs = slabs;
    }

    public double Lowest { get; }

    public double Highest { get; }

    /// <summary>From mass zero to infinity, without gap.</summary>
    public ImmutableArray<LimitSlab> Slabs { get; }

    /// <summary>The limits of a polygon, or null with the reason.</summary>
    public static EnvelopeLimits? Of(Sequence<EnvelopeRow> corners, out string? whyNot)
    {
        var masses = corners.Select(c => c.Mass.Si).Distinct().Order().ToArray();
        whyNot = masses.Length < 2 || corners.Count < 3 ? "The envelope needs at least three corners, and two different masses among them." : null;
        if (whyNot is not null)
        {
            return null;
        }

        var slabs = ImmutableArray.CreateBuilder<LimitSlab>();
        foreach (var (from, to) in masses.Zip(masses.Skip(1)))
        {
            if (Slab(corners, from, to) is not { } slab)
            {
                whyNot = $"Between {new Mass(from).As("lb")} and {new Mass(to).As("lb")} the envelope permits more than one interval of centre of gravity, "
                    + "or its edges cross: give the corners in order around it, or judge each interval on its own.";
                return null;
            }

            slabs.Add(slab);
        }

        slabs.Insert(0, Held(0, masses[0], masses[0], slabs[0]));
        slabs.Add(Held(masses[^1], double.PositiveInfinity, masses[^1], slabs[^1]));
        return new(masses[0], masses[^1], slabs.ToImmutable());
    }

    private static LimitSlab? Slab(Sequence<EnvelopeRow> corners, double from, double to)
    {
        var middle = from + ((to - from) / 2);
        var edges = corners.Select((c, i) => (A: c, B: corners[(i + 1) % corners.Count]))
            .Where(e => Math.Min(e.A.Mass.Si, e.B.Mass.Si) <= from && Math.Max(e.A.Mass.Si, e.B.Mass.Si) >= to)
            .Select(e => new LimitLine(e.A.Mass.Si, e.A.Fs.Si, (e.B.Fs.Si - e.A.Fs.Si) / (e.B.Mass.Si - e.A.Mass.Si)))
            .OrderBy(line => line.At(middle)).ToArray();
        return edges is [var forward, var aft] && !Crossed(forward, aft, from) && !Crossed(forward, aft, to) ? new(from, to, forward, aft) : null;
    }

    // Two edges that meet in a corner may seem to cross there by rounding.
    private static bool Crossed(LimitLine forward, LimitLine aft, double mass) => !(forward.At(mass) <= aft.At(mass) + 1e-9);

    private static LimitSlab Held(double from, double to, double at, LimitSlab slab) =>
        new(from, to, new(at, slab.Forward.At(at), 0), new(at, slab.Aft.At(at), 0));
}
