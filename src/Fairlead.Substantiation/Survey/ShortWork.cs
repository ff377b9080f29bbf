using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Survey;

/// <summary>Every single short at an end of a feeder or of a wire of the new feeds, on every set of sources. Loads are left out, so that what
/// lies behind one breaker bears on nothing behind another: an edit works again only the breakers it touches.</summary>
internal sealed class ShortWork
{
    private static readonly Source Stated = new("This job", "", "power system", Basis.Stated);

    private readonly Job job;
    private readonly Memo memo;
    private readonly ImmutableArray<FeedResult> feeds;
    private readonly FeederNetwork network;
    private readonly Dictionary<(Sequence<NetworkSource> Sources, string Bus), ImmutableArray<NetworkBranch>> ahead = [];
    private readonly Dictionary<string, Behind> behind = new(StringComparer.Ordinal);

    private ShortWork(Job job, Memo memo, IReadOnlyList<CircuitResult> circuits, ImmutableArray<FeedResult> feeds, ShortWork? known)
    {
        (this.job, this.memo, this.feeds) = (job, memo, feeds);
        var same = known?.Founded(job) == true;
        network = same ? known!.network : new FeederNetwork(job);
        var wires = circuits.ToDictionary(c => c.Circuit.Id, StringComparer.Ordinal);
        foreach (var group in feeds.GroupBy(f => f.Feed.Breaker, StringComparer.Ordinal))
        {
            var now = new Behind([.. group], [.. group.SelectMany(f => f.Feeding).Distinct(StringComparer.Ordinal).Select(wires.GetValueOrDefault).OfType<CircuitResult>()]);
            behind.Add(group.Key, same && known!.behind.TryGetValue(group.Key, out var before) && before.Equals(now) ? before : now with { Work = Breaker(group.Key, now) });
        }

        Work = same ? known!.Work : new Harvest(Feeders(), Unknown());
        Findings = [.. Work.Findings, .. behind.Values.SelectMany(b => b.Work.Findings)];
        Shown = [.. Work.Shown, .. behind.Values.SelectMany(b => b.Work.Shown)];
    }

    /// <summary>The shorts of a job; what is known already where nothing that feeds them changed.</summary>
    public static ShortWork Of(Job job, Memo memo, IReadOnlyList<CircuitResult> circuits, ImmutableArray<FeedResult> feeds, ShortWork? known) =>
        known?.Founded(job) == true && known.feeds.AsSpan().SequenceEqual(feeds.AsSpan(), ReferenceEqualityComparer.Instance) ? known : new ShortWork(job, memo, circuits, feeds, known);

    public ImmutableArray<Finding> Findings { get; }

    public ImmutableArray<Shown> Shown { get; }

    private Harvest Work { get; }

