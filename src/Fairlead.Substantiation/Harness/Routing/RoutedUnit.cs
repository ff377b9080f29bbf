using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>What takes one way as a whole: a circuit, or circuits of one cable or one twist between the same points. Equal to another where the
/// choice of ways cannot tell them apart.</summary>
/// <param name="Circuits">Ids of its circuits.</param>
/// <param name="Journey">Between which points and under which conditions of its own.</param>
/// <param name="Free">The shortest way under these conditions, whatever else runs there.</param>
/// <param name="Diameters">Diameters of its circles in metres: one for a cable, one for each wire otherwise.</param>
/// <param name="Density">Mass in kilogram per metre of way.</param>
/// <param name="Separation">Its separation class.</param>
/// <param name="Groups">The groups it belongs to, by which ways are barred: itself, its class, its side of a redundant set, all.</param>
/// <param name="Sides">Its sides in redundant sets.</param>
internal sealed record RoutedUnit(
    Sequence<string> Circuits, Journey Journey, Way Free, Sequence<double> Diameters, double Density, string Separation,
    Sequence<string> Groups, Sequence<Side> Sides)
{
    /// <summary>Whether it stays on its shortest way: the job states its length, so it is known where it runs.</summary>
    public bool Stays { get; init; }
}

/// <summary>One side of a redundant set.</summary>
/// <param name="Set">Name of the set.</param>
/// <param name="Name">Item or circuit that others of the set back up.</param>
internal readonly record struct Side(string Set, string Name)
{
    /// <summary>Its group.</summary>
    public string Group => $"side/{Set}/{Name}";
}

/// <summary>Everything the choice of ways stands on.</summary>
/// <param name="Raceways">The raceways.</param>
/// <param name="Units">What is to be routed, in the order of the change.</param>
/// <param name="Room">By segment: what fits in metres of diameter, infinite where the job does not say, and the diameter already there.</param>
/// <param name="Apart">Classes that stay apart.</param>
/// <param name="Panels">By segment: panels that would be opened for it alone.</param>
/// <param name="PanelCost">What opening each of those is worth, in kilogram of wire.</param>
internal sealed record RoutingProblem(
    Raceways Raceways, ImmutableArray<RoutedUnit> Units, ImmutableArray<(double Capacity, double There)> Room,
    HashSet<(string One, string Other)> Apart, ImmutableArray<ImmutableArray<string>> Panels, Dictionary<string, double> PanelCost)
{
    /// <summary>Whether another problem differs in its units at most.</summary>
    public bool Frames(RoutingProblem other) => ReferenceEquals(Raceways, other.Raceways) && Room.AsSpan().SequenceEqual(other.Room.AsSpan()) && Apart.SetEquals(other.Apart)
        && Panels.Length == other.Panels.Length && Panels.Zip(other.Panels).All(p => p.First.AsSpan().SequenceEqual(p.Second.AsSpan()))
        && PanelCost.Count == other.PanelCost.Count && PanelCost.All(c => other.PanelCost.TryGetValue(c.Key, out var cost) && cost == c.Value);
}

/// <summary>A conflict that no way round was found for.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Segment">Where.</param>
/// <param name="Names">Who: circuits, classes or sides.</param>
internal sealed record Clash(ClashKind Kind, string Segment, ImmutableArray<string> Names);

/// <summary>Kinds of conflicts in a segment.</summary>
internal enum ClashKind
{
    /// <summary>What runs there does not fit.</summary>
    Full,

    /// <summary>Classes that stay apart meet.</summary>
    Classes,

    /// <summary>Sides of a redundant set meet.</summary>
    Redundant,

    /// <summary>A panel would be opened for it alone.</summary>
    Panel,
}

/// <summary>The ways chosen.</summary>
/// <param name="Detours">Ways that differ from the shortest ones, by circuit.</param>
/// <param name="Mass">Wire mass along the ways, panels at their worth included.</param>
/// <param name="Bound">No arrangement that keeps every rule has less.</param>
/// <param name="Proved">Whether it is proved that none has less than this one, or, where clashes remain, that no arrangement is without.</param>
/// <param name="Clashes">What could not be resolved.</param>
/// <param name="Steps">Arrangements looked at.</param>
internal sealed record RoutingSolution(
    Dictionary<string, Way> Detours, Mass Mass, Mass Bound, bool Proved, ImmutableArray<Clash> Clashes, int Steps);
