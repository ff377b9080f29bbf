namespace Fairlead.Calculations.Environment;

/// <summary>Input of <see cref="LineClearance"/>.</summary>
/// <param name="Fluid">Clearance from the nearest flammable-fluid, fuel or oxygen line or fuel tank wall.</param>
/// <param name="Control">Clearance from the nearest moving control, wires pressed lightly towards it.</param>
/// <param name="Supported">Whether the wires are closely clamped and rigidly supported.</param>
/// <param name="Above">Whether the wires run above the fluid line.</param>
public sealed record LineClearanceInput(
    [In("fluid", "clearance from the nearest flammable-fluid, fuel or oxygen line", "in", Min = 0, Max = 5000, Default = "not checked")] Length? Fluid = null,
    [In("control", "clearance from the nearest moving control", "in", Min = 0, Max = 5000, Default = "not checked")] Length? Control = null,
    [In("supported", "wires closely clamped and rigidly supported, so that a broken wire and one missing clamp do not let them touch", Default = "not known")] bool? Supported = null,
    [In("above", "wires above the fluid line", Default = "not known")] bool? Above = null);

/// <summary>Clearance of a wire run from fluid lines and moving controls: 6 in from a flammable-fluid, fuel or oxygen line, never less than 2 in,
/// and between the two only closely clamped and rigidly supported; 1/2 in from a moving control.</summary>
/// <remarks>Check value: 3 in from a fuel line holds when closely clamped and rigidly supported, 1.9 in never does.</remarks>
public sealed class LineClearance : ICalculation<LineClearanceInput>
{
    private static readonly Source Fluids = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "11-96 w");
    private static readonly Source Controls = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "11-125", Basis.Memory);
    private static readonly Source Above = new("TM 1-1500-204-23-4", "", "wires above fluid lines");

    /// <inheritdoc/>
    public static CalculationInfo<LineClearanceInput> Info { get; } = new(
        "line-clearance", "Clearance from lines and controls", Discipline.Environment,
        "Whether wires keep clear of fluid and oxygen lines and of moving controls", "fluid='3 in' control='1.5 in' supported=yes", Fluids, Controls);

    /// <inheritdoc/>
    public static Sheet Run(LineClearanceInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input is { Fluid: null, Control: null })
        {
            s.CannotTell("Give the clearance from the nearest fluid line, from the nearest moving control, or both.");
            return;
        }

        if (input.Fluid is { } fluid)
        {
            Fluid(s, fluid, input.Supported, input.Above);
        }

        if (input.Control is { } control)
        {
            s.Check("clearance from a moving control", control.As("in"), Sense.AtLeast, Length.Of(0.5, "in").As("in"), "wires pressed lightly towards a moving control stay 1/2 in away from it", Controls);
            s.Caution("Move every control from stop to stop with the bundles dressed, and look along its whole way.");
        }
    });

    private static void Fluid(SheetBuilder s, Length fluid, bool? supported, bool? above)
    {
        s.Check("clearance from a fluid or oxygen line", fluid.As("in"), Sense.AtLeast, Length.Of(2, "in").As("in"), "wires come no nearer than 2 in to a flammable-fluid, fuel or oxygen line", Fluids);
        if (supported != true)
        {
            s.Check(
                "clearance from a fluid or oxygen line without rigid support", fluid.As("in"), Sense.AtLeast, Length.Of(6, "in").As("in"),
                "wires nearer than 6 in are closely clamped and rigidly supported, so that a broken wire and one missing clamp do not let them touch the line", Fluids,
                supported == false ? Verdict.Fails : Verdict.Caution);
        }

        if (above == false && fluid < Length.Of(6, "in"))
        {
            s.Uses(Above);
            s.Caution("Within 6 in of a fluid line wires run above it, never below, and are never tied to it.", affectsVerdict: true);
        }
    }
}
