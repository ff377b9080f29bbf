using System.Collections.Immutable;

namespace Fairlead.Calculations.Radio;

/// <summary>Attenuation of a cable at a frequency: the form k1·√f + k2·f (skin effect and dielectric) laid through the two points nearest to it.</summary>
/// <remarks>Check value: through 4.0 dB/100 ft at 50 MHz and 28.0 at 1000 MHz, k1 = 0.47359, k2 = 0.013024 and 29.83 dB/100 ft at 1090 MHz.</remarks>
public static class CoaxAttenuation
{
    /// <summary>The constants of the form through two points; f in MHz, attenuation in dB/100 ft.</summary>
    public static (double K1, double K2) Fit(LossPoint low, LossPoint high)
    {
        ArgumentNullException.ThrowIfNull(low);
        ArgumentNullException.ThrowIfNull(high);
        var (f1, f2) = (low.Frequency.In("MHz"), high.Frequency.In("MHz"));
        var (r1, r2) = (Math.Sqrt(f1), Math.Sqrt(f2));
        var determinant = (r1 * f2) - (r2 * f1);
        return (((low.Loss * f2) - (high.Loss * f1)) / determinant, ((r1 * high.Loss) - (r2 * low.Loss)) / determinant);
    }

    /// <summary>Loss of a mated pair of connectors, dB: 0.1·√(f in GHz).</summary>
    public static double PairRule(Frequency frequency) => 0.1 * Math.Sqrt(frequency.In("GHz"));

    /// <summary>Puts the attenuation at a frequency on the sheet, dB/100 ft, or says why there is none and returns null.</summary>
    internal static double? Add(SheetBuilder s, Frequency frequency, Coax? cable, Sequence<LossPoint> points)
    {
        if (Chosen(s, cable, points) is not { } curve || Nearest(s, frequency, cable, curve) is not var (low, high))
        {
            return null;
        }

        var source = points.Count > 0 ? RadioSources.Stated : CoaxTable.Source(cable!.Value);
        s.Note("f1", "lower point", low.Frequency.As("MHz"), "cable");
        s.Note("a1", "attenuation there (dB/100 ft)", Measure.Number(low.Loss), "cable");
        s.Note("f2", "upper point", high.Frequency.As("MHz"), "cable");
        s.Note("a2", "attenuation there (dB/100 ft)", Measure.Number(high.Loss), "cable");
        s.Uses(source);
        var (k1, k2) = Fit(low, high);
        s.Step("k1", "skin effect (dB/100 ft at 1 MHz)", "(a1 · f2 − a2 · f1) / (√f1 · f2 − √f2 · f1)", k1, RadioSources.LineLoss);
        s.Step("k2", "dielectric (dB/100 ft at 1 MHz)", "(√f1 · a2 − √f2 · a1) / (√f1 · f2 − √f2 · f1)", k2, RadioSources.LineLoss);
        if (k1 < 0 || k2 < 0)
        {
            s.Caution("The points do not follow the law of a cable (skin effect and dielectric loss, both positive): check them.", affectsVerdict: true);
        }

        var megahertz = frequency.In("MHz");
        return s.Step("alpha", "attenuation (dB/100 ft)", "k1 · √f + k2 · f", (k1 * Math.Sqrt(megahertz)) + (k2 * megahertz));
    }

    private static ImmutableArray<LossPoint>? Chosen(SheetBuilder s, Coax? cable, Sequence<LossPoint> points)
    {
        ImmutableArray<LossPoint> curve = points.Count > 0 ? [.. points.OrderBy(p => p.Frequency)] : cable is { } known ? CoaxTable.Points(known) : [];
        if (points.Count > 0 && cable is not null)
        {
            s.CannotTell("Give a cable of the table or points from its sheet, not both.");
        }
        else if (curve.Length < 2)
        {
            s.CannotTell(cable is null ? "Give a cable of the table, or at least two points of attenuation from its sheet." : "The table gives no attenuation for this cable: give points from its sheet.");
        }
        else if (curve.Zip(curve.Skip(1)).Any(p => p.First.Frequency == p.Second.Frequency || p.First.Loss >= p.Second.Loss))
        {
            s.CannotTell("The points are not in order: attenuation grows with frequency, one value for each.");
        }

        return s.Stopped ? null : curve;
    }

    private static (LossPoint Low, LossPoint High)? Nearest(SheetBuilder s, Frequency frequency, Coax? cable, ImmutableArray<LossPoint> curve)
    {
        var (least, greatest) = cable is { } known && CoaxTable.Highest(known) is { } highest
            ? (Frequency.Of(50, "MHz"), highest) : (curve[0].Frequency, curve[^1].Frequency);
        if (frequency < least || frequency > greatest)
        {
            s.CannotTell($"The attenuation is known from {least.As("MHz")} to {greatest.As("MHz")} and this is {frequency.As("MHz")}: give points from the cable's sheet that enclose it.");
            return null;
        }

        if (frequency < curve[0].Frequency || frequency > curve[^1].Frequency)
        {
            s.Caution($"Beyond the points at {curve[0].Frequency.As("MHz")} and {curve[^1].Frequency.As("MHz")} the form k1·√f + k2·f carries the attenuation on.");
        }

        var upper = 1;
        while (upper < curve.Length - 1 && curve[upper].Frequency < frequency)
        {
            upper++;
        }

        return (curve[upper - 1], curve[upper]);
    }
}
