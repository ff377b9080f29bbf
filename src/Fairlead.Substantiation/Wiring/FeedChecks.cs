using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Duty = Fairlead.Calculations.Wiring.Duty;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Checks one feed once its circuits are: drop from bus to ground, voltage at the box on generators and on battery, and the maker's greatest breaker.</summary>
internal sealed class FeedChecks(FeedState feed, WiringContext context, Memo memo)
{
    private static readonly Source Maker = new("Power input of the part", "", "", Basis.Stated);

    private readonly ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
    private readonly ImmutableArray<Shown>.Builder shown = ImmutableArray.CreateBuilder<Shown>();

    public FeedWork Run()
    {
        if (feed.Problem is { } problem)
        {
            findings.Add(problem);
        }

        var path = Path();
        var drop = path.IsEmpty ? null : Drop(path);
        var atInput = drop is { } d ? feed.Bus!.Nominal - d : (Voltage?)null;
        if (atInput is { } volts)
        {
            AtLeast(volts, $"on {feed.Bus!.Name}, {feed.Bus.Nominal.As("V")}", "Use a thicker wire, or a shorter way.");
            atInput = OnBattery(path) is { } less && less < volts ? less : volts;
        }

        AtMost();
        if (feed is { Input.MaxBreaker: { } most, BreakerRating: { } rating })
        {
            Limit("breaker-max", "breaker rating", rating.As("A"), Sense.AtMost, most.As("A"), "the breaker is no greater than the maker of the box allows", $"Fit a breaker of at most {most.As("A")} as {feed.Feed.Breaker}.");
        }

        return new FeedWork(
            new FeedResult(feed.Feed, Ids(feed.Feeding), Ids(feed.Returning), feed.Current, drop, atInput), findings.ToImmutable(), shown.ToImmutable());
    }

    // The worst way there and back; empty where the drop cannot be told. Where a circuit has no wire, length or allowed current, that is a finding of its own.
    private ImmutableArray<CircuitState> Path()
    {
        ImmutableArray<CircuitState> path = feed.Problem is null or { Severity: Verdict.Caution } && feed.Bus is not null && Worst(feed.Feeding) is { } there ? [.. there, .. Worst(feed.Returning) ?? []] : [];
        return path.Any(c => c.Work!.Result is not { Wire: not null, Allowed: not null, Length: not null } || c.Current > c.Work.Result.Allowed) ? [] : path;
    }

    private Voltage? Drop(ImmutableArray<CircuitState> path)
    {
        var outcome = Judge(path, f => f.Current, feed.Duty, "drop");
        if (feed.Duty == Duty.Intermittent && feed.Steady > Current.Zero)
        {
            Judge(path, f => f.Steady, Duty.Continuous, "drop/steady");
        }

        return outcome.Value(0) is { } volts ? new Voltage(volts) : null;
    }

    private Outcome Judge(ImmutableArray<CircuitState> path, Func<FeedState, Current> current, Duty duty, string name)
    {
        var outcome = memo.Run<VoltageDrop, VoltageDropInput>(new(Legs(path, current), feed.Bus!.Nominal, duty), "VD");
        shown.Add(new Shown($"{feed.Subject}/{name}", outcome, () => Origins(path, $"bus {feed.Bus.Id}")));
        var greatest = path.MaxBy(c => c.Work!.Result.Drop?.Si ?? 0)!.Work!.Result;
        var remedy = greatest.Chosen
            ? $"{greatest.Circuit.Id} drops {greatest.Drop?.As("V")} with {greatest.Wire!.Gauge} AWG, the thickest of family '{context.Defaults.Family}' that its contacts and breaker take: shorten its way, divide the current over several circuits, or use greater contacts and thicker wires."
            : $"Use a wire thicker than {greatest.Wire!.Gauge} AWG for {greatest.Circuit.Id}, which drops {greatest.Drop?.As("V")}, or a shorter way.";
        if (Findings.Of(outcome, feed.Subject, feed.Path, remedy, "voltage drop") is { } finding && findings.All(f => f.Rule != finding.Rule))
        {
            findings.Add(finding);
        }

        return outcome;
    }

