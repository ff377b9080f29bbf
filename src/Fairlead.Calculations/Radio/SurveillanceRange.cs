namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="SurveillanceRange"/>.</summary>
/// <param name="Power">Power of the interrogator at its box.</param>
/// <param name="LineLoss">Loss of own cable, dB.</param>
/// <param name="Gain">Gain of own antenna towards the target, dBi.</param>
/// <param name="Threshold">Own minimum triggering level at the box, dBm.</param>
/// <param name="TargetPower">Power of the target's transponder at its antenna.</param>
/// <param name="TargetGain">Gain of the target's antenna towards us, dBi.</param>
/// <param name="TargetThreshold">The transponder's minimum triggering level at its antenna, dBm.</param>
/// <param name="Margin">Margin kept, dB.</param>
/// <param name="Required">Range required.</param>
public sealed record SurveillanceRangeInput(
    [In("P", "power of the interrogator at its box", "W", Min = 0.001, Max = 100000)] Wattage Power,
    [In("A", "loss of own cable (dB)", Min = 0, Max = 30, Default = "0")] double LineLoss = 0,
    [In("G", "gain of own antenna towards the target (dBi)", Min = -40, Max = 30, Default = "0")] double Gain = 0,
    [In("MTL", "own minimum triggering level at the box (dBm)", Min = -120, Max = 0, Default = "-74")] double Threshold = -74,
    [In("Pt", "power of the target's transponder at its antenna", "W", Min = 0.001, Max = 100000, Default = "125 W")] Wattage? TargetPower = null,
    [In("Gt", "gain of the target's antenna towards us (dBi)", Min = -40, Max = 30, Default = "0")] double TargetGain = 0,
    [In("MTLt", "the transponder's minimum triggering level at its antenna (dBm)", Min = -120, Max = 0, Default = "-74")] double TargetThreshold = -74,
    [In("M", "margin kept (dB)", Min = 0, Max = 60, Default = "0")] double Margin = 0,
    [In("Rmin", "range required", "nmi", Min = 0.01, Max = 1000, Default = "not checked")] Length? Required = null);

/// <summary>How far an interrogator sees a transponder: the shorter of the way out at 1030 MHz and the way back at 1090 MHz, in free space.</summary>
/// <remarks>Check values, 0 dBi and no line loss: 54 dBm reaches −74 dBm at 31.415 nmi (1030 MHz); 51 dBm at 21.016 nmi (1090 MHz).</remarks>
public sealed class SurveillanceRange : ICalculation<SurveillanceRangeInput>
{
    private static readonly Source Annex = new("ICAO Annex 10 Vol IV", "", "triggering level of a Mode S transponder −74 dBm", Basis.Memory);
    private static readonly Source Least = new("14 CFR 43", "App F", "(d)(1): 21.0 dBW (125 W) at least", Basis.Memory);

    private static readonly Wattage LeastTransponder = Wattage.Of(125, "W");

    /// <summary>Carrier of interrogations.</summary>
    public static Frequency Interrogation { get; } = Frequency.Of(1030, "MHz");

    /// <summary>Carrier of replies.</summary>
    public static Frequency Reply { get; } = Frequency.Of(1090, "MHz");

    /// <inheritdoc/>
    public static CalculationInfo<SurveillanceRangeInput> Info { get; } = new(
        "surveillance-range", "Range of surveillance", Discipline.Radio,
        "How far an interrogator sees a transponder, from its power budget", "P='250 W' A=1.5 M=3 Rmin='12 nmi'", RadioSources.FreeSpace, Annex, Least);

    /// <inheritdoc/>
    public static Sheet Run(SurveillanceRangeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var sent = s.Step("Pd", "power of the interrogator (dBm)", "10 · log10(P / 1 mW)", Propagation.Dbm(input.Power));
        var outward = s.Step("B1", "loss that the way out may have (dB)", "Pd − A + G + Gt − MTLt − M", sent - input.LineLoss + input.Gain + input.TargetGain - input.TargetThreshold - input.Margin);
        var first = s.Step("R1", "range of the way out at 1030 MHz", "(c / 1030 MHz) / 4π · 10^(B1/20)", Propagation.DistanceForLoss(Interrogation, outward), "nmi", RadioSources.FreeSpace);
        var power = input.TargetPower ?? LeastTransponder;
        if (input.TargetPower is null)
        {
            s.Note("Pt", "power of the target's transponder at its antenna", power.As("W"), "least allowed");
        }

        var replied = s.Step("Ptd", "power of the transponder (dBm)", "10 · log10(Pt / 1 mW)", Propagation.Dbm(power));
        var back = s.Step("B2", "loss that the way back may have (dB)", "Ptd + Gt + G − A − MTL − M", replied + input.TargetGain + input.Gain - input.LineLoss - input.Threshold - input.Margin);
        var second = s.Step("R2", "range of the way back at 1090 MHz", "(c / 1090 MHz) / 4π · 10^(B2/20)", Propagation.DistanceForLoss(Reply, back), "nmi", RadioSources.FreeSpace);
        var range = s.Step("R", "range", "the lesser of R1 and R2", first < second ? first : second, "nmi");
        if (input.Required is { } required)
        {
            s.Check("range", range.As("nmi"), Sense.AtLeast, required.As("nmi"), "a transponder is seen at the range required", RadioSources.Stated);
        }

        s.Caution("Free space, without the horizon, reflections from ground or the shadow of either airframe.");
    });
}
