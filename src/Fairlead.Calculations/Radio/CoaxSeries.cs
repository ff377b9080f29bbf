namespace Fairlead.Calculations.Radio;

/// <summary>A cable of a run.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Length">Its length.</param>
/// <param name="Loss">Its loss at the frequency, connectors left out, dB.</param>
/// <param name="Velocity">Its velocity factor.</param>
public sealed record CoaxPiece(
    [In("cable", "cable")] string Name,
    [In("l", "length", "ft", Min = 0, Max = 1000)] Length Length,
    [In("al", "loss without connectors (dB)", Min = 0, Max = 200)] double Loss,
    [In("vf", "velocity over that of light", "%", Min = 30, Max = 100)] Fraction Velocity);

/// <summary>Input of <see cref="CoaxSeries"/>.</summary>
/// <param name="Frequency">Frequency at which the losses hold.</param>
/// <param name="Pieces">The cables in a row.</param>
/// <param name="Pairs">Mated pairs of connectors in the run.</param>
/// <param name="MaxLoss">Greatest loss allowed, dB.</param>
/// <param name="MinLoss">Least loss required, dB.</param>
/// <param name="Power">Power at the box.</param>
/// <param name="MinPower">Least power required at the antenna end.</param>
/// <param name="MaxPower">Greatest power allowed at the antenna end.</param>
/// <param name="MinDelay">Least delay required.</param>
/// <param name="MaxDelay">Greatest delay allowed.</param>
public sealed record CoaxSeriesInput(
    [In("f", "frequency", "MHz", Min = 1, Max = 40000)] Frequency Frequency,
    [In("cables", "cables in a row")] Sequence<CoaxPiece> Pieces,
    [In("n", "mated pairs of connectors", Min = 0, Max = 50)] int Pairs,
    [In("Amax", "greatest loss allowed (dB)", Min = 0, Max = 100, Default = "not checked")] double? MaxLoss = null,
    [In("Amin", "least loss required (dB)", Min = 0, Max = 100, Default = "not checked")] double? MinLoss = null,
    [In("P", "power at the box", "W", Min = 0.001, Max = 10000, Default = "not checked")] Wattage? Power = null,
    [In("Pmin", "least power at the antenna end", "W", Min = 0.001, Max = 10000, Default = "not checked")] Wattage? MinPower = null,
    [In("Pmax", "greatest power at the antenna end", "W", Min = 0.001, Max = 10000, Default = "not checked")] Wattage? MaxPower = null,
    [In("tmin", "least delay", "ns", Min = 0, Max = 100000, Default = "no least delay")] Duration? MinDelay = null,
    [In("tmax", "greatest delay", "ns", Min = 0, Max = 100000, Default = "no greatest delay")] Duration? MaxDelay = null);

/// <summary>Loss and delay of a run of cables of different kinds: those of its cables and connectors added.</summary>
/// <remarks>
/// Losses in decibel add where every part has the same impedance; reflections where it changes are left out.
/// Check value: 12 ft with 1.7004 dB and 10 ft with 1.38 dB, three pairs at 1090 MHz (0.1044 dB each): 3.3936 dB.
/// </remarks>
public sealed class CoaxSeries : ICalculation<CoaxSeriesInput>
{
    private static readonly Source Pair = new("MIL-PRF-39012E", "", "insertion loss is that of a mated pair; 0.1·√f is a design rule", Basis.Memory);
    private static readonly Source Travel = new("Travel time", "", "Σ L / (vf·c)", Basis.Derived);

    /// <inheritdoc/>
    public static CalculationInfo<CoaxSeriesInput> Info { get; } = new(
        "coax-series", "Coaxial run of several cables", Discipline.Radio,
        "How much cables of different kinds in a row lose together, and how long they delay",
        "f='1090 MHz' cables='main,12 ft,1.7004,69.5 %;tail,10 ft,1.38,69.5 %' n=3 Amax=4", RadioSources.LineLoss);

    /// <inheritdoc/>
    public static Sheet Run(CoaxSeriesInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Pieces.Count == 0)
        {
            s.CannotTell("The run has no cable.");
            return;
        }

        var cables = s.Step("Ac", "loss of the cables (dB)", "sum of the table", input.Pieces.Sum(p => p.Loss));
        var pair = s.Step("aj", "loss of one mated pair (dB)", "0.1 · √(f in GHz)", CoaxAttenuation.PairRule(input.Frequency), Pair);
        var joints = s.Step("Aj", "loss of the connectors (dB)", "n · aj", input.Pairs * pair);
        var loss = s.Step("A", "loss of the run (dB)", "Ac + Aj", cables + joints);
        RunLimits.Check(s, loss, input.MaxLoss, input.MinLoss);
        RunLimits.CheckPower(s, loss, input.Power, input.MinPower, input.MaxPower);
        var delay = s.Step("t", "delay of the run", "sum of l / (vf · 299792458 m/s)", new Duration(input.Pieces.Sum(p => CoaxVelocity.Delay(p.Length, p.Velocity).Si)), "ns", Travel);
        if (input.MinDelay is { } least)
        {
            s.Check("delay", delay.As("ns"), Sense.AtLeast, least.As("ns"), "the run delays at least what the equipment asks for", RadioSources.Stated);
        }

        if (input.MaxDelay is { } greatest)
        {
            s.Check("delay", delay.As("ns"), Sense.AtMost, greatest.As("ns"), "the run delays no more than allowed", RadioSources.Stated);
        }

        s.Caution("Reflections where one cable meets the next are left out: all must have the same impedance. Measure the run that is fitted.");
    });
}
