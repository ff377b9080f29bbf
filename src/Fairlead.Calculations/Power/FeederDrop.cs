using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Power;

/// <summary>Input of <see cref="FeederDrop"/>.</summary>
/// <param name="Regulated">Regulated voltage, 5 V to 300 V.</param>
/// <param name="Current">Rated current of the generator, or the battery's five-minute current.</param>
/// <param name="Gauge">Wire gauge.</param>
/// <param name="Length">Length from source or battery to bus, 0 to 300 ft.</param>
/// <param name="PerLength">Resistance per length at 20 °C, when it is not that of the table.</param>
/// <param name="Temperature">Conductor temperature.</param>
/// <param name="Parallel">Wires in parallel.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record FeederDropInput(
    [In("V", "regulated voltage", "V", Min = 5, Max = 300)] Voltage Regulated,
    [In("I", "rated current", "A", Min = 0, Max = 5000)] Current Current,
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("L", "length", "ft", Min = 0, Max = 300)] Length Length,
    [In("T", "conductor temperature", "°C", Min = -65, Max = 260)] Temperature Temperature,
    [In("r20", "resistance per length at 20 °C", "Ω/1000ft", Min = 0.001, Max = 2000, Default = "table 11-9")] LinearResistance? PerLength = null,
    [In("n", "wires in parallel", Min = 1, Max = 20, Default = "1")] int Parallel = 1,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Drop of a main power wire, hot: Vd = I · L · r20 · (234.5 + T)/254.5 / n (aluminium: 238.1 and 258.1), at most 2 % of the regulated voltage.</summary>
/// <remarks>Check value: 2 % of 28 V is 0.56 V; size 4, 10 ft, 100 A at 20 °C drops 0.28 V.</remarks>
public sealed class FeederDrop : ICalculation<FeederDropInput>
{
    private static readonly Source Rule = new(
        "FAA powerplant handbook", "", "main power wires: drop at most 2 % of the regulated voltage with the generator at rated current or the battery at its five-minute rate");

    private static readonly Source Correction = Ac4313.Paragraph("11-66 d");

    /// <inheritdoc/>
    public static CalculationInfo<FeederDropInput> Info { get; } = new(
        "feeder-drop", "Feeder drop", Discipline.Power,
        "Voltage lost in a main power wire between source or battery and bus", "V='28 V' I='100 A' AWG=4 L='10 ft' T='70 degC'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(FeederDropInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var found = input.PerLength is { } stated ? new(stated, new Source("Stated resistance", "", "r20", Basis.Stated)) : WireTable.Resistance(input.Gauge, input.Conductor);
        if (s.Step("r20", "resistance per length at 20 °C", input.PerLength is null ? "table by AWG" : "as given", found, "Ω/1000ft") is not { } perLength)
        {
            return;
        }

        var cold = s.Step("R20", "resistance at 20 °C", "r20 · L / n", perLength * input.Length / input.Parallel, "mΩ");
        var hot = s.Step("R", "resistance hot", $"R20 · {WireTable.HotFormula(input.Conductor, "T")}", cold * WireTable.HotFactor(input.Conductor, input.Temperature), "mΩ", Correction);
        var drop = s.Step("Vd", "voltage drop", "I · R", input.Current * hot, "V");
        var limit = s.Step("Vmax", "2 % of the regulated voltage", "0.02 · V", input.Regulated * 0.02, "V", Rule);
        s.Check("feeder drop", drop.As("V"), Sense.AtMost, limit.As("V"), "a main power wire loses at most 2 % of the regulated voltage at rated current", Rule);
        s.Caution("The return through structure is taken as negligible; 0.005 Ω from source ground to equipment ground is satisfactory.");
    });
}
