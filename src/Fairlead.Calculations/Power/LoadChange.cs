namespace Fairlead.Calculations.Power;

/// <summary>Input of <see cref="LoadChange"/>.</summary>
/// <param name="Before">Loads before the change.</param>
/// <param name="Removed">Loads that come out.</param>
/// <param name="Added">Loads that go in.</param>
/// <param name="Rating">Continuous rating of the source.</param>
/// <param name="FiveMinutes">Its five-minute rating.</param>
/// <param name="FiveSeconds">Its five-second rating.</param>
public sealed record LoadChangeInput(
    [In("before", "loads before the change")] Sequence<LoadRow> Before,
    [In("removed", "loads that come out")] Sequence<LoadRow> Removed,
    [In("added", "loads that go in")] Sequence<LoadRow> Added,
    [In("Irated", "continuous rating of the source", "A", Min = 0.1, Max = 5000)] Current Rating,
    [In("I5min", "five-minute rating", "A", Min = 0.1, Max = 10000, Default = "continuous rating")] Current? FiveMinutes = null,
    [In("I5s", "five-second rating", "A", Min = 0.1, Max = 20000, Default = "five-minute rating")] Current? FiveSeconds = null);

/// <summary>Load analysis before and after a change: after = before − removed + added, each by interval.</summary>
/// <remarks>Check value: 40 A before, 3 A out and 5 A in make 42 A; the margin of a 50 A source falls from 10 A to 8 A.</remarks>
public sealed class LoadChange : ICalculation<LoadChangeInput>
{
    private static readonly string[] Labels = ["5 s", "5 min", "15 min"];

    /// <inheritdoc/>
    public static CalculationInfo<LoadChangeInput> Info { get; } = new(
        "load-change", "Load before and after", Discipline.Power,
        "What a change does to the margin of a source in one operating condition",
        "before='all existing,40 A' removed='old set,3 A' added='new set,5 A' Irated='60 A'", Intervals.Source);

    /// <inheritdoc/>
    public static Sheet Run(LoadChangeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        string[] suffixes = ["5s", "5min", "cont"];
        var after = new Current[3];
        for (var i = 0; i < 3; i++)
        {
            var (n, interval, label) = (suffixes[i], Intervals.All[i], Labels[i]);
            var before = s.Step("B" + n, $"before, over {label}", "sum of the loads before", SourceChecks.Sum(input.Before, interval), "A");
            var removed = s.Step("R" + n, $"removed, over {label}", "sum of the loads removed", SourceChecks.Sum(input.Removed, interval), "A");
            var added = s.Step("A" + n, $"added, over {label}", "sum of the loads added", SourceChecks.Sum(input.Added, interval), "A");
            after[i] = s.Step("D" + n, $"after, over {label}", $"B{n} − R{n} + A{n}", before - removed + added, "A");
        }

        if (after.Any(d => d.Si < -1e-9))
        {
            s.CannotTell("More load is removed than was there before: the loads removed do not belong to those before.");
            return;
        }

        s.Step("Mbefore", "continuous margin before", "Irated − Bcont", input.Rating - SourceChecks.Sum(input.Before, Intervals.All[2]), "A");
        s.Step("Mafter", "continuous margin after", "Irated − Dcont", input.Rating - after[2], "A");
        SourceChecks.Add(s, after[0], after[1], after[2], input.Rating, input.FiveMinutes, input.FiveSeconds);
    });
}
