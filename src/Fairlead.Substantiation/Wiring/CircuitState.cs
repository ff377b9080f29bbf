using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>A part of a feed's current that a circuit carries.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="Current">The part.</param>
/// <param name="Feeding">Whether the circuit lies between breaker and input, and not on the return.</param>
internal readonly record struct Share(FeedState Feed, Current Current, bool Feeding);

/// <summary>The finished work of a circuit, never changed afterwards.</summary>
/// <param name="Result">The result.</param>
/// <param name="At">Where it is tightest.</param>
/// <param name="Rating">The conductor temperature that counts there: its own, or that of the coolest wire it is bundled with.</param>
/// <param name="Findings">Findings.</param>
/// <param name="Shown">Sheets.</param>
internal sealed record CircuitWork(CircuitResult Result, Surroundings At, Temperature Rating, ImmutableArray<Finding> Findings, ImmutableArray<Shown> Shown)
{
    /// <summary>Resistance at 20 °C, for faults further on.</summary>
    public Resistance Cold { get; init; }
}

/// <summary>A breaker in front of a circuit.</summary>
internal readonly record struct Protection(string Breaker, Current Rating);

/// <summary>Where the length of a wire lies.</summary>
/// <param name="Along">Along its way, slack included.</param>
/// <param name="From">At its first point: termination, drip loop, service loop and withdrawal of a box.</param>
/// <param name="To">At its last point.</param>
internal readonly record struct Spread(Length Along, Length From, Length To);

/// <summary>A circuit between two assessments: what was taken off the job for it, and where it hangs in the network.</summary>
internal sealed class CircuitState(Circuit circuit)
{
    public Circuit Circuit { get; } = circuit;

    /// <summary>Position in the change, by which sums are ordered.</summary>
    public int Order { get; set; }

    public ContactPart? FromContact { get; set; }

    public ContactPart? ToContact { get; set; }

    /// <summary>Between which points it runs, and under which conditions of its own.</summary>
    public Journey Journey { get; set; }

    /// <summary>The shortest way under these conditions, whatever else runs there.</summary>
    public Way? Free { get; set; }

    /// <summary>The way it takes.</summary>
    public Way? Way { get; set; }

    /// <summary>How much of its length lies along the way and at each end.</summary>
    public Spread Spread { get; set; }

    public Length? Length { get; set; }

    public string LengthOrigin { get; set; } = "";

    /// <summary>The raceway point of an end, for surroundings where the circuit runs in no segment.</summary>
    public string? Node { get; set; }

    public Finding? RouteFinding { get; set; }

    public Finding? LengthFinding { get; set; }

    /// <summary>The wire named, or the core of the cable named; null for 'auto', coax and unknown parts.</summary>
    public WirePart? Named { get; set; }

    public CablePart? Cable { get; set; }

    public CoaxPart? Coax { get; set; }

    public bool IsAuto => Circuit.Wire == "auto";

    /// <summary>The bundles it runs in, in order along its way.</summary>
    public ImmutableArray<BundleState> Bundles { get; set; } = [];

    /// <summary>What each feed puts on it, in the order of the feeds.</summary>
    public List<Share> Shares { get; } = [];

    public Current Current { get; set; }

    /// <summary>The smallest wire if every bundle were on the lowest loading curve; an index among the candidates, -1 when none serves.</summary>
    public int Start { get; set; } = -1;

    /// <summary>The wire chosen; an index among the candidates, -1 when none serves.</summary>
    public int Chosen { get; set; } = -1;

    public CircuitWork? Work { get; set; }

    /// <summary>Its current when each feed draws what is asked for, say its current in one condition; what the circuit states beyond its feeds always flows.</summary>
    public Current CurrentWhen(Func<FeedState, Current> current) =>
        Current - new Current(Shares.Sum(s => s.Current.Si)) + new Current(Shares.Sum(s => s.Feed.Current.Si > 0 ? s.Current.Si * (current(s.Feed) / s.Feed.Current) : 0));

    /// <summary>The wire that counts in its bundles at the start of sizing or after it; null for coax.</summary>
    public WirePart? WireIn(ImmutableArray<WirePart> candidates, bool start) =>
        !IsAuto ? Named : candidates.IsEmpty ? null : candidates[(start ? Start : Chosen) is >= 0 and var index ? index : candidates.Length - 1];

    /// <summary>The greatest breaker that feeds it.</summary>
    public FeedState? BreakerFeed => Shares.Where(s => s.Feeding).Select(s => s.Feed).MaxBy(f => f.BreakerRating?.Si ?? 0);

    /// <summary>A breaker the circuit itself ends on.</summary>
    public Protection? Direct { get; init; }

    /// <summary>The greatest breaker in front of it, whether a feed runs through it or it only begins at one.</summary>
    public Protection? Protection => BreakerFeed is { BreakerRating: { } rating } feed && !(Direct?.Rating > rating) ? new(feed.Feed.Breaker, rating) : Direct;

    public string Subject => $"circuit/{Circuit.Id}";

    public string Path => $"change/circuits/{Circuit.Id}";
}
