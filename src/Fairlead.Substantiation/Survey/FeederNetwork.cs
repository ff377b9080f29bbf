using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Survey;

/// <summary>What feeds the buses in a short: every set of sources with their own resistance, the feeders, and the protection in them.</summary>
internal sealed class FeederNetwork
{
    private static readonly Temperature DefaultAmbient = Temperature.Of(70, "°C");

    public FeederNetwork(Job job)
    {
        ImmutableArray<Feeder> feeders = [.. job.Aircraft.Feeders.OrEmpty().Where(f => job.Parts.Wires?.Find(f.Wire) is not null)];
        Branches = [.. feeders.SelectMany(f => Links(job, f))];
        Protected = feeders.Where(f => Limiter(job, f) is not null && Branches.Any(b => b.Name == Name(f))).Select(f => (f, wire: job.Parts.Wires!.Find(f.Wire)!)).Select(x => new ShortWire(
            Name(x.f), x.wire.Gauge, x.f.Hottest ?? DefaultAmbient, x.wire.Rating, WiringContext.MaterialOf(x.wire), LeavesBus(job, x.f) ? ShortedEnds.Both : ShortedEnds.Second)).ToSequence();
        var limiters = feeders.Select(f => (Branch: LimiterBranch(job, f), Part: Limiter(job, f))).Where(x => x.Part is not null).ToArray();
        Protectors = [.. limiters.Select(x => new NetworkBreaker(x.Branch, x.Part!.Rating))];
        Curves = [.. limiters.SelectMany(x => Curve(x.Branch, x.Part!))];
        Supplies = [.. Sets(job).DistinctBy(s => string.Join('|', s.Sources.Select(x => x.Name)), StringComparer.Ordinal)];
    }

    public ImmutableArray<NetworkBranch> Branches { get; }

    /// <summary>The feeders behind protection of their own that states trip times. Of one without, the source alone limits a short.</summary>
    public Sequence<ShortWire> Protected { get; }

    public ImmutableArray<NetworkBreaker> Protectors { get; }

    public ImmutableArray<NetworkTrip> Curves { get; }

    /// <summary>The sets of sources that supply the aircraft in its conditions, each once. A source without a resistance of its own is in none.</summary>
    public ImmutableArray<(string Condition, Sequence<NetworkSource> Sources)> Supplies { get; }

    /// <summary>The feeders that may carry current from some sources to a bus: dead ends are left off.</summary>
    public ImmutableArray<NetworkBranch> Between(Sequence<NetworkSource> sources, string bus)
    {
        var ends = sources.Select(s => s.Node).Append($"bus {bus}").ToHashSet(StringComparer.Ordinal);
        for (var left = Branches; ;)
        {
            var met = left.SelectMany(b => new[] { b.From, b.To }).CountBy(n => n, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
            ImmutableArray<NetworkBranch> kept = [.. left.Where(b => (met[b.From] > 1 || ends.Contains(b.From)) && (met[b.To] > 1 || ends.Contains(b.To)))];
            if (kept.Length == left.Length)
            {
                return kept;
            }

            left = kept;
        }
    }

    public static string Name(Feeder feeder) => $"feeder {feeder.Id}";

    public static IEnumerable<NetworkTrip> Curve(string branch, BreakerPart part) => part.Trip.Select(p => new NetworkTrip(branch, new Fraction(p.Multiple), p.Shortest, p.Longest));

    private static IEnumerable<(string Condition, Sequence<NetworkSource> Sources)> Sets(Job job)
    {
        var aircraft = job.Aircraft;
        string Node(string id, string bus) => aircraft.Feeders.OrEmpty().Any(f => f.From == id) ? $"source {id}" : $"bus {bus}";
        foreach (var condition in aircraft.Conditions.OrEmpty())
        {
            var sources = condition.Sources.Count > 0
                ? condition.Sources.Select(id => aircraft.Sources?.Find(id)).Where(s => s?.Resistance is not null).Select(s => new NetworkSource(s!.Id, Node(s.Id, s.Bus), s.Voltage, NetworkTakeOff.AtLeast(s.Resistance)))
                : aircraft.Batteries.OrEmpty().Where(b => b.Resistance is not null && (b.Condition == condition.Id || b.Landing == condition.Id)).Select(b => new NetworkSource(b.Id, Node(b.Id, b.Bus), b.Voltage, NetworkTakeOff.AtLeast(b.Resistance)));
            if (sources.ToSequence() is { Count: > 0 } set)
            {
                yield return (condition.Name, set);
            }
        }
    }

    // Protection of a feeder from a bus stands at that bus, as protection stands as near to the supply as it can: the wire begins behind it. At which
    // end of a feeder from a source it stands is not known: it counts in the feeder as a whole, and the end at the source is not shorted.
    private static IEnumerable<NetworkBranch> Links(Job job, Feeder feeder)
    {
        if (Supply.ColdOf(job.Parts.Wires!.Find(feeder.Wire), feeder.Length) is not { } wire)
        {
            yield break;
        }

        var (from, limiter) = (LeavesBus(job, feeder) ? $"bus {feeder.From}" : $"source {feeder.From}", LimiterBranch(job, feeder));
        var inLimiter = job.Parts.Breakers?.Find(feeder.Protector)?.Resistance ?? default;
        if (limiter == Name(feeder))
        {
            yield return new(limiter, from, $"bus {feeder.To}", NetworkTakeOff.AtLeast(wire + inLimiter));
        }
        else
        {
            yield return new(limiter, from, $"behind {limiter}", NetworkTakeOff.AtLeast(inLimiter));
            yield return new(Name(feeder), $"behind {limiter}", $"bus {feeder.To}", NetworkTakeOff.AtLeast(wire));
        }
    }

    private static bool LeavesBus(Job job, Feeder feeder) => job.Aircraft.Buses?.Find(feeder.From) is not null;

    private static BreakerPart? Limiter(Job job, Feeder feeder) => job.Parts.Breakers?.Find(feeder.Protector) is { Trip.Count: > 0 } part ? part : null;

    private static string LimiterBranch(Job job, Feeder feeder) => LeavesBus(job, feeder) && Limiter(job, feeder) is not null ? $"protection of {feeder.Id}" : Name(feeder);
}
