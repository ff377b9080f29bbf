using System.Collections.Immutable;

namespace Fairlead.Calculations.Power;

/// <summary>A load on battery.</summary>
/// <param name="Name">Name.</param>
/// <param name="Current">Current, 0 A to 2000 A.</param>
/// <param name="From">When it comes on, counted from the loss.</param>
/// <param name="Until">When it is switched off; never when left out.</param>
public sealed record BatteryLoad(
    [In("name", "load")] string Name,
    [In("I", "current", "A", Min = 0, Max = 2000)] Current Current,
    [In("until", "switched off at", "min", Min = 0, Max = 1440, Default = "never")] Duration? Until = null,
    [In("from", "comes on at", "min", Min = 0, Max = 1440, Default = "the loss")] Duration? From = null);

/// <summary>Input of <see cref="SheddingTimeline"/>.</summary>
/// <param name="Capacity">Nameplate capacity, 0.1 A·h to 1000 A·h.</param>
/// <param name="Loads">The loads, each with the time it is switched off.</param>
/// <param name="Required">Time the battery must last.</param>
/// <param name="Rate">Rate at which the capacity is quoted.</param>
/// <param name="Rule">Share that may be counted on.</param>
public sealed record SheddingTimelineInput(
    [In("C", "nameplate capacity", "A·h", Min = 0.1, Max = 1000)] Charge Capacity,
    [In("loads", "loads on battery")] Sequence<BatteryLoad> Loads,
    [In("treq", "time it must last", "min", Min = 0, Max = 1440)] Duration Required,
    [In("rate", "rate of the quoted capacity", Default = "one-hour")] QuotedRate Rate = QuotedRate.OneHour,
    [In("rule", "share that may be counted on", Default = "aged-and-partly-charged")] CapacityRule Rule = CapacityRule.AgedAndPartlyCharged);

/// <summary>Battery against time with load shedding: the charge falls by the current of each stretch until it is used up.</summary>
/// <remarks>Check value: 35 A·h, 0.75 usable, 43.5 A for 5 min and 34 A after: (1575 − 217.5)/34 + 5 = 44.93 min.</remarks>
public sealed class SheddingTimeline : ICalculation<SheddingTimelineInput>
{
    private static readonly Source Rule = new("14 CFR 23.1353(h)", "before Amendment 23-64", "30 min to 25,000 ft, 60 min above; recognition and shedding included", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<SheddingTimelineInput> Info { get; } = new(
        "shedding-timeline", "Battery with load shedding", Discipline.Power,
        "How long the battery lasts when loads are switched off in time",
        "C='35 Ah' loads='essential,34 A;shed by the pilot,9.5 A,5 min' treq='30 min' rule=three-quarters", Rule);

    /// <inheritdoc/>
    public static Sheet Run(SheddingTimelineInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Loads.Any(l => l.Until is { } until && until < (l.From ?? Duration.Zero)))
        {
            s.CannotTell("A load is switched off before it comes on.");
            return;
        }

        var usable = BatteryCapacity.Add(s, input.Rate, input.Rule);
        var stretches = Stretches(input.Loads, usable);
        s.Table("Timeline", ["from", "to", "current", "charge left at the end"], stretches.Select(x =>
            ImmutableArray.Create<SheetValue>(x.From.As("min"), x.To is { } to ? to.As("min") : "no end", x.Current.As("A"), x.Left.As("A·min"))));
        s.Caution("Capacity falls at high discharge currents and in the cold; the figures hold for a battery in the condition its maintenance data ask for.");
        if (stretches[^1].To is not { } end)
        {
            s.CannotTell("After the last switching nothing is drawn, so the time has no end.");
            return;
        }

        var last = stretches[^1];
        s.Note("t0", "start of the last stretch", last.From.As("min"), "timeline");
        s.Note("Ix", "current in the last stretch", last.Current.As("A"), "timeline");
        var q = s.Step("Q0", "charge left at its start", "Cu − sum of I · t before it", last.Current * (end - last.From), "A·min");
        var total = s.Step("t", "endurance", "t0 + Q0 / Ix", last.From + (q / last.Current), "min");
        s.Check("endurance", total.As("min"), Sense.AtLeast, input.Required.As("min"), "the battery lasts as long as required, recognition and shedding included", Rule);
    });

    /// <summary>The stretches of constant current until the charge is used up; the last has no end when it draws nothing.</summary>
    public static ImmutableArray<(Duration From, Duration? To, Current Current, Charge Left)> Stretches(Sequence<BatteryLoad> loads, Charge usable)
    {
        var times = loads.SelectMany(l => new[] { l.From, l.Until }).OfType<Duration>().Append(Duration.Zero).Distinct().Order().ToArray();
        var result = ImmutableArray.CreateBuilder<(Duration, Duration?, Current, Charge)>();
        var left = usable;
        for (var i = 0; i < times.Length; i++)
        {
            var from = times[i];
            var current = new Current(loads.Where(l => (l.From ?? Duration.Zero) <= from && !(l.Until <= from)).Sum(l => l.Current.Si));
            Duration? next = i + 1 < times.Length ? times[i + 1] : null;
            Duration? empty = current.Si > 0 ? from + (left / current) : null;
            if (empty is { } end && !(next < end))
            {
                result.Add((from, end, current, Charge.Zero));
                break;
            }

            left = next is { } to ? left - (current * (to - from)) : left;
            result.Add((from, next, current, left));
        }

        return result.ToImmutable();
    }
}