    private bool Founded(Job other) => ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Parts, other.Parts)
        && ReferenceEquals(job.Change.Breakers, other.Change.Breakers) && ReferenceEquals(job.Change.Fit, other.Change.Fit);

    // The feeders behind their own protection. A feeder without any has a finding or none of its own; the source alone limits its shorts.
    private Harvest Feeders()
    {
        var wires = network.Protected;
        return wires.Count == 0 ? new([], []) : Worst("feeders/shorts", "aircraft/feeders", "Use a thicker feeder, or protection that is faster, or slower where it opens ahead of what lies before it.",
            s => new ShortSurveyInput(s, network.Branches.ToSequence(), wires, network.Protectors.ToSequence(), network.Curves.ToSequence()));
    }

    private Harvest Breaker(string id, Behind now)
    {
        if (job.BreakerOf(id) is not { } breaker || job.Parts.Breakers?.Find(breaker.Part) is not { } part)
        {
            return new([], []);
        }

        if (part.Trip.Count == 0)
        {
            return new([new("trip-curve-unknown", Verdict.CannotTell, $"breaker/{id}", $"{part.Name} states no trip times: whether it opens in a short before its wires are too hot, and before what lies ahead of it, cannot be told.", "", Stated, "Add the trip times from its maker's curve.", $"parts/breakers/{part.Id}")], []);
        }

        var branches = new List<NetworkBranch> { new($"breaker {id}", $"bus {breaker.Bus}", id, NetworkTakeOff.AtLeast(part.Resistance)) };
        var wires = new List<ShortWire>();
        foreach (var circuit in now.Circuits)
        {
            var before = circuit.Temperature ?? Temperature.Of(70, "°C");
            if (circuit is { Wire: { } wire, Length: { } length } && NetworkTakeOff.Hot(wire, length, before) is { } resistance)
            {
                branches.Add(new(circuit.Circuit.Id, circuit.Circuit.From.ToString(), circuit.Circuit.To.ToString(), NetworkTakeOff.AtLeast(resistance)));
                wires.Add(new(circuit.Circuit.Id, wire.Gauge, before, wire.Rating, WiringContext.MaterialOf(wire)));
            }
        }

        foreach (var feed in now.Feeds.Select(f => f.Feed))
        {
            if (job.InputOf(feed) is { } input)
            {
                branches.AddRange(NetworkTakeOff.Joined(feed, input.Plus, "+"));
            }
        }

        return wires.Count == 0 ? new([], []) : Worst($"breaker/{id}/shorts", job.PathOfBreaker(id), "Use a thicker wire, a faster breaker, or slower protection ahead of it.", s => new ShortSurveyInput(
            s, [.. Ahead(s, breaker.Bus), .. branches], wires.ToSequence(),
            [.. network.Protectors.Where(p => Ahead(s, breaker.Bus).Any(b => b.Name == p.Branch)), new NetworkBreaker($"breaker {id}", part.Rating)],
            [.. network.Curves.Where(c => Ahead(s, breaker.Bus).Any(b => b.Name == c.Branch)), .. FeederNetwork.Curve($"breaker {id}", part)]));
    }

    // The feeders ahead of a bus, found once for each set of sources.
    private ImmutableArray<NetworkBranch> Ahead(Sequence<NetworkSource> sources, string bus)
    {
        if (!ahead.TryGetValue((sources, bus), out var found))
        {
            ahead.Add((sources, bus), found = network.Between(sources, bus));
        }

        return found;
    }

    // The sheet of the set of sources on which the verdict is worst; a set that does not reach the wires has nothing to say.
    private Harvest Worst(string subject, string path, string remedy, Func<Sequence<NetworkSource>, ShortSurveyInput> input)
    {
        var worst = network.Supplies.Select(s => (s.Condition, Outcome: memo.Run<ShortSurvey, ShortSurveyInput>(input(s.Sources), "n")))
            .Where(x => x.Outcome.Value(0) is not 0).DefaultIfEmpty().MaxBy(x => x.Outcome?.Verdict);
        return worst.Outcome is not { } outcome ? new([], []) : new(
            Substantiation.Findings.Of(outcome, subject, path, remedy) is { } finding ? [finding with { Message = $"In '{worst.Condition}': {finding.Message}" }] : [], [new Shown(subject, outcome)]);
    }

    // What keeps shorts from being judged, once for each thing and not for each wire behind it.
    private ImmutableArray<Finding> Unknown() =>
    [
        .. job.Aircraft.Sources.OrEmpty().Where(s => s.Resistance is null && job.Aircraft.Conditions.OrEmpty().Any(c => c.Sources.Contains(s.Id)))
            .Select(s => new Finding("source-resistance-unknown", Verdict.CannotTell, $"source/{s.Id}", $"{s.Name} states no internal resistance: what it gives in a short cannot be told, and no short on it is judged.", "", Stated, "Add it from its maker's data.", $"aircraft/sources/{s.Id}")),
        .. job.Aircraft.Feeders.OrEmpty().Where(f => f.Protection is not null && job.Parts.Breakers?.Find(f.Protector) is not { Trip.Count: > 0 })
            .Select(f => new Finding("trip-curve-unknown", Verdict.CannotTell, $"feeder/{f.Id}", $"The protection of {f.Id} states no trip times: whether it stays closed in a short behind a breaker cannot be told.", "", Stated, "Name its part, with the trip times of its maker's curve, as protector.", $"aircraft/feeders/{f.Id}")),
    ];

    private sealed record Harvest(ImmutableArray<Finding> Findings, ImmutableArray<Shown> Shown)
    {
        public Harvest(Harvest work, ImmutableArray<Finding> more)
            : this([.. work.Findings, .. more], work.Shown)
        {
        }
    }

    private sealed record Behind(ImmutableArray<FeedResult> Feeds, ImmutableArray<CircuitResult> Circuits)
    {
        public Harvest Work { get; init; } = new([], []);

        public bool Equals(Behind? other) => other is not null && Feeds.AsSpan().SequenceEqual(other.Feeds.AsSpan(), ReferenceEqualityComparer.Instance) && Circuits.AsSpan().SequenceEqual(other.Circuits.AsSpan(), ReferenceEqualityComparer.Instance);

        public override int GetHashCode() => Feeds.Length;
    }
}
