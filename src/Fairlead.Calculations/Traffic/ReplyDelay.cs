using Fairlead.Calculations.Radio;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="ReplyDelay"/>.</summary>
/// <param name="Range">Range of the transponder.</param>
/// <param name="Delay">Delay measured from the last interrogation pulse (Mode S: the phase reversal) to the first reply pulse, instead.</param>
/// <param name="Kind">Kind of interrogation.</param>
public sealed record ReplyDelayInput(
    [In("R", "range of the transponder", "nmi", Min = 0, Max = 500, Default = "by delay")] Length? Range = null,
    [In("t", "delay from interrogation to reply", "µs", Min = 0, Max = 7000, Default = "by range")] Duration? Delay = null,
    [In("kind", "kind of interrogation", Default = "mode-c")] ReplyKind Kind = ReplyKind.ModeC);

/// <summary>Delay of a reply for a range, and range for a delay: the way there and back and the turn-round of the transponder.</summary>
/// <remarks>Check values: 5 nmi in Mode C is 64.776 µs after P3 and 85.776 µs after P1; ±0.5 µs of turn-round is ±0.0405 nmi.</remarks>
public sealed class ReplyDelay : ICalculation<ReplyDelayInput>
{
    private static readonly Source Turn = new("ICAO Annex 10 Vol IV", "", "3.1.1.7.10 and 3.1.2.10: 3.0 ± 0.5 µs, 128 ± 0.25 µs", Basis.Memory);
    private static readonly Source Pulses = new("The 1090 megahertz riddle", "299a40cc", "P1 to P3: 8 µs (Mode A), 21 µs (Mode C)");
    private static readonly Source Travel = new("Travel time", "", "2R/c", Basis.Derived);

    /// <inheritdoc/>
    public static CalculationInfo<ReplyDelayInput> Info { get; } = new(
        "reply-delay", "Reply delay and range", Discipline.Traffic, "Which delay a range is, and back", "R='5 nmi' kind=mode-c", Turn, Travel);

    /// <summary>Tolerance of the transponder's turn-round.</summary>
    public static Duration Tolerance(ReplyKind kind) => Duration.Of(kind == ReplyKind.ModeS ? 0.25 : 0.5, "µs");

    /// <inheritdoc/>
    public static Sheet Run(ReplyDelayInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Range is null == input.Delay is null)
        {
            s.CannotTell("Give either a range (R) or a delay (t).");
            return;
        }

        var turn = s.Step("tt", "turn-round of the transponder", "by kind", RampTest.TurnRound(input.Kind), "µs", Turn);
        var tolerance = s.Step("dtt", "its tolerance, either way", "by kind", Tolerance(input.Kind), "µs", Turn);
        var range = input.Range ?? Measured(s, input.Delay!.Value, turn);
        if (range.Si < 0)
        {
            s.CannotTell("The reply comes sooner than the transponder's turn-round.");
            return;
        }

        var trip = s.Step("tr", "way there and back", input.Range is null ? "t − tt" : "2 · R / (299792458 m/s)", Propagation.Delay(range) * 2, "µs", Travel);
        var delay = s.Step("td", "delay from the last interrogation pulse", "tr + tt", trip + turn, "µs");
        if (input.Kind != ReplyKind.ModeS)
        {
            var spacing = s.Step("tp", "P1 to P3", "by kind", Duration.Of(input.Kind == ReplyKind.ModeA ? 8 : 21, "µs"), "µs", Pulses);
            s.Step("t1", "delay from P1", "td + tp", delay + spacing, "µs");
        }

        s.Step("dR", "range error of that tolerance, either way", "299792458 m/s · dtt / 2", Propagation.Distance(tolerance) / 2, "nmi", Travel);
    });

    private static Length Measured(SheetBuilder s, Duration delay, Duration turn) =>
        s.Step("Rm", "range measured", "299792458 m/s · (t − tt) / 2", Propagation.Distance(delay - turn) / 2, "nmi", Travel);
}
