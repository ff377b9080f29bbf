using System.Collections.Immutable;

namespace Fairlead.Calculations.Environment;

/// <summary>The rule a compass card follows.</summary>
public enum CompassCard
{
    /// <summary>14 CFR 23.1547: headings at most 30° apart.</summary>
    Part23,

    /// <summary>14 CFR 25.1547: headings at most 45° apart.</summary>
    Part25,
}

/// <summary>A heading of a compass swing.</summary>
/// <param name="Magnetic">Magnetic heading of the aircraft.</param>
/// <param name="Compass">What the compass reads.</param>
public sealed record SwingRow(
    [In("magnetic", "magnetic heading", "°", Min = 0, Max = 360)] Angle Magnetic,
    [In("compass", "compass reading", "°", Min = 0, Max = 360)] Angle Compass);

/// <summary>Input of <see cref="CompassDeviation"/>.</summary>
/// <param name="Swing">The headings of the swing, after compensation, level flight attitude.</param>
/// <param name="Card">The rule the card follows; it sets how far apart the headings may lie.</param>
public sealed record CompassDeviationInput(
    [In("swing", "headings of the swing")] Sequence<SwingRow> Swing,
    [In("card", "rule the card follows", Default = "part23")] CompassCard Card = CompassCard.Part23);

/// <summary>
/// Residual deviations of a compass swing, deviation = magnetic − compass, each at most 10°; and the coefficients where the cardinal and
/// quadrantal headings were swung: A = Σ/8, B = (E − W)/2, C = (N − S)/2, D = ((NE + SW) − (SE + NW))/4, E = ((N + S) − (E + W))/4.
/// </summary>
/// <remarks>
/// Of the four cardinal headings alone A is their mean, and D is not found. Check value: deviations 10.5, 20, 11.5, −1.2, −5.5, −8, −12.5,
/// −6.8° on N, NE, ... NW give A 1, B 12, C 8, D 5, E 1.5° (Handbook of Magnetic Compass Adjustment, ch. V). Some documents give deviation
/// the other sign.
/// </remarks>
public sealed class CompassDeviation : ICalculation<CompassDeviationInput>
{
    // A swung heading counts as the cardinal or quadrantal heading it is nearest to, if it is this near.
    private const double Near = 10;

    // Headings are set up by eye; what stands on the card is the nominal one.
    private const double SetUp = 5;
    private static readonly string[] Names = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];
    private static readonly Source Limit = new("14 CFR 23.1327 (before amendment 23-64), 25.1327, 29.1327", "", "10° on any heading, level flight");
    private static readonly Source Part23 = new("14 CFR 23.1547", "before amendment 23-64", "", Basis.Memory);
    private static readonly Source Part25 = new("14 CFR 25.1547(d)", "", "");
    private static readonly Source Handbook = new("Handbook of Magnetic Compass Adjustment", "", "ch. V, approximate coefficients");

    /// <inheritdoc/>
    public static CalculationInfo<CompassDeviationInput> Info { get; } = new(
        "compass-deviation", "Deviations of a compass swing", Discipline.Environment,
        "Whether the compass reads true enough on every heading, and what makes up its deviation",
        "swing='360 deg,358 deg;47 deg,42 deg;93 deg,89 deg;135 deg,134 deg;179 deg,177 deg;225 deg,220 deg;273 deg,269 deg;317 deg,316 deg' card=part25",
        Limit, Part25, Handbook);

    /// <inheritdoc/>
    public static Sheet Run(CompassDeviationInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Swing.Count == 0)
        {
            s.CannotTell("The swing has no heading.");
            return;
        }

        s.Table("deviation by heading", ["magnetic", "compass", "deviation"], input.Swing.Select(r => ImmutableArray.Create<SheetValue>(r.Magnetic.As("°"), r.Compass.As("°"), Angle.Of(Deviation(r), "°").As("°"))));
        var worst = input.Swing.MaxBy(r => Math.Abs(Deviation(r)))!;
        var greatest = s.Step("dmax", $"greatest deviation, on {worst.Magnetic.As("°")}, without its sign", "greatest of |magnetic − compass|", Angle.Of(Math.Abs(Deviation(worst)), "°"), "°");
        s.Check("deviation", greatest.As("°"), Sense.AtMost, Angle.Of(10, "°").As("°"), "the deviation stays within 10° on every heading", Limit);
        var gap = s.Step("gap", "greatest gap between headings", "greatest difference of neighbouring headings", Angle.Of(Gap(input.Swing), "°"), "°");
        var apart = input.Card == CompassCard.Part25 ? 45 : 30;
        s.Check("gap between headings", gap.As("°"), Sense.AtMost, Angle.Of(apart + SetUp, "°").As("°"), $"the card has headings at most {NumberFormat.Text(apart)}° apart, set up within {NumberFormat.Text(SetUp)}°", input.Card == CompassCard.Part25 ? Part25 : Part23);
        Coefficients(s, input.Swing);
        s.Caution("Swing with engines running and the equipment in use; the card says whether radios were on or off. Electric loads that turn the compass by more are placarded.");
    });

    private static void Coefficients(SheetBuilder s, Sequence<SwingRow> swing)
    {
        var on = new double?[8];
        for (var i = 0; i < on.Length; i++)
        {
            on[i] = At(swing, 45 * i);
        }

        if (on is not [{ } n, _, { } e, _, { } south, _, { } w, _])
        {
            return;
        }

        for (var i = 0; i < on.Length; i++)
        {
            if (on[i] is { } deviation)
            {
                s.Step("d" + Names[i], $"deviation on {Names[i]}", "magnetic − compass", Angle.Of(deviation, "°"), "°");
            }
        }

        if (on is [_, { } ne, _, { } se, _, { } sw, _, { } nw])
        {
            Coefficient("A", "A, the same on every heading", "(dN + dNE + dE + dSE + dS + dSW + dW + dNW) / 8", (n + ne + e + se + south + sw + w + nw) / 8);
            Coefficient("D", "D, greatest on NE, SE, SW and NW", "((dNE + dSW) − (dSE + dNW)) / 4", (ne + sw - se - nw) / 4);
        }
        else
        {
            Coefficient("A", "A, the same on every heading, of the cardinal headings", "(dN + dE + dS + dW) / 4", (n + e + south + w) / 4);
        }

        Coefficient("B", "B, greatest on E and W", "(dE − dW) / 2", (e - w) / 2);
        Coefficient("C", "C, greatest on N and S", "(dN − dS) / 2", (n - south) / 2);
        Coefficient("E", "E, greatest on N, E, S and W", "((dN + dS) − (dE + dW)) / 4", (n + south - e - w) / 4);

        void Coefficient(string symbol, string meaning, string formula, double degrees) => s.Step(symbol, "coefficient " + meaning, formula, Angle.Of(degrees, "°"), "°", Handbook);
    }

    private static double? At(Sequence<SwingRow> swing, double nominal)
    {
        var near = swing.Where(r => Math.Abs(Signed(r.Magnetic.In("°") - nominal)) <= Near).ToArray();
        return near.Length == 0 ? null : near.Average(Deviation);
    }

    private static double Gap(Sequence<SwingRow> swing)
    {
        var headings = swing.Select(r => r.Magnetic.In("°") % 360).Order().ToArray();
        return headings.Select((h, i) => i + 1 < headings.Length ? headings[i + 1] - h : headings[0] + 360 - h).Max();
    }

    private static double Deviation(SwingRow row) => Signed((row.Magnetic - row.Compass).In("°"));

    // Between −180° and 180°.
    private static double Signed(double degrees) => degrees - (360 * Math.Round(degrees / 360));
}
