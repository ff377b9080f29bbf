using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Checks one feed once its circuits are: drop from bus to ground, voltage at the box, and the maker's greatest breaker.</summary>
internal static class FeedChecks
{
    private static readonly Source Maker = new("Power input of the part", "", "", Basis.Stated);

    public static FeedWork Run(FeedState feed, Memo memo)
    {
        var (findings, shown) = (ImmutableArray.CreateBuilder<Finding>(), ImmutableArray.CreateBuilder<Shown>());
        if (feed.Problem is { } problem)
        {
            findings.Add(problem);
        }

        var (there, back) = (Worst(feed.Feeding), Worst(feed.Returning));
        var drop = feed.Problem is null or { Severity: Verdict.Caution } && there is not null && feed.Bus is not null ? Drop(feed, [.. there, .. back ?? []], memo, findings, shown) : null;
        var atInput = drop is { } d ? feed.Bus!.Nominal - d : (Voltage?)null;
        if (feed.Input is { } input)
        {
            if (atInput is { } volts)
            {
                Limit(findings, feed, "box-voltage", "voltage at the box", volts.As("V"), Sense.AtLeast, input.MinVoltage.As("V"), "the box gets at least the voltage its maker asks for", "Use a thicker wire, or a shorter way.");
            }

            if (input.MaxBreaker is { } most && feed.BreakerRating is { } rating)
            {
                Limit(findings, feed, "breaker-max", "breaker rating", rating.As("A"), Sense.AtMost, most.As("A"), "the breaker is no greater than the maker of the box allows", $"Fit a breaker of at most {most.As("A")} as {feed.Feed.Breaker}.");
            }
        }

        return new FeedWork(
            new FeedResult(feed.Feed, Ids(feed.Feeding), Ids(feed.Returning), feed.Current, drop, atInput), findings.ToImmutable(), shown.ToImmutable());
    }

    private static Voltage? Drop(FeedState feed, ImmutableArray<CircuitState> path, Memo memo, ImmutableArray<Finding>.Builder findings, ImmutableArray<Shown>.Builder shown)
    {
        // Where a circuit has no wire, length or allowed current, that is a finding of its own.
        if (path.IsEmpty || path.Any(c => c.Work!.Result is not { Wire: not null, Allowed: not null, Length: not null } || c.Current > c.Work.Result.Allowed))
        {
            return null;
        }

        var legs = path.Select(c => (c.Work!.Result, c.Work.At)).Select(c => new DropLeg(
            c.Result.Length!.Value, c.Result.Current, c.Result.Allowed!.Value, c.At.Ambient, c.Result.Wire!.Rating, c.Result.Wire.Gauge, c.Result.Wire.Resistance, WiringContext.MaterialOf(c.Result.Wire)));
        var outcome = memo.Run<VoltageDrop, VoltageDropInput>(new(legs.ToSequence(), feed.Bus!.Nominal, feed.Duty), "VD");
        var greatest = path.MaxBy(c => c.Work!.Result.Drop?.Si ?? 0)!.Work!.Result;
        var origins = Origins(feed, path);
        shown.Add(new Shown($"{feed.Subject}/drop", outcome, () => origins));
        var remedy = $"Use a wire thicker than {greatest.Wire!.Gauge} AWG for {greatest.Circuit.Id}, which drops {greatest.Drop?.As("V")}, or a shorter way.";
        if (Findings.Of(outcome, feed.Subject, feed.Path, remedy, "voltage drop") is { } finding)
        {
            findings.Add(finding);
        }

        return outcome.Value(0) is { } volts ? new Voltage(volts) : null;
    }

    private static Dictionary<string, string> Origins(FeedState feed, ImmutableArray<CircuitState> path)
    {
        var origins = new Dictionary<string, string>(StringComparer.Ordinal) { ["V"] = $"bus {feed.Bus!.Id}", ["duty"] = "circuits of the feed" };
        for (var i = 0; i < path.Length; i++)
        {
            var result = path[i].Work!.Result;
            var n = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"_{i + 1}");
            origins["L" + n] = $"{result.Circuit.Id}: {result.LengthOrigin}";
            origins["I" + n] = $"{result.Circuit.Id}: {result.CurrentOrigin}";
            origins["Imax" + n] = $"{result.Circuit.Id}: see circuit/{result.Circuit.Id}/current";
        }

        return origins;
    }

    private static void Limit(ImmutableArray<Finding>.Builder findings, FeedState feed, string rule, string name, Measure demand, Sense sense, Measure limit, string words, string remedy)
    {
        var check = new Check(name, demand, sense, limit, words, Maker);
        if (!check.Holds)
        {
            findings.Add(new(rule, Verdict.Fails, feed.Subject, $"{feed.Feed.Item} {feed.Feed.Input}: {name} breaks the rule: {words}.", Findings.Figures(check), Maker, remedy, feed.Path));
        }
    }

    private static ImmutableArray<CircuitState>? Worst(ImmutableArray<ImmutableArray<CircuitState>> paths) =>
        paths.IsEmpty ? null : paths.MaxBy(p => p.Sum(c => c.Work!.Result.Drop?.Si ?? 0));

    private static ImmutableArray<string> Ids(ImmutableArray<ImmutableArray<CircuitState>> paths) => [.. paths.SelectMany(p => p).Select(c => c.Circuit.Id).Distinct()];
}
