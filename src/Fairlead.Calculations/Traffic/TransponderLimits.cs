using Fairlead.Calculations.Radio;

namespace Fairlead.Calculations.Traffic;

/// <summary>Kind of transponder.</summary>
public enum TransponderKind
{
    /// <summary>Mode A and C, class 1A or 2A.</summary>
    ModeACHigh,

    /// <summary>Mode A and C, class 1B or 2B.</summary>
    ModeACLow,

    /// <summary>Mode S, class 1A, 2A, 3A or 4.</summary>
    ModeSHigh,

    /// <summary>Mode S, class 1B, 2B or 3B.</summary>
    ModeSLow,
}

/// <summary>Input of <see cref="TransponderLimits"/>.</summary>
/// <param name="Kind">Kind of transponder.</param>
/// <param name="Frequency">Frequency of the reply.</param>
/// <param name="Power">Peak power at the antenna end of the line.</param>
/// <param name="EqualReplies">Replies while P2 is as strong as P1.</param>
/// <param name="WeakReplies">Replies while P2 is 9 dB weaker than P1.</param>
/// <param name="Diversity">By how much the antenna selected is stronger than the other, dB.</param>
/// <param name="Squitters">Acquisition squitters in a second.</param>
public sealed record TransponderLimitsInput(
    [In("kind", "kind of transponder")] TransponderKind Kind,
    [In("f", "frequency of the reply", "MHz", Min = 1000, Max = 1200, Default = "not measured")] Frequency? Frequency = null,
    [In("P", "peak power at the antenna end of the line", "W", Min = 0.1, Max = 10000, Default = "not measured")] Wattage? Power = null,
    [In("eq", "replies while P2 is as strong as P1", "%", Min = 0, Max = 100, Default = "not measured")] Fraction? EqualReplies = null,
    [In("weak", "replies while P2 is 9 dB weaker than P1", "%", Min = 0, Max = 100, Default = "not measured")] Fraction? WeakReplies = null,
    [In("div", "by how much the antenna selected is stronger than the other (dB)", Min = -100, Max = 100, Default = "not measured")] double? Diversity = null,
    [In("rate", "acquisition squitters in a second", Min = 0, Max = 100, Default = "not measured")] double? Squitters = null);

/// <summary>Measured values of a transponder against 14 CFR 43 appendix F.</summary>
/// <remarks>Range: the values measured; those left out are not judged. Check values: 1092.9 MHz holds for mode A and C and fails for a mode S of class A, which
/// has ±1 MHz; 70.8 W is 18.5 dBW; 501.2 W is 27 dBW. The floors of powers print as 125 W and as 21.0 dBW, 125.9 W: the greater is taken.</remarks>
public sealed class TransponderLimits : ICalculation<TransponderLimitsInput>
{
    private static readonly Source Rule = new("14 CFR 43 appendix F", "2014 annual edition", "(a), (b), (e), (j), (d)(1)(iv) and (v)");
    private static readonly Source Recalled = new("14 CFR 43 appendix F", "", "(d)(1)(i) to (iii)", Basis.Memory);

    private static readonly Source About = new("14 CFR 43 appendix F", "", "(j) says about once a second; a fifth more or less is taken", Basis.CommonPractice);

    /// <inheritdoc/>
    public static CalculationInfo<TransponderLimitsInput> Info { get; } = new(
        "transponder-limits", "Transponder test limits", Discipline.Traffic,
        "Whether what was measured of a transponder meets the two-year test", "kind=mode-s-high f='1090.4 MHz' P='180 W' eq='0 %' weak='97 %' div=24 rate=1", Rule);

    /// <inheritdoc/>
    public static Sheet Run(TransponderLimitsInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input is { Frequency: null, Power: null, EqualReplies: null, WeakReplies: null, Diversity: null, Squitters: null })
        {
            s.CannotTell("Give at least one measured value.");
            return;
        }

        if (input.Frequency is { } f)
        {
            var off = s.Step("df", "off 1090 MHz", "|f − 1090 MHz|", new Frequency(Math.Abs(f.Si - 1090e6)), "MHz", Rule);
            s.Check("frequency", off.As("MHz"), Sense.AtMost, Frequency.Of(input.Kind == TransponderKind.ModeSHigh ? 1 : 3, "MHz").As("MHz"), "the reply is on its frequency", Rule);
        }

        if (input.Power is { } power)
        {
            Power(s, input.Kind, power);
        }

        if (input.EqualReplies is { } equal)
        {
            s.Check("side lobe", equal.As("%"), Sense.AtMost, Fraction.Of(1, "%").As("%"), "it stays silent while P2 is as strong as P1", Rule);
        }

        if (input.WeakReplies is { } weak)
        {
            s.Check("main lobe", weak.As("%"), Sense.AtLeast, Fraction.Of(90, "%").As("%"), "it replies while P2 is 9 dB weaker than P1", Rule);
        }

        if (input.Diversity is { } apart)
        {
            s.Check("diversity", Measure.Number(apart), Sense.AtLeast, Measure.Number(20), "the antenna selected is 20 dB stronger than the other", Rule);
        }

        if (input.Squitters is { } rate)
        {
            s.Check("squitters", Measure.Number(Math.Abs(rate - 1)), Sense.AtMost, Measure.Number(0.2), "it squitters about once a second", About, Verdict.Caution);
        }

        s.Caution("Sensitivity, addresses and formats belong to the two-year test too and are not judged here.");
    });

    private static void Power(SheetBuilder s, TransponderKind kind, Wattage power)
    {
        var level = s.Step("L", "peak power (dBW)", "10 · log10(P / 1 W)", Propagation.Dbm(power) - 30, Rule);
        var high = kind is TransponderKind.ModeACHigh or TransponderKind.ModeSHigh;
        s.Check("least power", Measure.Number(level), Sense.AtLeast, Measure.Number(high ? 21 : 18.5), "it is strong enough to be heard (dBW)", kind == TransponderKind.ModeSLow ? Rule : Recalled);
        s.Check("greatest power", Measure.Number(level), Sense.AtMost, Measure.Number(27), "it is no stronger than it may be (dBW)", Rule);
    }
}
