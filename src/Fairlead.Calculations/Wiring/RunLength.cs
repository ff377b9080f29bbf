namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="RunLength"/>.</summary>
/// <param name="Gauge">Wire gauge.</param>
/// <param name="Current">Circuit current, up to the allowed current.</param>
/// <param name="Drop">Allowed voltage drop.</param>
/// <param name="Ambient">Ambient temperature.</param>
/// <param name="Rating">Conductor temperature rating, above ambient.</param>
/// <param name="Allowed">Allowed current at the rating.</param>
/// <param name="ChartLength">Longest run at 20 °C read from figure 11-2, when it is not computed from the resistance.</param>
/// <param name="Run">The run to be checked, ground wire included.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record RunLengthInput(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("I", "circuit current", "A", Min = 0.001, Max = 1000)] Current Current,
    [In("Vmax", "allowed voltage drop", "V", Min = 0.001, Max = 100)] Voltage Drop,
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("TR", "conductor temperature rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("Imax", "allowed current at the rating", "A", Min = 0.01, Max = 1000)] Current Allowed,
    [In("Lchart", "longest run at 20 °C read from figure 11-2", "ft", Min = 0, Max = 10000, Default = "computed from the resistance")] Length? ChartLength = null,
    [In("L", "run to be checked, ground wire included", "ft", Min = 0, Max = 10000, Default = "not checked")] Length? Run = null,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Longest run of a wire hot: L2 = 254.5 · L1 / (234.5 + T2) for copper, 258.1 and 238.1 for aluminium; L1 = Vmax / (I · r20).</summary>
/// <remarks>Check value: L1 = 15.5 ft at 182 °C gives 9.5 ft (AC 43.13-1B page 11-27, step 2).</remarks>
public sealed class RunLength : ICalculation<RunLengthInput>
{
    private static readonly Source Correction = Ac4313.Paragraph("11-66 d");
    private static readonly Source Chart = Ac4313.Paragraph("figure 11-2", Basis.Stated);

    /// <inheritdoc/>
    public static CalculationInfo<RunLengthInput> Info { get; } = new(
        "run-length", "Longest run of a wire", Discipline.Wiring,
        "How long a run may be, ground wire included, before the drop with hot conductors is too great",
        "AWG=12 I='20 A' Vmax='1 V' T1='50 degC' TR='200 degC' Imax='37 A' L='15.5 ft'", Correction);

    /// <inheritdoc/>
    public static Sheet Run(RunLengthInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Rating <= input.Ambient || input.Current > input.Allowed)
        {
            s.CannotTell(input.Rating <= input.Ambient
                ? "The conductor rating is not above the ambient temperature: the wire may carry no current there."
                : "The circuit current is above the allowed current: the temperature estimate does not reach there.");
            return;
        }

        if (LengthAt20(s, input) is not { } l1)
        {
            return;
        }

        var t2 = s.Step(
            "T2", "estimated conductor temperature", "T1 + (TR − T1) · √(I / Imax)",
            ConductorTemperature.Estimate(input.Ambient, input.Rating, input.Current / input.Allowed), "°C", Correction);
        var l2 = s.Step("L2", "longest run at T2", $"L1 / ({WireTable.HotFormula(input.Conductor, "T2")})", l1 / WireTable.HotFactor(input.Conductor, t2), "ft", Correction);
        if (input.Run is { } run)
        {
            s.Check("run", run.As("ft"), Sense.AtMost, l2.As("ft"), "the run, ground wire included, is no longer than the longest run hot", Correction);
        }

        WireTable.CautionAluminium(s, input.Conductor);
    });

    private static Length? LengthAt20(SheetBuilder s, RunLengthInput input)
    {
        if (input.ChartLength is { } chart)
        {
            return s.Step("L1", "longest run at 20 °C", "Lchart", chart, "ft", Chart);
        }

        var r20 = s.Step("r20", "resistance per length at 20 °C", "table by AWG", WireTable.Resistance(input.Gauge, input.Conductor), "Ω/1000ft");
        return r20 is { } r ? s.Step("L1", "longest run at 20 °C", "Vmax / (I · r20)", new Length(input.Drop.Si / (input.Current.Si * r.Si)), "ft", Correction) : null;
    }
}
