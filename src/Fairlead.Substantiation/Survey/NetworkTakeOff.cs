using Fairlead.Calculations;
using Fairlead.Calculations.Network;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation.Power;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Survey;

/// <summary>The power system as a network: sources, feeders, breakers, the wires of the new feeds, boxes and ground returns.</summary>
internal sealed class NetworkTakeOff
{
    /// <summary>What joins two points without a resistance of its own.</summary>
    private static readonly Resistance None = new(1e-6);

    private readonly Job job;
    private readonly List<NetworkBranch> branches = [];

    public NetworkTakeOff(Job job, IReadOnlyList<CircuitResult> circuits, IReadOnlyList<FeedResult> feeds)
    {
        this.job = job;
        Feeders();
        Breakers(feeds);
        Wires(circuits, feeds);
        Boxes(feeds);
    }

    /// <summary>The network in a condition, with every load of it on at once.</summary>
    public VoltageSurveyInput In(OperatingCondition condition, IEnumerable<LoadItem> loads) =>
        new(Sources(condition).ToSequence(), [.. branches], Loads(condition, loads).ToSequence());

    // A regulator holds its voltage at the terminals: the internal resistance counts in a short, not here. A battery has none.
    private IEnumerable<NetworkSource> Sources(OperatingCondition condition) => condition.Sources.Count > 0
        ? condition.Sources.Select(id => job.Aircraft.Sources?.Find(id)).OfType<PowerSource>().Select(s => new NetworkSource(s.Id, SourceNode(s.Id, s.Bus), s.Voltage, None))
        : job.Aircraft.Batteries.OrEmpty().Where(b => b.Condition == condition.Id || b.Landing == condition.Id)
            .Select(b => new NetworkSource(b.Id, SourceNode(b.Id, b.Bus), b.Voltage, AtLeast(b.Resistance)));

    private IEnumerable<NetworkLoad> Loads(OperatingCondition condition, IEnumerable<LoadItem> loads)
    {
        foreach (var load in loads.Where(l => l.Action != ListAction.Removed))
        {
            if (load.In(condition.Id) is not { Current.Si: > 0 } demand)
            {
                continue;
            }

            if (load.Action == ListAction.Kept)
            {
                yield return new NetworkLoad(load.Id, $"bus {load.Bus}", demand.Current);
            }
            else if (job.Change.Power!.Find(load.Id) is { } feed && job.InputOf(feed) is { } input)
            {
                yield return new NetworkLoad(load.Id, Plus(feed), demand.Current, Return: Minus(feed), Least: input.MinVoltage);
            }
        }
    }

    // A source that a feeder leads away from stands at the start of it, and otherwise on its bus.
    private string SourceNode(string id, string bus) => job.Aircraft.Feeders.OrEmpty().Any(f => f.From == id) ? $"source {id}" : $"bus {bus}";

    private void Feeders()
    {
        foreach (var feeder in job.Aircraft.Feeders.OrEmpty())
        {
            if (job.Parts.Wires?.Find(feeder.Wire) is { } wire && Hot(wire, feeder.Length, feeder.Hottest ?? Temperature.Of(70, "°C")) is { } resistance)
            {
                var from = job.Aircraft.Buses?.Find(feeder.From) is not null ? $"bus {feeder.From}" : $"source {feeder.From}";
                branches.Add(new($"feeder {feeder.Id}", from, $"bus {feeder.To}", AtLeast(resistance)));
            }
        }

        foreach (var stud in job.Aircraft.Grounds.OrEmpty().Concat(job.Change.Grounds.OrEmpty()))
        {
            branches.Add(new($"return of {stud.Id}", stud.Id, NetworkNodes.Reference, AtLeast(stud.Return)));
        }
    }

    private void Breakers(IReadOnlyList<FeedResult> feeds)
    {
        foreach (var id in feeds.Select(f => f.Feed.Breaker).Distinct(StringComparer.Ordinal))
        {
            if (job.BreakerOf(id) is { } breaker)
            {
                branches.Add(new($"breaker {id}", $"bus {breaker.Bus}", id, AtLeast(job.Parts.Breakers?.Find(breaker.Part)?.Resistance)));
            }
        }
    }

    private void Wires(IReadOnlyList<CircuitResult> circuits, IReadOnlyList<FeedResult> feeds)
    {
        var wanted = feeds.SelectMany(f => f.Feeding.Concat(f.Returning)).ToHashSet(StringComparer.Ordinal);
        foreach (var circuit in circuits.Where(c => wanted.Contains(c.Circuit.Id)))
        {
            if (circuit is { Wire: { } wire, Length: { } length } && Hot(wire, length, circuit.Temperature ?? Temperature.Of(70, "°C")) is { } resistance)
            {
                branches.Add(new(circuit.Circuit.Id, circuit.Circuit.From.ToString(), circuit.Circuit.To.ToString(), AtLeast(resistance)));
            }
        }
    }

    // Within a box the pins of one side of an input are one.
    private void Boxes(IReadOnlyList<FeedResult> feeds)
    {
        foreach (var feed in feeds.Select(f => f.Feed))
        {
            if (job.InputOf(feed) is { } input)
            {
                branches.AddRange(Joined(feed, input.Plus, "+"));
                branches.AddRange(Joined(feed, input.Minus, "-"));
            }
        }
    }

    /// <summary>The pins of one side of an input, joined within the box.</summary>
    public static IEnumerable<NetworkBranch> Joined(PowerFeed feed, IEnumerable<string> pins, string side) =>
        pins.Select(pin => new NetworkBranch($"{feed.Item} {pin}", $"{feed.Item} {pin}", $"{feed.Item} {feed.Input} {side}", None));

    private static string Plus(PowerFeed feed) => $"{feed.Item} {feed.Input} +";

    private static string Minus(PowerFeed feed) => $"{feed.Item} {feed.Input} -";

    /// <summary>Resistance of a wire at a temperature.</summary>
    public static Resistance? Hot(WirePart wire, Length length, Temperature temperature) =>
        Supply.ColdOf(wire, length) is { } cold ? cold * WireTable.HotFactor(WiringContext.MaterialOf(wire), temperature) : null;

    /// <summary>A resistance that the solver can take.</summary>
    public static Resistance AtLeast(Resistance? resistance) => resistance is { } r && r > None ? r : None;
}
