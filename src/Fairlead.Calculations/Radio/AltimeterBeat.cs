namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="AltimeterBeat"/>.</summary>
/// <param name="Height">Height above ground, cables included.</param>
/// <param name="Sweep">From the lowest to the highest frequency of the sweep.</param>
/// <param name="Time">How long one sweep takes.</param>
public sealed record AltimeterBeatInput(
    [In("h", "height above ground, the delay of the cables included", "ft", Min = 0, Max = 50000)] Length Height,
    [In("dF", "from the lowest to the highest frequency of a sweep", "MHz", Min = 0.1, Max = 1000)] Frequency Sweep,
    [In("T", "how long one sweep takes", "ms", Min = 0.001, Max = 1000)] Duration Time);

/// <summary>The beat of a radio altimeter whose frequency sweeps evenly, and the height it reads in steps of.</summary>
/// <remarks>
/// The echo comes τ = 2h/c late, so the sweep has gone on by fb = τ · dF/T. A count of beats within a sweep tells heights apart by c/(4 · dF),
/// the critical height. Check values: 100 MHz in 10 ms at 500 ft: 10,167.03 Hz; 100 MHz: 0.7495 m, about the 0.75 m settled for such sets.
/// </remarks>
public sealed class AltimeterBeat : ICalculation<AltimeterBeatInput>
{
    private static readonly Source Sweep = new("Sweep of a radio altimeter", "", "fb = (2h/c) · dF/T", Basis.Derived);
    private static readonly Source Critical = new("Electronics 8 (2019) 888", "", "critical height of radio altimeters, about 0.75 m");

    /// <inheritdoc/>
    public static CalculationInfo<AltimeterBeatInput> Info { get; } = new(
        "altimeter-beat", "Beat of a radio altimeter", Discipline.Radio,
        "Which beat a radio altimeter makes of a height, and in which steps it can read", "h='500 ft' dF='100 MHz' T='10 ms'", Sweep, Critical);

    /// <inheritdoc/>
    public static Sheet Run(AltimeterBeatInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var delay = s.Step("tau", "delay of the echo", "2 · h / 299792458 m/s", Propagation.Delay(input.Height * 2), "ns", Sweep);
        if (delay >= input.Time)
        {
            s.CannotTell("The echo comes after the sweep has ended.");
            return;
        }

        s.Step("fb", "beat", "tau · dF / T", new Frequency(delay.Si * input.Sweep.Si / input.Time.Si), "Hz", Sweep);
        s.Step("hs", "critical height, the step of a count within one sweep", "299792458 m/s / (4 · dF)", new Length(Propagation.LightMetresPerSecond / (4 * input.Sweep.Si)), "m", Critical);
    });
}
