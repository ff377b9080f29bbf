using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;
using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>Works out how long a battery lasts after the loss of all generators.</summary>
/// <remarks>
/// Until the loss is recognised everything that was on stays on: each load draws the greater of its current in the heaviest normal
/// condition and that in the condition after the loss. From then on it draws the latter, until it is shed. With a landing condition the
/// last stretch before the landing lasts as long as the charge allows, the landing having been set aside.
/// </remarks>
internal static class BatteryChecks
{
    public static BatteryResult Run(Battery battery, Job job, ImmutableArray<LoadItem> loads, Memo memo, List<Finding> findings, List<Shown> shown)
    {
        var buses = Reach.Of(battery, job.Aircraft);
        var carried = loads.Where(l => l.Action != ListAction.Removed && buses.Contains(l.Bus)).ToArray();
        var rows = Rows(battery, carried, HeaviestNormal(job, carried)).ToSequence();
        var rate = battery.Rate == CapacityRate.OneHour ? QuotedRate.OneHour : QuotedRate.FiveHour;
        var landing = battery is { Landing: { } condition, LandingTime: { } time } ? new BatteryPhase("landing", Sum(carried, condition), time) : null;
        var phases = landing is null ? [] : Phases(battery, rows, landing).ToSequence();
        var outcome = landing is null
            ? memo.Run<SheddingTimeline, SheddingTimelineInput>(new(battery.Capacity, rows, battery.Required, rate), "t", "Cu")
            : memo.Run<BatteryEndurance, BatteryEnduranceInput>(new(battery.Capacity, phases, battery.Required, rate), "t", "Cu", "tx");
        var subject = $"battery/{battery.Id}";
        var origins = new Dictionary<string, string>(StringComparer.Ordinal) { ["C"] = subject, ["treq"] = subject, ["rate"] = subject, ["rule"] = "0.80 when aged, 0.90 charged: the more careful of the two rules" };
        shown.Add(new Shown(subject, outcome, () => origins));
        if (Findings.Of(outcome, subject, $"aircraft/batteries/{battery.Id}", "Shed loads earlier, feed the new ones from a bus that is shed, or fit a greater battery.") is { } finding)
        {
            findings.Add(finding);
        }

        var charge = new Charge(outcome.Value(1) ?? 0);
        return new BatteryResult(
            battery, landing is null ? Timeline(rows, charge) : Timeline(phases, outcome.Value(2)), outcome.Value(0) is { } t ? new Duration(t) : null, outcome.Verdict);
    }

    private static string? HeaviestNormal(Job job, LoadItem[] carried) =>
        job.Aircraft.Conditions.OrEmpty().Where(c => c.Kind == ConditionKind.Normal).MaxBy(c => Sum(carried, c.Id).Si)?.Id;

    private static Current Sum(LoadItem[] loads, string condition) => new(loads.Sum(l => l.Average(condition).Si));

    private static IEnumerable<BatteryLoad> Rows(Battery battery, LoadItem[] loads, string? normal)
    {
        foreach (var load in loads)
        {
            var after = load.Average(battery.Condition);
            var before = normal is not null && load.Average(normal) > after ? load.Average(normal) : after;
            var shed = load.ShedAt is { } at && at > battery.Recognition ? at : load.ShedAt is null ? (Duration?)null : battery.Recognition;
            if (before > after && battery.Recognition > Duration.Zero)
            {
                yield return new BatteryLoad($"{load.Name}, until the loss is recognised", before, battery.Recognition);
                if (after > Current.Zero && !(shed <= battery.Recognition))
                {
                    yield return new BatteryLoad(load.Name, after, shed, battery.Recognition);
                }
            }
            else if (after > Current.Zero)
            {
                yield return new BatteryLoad(load.Name, after, shed);
            }
        }
    }

    private static IEnumerable<BatteryPhase> Phases(Battery battery, Sequence<BatteryLoad> rows, BatteryPhase landing)
    {
        var last = battery.Required - landing.Duration!.Value;
        var starts = rows.SelectMany(r => new[] { r.From, r.Until }).OfType<Duration>().Where(t => t < last).Append(Duration.Zero).Distinct().Order().ToArray();
        for (var i = 0; i < starts.Length; i++)
        {
            var current = new Current(rows.Where(r => (r.From ?? Duration.Zero) <= starts[i] && !(r.Until <= starts[i])).Sum(r => r.Current.Si));
            yield return i + 1 < starts.Length ? new BatteryPhase($"from {starts[i].As("min")}", current, starts[i + 1] - starts[i]) : new BatteryPhase("cruise", current);
        }

        yield return landing;
    }

    private static ImmutableArray<BatteryStretch> Timeline(Sequence<BatteryLoad> rows, Charge charge) =>
    [
        .. SheddingTimeline.Stretches(rows, charge).Where(s => s.To is not null).Select(s => new BatteryStretch(
            s.From, s.To!.Value, s.Current, s.From == Duration.Zero ? "generators lost" : $"shed: {string.Join(", ", rows.Where(r => r.Until == s.From).Select(r => r.Name))}")),
    ];

    private static ImmutableArray<BatteryStretch> Timeline(Sequence<BatteryPhase> phases, double? open)
    {
        var (at, stretches) = (Duration.Zero, ImmutableArray.CreateBuilder<BatteryStretch>());
        foreach (var phase in phases)
        {
            var end = at + (phase.Duration ?? new Duration(open ?? 0));
            stretches.Add(new BatteryStretch(at, end, phase.Current, at == Duration.Zero ? "generators lost" : phase.Name));
            at = end;
        }

        return stretches.ToImmutable();
    }
}
