namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="WireResistance"/>.</summary>
/// <param name="Gauge">Wire gauge of table 11-9 or 11-10.</param>
/// <param name="Temperature">Conductor temperature, −65 °C to 260 °C.</param>
/// <param name="Length">Length, 0 ft to 1000 ft.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record WireResistanceInput(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("T", "conductor temperature", "°C", Min = -65, Max = 260)] Temperature Temperature,
    [In("L", "length", "ft", Min = 0, Max = 1000)] Length Length,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Resistance of a length of stranded aircraft wire at a temperature: R = r20 · (234.5 + T)/254.5 · L for copper, with 238.1 and 258.1 for aluminium.</summary>
/// <remarks>Check value: 20 AWG copper at 20 °C has 9.88 Ω in 1000 ft (AC 43.13-1B table 11-9).</remarks>
public sealed class WireResistance : ICalculation<WireResistanceInput>
{
    private static readonly Source Correction = Ac4313.Paragraph("11-66 d");

    /// <inheritdoc/>
    public static CalculationInfo<WireResistanceInput> Info { get; } = new(
        "wire-resistance", "Wire resistance", Discipline.Wiring,
        "Resistance of a length of stranded wire at a conductor temperature", "AWG=20 T='105 degC' L='24 ft'", Correction);

    /// <inheritdoc/>
    public static Sheet Run(WireResistanceInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (s.Step("r20", "resistance per length at 20 °C", "table by AWG", WireTable.Resistance(input.Gauge, input.Conductor), "Ω/1000ft") is not { } r20)
        {
            return;
        }

        var k = s.Step("k", "resistance at T over resistance at 20 °C", WireTable.HotFormula(input.Conductor, "T"), WireTable.HotFactor(input.Conductor, input.Temperature), Correction);
        var r = s.Step("r", "resistance per length at T", "r20 · k", r20 * k, "Ω/1000ft");
        s.Step("R", "resistance", "r · L", r * input.Length, "mΩ");
        WireTable.CautionAluminium(s, input.Conductor);
    });
}
