using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Takes a routing problem off a job, for the wires that its circuits have.</summary>
internal sealed class RoutingTakeOff
{
    // Where the catalogue knows no mass, a way is still to be as short as it can.
    private const double LeastDensity = 0.001;

    private readonly WiringContext context;
    private readonly ImmutableArray<(double Capacity, double There)> room;
    private readonly HashSet<(string One, string Other)> apart;
    private readonly ImmutableArray<ImmutableArray<string>> panels = [];
    private readonly Dictionary<string, double> cost = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> sets;
    private readonly Dictionary<string, Sequence<string>> closed = new(StringComparer.Ordinal);

    public RoutingTakeOff(WiringContext context)
    {
        this.context = context;
        var raceways = context.Raceways;
        var segments = context.Aircraft.Segments.OrEmpty();
        var byNumber = Enumerable.Range(0, raceways.Segments).Select(e => segments[raceways.Segment(e)]).ToArray();
        room = [.. byNumber.Select(s => (s.Capacity?.Si ?? double.PositiveInfinity, s.Existing is { Wires: > 0 } there ? there.Diameter.Si : 0))];
        apart = [.. context.Defaults.KeepApart.SelectMany(p => new[] { (p.One, p.Other), (p.Other, p.One) })];
        sets = context.Change.Fit.OrEmpty().Where(f => f.Redundant.Length > 0).ToDictionary(f => f.Id, f => f.Redundant, StringComparer.Ordinal);
        if (context.Defaults.AccessHour is { Si: > 0 } worth)
        {
            panels = [.. PanelTake.Of(context, byNumber, worth, cost)];
        }
    }

    /// <summary>Whether there is anything to keep besides capacity: then ways are chosen even where everything fits.</summary>
    public bool HasRules => apart.Count > 0 || sets.Count > 0 || !panels.IsEmpty;

    /// <summary>The segments a class may not use: those of a class it stays apart from.</summary>
    public Sequence<string> ClosedTo(string separation)
    {
        if (separation.Length == 0 || apart.Count == 0)
        {
            return default;
        }

        if (!closed.TryGetValue(separation, out var found))
        {
            closed.Add(separation, found = context.Aircraft.Segments.OrEmpty().Where(s => apart.Contains((separation, s.Separation))).Select(s => s.Id).ToSequence());
        }

        return found;
    }

    /// <summary>The problem.</summary>
    /// <param name="circuits">The circuits, in the order of the change.</param>
    /// <param name="wireOf">The wire that each has, or is to be given room for.</param>
    public RoutingProblem Problem(IReadOnlyList<CircuitState> circuits, Func<CircuitState, WirePart?> wireOf)
    {
        var backed = circuits.Where(c => c.Circuit.Redundant.Length > 0).Select(c => c.Circuit.Redundant).ToHashSet(StringComparer.Ordinal);
        var units = circuits.Where(c => c.Free is not null)
            .GroupBy(c => (c.Journey, c.Circuit.Separation, c.Circuit.Redundant, Key(c.Circuit)))
            .Select(g => Unit([.. g], wireOf, backed)).ToImmutableArray();
        return new(context.Raceways, units, room, apart, panels, cost);
    }

    /// <summary>Whether what runs in a segment, with what was there, fits.</summary>
    public bool Fits(string segment, IEnumerable<CircuitState> circuits, WiringContext context) =>
        context.Raceways.Number(segment) is >= 0 and var edge && (double.IsPositiveInfinity(room[edge].Capacity)
            || PackedDiameter.Of(circuits.GroupBy(c => Key(c.Circuit)).SelectMany(g => Circles([.. g], c => c.WireIn(context.Candidates, start: false))).Concat(room[edge].There > 0 ? [room[edge].There] : [])) <= room[edge].Capacity * (1 + 1e-12));

    private static string Key(Circuit circuit) => circuit.Cable.Length > 0 ? $"cable {circuit.Cable}" : circuit.Twist.Length > 0 ? $"twist {circuit.Twist}" : circuit.Id;

    // The cores of one cable are one circle.
    private static IEnumerable<double> Circles(CircuitState[] circuits, Func<CircuitState, WirePart?> wireOf) =>
        circuits[0].Cable is { } cable && circuits[0].Circuit.Cable.Length > 0 ? [cable.Diameter.Si]
            : circuits.Select(c => c.Cable?.Diameter.Si ?? c.Coax?.Diameter.Si ?? wireOf(c)?.Diameter.Si).OfType<double>();

    private static double Density(CircuitState[] circuits, Func<CircuitState, WirePart?> wireOf) =>
        circuits[0].Cable is { } cable && circuits[0].Circuit.Cable.Length > 0 ? cable.Mass.Si : circuits.Sum(c => c.Cable?.Mass.Si ?? c.Coax?.Mass.Si ?? wireOf(c)?.Mass.Si ?? 0);

    private RoutedUnit Unit(CircuitState[] circuits, Func<CircuitState, WirePart?> wireOf, HashSet<string> backed)
    {
        var first = circuits[0];
        Sequence<Side> sides = sets.Count == 0 && backed.Count == 0 ? [] : [.. SidesOf(first.Circuit)];
        var separation = first.Circuit.Separation;
        return new(
            [.. circuits.Select(c => c.Circuit.Id)], first.Journey, first.Free!, [.. Circles(circuits, wireOf)], Math.Max(LeastDensity, Density(circuits, wireOf)), separation,
            [$"unit/{first.Circuit.Id}", .. separation.Length > 0 ? [$"class/{separation}"] : (string[])[], .. sides.Select(s => s.Group), .. panels.IsEmpty ? [] : (string[])["all"]], sides)
        {
            Stays = circuits.Any(c => c.Circuit.Length is not null),
        };
    }

    // A circuit between two items of one set serves both and belongs to neither side.
    private IEnumerable<Side> SidesOf(Circuit circuit)
    {
        var (from, to) = (sets.GetValueOrDefault(circuit.From.Item), sets.GetValueOrDefault(circuit.To.Item));
        if (circuit.Redundant.Length > 0)
        {
            yield return new($"circuit {circuit.Redundant}", circuit.Id);
        }

        if (from is not null && (from != to || circuit.From.Item == circuit.To.Item))
        {
            yield return new($"item {from}", circuit.From.Item);
        }

        if (to is not null && to != from)
        {
            yield return new($"item {to}", circuit.To.Item);
        }
    }
}
