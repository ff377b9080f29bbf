namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="StrandDamage"/>.</summary>
/// <param name="Gauge">Wire gauge of table 11-9.</param>
/// <param name="Nicked">Strands nicked by stripping.</param>
/// <param name="Broken">Strands broken.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record StrandDamageInput(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("nicked", "nicked strands", Min = 0, Max = 3000)] int Nicked,
    [In("broken", "broken strands", Min = 0, Max = 3000)] int Broken,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Whether the strands damaged in stripping a wire are still allowed: AC 43.13-1B table 11-13.</summary>
/// <remarks>Check value: size 20 may have 2 nicked strands and none broken; aluminium none at all.</remarks>
public sealed class StrandDamage : ICalculation<StrandDamageInput>
{
    private static readonly TableFile Table = TableFile.Load("strand-damage");

    /// <inheritdoc/>
    public static CalculationInfo<StrandDamageInput> Info { get; } = new(
        "strand-damage", "Strand damage", Discipline.Wiring,
        "Whether the strands nicked or broken in stripping a wire are allowed", "AWG=20 nicked=1 broken=0", Table.Source);

    /// <inheritdoc/>
    public static Sheet Run(StrandDamageInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Conductor == Conductor.Copper && Table.RowWhere("AWG", input.Gauge.Number) is null)
        {
            s.CannotTell($"Table 11-13 has no size {input.Gauge}; it has 24 to 0000.");
            return;
        }

        var (nicked, broken) = Allowed(input);
        s.Check("nicked strands", Measure.Number(input.Nicked), Sense.AtMost, Measure.Number(nicked), "no more nicked strands than the table allows", Table.Source);
        s.Check("broken strands", Measure.Number(input.Broken), Sense.AtMost, Measure.Number(broken), "no more broken strands than the table allows", Table.Source);
    });

    private static (double Nicked, double Broken) Allowed(StrandDamageInput input)
    {
        if (input.Conductor == Conductor.Aluminium)
        {
            return (0, 0);
        }

        var row = Table.Rows[Table.RowWhere("AWG", input.Gauge.Number)!.Value];
        return (row[Table.Column("nicked")]!.Value, row[Table.Column("broken")]!.Value);
    }
}
