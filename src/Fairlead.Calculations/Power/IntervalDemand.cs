namespace Fairlead.Calculations.Power;

/// <summary>The averaging intervals of a load analysis.</summary>
public static class Intervals
{
    /// <summary>The document behind the intervals.</summary>
    public static readonly Source Source = new("MIL-E-7016F", "20 July 1976", "load analysis intervals", Basis.Memory);

    /// <summary>Five seconds, five minutes, and fifteen minutes for continuous.</summary>
    public static readonly Sequence<Duration> All = [Duration.Of(5, "s"), Duration.Of(5, "min"), Duration.Of(15, "min")];

    /// <summary>Average current of a load over an interval: I · min(on, T)/T; a load without an on-time is continuous.</summary>
    public static Current Average(Current current, Duration? on, Duration interval) =>
        on is { } time ? current * (Math.Min(time.Si, interval.Si) / interval.Si) : current;
}

/// <summary>Input of <see cref="IntervalDemand"/>.</summary>
/// <param name="Current">Current while on, 0 A to 2000 A.</param>
/// <param name="On">How long it is on.</param>
public sealed record IntervalDemandInput(
    [In("I", "current while on", "A", Min = 0, Max = 2000)] Current Current,
    [In("on", "time it is on", "s", Min = 0, Max = 86400)] Duration On);

/// <summary>Average demand of an intermittent load over 5 s, 5 min and 15 min: I · min(on, T)/T.</summary>
/// <remarks>Check value: 30 A on for 12 s counts 30 A over 5 s, 1.2 A over 5 min and 0.4 A over 15 min.</remarks>
public sealed class IntervalDemand : ICalculation<IntervalDemandInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<IntervalDemandInput> Info { get; } = new(
        "interval-demand", "Interval demand", Discipline.Power,
        "What an intermittent load counts in each interval of the load analysis", "I='30 A' on='12 s'", Intervals.Source);

    /// <inheritdoc/>
    public static Sheet Run(IntervalDemandInput input) => SheetBuilder.Work(Info, input, s =>
    {
        s.Step("I5s", "average over 5 s", "I · min(on, 5 s) / 5 s", Intervals.Average(input.Current, input.On, Intervals.All[0]), "A");
        s.Step("I5min", "average over 5 min", "I · min(on, 5 min) / 5 min", Intervals.Average(input.Current, input.On, Intervals.All[1]), "A");
        s.Step("Icont", "average over 15 min (continuous)", "I · min(on, 15 min) / 15 min", Intervals.Average(input.Current, input.On, Intervals.All[2]), "A");
    });
}
