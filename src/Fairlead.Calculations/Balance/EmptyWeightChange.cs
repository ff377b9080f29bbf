namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="EmptyWeightChange"/>.</summary>
/// <param name="Mass">Empty weight before.</param>
/// <param name="Fs">Fuselage station of its centre of gravity.</param>
/// <param name="Removed">Items that come out.</param>
/// <param name="Fitted">Items that go in.</param>
/// <param name="Bl">Buttock line of the centre of gravity before, if known.</param>
/// <param name="Wl">Waterline of it, if known.</param>
public sealed record EmptyWeightChangeInput(
    [In("W0", "empty weight before", "lb", Min = 1, Max = 500000)] Mass Mass,
    [In("FS0", "fuselage station of its centre of gravity", "in", Min = -2000, Max = 5000)] Length Fs,
    [In("removed", "items that come out", Default = "none")] Sequence<ItemRow> Removed = default,
    [In("fitted", "items that go in", Default = "none")] Sequence<ItemRow> Fitted = default,
    [In("BL0", "buttock line of the centre of gravity before", "in", Min = -2000, Max = 2000, Default = "not known")] Length? Bl = null,
    [In("WL0", "waterline of the centre of gravity before", "in", Min = -2000, Max = 2000, Default = "not known")] Length? Wl = null);

/// <summary>New empty weight and centre of gravity after an equipment change: W = W0 − Wr + Wf and, on each axis, x = (M0 − Mr + Mf)/W.</summary>
/// <remarks>
/// Check value: 2,886 lb at 35.23 in, two seats of 15 lb out at 71, a cabinet of 97 lb and a seat of 20 lb in at 71, radio of 30 lb in at 94:
/// 3,003 lb at 36.853 in, 1.62 in further aft (FAA mechanic test item).
/// </remarks>
public sealed class EmptyWeightChange : ICalculation<EmptyWeightChangeInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<EmptyWeightChangeInput> Info { get; } = new(
        "empty-weight-change", "Empty weight after an equipment change", Discipline.Balance,
        "New empty weight and centre of gravity in up to three axes",
        "W0='2886 lb' FS0='35.23 in' removed='two seats,30 lb,71 in' fitted='cabinet,97 lb,71 in;seat,20 lb,71 in;radio,30 lb,94 in'",
        BalanceSources.Circular("10-2"), BalanceSources.Handbook);

    /// <inheritdoc/>
    public static Sheet Run(EmptyWeightChangeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var removed = s.Step("Wr", "mass removed", "sum of the items that come out", Sum(input.Removed), "lb");
        var fitted = s.Step("Wf", "mass fitted", "sum of the items that go in", Sum(input.Fitted), "lb");
        var mass = input.Mass - removed + fitted;
        if (mass.Si <= 0)
        {
            s.CannotTell("More mass comes out than the aircraft weighs: the items removed do not belong to this empty weight.");
            return;
        }

        s.Step("W", "empty weight after", "W0 − Wr + Wf", mass, "lb");
        s.Step("dW", "change of empty weight", "W − W0", mass - input.Mass, "lb");
        Along(s, Axis.Station, input.Fs, input, mass);
        Along(s, Axis.Buttock, input.Bl, input, mass);
        Along(s, Axis.Waterline, input.Wl, input, mass);
        s.Caution("Weigh the items that are fitted and removed, or use their data sheets; amend the equipment list in the same go.");
    });

    private static void Along(SheetBuilder s, Axis axis, Length? before, EmptyWeightChangeInput input, Mass mass)
    {
        if (before is not { } x0)
        {
            return;
        }

        if (!axis.Covers(input.Removed) || !axis.Covers(input.Fitted))
        {
            s.Caution($"The {axis.Meaning} of the centre of gravity is not worked out: an item has none.");
            return;
        }

        var (n, x) = (axis.Letter, axis.Symbol);
        var m0 = s.Step($"M{n}0", $"moment before ({axis.Meaning})", $"W0 · {x}0", input.Mass * x0, "lb·in");
        var mr = s.Step($"M{n}r", $"moment removed ({axis.Meaning})", "sum of mass · arm of the items that come out", axis.Moment(input.Removed), "lb·in");
        var mf = s.Step($"M{n}f", $"moment fitted ({axis.Meaning})", "sum of mass · arm of the items that go in", axis.Moment(input.Fitted), "lb·in");
        var m = s.Step($"M{n}", $"moment after ({axis.Meaning})", $"M{n}0 − M{n}r + M{n}f", m0 - mr + mf, "lb·in");
        var after = s.Step(x, $"{axis.Meaning} of the centre of gravity after", $"M{n} / W", m / mass, "in");
        s.Step($"d{x}", $"change of {axis.Meaning}", $"{x} − {x}0", after - x0, "in");
    }

    private static Mass Sum(Sequence<ItemRow> items) => new(items.Sum(i => i.Mass.Si));
}
