namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="WireMass"/>.</summary>
/// <param name="Gauge">Wire gauge of table 11-9.</param>
/// <param name="LinearMass">Mass per length of the finished wire, from its sheet.</param>
/// <param name="Length">Length, 0 ft to 10,000 ft.</param>
/// <param name="Conductors">Conductors in the cable.</param>
public sealed record WireMassInput(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("m", "mass per length of the finished wire or cable", "lb/1000ft", Min = 0.01, Max = 5000)] LinearMass LinearMass,
    [In("L", "length", "ft", Min = 0, Max = 10000)] Length Length,
    [In("n", "copper conductors of this gauge in the cable", Min = 1, Max = 100, Default = "1")] int Conductors = 1);

/// <summary>Mass of a wire, W = m · L, after a look at whether the mass per length is believable: it must exceed that of its bare copper.</summary>
/// <remarks>Check value: the copper of size 20 (1,216 circular mils at 8.89 g/cm³) weighs 3.68 lb/1000 ft, so a finished weight at or below that is wrong.</remarks>
public sealed class WireMass : ICalculation<WireMassInput>
{
    private static readonly Source Copper = new("International Annealed Copper Standard", "NBS Circular 31", "density 8.89 g/cm³ at 20 °C");
    private static readonly Density CopperDensity = Density.Of(8.89, "g/cm³");

    /// <inheritdoc/>
    public static CalculationInfo<WireMassInput> Info { get; } = new(
        "wire-mass", "Mass of a wire", Discipline.Wiring,
        "Mass of a length of copper wire or cable, with a check of its mass per length", "AWG=20 m='4.3 lb/1000ft' L='27 ft'", Copper);

    /// <inheritdoc/>
    public static Sheet Run(WireMassInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (s.Step("S", "copper area of one conductor", "table by AWG", WireTable.Area(input.Gauge, Conductor.Copper), "mm²") is not { } area)
        {
            return;
        }

        var bare = s.Step("mCu", "mass per length of the bare copper", "n · S · 8.89 g/cm³", new LinearMass(area.Si * CopperDensity.Si * input.Conductors), "lb/1000ft", Copper);
        s.Step("W", "mass", "m · L", input.LinearMass * input.Length, "lb");
        s.Check("mass per length", input.LinearMass.As("lb/1000ft"), Sense.AtLeast, bare.As("lb/1000ft"), "a finished wire weighs more than its bare copper", Copper);
    });
}