    // Where no source supplies a condition the bus has no more than its battery's nominal voltage, and the weakest battery that may stand behind it is taken.
    private Voltage? OnBattery(ImmutableArray<CircuitState> path)
    {
        if (context.BatteryBehind(feed.Bus!) is not { } battery)
        {
            return null;
        }

        if (context.Aircraft.Conditions.OrEmpty().Where(c => c.Sources.Count == 0 && feed.In(c.Id) > Current.Zero)
            .MaxBy(c => path.Sum(x => x.CurrentWhen(f => f.In(c.Id)).Si * x.Work!.Cold.Si)) is not { } worst)
        {
            return null;
        }

        var spare = battery.Voltage - feed.Input!.MinVoltage;
        var outcome = memo.Run<VoltageDrop, VoltageDropInput>(new(Legs(path, f => f.In(worst.Id)), battery.Voltage, Duty.Continuous, spare > Voltage.Of(0.001, "V") ? spare : Voltage.Of(0.001, "V")), "VD");
        shown.Add(new Shown($"{feed.Subject}/drop/battery", outcome, () => Origins(path, $"battery {battery.Id}")));
        if (outcome.Value(0) is not { } volts)
        {
            return null;
        }

        var atInput = battery.Voltage - new Voltage(volts);
        AtLeast(atInput, $"in {worst.Name} on {battery.Name}, {battery.Voltage.As("V")}", "Use a thicker wire or a shorter way, feed the box from a battery of higher voltage, or leave the condition out if the box need not work in it.");
        return atInput;
    }

    // The legs of a way when every feed draws a current of its own, say that of one condition.
    private static Sequence<DropLeg> Legs(ImmutableArray<CircuitState> path, Func<FeedState, Current> current) =>
        path.Select(c => (c.Work!.Result, c.Work.At, c.Work.Rating, Current: c.CurrentWhen(current))).Select(c => new DropLeg(
            c.Result.Length!.Value, c.Current, c.Result.Allowed!.Value, c.At.Ambient, c.Rating, c.Result.Wire!.Gauge, c.Result.Wire.Resistance, WiringContext.MaterialOf(c.Result.Wire))).ToSequence();

    private static Dictionary<string, string> Origins(ImmutableArray<CircuitState> path, string supply)
    {
        var origins = new Dictionary<string, string>(StringComparer.Ordinal) { ["V"] = supply, ["duty"] = "circuits and states of the feed" };
        for (var i = 0; i < path.Length; i++)
        {
            var result = path[i].Work!.Result;
            var n = string.Create(CultureInfo.InvariantCulture, $"_{i + 1}");
            origins["L" + n] = $"{result.Circuit.Id}: {result.LengthOrigin}";
            origins["I" + n] = $"{result.Circuit.Id}: {result.CurrentOrigin}";
            origins["Imax" + n] = $"{result.Circuit.Id}: see circuit/{result.Circuit.Id}/current";
        }

        return origins;
    }

    private void AtLeast(Voltage volts, string where, string remedy)
    {
        if (findings.All(f => f.Rule != "box-voltage"))
        {
            Limit("box-voltage", $"voltage at the box {where}", volts.As("V"), Sense.AtLeast, feed.Input!.MinVoltage.As("V"), "the box gets at least the voltage its maker asks for", remedy);
        }
    }

    // Lightly loaded, nothing is lost on the way: the box then sees all that its bus or the sources behind it give.
    private void AtMost()
    {
        if (feed is { Input: { } input, Bus: { } bus })
        {
            var greatest = context.GreatestVoltage(bus);
            Limit("box-overvoltage", $"voltage of {bus.Name}", greatest.As("V"), Sense.AtMost, input.MaxVoltage.As("V"), "the box never gets more than the voltage its maker allows", "Feed it from a bus of its own voltage, or through a converter.");
        }
    }

    private void Limit(string rule, string name, Measure demand, Sense sense, Measure limit, string words, string remedy)
    {
        var check = new Check(name, demand, sense, limit, words, Maker);
        if (!check.Holds)
        {
            findings.Add(new(rule, Verdict.Fails, feed.Subject, $"{feed.Feed.Item} {feed.Feed.Input}: not met: {words} ({name}).", Findings.Figures(check), Maker, remedy, feed.Path));
        }
    }

    private static ImmutableArray<CircuitState>? Worst(ImmutableArray<ImmutableArray<CircuitState>> paths) =>
        paths.IsEmpty ? null : paths.MaxBy(p => p.Sum(c => c.Work!.Result.Drop?.Si ?? 0));

    private static ImmutableArray<string> Ids(ImmutableArray<ImmutableArray<CircuitState>> paths) => [.. paths.SelectMany(p => p).Select(c => c.Circuit.Id).Distinct()];
}
