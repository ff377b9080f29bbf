namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="CoaxDelay"/>.</summary>
/// <param name="Length">Length of cable.</param>
/// <param name="Cable">Cable of the table.</param>
/// <param name="Velocity">Velocity factor from the cable's sheet.</param>
/// <param name="Frequency">Frequency, for the electrical length.</param>
/// <param name="Capacitance">Capacitance from the cable's sheet, pF/ft, for the impedance.</param>
public sealed record CoaxDelayInput(
    [In("L", "length of cable", "ft", Min = 0, Max = 100000)] Length Length,
    [In("cable", "cable of the table", Default = "by velocity")] Coax? Cable = null,
    [In("vf", "velocity over that of light", "%", Min = 30, Max = 100, Default = "by cable")] Fraction? Velocity = null,
    [In("f", "frequency", "MHz", Min = 0.1, Max = 40000, Default = "not used")] Frequency? Frequency = null,
    [In("C", "capacitance (pF/ft)", Min = 1, Max = 200, Default = "not used")] double? Capacitance = null);

/// <summary>Delay of a coaxial cable, the height a radio altimeter would read into it, its electrical length and the impedance its velocity and capacitance imply.</summary>
/// <remarks>Check values: 69.5 % is 1.46288 ns/ft; 139.0 ft of it stands for 100 ft of radio height; 69.5 % and 29.4 pF/ft are 49.758 Ω.</remarks>
public sealed class CoaxDelay : ICalculation<CoaxDelayInput>
{
    private static readonly Source Travel = new("Travel time", "", "L / (vf·c)", Basis.Derived);
    private static readonly Source Impedance = new("MIL-DTL-28830E", "", "para 4.7.10.2");

    /// <inheritdoc/>
    public static CalculationInfo<CoaxDelayInput> Info { get; } = new(
        "coax-delay", "Delay of a coaxial cable", Discipline.Radio,
        "How long a cable delays a signal, and what height or phase that is", "L='40 ft' cable=rg142 f='4300 MHz'", Travel);

    /// <inheritdoc/>
    public static Sheet Run(CoaxDelayInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (CoaxVelocity.Add(s, "v", input.Cable, input.Velocity) is not { } velocity)
        {
            return;
        }

        s.Step("tf", "delay of a foot", "1 ft / (v · 299792458 m/s)", CoaxVelocity.Delay(Length.Of(1, "ft"), velocity), "ns", Travel);
        var delay = s.Step("t", "delay", "L · tf", CoaxVelocity.Delay(input.Length, velocity), "ns", Travel);
        s.Step("h", "radio height with the same delay", "299792458 m/s · t / 2", Propagation.Distance(delay) / 2, "ft", Travel);
        if (input.Frequency is { } frequency)
        {
            s.Step("N", "electrical length (wavelengths)", "f · t", frequency.Si * delay.Si);
        }

        if (input.Capacitance is { } capacitance)
        {
            s.Step("Z0", "characteristic impedance", "101670 / (v in % · C)", new Resistance(101670 / (velocity.In("%") * capacitance)), "Ω", Impedance);
        }
    });
}
