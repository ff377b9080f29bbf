using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;
using Fairlead.Model;
using Fairlead.Substantiation.Power;

namespace Fairlead.Substantiation.Survey;

/// <summary>The voltage at every box in every condition, with the drops of feeders, breakers, wires and returns all together.</summary>
internal sealed class SurveyWork
{
    private static readonly Source Maker = new("Power input of the part", "", "least voltage", Basis.Stated);

    private readonly Job job;
    private readonly ImmutableArray<FeedResult> feeds;

    private SurveyWork(Job job, Memo memo, IReadOnlyList<CircuitResult> circuits, ImmutableArray<FeedResult> feeds)
    {
        (this.job, this.feeds) = (job, feeds);
        if (feeds.IsEmpty)
        {
            return;
        }

        var network = new NetworkTakeOff(job, circuits, feeds);
        var loads = LoadItem.Of(job);
        var worst = new Dictionary<string, (Voltage Volts, string Condition)>(StringComparer.Ordinal);
        foreach (var (condition, key) in Supplied.Of(job.Aircraft))
        {
            var input = network.In(condition, loads);
            if (input.Sources.Count == 0 || input.Loads.Count == 0)
            {
                continue;
            }

            var subject = $"network/{key}";
            var outcome = memo.Run<VoltageSurvey, VoltageSurveyInput>(input);
            Shown.Add(new Shown(subject, outcome));
            if (outcome.CannotTell is [var why, ..])
            {
                Findings.Add(new("voltage-survey", Verdict.CannotTell, subject, why, "", outcome.Source, "Correct the resistances or loads of the power system.", $"aircraft/conditions/{condition.Id}"));
                continue;
            }

            var volts = memo.Get<VoltageSurvey, VoltageSurveyInput, Volts>(input, Volts.Of);
            foreach (var feed in feeds.Where(f => volts.ByLoad.ContainsKey(f.Feed.Id)))
            {
                var at = volts.ByLoad[feed.Feed.Id];
                if (!worst.TryGetValue(feed.Feed.Id, out var known) || at < known.Volts)
                {
                    worst[feed.Feed.Id] = (at, condition.Name);
                }
            }
        }

        foreach (var feed in feeds.Select(f => f.Feed))
        {
            Judge(job, feed, worst.GetValueOrDefault(feed.Id));
        }
    }

    /// <summary>The survey of a job; what is known already where neither the power system nor a feed changed. A feed is traced anew when
    /// one of its circuits is, so its wires need no look of their own.</summary>
    public static SurveyWork Of(Job job, Memo memo, IReadOnlyList<CircuitResult> circuits, ImmutableArray<FeedResult> feeds, SurveyWork? known) =>
        known?.Serves(job, feeds) == true ? known : new SurveyWork(job, memo, circuits, feeds);

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    private bool Serves(Job other, ImmutableArray<FeedResult> others)
    {
        var (old, now) = (job.Change, other.Change);
        return ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Parts, other.Parts) && ReferenceEquals(old.Fit, now.Fit) && ReferenceEquals(old.Remove, now.Remove)
            && ReferenceEquals(old.Power, now.Power) && ReferenceEquals(old.Breakers, now.Breakers) && ReferenceEquals(old.Grounds, now.Grounds)
            && feeds.AsSpan().SequenceEqual(others.AsSpan(), ReferenceEqualityComparer.Instance);
    }

    // The greatest voltage of a box is held against the regulated voltage of its bus, which no network raises.
    private void Judge(Job job, PowerFeed feed, (Voltage Volts, string Condition) low)
    {
        if (low.Condition is null || job.InputOf(feed) is not { } input)
        {
            return;
        }

        const string Rule = "the box gets at least its least voltage with every load of the condition on";
        var check = new Check("voltage at the box", low.Volts.As("V"), Sense.AtLeast, input.MinVoltage.As("V"), Rule, Maker);
        if (!check.Holds)
        {
            Findings.Add(new(
                "network-voltage-low", Verdict.Fails, $"feed/{feed.Id}", $"{feed.Item} {feed.Input} in '{low.Condition}': not met: {Rule} (voltage at the box).", Substantiation.Findings.Figures(check), Maker,
                "Take load off the feeders and buses ahead of it, or make them or its wires thicker.", $"change/power/{feed.Id}"));
        }
    }

    private sealed record Volts(ImmutableDictionary<string, Voltage> ByLoad)
    {
        public static Volts Of(VoltageSurveyInput input)
        {
            var solution = NetworkSolver.Solve(DcNetwork.Of(input.Sources, input.Branches, input.Loads));
            return new(input.Loads.Select(l => (l.Name, Across: solution?.Across(l))).Where(x => x.Across is not null).ToImmutableDictionary(x => x.Name, x => x.Across!.Value));
        }
    }
}
