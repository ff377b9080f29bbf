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
internal sealed class BatteryChecks(Battery battery, Job job, ImmutableArray<LoadItem> loads, Sharing sharing)
{
    private readonly (LoadItem Load, double Share)[] carried = [.. loads.Where(l => l.Action != ListAction.Removed).Select(l => (l, sharing.Share(battery, l.Bus))).Where(x => x.Item2 > 0)];

    public BatteryResult Run(Memo memo, List<Finding> findings, List<Shown> shown)
    {
        var rows = Rows().ToSequence();
        var rate = battery.Rate == CapacityRate.OneHour ? QuotedRate.OneHour : QuotedRate.FiveHour;
        var landing = battery is { Landing: { } condition, LandingTime: { } time } ? new BatteryPhase("landing", Sum(condition, time), time) : null;
        var phases = landing is null ? [] : Phases(rows, landing).ToSequence();
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

        var timeline = outcome.Value(1) is not { } usable ? [] : landing is null ? Timeline(rows, new Charge(usable)) : Timeline(phases, outcome.Value(2));
        return new BatteryResult(battery, timeline, outcome.Value(0) is { } t ? new Duration(t) : null, outcome.Verdict);
    }

    private Current Sum(string condition, Duration? stretch = null) => new(carried.Sum(x => x.Load.Average(condition, stretch).Si * x.Share));

    private IEnumerable<BatteryLoad> Rows()
    {
        var normal = job.Aircraft.Conditions.OrEmpty().Where(c => c.Kind == ConditionKind.Normal).MaxBy(c => Sum(c.Id).Si)?.Id;
        foreach (var (load, share) in carried)
        {
            var after = load.Average(battery.Condition) * share;
            var before = new[] { normal, battery.Condition }.OfType<string>().Max(c => load.Average(c, battery.Recognition)) * share;
            var shed = load.ShedAt is { } at && at < battery.Recognition ? battery.Recognition : load.ShedAt;
            if (before > after && battery.Recognition > Duration.Zero)
            {
                yield return new BatteryLoad($"{load.Name}, as before the loss", before, battery.Recognition);
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

    private IEnumerable<BatteryPhase> Phases(Sequence<BatteryLoad> rows, BatteryPhase landing)
    {
        var last = battery.Required - landing.Duration!.Value;
        var starts = rows.SelectMany(r => new[] { r.From, r.Until }).OfType<Duration>().Where(t => t < last).Append(Duration.Zero).Distinct().Order().ToArray();
        for (var i = 0; i < starts.Length; i++)
        {
            var current = new Current(rows.Where(r => (r.From ?? Duration.Zero) <= starts[i] && !(r.Until <= starts[i])).Sum(r => r.Current.Si));
            yield return i + 1 < starts.Length ? new BatteryPhase(What(rows, starts[i]), current, starts[i + 1] - starts[i]) : new BatteryPhase("as long as the charge lasts", current);
        }

        yield return landing;
    }

    private ImmutableArray<BatteryStretch> Timeline(Sequence<BatteryLoad> rows, Charge charge) =>
    [
        .. SheddingTimeline.Stretches(rows, charge).Where(s => s.To is not null).Select(s => new BatteryStretch(s.From, s.To!.Value, s.Current, What(rows, s.From))),
    ];

    private static ImmutableArray<BatteryStretch> Timeline(Sequence<BatteryPhase> phases, double? open)
    {
        var (at, stretches) = (Duration.Zero, ImmutableArray.CreateBuilder<BatteryStretch>());
        foreach (var phase in phases.Where(p => (p.Duration?.Si ?? open) > 0))
        {
            var end = at + (phase.Duration ?? new Duration(open!.Value));
            stretches.Add(new BatteryStretch(at, end, phase.Current, at == Duration.Zero ? "generators lost" : phase.Name));
            at = end;
        }

        return stretches.ToImmutable();
    }

    // What happens at a time, in words.
    private string What(Sequence<BatteryLoad> rows, Duration at)
    {
        var shed = carried.Select(x => x.Load).Where(l => l.ShedAt is { } t && (t < battery.Recognition ? battery.Recognition : t) == at && l.Average(battery.Condition) > Current.Zero).Select(l => l.Name).ToArray();
        string[] events =
        [
            .. at == Duration.Zero ? ["generators lost"] : Array.Empty<string>(),
            .. at == battery.Recognition && rows.Any(r => r.Until == at) ? ["loss recognised"] : Array.Empty<string>(),
            .. shed.Length > 0 ? [$"shed: {string.Join(", ", shed)}"] : Array.Empty<string>(),
        ];
        return string.Join("; ", events);
    }
}
