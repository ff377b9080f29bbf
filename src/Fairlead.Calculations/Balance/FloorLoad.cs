namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="FloorLoad"/>.</summary>
/// <param name="Limit">Floor limit.</param>
/// <param name="Length">Length of the pallet or base.</param>
/// <param name="Width">Its width.</param>
/// <param name="Base">Mass of the pallet or base.</param>
/// <param name="Ties">Mass of the tie-downs.</param>
/// <param name="Item">Mass of the item, to be checked.</param>
public sealed record FloorLoadInput(
    [In("q", "floor limit", "lb/ft²", Min = 0.1, Max = 10000)] AreaMass Limit,
    [In("l", "length of the base", "in", Min = 0.1, Max = 2000)] Length Length,
    [In("b", "width of the base", "in", Min = 0.1, Max = 2000)] Length Width,
    [In("Wp", "mass of the base", "lb", Min = 0, Max = 100000, Default = "none")] Mass Base = default,
    [In("Wt", "mass of the tie-downs", "lb", Min = 0, Max = 100000, Default = "none")] Mass Ties = default,
    [In("Wi", "mass of the item", "lb", Min = 0, Max = 100000, Default = "not checked")] Mass? Item = null);

/// <summary>Greatest mass on a floor: Wmax = q · l · b − base − ties.</summary>
/// <remarks>Check value: 169 lb/ft² under a base of 36 in by 48 in, 47 lb with 33 lb of ties: 1,948 lb (FAA-H-8083-1B).</remarks>
public sealed class FloorLoad : ICalculation<FloorLoadInput>
{
    private static readonly Source Formula = new("FAA-H-8083-1B", "2016", "floor load limits", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<FloorLoadInput> Info { get; } = new(
        "floor-load", "Floor load", Discipline.Balance,
        "The greatest mass a floor allows on a base", "q='169 lb/ft2' l='36 in' b='48 in' Wp='47 lb' Wt='33 lb'", Formula);

    /// <inheritdoc/>
    public static Sheet Run(FloorLoadInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var area = s.Step("A", "area of the base", "l · b", new Area(input.Length.Si * input.Width.Si), "ft²");
        var floor = s.Step("Wf", "mass the floor allows", "q · A", input.Limit * area, "lb", Formula);
        var item = s.Step("Wmax", "greatest mass of the item", "Wf − Wp − Wt", floor - input.Base - input.Ties, "lb", Formula);
        s.Check("base and tie-downs", (input.Base + input.Ties).As("lb"), Sense.AtMost, floor.As("lb"), "the base and tie-downs alone stay within the floor limit", Formula);
        if (input.Item is { } mass)
        {
            s.Check("item", mass.As("lb"), Sense.AtMost, item.As("lb"), "item, base and tie-downs stay within the floor limit", Formula);
        }

        s.Caution("A load spread evenly over the whole base; feet and edges press harder.");
    });
}
