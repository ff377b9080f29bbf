namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="SpliceRule"/>.</summary>
/// <param name="Splices">Splices in the wire segment between two connectors or disconnects.</param>
/// <param name="ToTermination">Distance from the nearest splice to a termination device.</param>
/// <param name="Excepted">Whether one of the circular's exceptions applies.</param>
public sealed record SpliceRuleInput(
    [In("n", "splices in the segment", Min = 0, Max = 100)] int Splices,
    [In("s", "distance to the nearest termination", "in", Min = 0, Max = 10000)] Length ToTermination,
    [In("excepted", "spare potted pigtail, several wires to one, adapting size to a contact, or approved repair", Default = "no")] bool Excepted = false);

/// <summary>Splices in a wire segment: no more than one between two connectors or disconnects, and none within 12 in of a termination device.</summary>
/// <remarks>Check value: one splice 12 in from the connector holds, two do not (AC 43.13-1B 11-167 c; the 12 in from memory).</remarks>
public sealed class SpliceRule : ICalculation<SpliceRuleInput>
{
    private static readonly Source Number = Ac4313.Paragraph("11-167 c");
    private static readonly Source Distance = Ac4313.Paragraph("11-167", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<SpliceRuleInput> Info { get; } = new(
        "splice-rule", "Splices in a segment", Discipline.Wiring,
        "Whether a wire segment has too many splices or one too near its end", "n=1 s='20 in'", Number);

    /// <inheritdoc/>
    public static Sheet Run(SpliceRuleInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Excepted)
        {
            s.Caution("One of the exceptions of 11-167 is claimed: confirm that it applies.", affectsVerdict: true);
            s.Uses(Number);
            return;
        }

        s.Check("splices in the segment", Measure.Number(input.Splices), Sense.AtMost, Measure.Number(1), "no more than one splice between two connectors or disconnects", Number);
        if (input.Splices > 0)
        {
            s.Check("splice to termination", input.ToTermination.As("in"), Sense.AtLeast, Length.Of(12, "in").As("in"), "no splice within 12 in of a termination device", Distance);
        }
    });
}
