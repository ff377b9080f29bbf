using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>The finished work of a feed, never changed afterwards.</summary>
internal sealed record FeedWork(FeedResult Result, ImmutableArray<Finding> Findings, ImmutableArray<Shown> Shown);

/// <summary>A power feed between two assessments: its current and the circuits it runs through.</summary>
internal sealed class FeedState
{
    private static readonly Source Wired = new("This job", "", "power feeds", Basis.Stated);

    public FeedState(PowerFeed feed, int order, WiringContext context)
    {
        (Feed, Order) = (feed, order);
        var part = context.Fixtures.GetValueOrDefault(feed.Item)?.Part;
        Input = part?.Power?.Find(feed.Input);
        States = [.. feed.Conditions.Select(c => (c.Condition, State: Input?.States.Find(c.State)!)).Where(x => x.State is not null)];
        (Current, CurrentOrigin) = States.IsEmpty ? (Current.Zero, "no state in any condition")
            : States.MaxBy(x => x.State.Current.Si) is var (condition, worst) ? (worst.Current, $"{feed.Item} {feed.Input}: '{worst.Id}' in {condition}") : default;
        BreakerPart = context.BreakerPartOf(feed.Breaker);
        Bus = context.BusOf(feed.Breaker);
    }

    public PowerFeed Feed { get; }

    public int Order { get; }

    /// <summary>The input of the part; null when the part has none of that name.</summary>
    public PowerInput? Input { get; }

    /// <summary>The state of the input in each condition in which it is on.</summary>
    public ImmutableArray<(string Condition, PowerState State)> States { get; }

    /// <summary>The worst state's current.</summary>
    public Current Current { get; }

    public string CurrentOrigin { get; }

    public BreakerPart? BreakerPart { get; }

    public Current? BreakerRating => BreakerPart?.Rating;

    public Bus? Bus { get; }

    /// <summary>Way of current from the breaker to each plus pin reached, and from each minus pin to a ground.</summary>
    public ImmutableArray<ImmutableArray<CircuitState>> Feeding { get; set; } = [];

    public ImmutableArray<ImmutableArray<CircuitState>> Returning { get; set; } = [];

    /// <summary>Circuits among which the current divides in a way that cannot be told.</summary>
    public ImmutableArray<CircuitState> Loop { get; set; } = [];

    /// <summary>Every point the trace passed: a circuit that begins or ends on one of them makes the trace out of date.</summary>
    public HashSet<Endpoint> Seen { get; } = [];

    /// <summary>What is wrong with the wiring.</summary>
    public Finding? Problem { get; set; }

    public FeedWork? Work { get; set; }

    public string Subject => $"feed/{Feed.Id}";

    public string Path => $"change/power/{Feed.Id}";

    /// <summary>The circuits on its ways.</summary>
    public IEnumerable<CircuitState> Circuits => Feeding.Concat(Returning).SelectMany(p => p).Distinct();

    /// <summary>All circuits that may carry some of it, those of a loop included.</summary>
    public IEnumerable<CircuitState> Carriers => Circuits.Union(Loop);

    /// <summary>The allowed drop per metre of the longest way there and back, so that any way stays within the allowed drop;
    /// null where the bus voltage has no limit in the table.</summary>
    public double? DropPerMetre { get; set; }

    /// <summary>Works out <see cref="DropPerMetre"/>. Returns whether it changed.</summary>
    public bool Budget()
    {
        var before = DropPerMetre;
        var metres = Longest(Feeding) + Longest(Returning);
        DropPerMetre = AllowedDrop() is { } volts && metres > 0 ? volts / metres : null;
        return before != DropPerMetre;
    }

    // The drop allowed at the greatest current, such that the steady part of it keeps the limit of continuous loads.
    private double? AllowedDrop()
    {
        if (Bus is null || VoltageDrop.AllowedDrop(Bus.Nominal, Duty) is not { IsKnown: true } limit)
        {
            return null;
        }

        return Duty == Calculations.Wiring.Duty.Continuous || Steady == Current.Zero ? limit.Value.Si
            : Math.Min(limit.Value.Si, VoltageDrop.AllowedDrop(Bus.Nominal, Calculations.Wiring.Duty.Continuous).Value.Si * (Current / Steady));
    }

    /// <summary>The current in a condition; none where the input is off.</summary>
    public Current In(string condition) => States.Where(s => s.Condition == condition).Select(s => s.State.Current).DefaultIfEmpty().Max();

    /// <summary>The greatest current that has no limit in time.</summary>
    public Current Steady => States.Where(s => s.State.On is null).Select(s => s.State.Current).DefaultIfEmpty().Max();

    /// <summary>Intermittent only when every circuit of the feed is, and its greatest current is limited in time.</summary>
    public Calculations.Wiring.Duty Duty => Steady < Current && Circuits.Any() && Circuits.All(c => c.Circuit.Duty == Model.Duty.Intermittent)
        ? Calculations.Wiring.Duty.Intermittent : Calculations.Wiring.Duty.Continuous;

    /// <summary>Resistance of the return from the ground stud the feed ends on; 5 mΩ, which AC 43.13-1B calls satisfactory, where the job gives none.</summary>
    public Resistance ReturnResistance(WiringContext context)
    {
        var ends = Returning.Where(p => !p.IsEmpty).SelectMany(p => new[] { p[^1].Circuit.From.Item, p[^1].Circuit.To.Item });
        return ends.Select(e => context.Change.Grounds?.Find(e) ?? context.Aircraft.Grounds?.Find(e)).FirstOrDefault(g => g is not null)?.Return ?? Resistance.Of(5, "mΩ");
    }

    public Finding Missing(string rule, string message, string remedy, Verdict severity = Verdict.Fails) => new(rule, severity, Subject, message, "", Wired, remedy, Path);

    /// <summary>Ends of the pins of one side.</summary>
    public IEnumerable<Endpoint> Pins(Sequence<string> pins) => pins.Select(p => Endpoint.OfPin(Feed.Item, p));

    private static double Longest(ImmutableArray<ImmutableArray<CircuitState>> paths) => paths.Select(p => p.Sum(c => c.Length?.Si ?? 0)).DefaultIfEmpty().Max();
}
