using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation;

/// <summary>The way of a circuit through the raceways.</summary>
/// <param name="Nodes">The raceway points passed, both ends included.</param>
/// <param name="Segments">The segments used, in order.</param>
/// <param name="Length">Length along the way, without slack or terminations.</param>
public sealed record Way(ImmutableArray<string> Nodes, ImmutableArray<string> Segments, Length Length);

/// <summary>What was worked out for one circuit.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="Verdict">Worst of its checks.</param>
/// <param name="Way">Its way; null when it has none or its ends stand nowhere.</param>
/// <param name="Length">Its cut length; null when it cannot be told.</param>
/// <param name="LengthOrigin">How the length came about, in words.</param>
/// <param name="Part">The wire, cable or coax: as named, or as chosen for 'auto'.</param>
/// <param name="Wire">The single wire or the cable's core; null for coax and where nothing serves.</param>
/// <param name="Chosen">Whether the wire was chosen here and not named.</param>
/// <param name="Current">Its continuous current.</param>
/// <param name="CurrentOrigin">Where the current comes from, in words.</param>
/// <param name="Allowed">What it may carry in its tightest bundle.</param>
/// <param name="Temperature">How hot the conductor runs there.</param>
/// <param name="Drop">Voltage drop along it, hot.</param>
/// <param name="FromContact">The contact at the 'from' end.</param>
/// <param name="ToContact">The contact at the 'to' end.</param>
/// <param name="Mass">Mass of the wire; a cable's mass is divided among the circuits that share it.</param>
/// <param name="Centre">Centre of that mass.</param>
public sealed record CircuitResult(
    Circuit Circuit, Verdict Verdict, Way? Way, Length? Length, string LengthOrigin, string Part, WirePart? Wire, bool Chosen,
    Current Current, string CurrentOrigin, Current? Allowed, Temperature? Temperature, Voltage? Drop,
    ContactPart? FromContact, ContactPart? ToContact, Mass Mass, Place? Centre)
{
    /// <summary>Length of the shortest way under the circuit's own conditions: no way is shorter.</summary>
    public Length? Shortest { get; init; }

    /// <summary>What is cut from the reel: the length and the allowance that is trimmed off.</summary>
    public Length? Cut { get; init; }
}

/// <summary>How full a raceway segment is.</summary>
/// <param name="Segment">The segment.</param>
/// <param name="Diameter">Diameter of all that runs there, what was there before included; null when it cannot be told.</param>
/// <param name="Capacity">Greatest diameter that fits; null when the job does not say.</param>
public sealed record SegmentUse(string Segment, Length? Diameter, Length? Capacity);

/// <summary>How good the ways of all circuits together are.</summary>
/// <param name="Mass">Wire mass along the ways, panels opened for them at their worth included.</param>
/// <param name="Bound">No arrangement that keeps every rule has less.</param>
/// <param name="Proved">Whether it is proved that none has less, or, where something does not fit, that no arrangement makes it fit.</param>
/// <param name="Detours">Circuits that do not take their shortest way.</param>
/// <param name="Steps">Arrangements looked at; none where every circuit takes its shortest way.</param>
/// <param name="Rounds">How often ways and wire sizes were worked in turn until both settled.</param>
public sealed record RoutingResult(Mass Mass, Mass Bound, bool Proved, ImmutableArray<string> Detours, int Steps, int Rounds);

/// <summary>What was worked out for one power feed.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="Feeding">Circuits from the breaker to the input.</param>
/// <param name="Returning">Circuits from the input to ground.</param>
/// <param name="Current">Its greatest current over all operating conditions.</param>
/// <param name="Drop">Voltage drop from bus to ground, hot; null when the path cannot be told.</param>
/// <param name="AtInput">Least voltage at the input: the bus voltage less the drop, or on battery the nominal voltage of the battery less the drop there.</param>
public sealed record FeedResult(PowerFeed Feed, ImmutableArray<string> Feeding, ImmutableArray<string> Returning, Current Current, Voltage? Drop, Voltage? AtInput);

/// <summary>The wires of one bundle in one raceway segment.</summary>
/// <param name="Segment">The segment.</param>
/// <param name="Name">The bundle.</param>
/// <param name="Circuits">The new circuits in it.</param>
/// <param name="Wires">All wires, those there before included.</param>
/// <param name="Current">Sum of their currents.</param>
/// <param name="Loading">The loading curve it is on; null when it cannot be told.</param>
public sealed record BundleResult(string Segment, string Name, ImmutableArray<string> Circuits, int Wires, Current Current, Fraction? Loading);

/// <summary>Load on one source in one operating condition.</summary>
public sealed record SourceLoad(PowerSource Source, OperatingCondition Condition, Current Before, Current After, Verdict Verdict);

/// <summary>Load on one bus in one operating condition.</summary>
public sealed record BusLoad(Bus Bus, OperatingCondition Condition, Current Before, Current After);

/// <summary>Load on one breaker: the worst over all operating conditions.</summary>
public sealed record BreakerLoad(Breaker Breaker, BreakerPart Part, Current Load, Verdict Verdict);

/// <summary>A stretch of time on battery with constant current.</summary>
/// <param name="From">Time after the loss of the generators.</param>
/// <param name="To">End of the stretch.</param>
/// <param name="Current">Current drawn.</param>
/// <param name="What">What happens at its start, in words.</param>
public sealed record BatteryStretch(Duration From, Duration To, Current Current, string What);

/// <summary>A battery after the loss of all generators.</summary>
/// <param name="Battery">The battery.</param>
/// <param name="Timeline">What it carries, in time, until it is empty or draws nothing any more.</param>
/// <param name="Endurance">How long it lasts; null when it cannot be told.</param>
/// <param name="Verdict">Whether that is long enough.</param>
public sealed record BatteryResult(Battery Battery, ImmutableArray<BatteryStretch> Timeline, Duration? Endurance, Verdict Verdict);

/// <summary>An empty weight with its centre of gravity.</summary>
public sealed record EmptyWeight(Mass Mass, Length Fs, Length? Bl = null, Length? Wl = null);

/// <summary>One extreme of the loadings that the limits allow.</summary>
/// <param name="Name">Which extreme, for example "most forward".</param>
/// <param name="Mass">Mass at that loading.</param>
/// <param name="Fs">Centre of gravity at that loading.</param>
/// <param name="Margin">Distance to the envelope; negative outside.</param>
public sealed record LoadingExtreme(string Name, Mass Mass, Length Fs, Length Margin);

/// <summary>What the change does to a line of the equipment list.</summary>
public enum ListAction
{
    /// <summary>Stays.</summary>
    Kept,

    /// <summary>Comes out.</summary>
    Removed,

    /// <summary>Goes in.</summary>
    Fitted,
}

/// <summary>A line of the equipment list.</summary>
public sealed record EquipmentLine(string Id, string Name, Mass Mass, Place Place, EquipmentCategory Category, ListAction Action);
