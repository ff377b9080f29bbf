namespace Fairlead.Calculations.Power;

/// <summary>Input of <see cref="LoadAnalysis"/>.</summary>
/// <param name="Loads">The loads in this operating condition.</param>
/// <param name="Rating">Continuous rating of the source.</param>
/// <param name="FiveMinutes">Its five-minute rating.</param>
/// <param name="FiveSeconds">Its five-second rating.</param>
public sealed record LoadAnalysisInput(
    [In("loads", "loads in this operating condition")] Sequence<LoadRow> Loads,
    [In("Irated", "continuous rating of the source", "A", Min = 0.1, Max = 5000)] Current Rating,
    [In("I5min", "five-minute rating", "A", Min = 0.1, Max = 10000, Default = "continuous rating")] Current? FiveMinutes = null,
    [In("I5s", "five-second rating", "A", Min = 0.1, Max = 20000, Default = "five-minute rating")] Current? FiveSeconds = null);

/// <summary>Load analysis of one source in one operating condition: the sum of average demands over 5 s, 5 min and 15 min against its ratings.</summary>
/// <remarks>Check value: 10 A continuous and 30 A for 12 s make 40 A over 5 s, 11.2 A over 5 min and 10.4 A over 15 min.</remarks>
public sealed class LoadAnalysis : ICalculation<LoadAnalysisInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<LoadAnalysisInput> Info { get; } = new(
        "load-analysis", "Electrical load analysis", Discipline.Power,
        "Demand on a source in one operating condition, by interval, against its ratings",
        "loads='transponder,1.2 A;pitot heat,6.5 A;gear motor,30 A,12 s' Irated='50 A'", Intervals.Source);

    /// <inheritdoc/>
    public static Sheet Run(LoadAnalysisInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var short5 = s.Step("D5s", "demand over 5 s", "sum of I · min(on, 5 s) / 5 s", SourceChecks.Sum(input.Loads, Intervals.All[0]), "A");
        var medium5 = s.Step("D5min", "demand over 5 min", "sum of I · min(on, 5 min) / 5 min", SourceChecks.Sum(input.Loads, Intervals.All[1]), "A");
        var continuous = s.Step("Dcont", "continuous demand (15 min)", "sum of I · min(on, 15 min) / 15 min", SourceChecks.Sum(input.Loads, Intervals.All[2]), "A");
        s.Table("Continuous demand by bus", ["bus", "demand"], input.Loads.GroupBy(l => l.Bus, StringComparer.Ordinal).Where(g => g.Key.Length > 0)
            .Select(g => System.Collections.Immutable.ImmutableArray.Create<SheetValue>(g.Key, SourceChecks.Sum(g.ToSequence(), Intervals.All[2]).As("A"))));
        SourceChecks.Add(s, short5, medium5, continuous, input.Rating, input.FiveMinutes, input.FiveSeconds);
    });
}
