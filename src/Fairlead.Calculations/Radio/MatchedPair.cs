namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="MatchedPair"/>.</summary>
/// <param name="FirstLength">Length of the first cable.</param>
/// <param name="SecondLength">Length of the second cable.</param>
/// <param name="Cable">Cable of the table.</param>
/// <param name="Velocity">Velocity factor of both, or of the first.</param>
/// <param name="SecondVelocity">Velocity factor of the second where it differs.</param>
/// <param name="Frequency">Frequency, for the phase.</param>
/// <param name="MaxDifference">Greatest difference of delay allowed.</param>
/// <param name="MaxPhase">Greatest difference of phase allowed.</param>
public sealed record MatchedPairInput(
    [In("L1", "length of the first cable", "ft", Min = 0, Max = 1000)] Length FirstLength,
    [In("L2", "length of the second cable", "ft", Min = 0, Max = 1000)] Length SecondLength,
    [In("cable", "cable of the table", Default = "by velocity")] Coax? Cable = null,
    [In("vf", "velocity over that of light", "%", Min = 30, Max = 100, Default = "by cable")] Fraction? Velocity = null,
    [In("vf2", "velocity in the second cable", "%", Min = 30, Max = 100, Default = "the first's")] Fraction? SecondVelocity = null,
    [In("f", "frequency", "MHz", Min = 0.1, Max = 40000, Default = "not used")] Frequency? Frequency = null,
    [In("dtmax", "greatest difference of delay", "ns", Min = 0, Max = 10000, Default = "not checked")] Duration? MaxDifference = null,
    [In("dphimax", "greatest difference of phase", "°", Min = 0, Max = 360, Default = "not checked")] Angle? MaxPhase = null);

/// <summary>Two cables that must match: the difference of their delays, and of the phase they turn at a frequency.</summary>
/// <remarks>Check value: one inch more of cable with 69.5 % is 0.1219 ns, and 47.84° at 1090 MHz.</remarks>
public sealed class MatchedPair : ICalculation<MatchedPairInput>
{
    private static readonly Source Travel = new("Travel time", "", "L / (vf·c)", Basis.Derived);

    /// <inheritdoc/>
    public static CalculationInfo<MatchedPairInput> Info { get; } = new(
        "matched-pair", "Matched pair of coaxial cables", Discipline.Radio,
        "By how much two cables differ in delay and phase", "L1='14 ft 2 in' L2='14 ft' cable=rg400 f='1090 MHz' dtmax='0.5 ns'", Travel);

    /// <inheritdoc/>
    public static Sheet Run(MatchedPairInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (CoaxVelocity.Add(s, "v1", input.Cable, input.Velocity) is not { } first)
        {
            return;
        }

        var second = input.SecondVelocity is { } own ? s.Step("v2", "velocity in the second", "vf2", own, "%", RadioSources.Stated) : s.Step("v2", "velocity in the second", "v1", first, "%");
        var t1 = s.Step("t1", "delay of the first", "L1 / (v1 · 299792458 m/s)", CoaxVelocity.Delay(input.FirstLength, first), "ns", Travel);
        var t2 = s.Step("t2", "delay of the second", "L2 / (v2 · 299792458 m/s)", CoaxVelocity.Delay(input.SecondLength, second), "ns", Travel);
        var difference = s.Step("dt", "difference of delay", "|t1 − t2|", new Duration(Math.Abs((t1 - t2).Si)), "ns");
        if (input.MaxDifference is { } max)
        {
            s.Check("difference of delay", difference.As("ns"), Sense.AtMost, max.As("ns"), "the pair matches in delay", RadioSources.Stated);
        }

        if (input.Frequency is { } frequency)
        {
            var phase = s.Step("dphi", "difference of phase", "360° · f · dt", Angle.Of(360 * frequency.Si * difference.Si, "°"), "°");
            if (input.MaxPhase is { } most)
            {
                s.Check("difference of phase", phase.As("°"), Sense.AtMost, most.As("°"), "the pair matches in phase", RadioSources.Stated);
            }
        }
        else if (input.MaxPhase is not null)
        {
            s.CannotTell("A phase needs a frequency (f).");
        }
    });
}
