namespace Fairlead.Calculations.Power;

/// <summary>Input of <see cref="BreakerLoad"/>.</summary>
/// <param name="Loads">Loads on the breaker at the same time.</param>
/// <param name="Rating">Breaker rating, 0.1 A to 1000 A.</param>
public sealed record BreakerLoadInput(
    [In("loads", "loads on the breaker at the same time")] Sequence<LoadRow> Loads,
    [In("Icb", "breaker rating", "A", Min = 0.1, Max = 1000)] Current Rating);

/// <summary>Loads on a breaker: their sum within its rating, the continuous part within 80 % of it.</summary>
/// <remarks>Check value: 3 A and 1.5 A make 4.5 A: within a 5 A breaker, above 80 % of it (4 A).</remarks>
public sealed class BreakerLoad : ICalculation<BreakerLoadInput>
{
    private static readonly Source Rule = Wiring.Ac4313.Paragraph("11-48");
    private static readonly Source Practice = new("Common practice", "", "breakers carry 80 % of their rating continuously", Basis.CommonPractice);

    /// <inheritdoc/>
    public static CalculationInfo<BreakerLoadInput> Info { get; } = new(
        "breaker-load", "Loads on a breaker", Discipline.Power,
        "Whether a breaker carries all it feeds without tripping", "loads='transponder,1.5 A;position source,0.6 A' Icb='5 A'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(BreakerLoadInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var peak = s.Step("Ipk", "greatest sum", "sum of I", SourceChecks.Sum(input.Loads, Intervals.All[0]), "A");
        var continuous = s.Step("Icont", "continuous sum", "sum of I · min(on, 15 min) / 15 min", SourceChecks.Sum(input.Loads, Intervals.All[2]), "A");
        s.Check("breaker rating", peak.As("A"), Sense.AtMost, input.Rating.As("A"), "the sum of the loads stays within the breaker's rating", Rule);
        s.Check("80 % of the breaker", continuous.As("A"), Sense.AtMost, (input.Rating * 0.8).As("A"), "the continuous load stays within 80 % of the breaker's rating", Practice, Verdict.Caution);
    });
}
