namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="MinimumFuel"/>.</summary>
/// <param name="Engines">Maximum except take-off power of all engines together.</param>
/// <param name="Density">Density of the fuel.</param>
public sealed record MinimumFuelInput(
    [In("P", "maximum except take-off power, all engines", "hp", Min = 1, Max = 100000)] Wattage Engines,
    [In("rho", "density of the fuel", "lb/gal", Min = 4, Max = 9)] Density Density);

/// <summary>Minimum fuel for forward loading checks: 1/12 US gallon for each horsepower of maximum except take-off power.</summary>
/// <remarks>Check value: 165 hp and 6 lb/gal: 13.75 gal, 82.5 lb, printed as 83 (AC 43.13-1B, fig. 10-10).</remarks>
public sealed class MinimumFuel : ICalculation<MinimumFuelInput>
{
    private static readonly Source Rule = BalanceSources.Circular("10-2p");

    /// <inheritdoc/>
    public static CalculationInfo<MinimumFuelInput> Info { get; } = new(
        "minimum-fuel", "Minimum fuel", Discipline.Balance,
        "The fuel that counts as minimum in the loading checks", "P='165 hp' rho='6 lb/gal'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(MinimumFuelInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var volume = s.Step("V", "minimum fuel, volume", "P / 12 gallons for each horsepower", Volume.Of(input.Engines.In("hp") / 12, "gal"), "gal", Rule);
        s.Step("Wfuel", "minimum fuel, mass", "rho · V", input.Density * volume, "lb", Rule);
        s.Caution("A figure for loading checks only; the fuel a flight needs is another matter.");
    });
}
