namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="BundleCurrent"/>.</summary>
/// <param name="FreeAir">Free-air current read from figure 11-4 at the difference between rating and ambient.</param>
/// <param name="Altitude">Altitude, 0 to 60,000 ft.</param>
/// <param name="Wires">Wires in the bundle: up to 35 at 20 % loading, up to 19 above.</param>
/// <param name="Loading">Share of the bundle capacity in use.</param>
/// <param name="Actual">The wire's continuous current, when it is to be checked.</param>
public sealed record BundleCurrentInput(
    [In("Ifree", "free-air current from figure 11-4", "A", Min = 0, Max = 2000)] Current FreeAir,
    [In("alt", "altitude", "ft", Min = 0, Max = 60000)] Length Altitude,
    [In("N", "wires in the bundle", Min = 1, Max = 1000)] int Wires,
    [In("p", "share of the bundle capacity in use", "%", Min = 0, Max = 100)] Fraction Loading,
    [In("I", "continuous current of the wire", "A", Min = 0, Max = 1000, Default = "not checked")] Current? Actual = null);

/// <summary>The circular's own method: Imax = Ifree · F(N, p) · A(alt), with the free-air current read from the chart.</summary>
/// <remarks>Check value: 47 A, 8 wires at 60 %, 20,000 ft gives 26 A (AC 43.13-1B page 11-27, step 1: 47 · 0.91 · 0.6 = 25.66).</remarks>
public sealed class BundleCurrent : ICalculation<BundleCurrentInput>
{
    private static readonly Source Method = Ac4313.Paragraph("11-68 f");
    private static readonly Source Rule = Ac4313.Paragraph("11-67");

    /// <inheritdoc/>
    public static CalculationInfo<BundleCurrentInput> Info { get; } = new(
        "bundle-current", "Allowed current from a free-air chart value", Discipline.Wiring,
        "Allowed current of a wire in a bundle at altitude, from the free-air chart value", "Ifree='47 A' alt='20000 ft' N=8 p='60 %' I='20 A'", Method);

    /// <inheritdoc/>
    public static Sheet Run(BundleCurrentInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var altitude = s.Step("A", "altitude factor", "figure 11-6 by alt", AltitudeDerating.Factor(input.Altitude));
        var curve = s.Step("pc", "loading curve", "published curve at or above p", BundleDerating.Curve(input.Loading), "%");
        var bundle = s.Step("F", "bundle factor", "figure 11-5 by N and pc", BundleDerating.Factor(input.Wires, curve));
        if (altitude is null || bundle is null)
        {
            return;
        }

        var allowed = s.Step("Imax", "allowed current", "Ifree · A · F", input.FreeAir * (altitude.Value * bundle.Value), "A", Method);
        if (input.Actual is { } actual)
        {
            s.Check("wire current", actual.As("A"), Sense.AtMost, allowed.As("A"), "the wire carries no more than its allowed current in the bundle", Rule);
        }
    });
}
