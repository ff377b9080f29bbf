namespace Fairlead.Calculations.Environment;

/// <summary>Input of <see cref="BayHeat"/>.</summary>
/// <param name="Heat">Heat given off in the bay.</param>
/// <param name="Area">Surface of the bay through which it leaves.</param>
/// <param name="Ambient">Temperature without that heat.</param>
/// <param name="Transfer">Heat transfer coefficient from the air inside to the air outside, in W/(m²·K).</param>
/// <param name="Limit">Highest temperature allowed in the bay.</param>
public sealed record BayHeatInput(
    [In("P", "heat given off in the bay", "W", Min = 0, Max = 20000)] Wattage Heat,
    [In("A", "surface of the bay through which it leaves", "m²", Min = 0.01, Max = 1000)] Area Area,
    [In("Ta", "temperature without that heat", "°C", Min = -90, Max = 300)] Temperature Ambient,
    [In("h", "heat transfer coefficient, air inside to air outside, in W/(m²·K)", Min = 1, Max = 100, Default = "4.6, closed sheet-metal boxes in still air")] double? Transfer = null,
    [In("Tlim", "highest temperature allowed in the bay", "°C", Min = -90, Max = 300, Default = "not checked")] Temperature? Limit = null);

/// <summary>Temperature in a closed bay, steady state: ΔT = P / (h · A).</summary>
/// <remarks>Check value: 500 W from 6.06 m² of painted sheet steel, 5.5 W/(m²·K), rise 15 K (trade guides on closed boxes).</remarks>
public sealed class BayHeat : ICalculation<BayHeatInput>
{
    private const double StillAir = 4.6;

    // The coefficient grows with the rise; far above the rises it was found at it says nothing useful.
    private const double GreatestRise = 60;

    private static readonly Source Balance = new("Steady heat balance of a closed bay", "", "", Basis.Derived);
    private static readonly Source Practice = new("Trade charts for closed sheet-metal boxes", "", "7.1 W/ft² for a rise of 30 °F", Basis.CommonPractice);

    /// <inheritdoc/>
    public static CalculationInfo<BayHeatInput> Info { get; } = new(
        "bay-heat", "Heat in a closed bay", Discipline.Environment,
        "How warm a closed bay gets by the heat of the equipment in it", "P='106 W' A='6.5 m2' Ta='60 degC' Tlim='70 degC'", Balance, Practice);

    /// <inheritdoc/>
    public static Sheet Run(BayHeatInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var h = input.Transfer ?? s.Step("h", "heat transfer coefficient in W/(m²·K), as none is stated", "closed sheet-metal boxes in still air", StillAir, Practice);
        var rise = s.Step("dT", "temperature rise", "P / (h · A)", new TemperatureRise(input.Heat.Si / (h * input.Area.Si)), "°C", Balance);
        if (rise.Si > GreatestRise)
        {
            s.CannotTell($"The rise exceeds {NumberFormat.Text(GreatestRise)} °C, where a fixed coefficient no longer describes the bay.");
            return;
        }

        var inside = s.Step("T", "temperature in the bay", "Ta + dT", new Temperature(input.Ambient.Si + rise.Si), "°C");
        if (input.Limit is { } limit)
        {
            s.Check("temperature in the bay", inside.As("°C"), Sense.AtMost, limit.As("°C"), "the bay stays no warmer than its equipment is qualified for", Balance);
        }

        s.Caution("Air next to a box is warmer than the bay's mean, small rises move less air than the coefficient assumes, and sun on the skin adds to the ambient. Measure the bay in service where the margin is small.");
    });
}
