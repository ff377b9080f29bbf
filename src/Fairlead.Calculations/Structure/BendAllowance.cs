namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="BendAllowance"/>.</summary>
/// <param name="Radius">Inside radius.</param>
/// <param name="Thickness">Sheet thickness.</param>
/// <param name="Angle">Angle the sheet is bent through.</param>
public sealed record BendAllowanceInput(
    [In("R", "inside radius", "in", Min = 0, Max = 10)] Length Radius,
    [In("T", "sheet thickness", "in", Min = 0.005, Max = 0.5)] Length Thickness,
    [In("angle", "angle the sheet is bent through", "°", Min = 0, Max = 170)] Angle Angle);

/// <summary>Bend allowance (0.01743 R + 0.0078 T) · degrees, setback tan(angle/2) · (R + T), and the bend deduction between them.</summary>
/// <remarks>Check values: R .25, T .064, 45°, setback .130 in (AC 43.13-1B 4-56b); R .032, T .050, 90°, allowance .085, deduction .079 in.</remarks>
public sealed class BendAllowance : ICalculation<BendAllowanceInput>
{
    private static readonly Source Empirical = new("Navy aviation structural mechanic course", "", "bend allowance, printed .0173; .01743 is the usual constant", Basis.Memory);
    private static readonly Source Setback = StructureSources.Repair("4-56 and table 4-7");

    /// <inheritdoc/>
    public static CalculationInfo<BendAllowanceInput> Info { get; } = new(
        "bend-allowance", "Bend allowance and setback", Discipline.Structure,
        "Material in a bend, setback and deduction for a flat pattern", "R='0.16 in' T='0.040 in' angle='90 deg'", Setback, Empirical);

    /// <inheritdoc/>
    public static Sheet Run(BendAllowanceInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var allowance = s.Step("BA", "bend allowance", "(0.01743 · R + 0.0078 · T) · angle", ((input.Radius * 0.01743) + (input.Thickness * 0.0078)) * input.Angle.In("°"), "in", Empirical);
        var setback = s.Step("SB", "setback", "tan(angle / 2) · (R + T)", (input.Radius + input.Thickness) * Math.Tan(input.Angle.Si / 2), "in", Setback);
        s.Step("BD", "bend deduction", "2 · SB − BA", (setback * 2) - allowance, "in");
        s.Caution("Keep to the least bend radius of the alloy, temper and thickness (AC 43.13-1B table 4-6) and bend a sample first.");
        s.DeferToApprovedData();
    });
}
