namespace Fairlead.Calculations.Balance;

/// <summary>A weighing point.</summary>
/// <param name="Name">Name.</param>
/// <param name="Scale">Reading of the scale.</param>
/// <param name="Fs">Fuselage station of the point.</param>
/// <param name="Tare">Chocks and stands on the scale.</param>
/// <param name="Bl">Buttock line of the point.</param>
public sealed record WeighingRow(
    [In("name", "weighing point")] string Name,
    [In("scale", "scale reading", "lb", Min = 0, Max = 500000)] Mass Scale,
    [In("FS", "fuselage station", "in", Min = -2000, Max = 5000)] Length Fs,
    [In("tare", "chocks and stands", "lb", Min = 0, Max = 10000, Default = "none")] Mass Tare = default,
    [In("BL", "buttock line", "in", Min = -2000, Max = 2000, Default = "not known")] Length? Bl = null);

/// <summary>What is added or taken off after weighing to reach the empty weight.</summary>
/// <param name="Name">Name.</param>
/// <param name="Mass">Mass; negative when taken off.</param>
/// <param name="Fs">Its fuselage station.</param>
/// <param name="Bl">Its buttock line.</param>
public sealed record AdjustmentRow(
    [In("name", "adjustment")] string Name,
    [In("m", "mass, negative when taken off", "lb", Min = -100000, Max = 100000)] Mass Mass,
    [In("FS", "fuselage station", "in", Min = -2000, Max = 5000)] Length Fs,
    [In("BL", "buttock line", "in", Min = -2000, Max = 2000, Default = "not known")] Length? Bl = null);

/// <summary>Input of <see cref="Weighing"/>.</summary>
/// <param name="Points">The weighing points, at least two.</param>
/// <param name="Adjustments">Fluids and items added or taken off.</param>
public sealed record WeighingInput(
    [In("points", "weighing points")] Sequence<WeighingRow> Points,
    [In("adjust", "added or taken off after weighing", Default = "none")] Sequence<AdjustmentRow> Adjustments = default);

/// <summary>Empty weight from scale readings: net = scale − tare at each point, W = Σ net + Σ adjustments, x = Σ mass · arm / W.</summary>
/// <remarks>
/// Check value: mains 650 and 640 lb at +70 in, nose 225 lb at −30 in, tare 5, 5 and 2.5 lb, 177 lb of fuel off at +95 in, 6 lb of
/// unusable fuel on at +98 in: 1,331.5 lb at +50.09 in (FAA-H-8083-30, ch. 4).
/// </remarks>
public sealed class Weighing : ICalculation<WeighingInput>
{
    private static readonly Source Method = BalanceSources.Circular("10-2r and 10-15");

    /// <inheritdoc/>
    public static CalculationInfo<WeighingInput> Info { get; } = new(
        "weighing", "Weighing", Discipline.Balance,
        "Empty weight and centre of gravity from the scales",
        "points='left main,650 lb,70 in,5 lb;right main,640 lb,70 in,5 lb;nose,225 lb,-30 in,2.5 lb' adjust='fuel,-177 lb,95 in;unusable fuel,6 lb,98 in'",
        Method, new Source("FAA-H-8083-30", "2008", "ch. 4, fig. 4-20", Basis.Memory));

    /// <inheritdoc/>
    public static Sheet Run(WeighingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Points.Count < 2 || input.Points.Any(p => p.Tare > p.Scale))
        {
            s.CannotTell("At least two weighing points are needed, none with more tare than its scale reads.");
            return;
        }

        var net = s.Step("Wn", "as weighed, net", "sum of scale − tare", new Mass(input.Points.Sum(p => (p.Scale - p.Tare).Si)), "lb", Method);
        var adjust = s.Step("Wa", "adjustments", "sum of the adjustments", new Mass(input.Adjustments.Sum(a => a.Mass.Si)), "lb");
        if (net.Si <= 0 || (net + adjust).Si <= 0)
        {
            s.CannotTell("No mass is left on the scales.");
            return;
        }

        var mass = s.Step("W", "empty weight", "Wn + Wa", net + adjust, "lb");
        var m = s.Step("Mn", "moment as weighed", "sum of net · arm", new MassMoment(input.Points.Sum(p => (p.Scale - p.Tare).Si * p.Fs.Si)), "lb·in");
        s.Step("FSn", "centre of gravity as weighed", "Mn / Wn", m / net, "in");
        var ma = s.Step("Ma", "moment of the adjustments", "sum of mass · arm", new MassMoment(input.Adjustments.Sum(a => a.Mass.Si * a.Fs.Si)), "lb·in");
        s.Step("FS", "centre of gravity, empty", "(Mn + Ma) / W", (m + ma) / mass, "in");
        if (input.Points.All(p => p.Bl is not null) && input.Adjustments.All(a => a.Bl is not null))
        {
            var lateral = s.Step("ML", "lateral moment", "sum of mass · buttock line", new MassMoment(
                input.Points.Sum(p => (p.Scale - p.Tare).Si * p.Bl!.Value.Si) + input.Adjustments.Sum(a => a.Mass.Si * a.Bl!.Value.Si)), "lb·in");
            s.Step("BL", "buttock line of the centre of gravity, empty", "ML / W", lateral / mass, "in");
        }

        s.Caution("Weigh clean, level, in a closed building, with everything of the equipment list fitted and scales within their calibration; say whether oil is in.");
    });
}
