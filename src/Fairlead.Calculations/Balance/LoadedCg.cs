namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="LoadedCg"/>.</summary>
/// <param name="Items">Everything aboard, the empty aircraft included.</param>
/// <param name="MaxMass">Greatest mass.</param>
/// <param name="Forward">Forward limit.</param>
/// <param name="Aft">Aft limit.</param>
/// <param name="Left">Lateral limit to the left.</param>
/// <param name="Right">Lateral limit to the right.</param>
public sealed record LoadedCgInput(
    [In("items", "everything aboard, the empty aircraft included")] Sequence<ItemRow> Items,
    [In("Wmax", "greatest mass", "lb", Min = 1, Max = 1000000, Default = "not checked")] Mass? MaxMass = null,
    [In("fwd", "forward limit", "in", Min = -2000, Max = 5000, Default = "not checked")] Length? Forward = null,
    [In("aft", "aft limit", "in", Min = -2000, Max = 5000, Default = "not checked")] Length? Aft = null,
    [In("left", "lateral limit to the left", "in", Min = -2000, Max = 2000, Default = "not checked")] Length? Left = null,
    [In("right", "lateral limit to the right", "in", Min = -2000, Max = 2000, Default = "not checked")] Length? Right = null);

/// <summary>Centre of gravity of one loading: W = Σ mass, x = Σ mass · arm / W, along and across.</summary>
/// <remarks>
/// Check value: 1,169 lb at 10.6 in, oil 17 lb at −49, pilot 170 lb at 16, minimum fuel 83 lb at 22: 1,439 lb at 11.2 in
/// (AC 43.13-1B, fig. 10-10).
/// </remarks>
public sealed class LoadedCg : ICalculation<LoadedCgInput>
{
    private static readonly Source Method = BalanceSources.Circular("10-17, figs. 10-10 to 10-14");

    /// <inheritdoc/>
    public static CalculationInfo<LoadedCgInput> Info { get; } = new(
        "loaded-cg", "Centre of gravity of a loading", Discipline.Balance,
        "Mass and centre of gravity of one loading, against its limits",
        "items='empty,1169 lb,10.6 in;oil,17 lb,-49 in;pilot,170 lb,16 in;fuel,83 lb,22 in' fwd='8.5 in' aft='21.9 in' Wmax='2100 lb'", Method);

    /// <inheritdoc/>
    public static Sheet Run(LoadedCgInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var total = new Mass(input.Items.Sum(i => i.Mass.Si));
        if (total.Si <= 0)
        {
            s.CannotTell("Nothing aboard has mass.");
            return;
        }

        var mass = s.Step("W", "mass", "sum of the masses", total, "lb");
        var moment = s.Step("M", "moment", "sum of mass · arm", Axis.Station.Moment(input.Items), "lb·in");
        var fs = s.Step("FS", "centre of gravity", "M / W", moment / mass, "in", Method);
        Limit(s, "mass", mass.As("lb"), Sense.AtMost, input.MaxMass?.As("lb"));
        Limit(s, "forward limit", fs.As("in"), Sense.AtLeast, input.Forward?.As("in"));
        Limit(s, "aft limit", fs.As("in"), Sense.AtMost, input.Aft?.As("in"));
        if (Axis.Buttock.Covers(input.Items))
        {
            var lateral = s.Step("ML", "lateral moment", "sum of mass · buttock line", Axis.Buttock.Moment(input.Items), "lb·in");
            var bl = s.Step("BL", "lateral centre of gravity", "ML / W", lateral / mass, "in");
            Limit(s, "left limit", bl.As("in"), Sense.AtLeast, input.Left?.As("in"));
            Limit(s, "right limit", bl.As("in"), Sense.AtMost, input.Right?.As("in"));
        }
        else if (input.Left is not null || input.Right is not null)
        {
            s.CannotTell("The lateral limits cannot be checked: an item has no buttock line.");
        }

        s.Caution("One loading proves nothing about others: 'worst-loading' finds the worst of all that the limits allow.");
    });

    private static void Limit(SheetBuilder s, string name, Measure demand, Sense sense, Measure? limit)
    {
        if (limit is { } there)
        {
            s.Check(name, demand, sense, there, "the loading stays within the limit", Method);
        }
    }
}
