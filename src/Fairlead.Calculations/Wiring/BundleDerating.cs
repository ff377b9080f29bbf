using System.Collections.Immutable;

namespace Fairlead.Calculations.Wiring;

/// <summary>Bundle derating factor by number of wires and loading: AC 43.13-1B figure 11-5.</summary>
/// <remarks>
/// Curves are published for 20, 40, 60, 80 and 100 % loading. A loading between two curves takes the next curve up, which
/// allows less current; nothing is interpolated between curves. Between two published wire counts of one curve the factor is linear.
/// Check values: 8 wires at 60 %, 0.6 (page 11-27); 35 wires at 20 %, 0.52 (11-69 a, from memory).
/// </remarks>
public static class BundleDerating
{
    private static readonly TableFile Table = TableFile.Load("bundle-derating");

    /// <summary>The published curves, lowest first.</summary>
    public static ImmutableArray<Fraction> Curves { get; } = [.. new[] { 20, 40, 60, 80, 100 }.Select(p => Fraction.Of(p, "%"))];

    /// <summary>The curve that serves a loading: the lowest published one not below it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The loading is not from 0 to 100 %.</exception>
    public static Fraction Curve(Fraction loading)
    {
        if (!(loading.Si >= 0 && loading.Si <= 1 + 1e-9))
        {
            throw new ArgumentOutOfRangeException(nameof(loading), loading.Si, "The loading of a bundle lies from 0 to 100 %.");
        }

        return Curves.First(c => c.Si >= loading.Si - 1e-9);
    }

    /// <summary>The derating factor.</summary>
    /// <param name="wires">Wires in the bundle, at least 1.</param>
    /// <param name="loading">Share of the bundle capacity in use, 0 to 100 %.</param>
    public static Looked<double> Factor(int wires, Fraction loading)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(wires, 1);
        var curve = Curve(loading);
        var column = 1 + Curves.IndexOf(curve);
        var published = Table.Rows.Select((row, index) => (wires: row[0]!.Value, factor: row[column], index)).Where(p => p.factor is not null).ToArray();
        var above = Array.FindIndex(published, p => p.wires >= wires);
        if (above < 0)
        {
            return new(default, Table.Source,
                $"The {curve.As("%")} curve of {Table.Source.Paragraph} is known up to {NumberFormat.Text(published[^1].wires)} wires and this bundle has {NumberFormat.Text(wires)}: split the bundle, load it less, or take the factor from the approved data.");
        }

        var (high, low) = (published[above], published[Math.Max(0, above - 1)]);
        return high.wires == wires
            ? new(high.factor!.Value, Table.SourceOf(high.index))
            : new(
                low.factor!.Value + ((high.factor!.Value - low.factor.Value) * (wires - low.wires) / (high.wires - low.wires)),
                Table.Between(low.index, high.index));
    }
}
