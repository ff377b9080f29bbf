namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="WireGauge"/>.</summary>
/// <param name="Gauge">Wire gauge, 40 to 0000.</param>
public sealed record WireGaugeInput([In("AWG", "wire gauge")] Gauge Gauge);

/// <summary>Geometry of a solid wire of an American gauge and its resistance at 20 °C: d = 0.005 in · 92^((36 − n)/39), R = 0.017241 Ω·mm²/m / A.</summary>
/// <remarks>
/// Check values: size 36 is 0.0050 in and size 0000 is 0.4600 in (ASTM B258). Stranded aircraft wire is another thing: its area and
/// resistance are those of <see cref="WireTable"/>, and sizes 22, 20 and 18 hold more copper than the solid gauge.
/// </remarks>
public sealed class WireGauge : ICalculation<WireGaugeInput>
{
    private static readonly Source Geometry = new("ASTM B258", "2002", "gauge formula");
    private static readonly Source Copper = new("International Annealed Copper Standard", "NBS Circular 31", "0.017241 Ω·mm²/m at 20 °C");

    /// <inheritdoc/>
    public static CalculationInfo<WireGaugeInput> Info { get; } = new(
        "wire-gauge", "Wire gauge", Discipline.Wiring,
        "Diameter, area and resistance of a solid annealed copper wire of a gauge", "AWG=22", Geometry, Copper);

    /// <inheritdoc/>
    public static Sheet Run(WireGaugeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        s.Step("n", "gauge number (00 is −1)", "number of AWG", input.Gauge.Number);
        s.Step("d", "diameter", "0.005 in · 92^((36 − n)/39)", Diameter(input.Gauge), "in", Geometry);
        var area = s.Step("A", "area", "π/4 · d · d", Area(input.Gauge), "mm²");
        s.Step("cmil", "area in circular mils", "(d / 0.001 in)²", area, "cmil");
        s.Step("r", "resistance per length at 20 °C", "0.017241 Ω·mm²/m / A", SolidResistance(input.Gauge), "Ω/1000ft", Copper);
    });

    /// <summary>Diameter of a solid wire.</summary>
    public static Length Diameter(Gauge gauge) => Length.Of(0.005 * Math.Pow(92, (36 - gauge.Number) / 39.0), "in");

    /// <summary>Area of a solid wire.</summary>
    public static Area Area(Gauge gauge) => new(Math.PI / 4 * Diameter(gauge).Si * Diameter(gauge).Si);

    /// <summary>Resistance per length at 20 °C of a solid annealed copper wire.</summary>
    public static LinearResistance SolidResistance(Gauge gauge) => new(0.017241e-6 / Area(gauge).Si);
}
