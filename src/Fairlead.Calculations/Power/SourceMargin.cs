namespace Fairlead.Calculations.Power;

/// <summary>Input of <see cref="SourceMargin"/>.</summary>
/// <param name="Load">Continuous load, 0 A to 5000 A.</param>
/// <param name="Rating">Continuous rating of the generator or alternator.</param>
/// <param name="Monitored">Whether placards or monitoring are fitted.</param>
public sealed record SourceMarginInput(
    [In("I", "continuous load", "A", Min = 0, Max = 5000)] Current Load,
    [In("Irated", "continuous rating", "A", Min = 0.1, Max = 5000)] Current Rating,
    [In("monitored", "placards or monitoring fitted", Default = "no")] bool Monitored = false);

/// <summary>The 80 % rule of thumb: without placards or monitoring the continuous load stays within 0.8 of the rating.</summary>
/// <remarks>Check value: a 60 A alternator allows 48 A.</remarks>
public sealed class SourceMargin : ICalculation<SourceMarginInput>
{
    private static readonly Source Rule = Wiring.Ac4313.Paragraph("11-35");

    /// <inheritdoc/>
    public static CalculationInfo<SourceMarginInput> Info { get; } = new(
        "source-margin", "Source margin", Discipline.Power,
        "Whether a generator or alternator keeps a fifth of its rating in hand", "I='42 A' Irated='60 A'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(SourceMarginInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var limit = s.Step("Ilim", "80 % of the rating", "0.8 · Irated", input.Rating * 0.8, "A", Rule);
        s.Step("u", "share of the rating in use", "I / Irated", input.Load / input.Rating);
        s.Check("rating", input.Load.As("A"), Sense.AtMost, input.Rating.As("A"), "the load stays within the rating", Rule);
        if (!input.Monitored)
        {
            s.Check("80 % rule", input.Load.As("A"), Sense.AtMost, limit.As("A"), "without placards or monitoring the continuous load stays within 80 % of the output", Rule);
        }

        s.Caution("A rule of thumb, expressly not an electrical load analysis.");
    });
}
