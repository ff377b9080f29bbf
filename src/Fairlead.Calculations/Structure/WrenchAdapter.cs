namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="WrenchAdapter"/>.</summary>
/// <param name="Torque">Torque wanted at the nut.</param>
/// <param name="Lever">Length of the wrench from its square to the middle of the grip.</param>
/// <param name="Adapter">Length of the adapter from the square to the nut, negative when it points back.</param>
public sealed record WrenchAdapterInput(
    [In("T", "torque wanted at the nut", "lbf·in", Min = 0, Max = 50000)] Torque Torque,
    [In("L", "length of the wrench", "in", Min = 1, Max = 100)] Length Lever,
    [In("A", "length of the adapter, negative when it points back", "in", Min = -50, Max = 50)] Length Adapter);

/// <summary>What a torque wrench with an adapter shall show: Tw = T · L / (L + A).</summary>
/// <remarks>Check value: 300 in-lb, wrench 10 in, adapter 4 in: 214.29, printed 214 (TM 1-1500-204-23-9).</remarks>
public sealed class WrenchAdapter : ICalculation<WrenchAdapterInput>
{
    private static readonly Source Formula = new("TM 1-1500-204-23-9", "", "torque wrench adapters");

    /// <inheritdoc/>
    public static CalculationInfo<WrenchAdapterInput> Info { get; } = new(
        "wrench-adapter", "Torque wrench with adapter", Discipline.Structure,
        "What a torque wrench shall show when an adapter lengthens it", "T='300 lbf in' L='10 in' A='4 in'", Formula);

    /// <inheritdoc/>
    public static Sheet Run(WrenchAdapterInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var lever = s.Step("Le", "lever with the adapter", "L + A", input.Lever + input.Adapter, "in");
        if (lever.Si <= 0)
        {
            s.CannotTell("The adapter points back as far as the grip: the wrench turns nothing.");
            return;
        }

        s.Step("Tw", "torque the wrench shall show", "T · L / Le", input.Torque * (input.Lever / lever), "lbf·in", Formula);
        s.Caution("The adapter in line with the wrench; at a right angle it changes nothing. The wrench within its calibration.");
    });
}
