namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="NegligibleChange"/>: give the chord of an aeroplane, or the permitted range of a rotorcraft.</summary>
/// <param name="Mass">Empty weight.</param>
/// <param name="Change">Change of empty weight, either sign.</param>
/// <param name="Shift">Shift of the centre of gravity, either sign.</param>
/// <param name="Mac">Mean aerodynamic chord.</param>
/// <param name="Range">Greatest permitted range of the centre of gravity.</param>
public sealed record NegligibleChangeInput(
    [In("W0", "empty weight", "lb", Min = 1, Max = 1000000)] Mass Mass,
    [In("dW", "change of empty weight", "lb", Min = -100000, Max = 100000)] Mass Change,
    [In("dFS", "shift of the centre of gravity", "in", Min = -500, Max = 500)] Length Shift,
    [In("MAC", "mean aerodynamic chord, for an aeroplane", "in", Min = 1, Max = 1000, Default = "not an aeroplane")] Length? Mac = null,
    [In("range", "permitted range of the centre of gravity, for a rotorcraft", "in", Min = 0.1, Max = 500, Default = "not a rotorcraft")] Length? Range = null);

/// <summary>
/// Whether a change is negligible: up to 1 lb below 5,000 lb empty weight, 2 lb up to 50,000 lb, 5 lb above; and a shift below 0.05 % of
/// the chord, or 0.2 % of a rotorcraft's permitted range.
/// </summary>
/// <remarks>
/// The text assigns exactly 5,000 lb and 50,000 lb to no band; here each belongs to the lower, which allows less.
/// Check value: 1 lb on 4,999 lb with a chord of 60 in and a shift of 0.02 in is negligible: 1 lb and 0.03 in are allowed.
/// </remarks>
public sealed class NegligibleChange : ICalculation<NegligibleChangeInput>
{
    private static readonly Source Rule = BalanceSources.Circular("10-2c");

    /// <inheritdoc/>
    public static CalculationInfo<NegligibleChangeInput> Info { get; } = new(
        "negligible-change", "Negligible weight and balance change", Discipline.Balance,
        "Whether a change is small enough to need no new figures", "W0='4200 lb' dW='0.8 lb' dFS='0.01 in' MAC='60 in'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(NegligibleChangeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Mac is null == input.Range is null)
        {
            s.CannotTell("Give either the chord of an aeroplane or the permitted range of a rotorcraft.");
            return;
        }

        var pounds = input.Mass.In("lb") switch { <= 5000 => 1, <= 50000 => 2, _ => 5 };
        s.Check("change of empty weight", new Mass(Math.Abs(input.Change.Si)).As("lb"), Sense.AtMost, Mass.Of(pounds, "lb").As("lb"), "the change stays within what is negligible; otherwise amend the record", Rule, Verdict.Caution);
        var limit = input.Mac is { } mac
            ? s.Step("dmax", "shift that is negligible", "0.0005 · MAC", mac * 0.0005, "in", Rule)
            : s.Step("dmax", "shift that is negligible", "0.002 · range", input.Range!.Value * 0.002, "in", Rule);
        s.Check("shift of the centre of gravity", new Length(Math.Abs(input.Shift.Si)).As("in"), Sense.AtMost, limit.As("in"), "the change stays within what is negligible; otherwise amend the record", Rule, Verdict.Caution);
    });
}
