using System.Collections.Immutable;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Network;

/// <summary>A breaker in a branch of the network.</summary>
/// <param name="Branch">The branch it opens.</param>
/// <param name="Rating">Rating.</param>
public sealed record NetworkBreaker(
    [In("branch", "branch it opens")] string Branch,
    [In("Ib", "rating", "A", Min = 0.1, Max = 2000)] Current Rating);

/// <summary>A point of a breaker's trip curve.</summary>
/// <param name="Branch">The branch it opens.</param>
/// <param name="Multiple">Current over rating.</param>
/// <param name="Least">Shortest time to trip.</param>
/// <param name="Most">Longest time to trip.</param>
public sealed record NetworkTrip(
    [In("branch", "branch it opens")] string Branch,
    [In("multiple", "current over rating", "%", Min = 100, Max = 10000)] Fraction Multiple,
    [In("tmin", "shortest time to trip", "s", Min = 0.0001, Max = 36000)] Duration Least,
    [In("tmax", "longest time to trip", "s", Min = 0.0001, Max = 36000)] Duration Most)
{
    /// <summary>The time within which a breaker trips; null where it may not trip, and where its curve is missing or makes no sense.</summary>
    internal static TripBand? Band(Sequence<NetworkTrip> curves, NetworkBreaker breaker, Current current)
    {
        ImmutableArray<TripPoint> curve = [.. curves.Where(c => c.Branch == breaker.Branch).Select(c => new TripPoint(c.Multiple, c.Least, c.Most)).OrderBy(c => c.Multiple)];
        return TripBand.InOrder(curve) ? TripBand.At(curve, new Fraction(current / breaker.Rating)) : null;
    }
}

/// <summary>Input of <see cref="ShortCircuit"/>.</summary>
/// <param name="Sources">Sources; node <c>0</c> is the reference.</param>
/// <param name="Branches">Resistances between nodes.</param>
/// <param name="Node">The node that is shorted to the reference.</param>
/// <param name="Loads">Loads.</param>
/// <param name="Fault">Resistance of the short itself.</param>
/// <param name="Breakers">Breakers by branch.</param>
/// <param name="Curves">Their trip curves.</param>
public sealed record ShortCircuitInput(
    [In("sources", "sources")] Sequence<NetworkSource> Sources,
    [In("branches", "feeders, wires, breakers, returns")] Sequence<NetworkBranch> Branches,
    [In("node", "node shorted to the reference")] string Node,
    [In("loads", "loads", Default = "none")] Sequence<NetworkLoad> Loads = default,
    [In("Rf", "resistance of the short itself", "mΩ", Min = 0, Max = 1e6, Default = "0")] Resistance Fault = default,
    [In("breakers", "breakers", Default = "none")] Sequence<NetworkBreaker> Breakers = default,
    [In("curves", "trip curves", Default = "none")] Sequence<NetworkTrip> Curves = default);

/// <summary>A short at one node: its current, what flows in every branch, and whether only the nearest breakers open.</summary>
/// <remarks>
/// If = V/(z + Rf), where V is the node's voltage before the short and z the resistance of the network seen from the node. Loads count as the
/// resistances they are before the short. Check value: 28 V behind 5 mΩ, feeder 2 mΩ and wire 93 mΩ: 28/0.1 = 280 A.
/// </remarks>
public sealed class ShortCircuit : ICalculation<ShortCircuitInput>
{
    private static readonly Source Thevenin = new("Theorem of Helmholtz and Thévenin", "", "", Basis.Derived);
    private static readonly Source Curve = new("Trip curve of the breaker", "", "", Basis.Stated);

    /// <inheritdoc/>
    public static CalculationInfo<ShortCircuitInput> Info { get; } = new(
        "short-circuit", "Short at one point of the network", Discipline.Network,
        "The current of a short, where it comes from, and which breakers open",
        "sources='generator,gen,28 V,5 mohm' branches='feeder,gen,bus,2 mohm;wire,bus,box,93 mohm' node=box breakers='feeder,60 A;wire,5 A' "
        + "curves='feeder,200 %,5 s,40 s;feeder,1000 %,0.6 s,2 s;wire,200 %,0.38 s,2.5 s;wire,1000 %,0.02 s,0.12 s'",
        Thevenin, VoltageSurvey.Kirchhoff);

    /// <inheritdoc/>
    public static Sheet Run(ShortCircuitInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var network = DcNetwork.Of(input.Sources, input.Branches, input.Loads);
        if (VoltageSurvey.Faults(input.Loads) is { } fault)
        {
            s.CannotTell(fault);
        }
        else if (NetworkSolver.Solve(network) is not { } before || FaultStudy.Of(before) is not { } study)
        {
            s.CannotTell("The network has no solution before the short.");
        }
        else if (study.Short(input.Node, input.Fault) is not { } state)
        {
            s.CannotTell($"No source reaches node '{input.Node}'.");
        }
        else
        {
            Report(s, input, before, state);
        }
    });

    private static void Report(SheetBuilder s, ShortCircuitInput input, NetworkSolution before, ShortState state)
    {
        s.Step("V0", $"voltage of {input.Node} before the short", "voltage survey", before.At(input.Node)!.Value, "V", VoltageSurvey.Kirchhoff);
        s.Step("If", "current of the short", "V0 / (resistance seen from the node + Rf)", state.Current, "A", Thevenin);
        s.Table("Branches during the short", ["branch", "current before", "current during"], input.Branches.Select(b =>
            ImmutableArray.Create<SheetValue>(b.Name, before.Through(b).As("A"), state.Through(b).As("A"))));
        Coordinate(s, input, state);
        s.Caution("The source's own regulation and current limit are not in the model: a generator may give less than its internal resistance says, a battery more than a generator.");
    }

    private static void Coordinate(SheetBuilder s, ShortCircuitInput input, ShortState state)
    {
        var met = new BreakersOnTheWay(input.Branches, input.Breakers).To(state).Breakers;
        var trips = met.Select(b => (b.Breaker, b.Nearest, Band: NetworkTrip.Band(input.Curves, b.Breaker, b.Current), b.Current)).ToArray();
        s.Table("Breakers on the way, nearest first", ["branch", "rating", "current", "shortest trip", "longest trip"], trips.Select(t =>
            ImmutableArray.Create<SheetValue>(t.Breaker.Branch, t.Breaker.Rating.As("A"), t.Current.As("A"), t.Band is { } b ? b.Shortest.As("s") : "may not trip", t.Band is { } c ? c.Longest.As("s") : "may not trip")));
        var nearest = trips.Where(t => t.Nearest).ToArray();
        if (input.Breakers.Count > 0 && (nearest.Length == 0 || nearest.Any(t => t.Band is null)))
        {
            s.CannotTell(nearest.Length == 0 ? "No breaker lies between the short and the sources." : "The nearest breaker may not trip: its current lies below its trip curve, or it has none.");
            return;
        }

        foreach (var upstream in trips.Where(t => !t.Nearest && t.Band is not null))
        {
            var slowest = nearest.Max(t => t.Band!.Value.Longest);
            s.Check($"{upstream.Breaker.Branch} stays closed", slowest.As("s"), Sense.AtMost, upstream.Band!.Value.Shortest.As("s"), "the nearest breaker opens before one behind it can", Curve);
        }
    }
}
