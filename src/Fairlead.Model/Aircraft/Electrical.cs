using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>What kind of source.</summary>
public enum SourceKind
{
    /// <summary>Direct-current generator.</summary>
    Generator,

    /// <summary>Alternator with rectifier.</summary>
    Alternator,

    /// <summary>External power.</summary>
    External,
}

/// <summary>A generator, alternator or external power.</summary>
public sealed record PowerSource(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("kind")] SourceKind Kind,
    [Doc("bus it feeds")][Ref(typeof(Bus))] string Bus,
    [Doc("regulated voltage", Min = "5 V", Max = "300 V")] Voltage Voltage,
    [Doc("continuous rating", Min = "0.1 A", Max = "2000 A")] Current Rating,
    [Doc("five-minute rating")] Current? FiveMinutes = null,
    [Doc("five-second rating")] Current? FiveSeconds = null,
    [Doc("internal resistance; left out where it is not known", Min = "0.01 mohm", Max = "10 ohm")] Resistance? Resistance = null) : IEntity;

/// <summary>A bus.</summary>
public sealed record Bus(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("nominal voltage", Min = "5 V", Max = "300 V")] Voltage Nominal,
    [Doc("whether it must stay alive after the loss of all generators")] bool Essential = false) : IEntity;

/// <summary>A main power wire. It runs from a source, a battery or a bus to a bus.</summary>
public sealed record Feeder(
    [Key] string Id,
    [Doc("where power comes from: a source, battery or bus")][Ref(typeof(PowerSource), typeof(Battery), typeof(Bus))] string From,
    [Doc("bus that is fed")][Ref(typeof(Bus))] string To,
    [Doc("wire")][Ref(typeof(WirePart))] string Wire,
    [Doc("length", Min = "0.1 in", Max = "300 ft")] Length Length,
    [Doc("rating of the protection in it")] Current? Protection = null,
    [Doc("highest ambient temperature along it")] Temperature? Hottest = null,
    [Doc("breaker or limiter that is its protection, for its trip times")][Ref(typeof(BreakerPart))] string? Protector = null) : IEntity;

/// <summary>A circuit breaker in the aircraft.</summary>
public sealed record Breaker(
    [Key] string Id,
    [Doc("label")] string Name,
    [Doc("bus")][Ref(typeof(Bus))] string Bus,
    [Doc("kind of breaker")][Ref(typeof(BreakerPart))] string Part,
    [Doc("raceway point where its wires join the way")][Ref(typeof(RacewayNode))] string Node) : IEntity;

/// <summary>The rate at which a capacity is quoted.</summary>
public enum CapacityRate
{
    /// <summary>One-hour rate.</summary>
    OneHour,

    /// <summary>Five-hour rate.</summary>
    FiveHour,
}

/// <summary>A battery.</summary>
public sealed record Battery(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("bus it stands on")][Ref(typeof(Bus))] string Bus,
    [Doc("nominal voltage", Min = "1 V", Max = "300 V")] Voltage Voltage,
    [Doc("nameplate capacity", Min = "0.1 Ah", Max = "1000 Ah")] Charge Capacity,
    [Doc("rate at which the capacity is quoted")] CapacityRate Rate,
    [Doc("time it must carry the loads that remain", Min = "0 min", Max = "24 h")] Duration Required,
    [Doc("time until the loss is recognised and loads are shed", Min = "0 min", Max = "2 h")] Duration Recognition,
    [Doc("operating condition that follows the loss")][Ref(typeof(OperatingCondition))] string Condition,
    [Doc("operating condition of the approach and landing on battery")][Ref(typeof(OperatingCondition))] string? Landing = null,
    [Doc("duration of the approach and landing")] Duration? LandingTime = null,
    [Doc("internal resistance; left out where it is not known", Min = "0.01 mohm", Max = "10 ohm")] Resistance? Resistance = null) : IEntity;

/// <summary>What state of the power system a condition describes.</summary>
public enum ConditionKind
{
    /// <summary>All sources working.</summary>
    Normal,

    /// <summary>A source lost.</summary>
    Abnormal,

    /// <summary>All generators lost.</summary>
    Emergency,
}

/// <summary>An operating condition of the load analysis.</summary>
public sealed record OperatingCondition(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("kind")] ConditionKind Kind,
    [Doc("sources that supply it; none means on battery")][Ref(typeof(PowerSource))] Sequence<string> Sources = default) : IEntity;

/// <summary>A load's current in one operating condition.</summary>
public sealed record Demand(
    [Doc("operating condition")][Ref(typeof(OperatingCondition))] string Condition,
    [Doc("current", Min = "0 A", Max = "1000 A")] Current Current,
    [Doc("time it is on; continuous when left out")] Duration? On = null);

/// <summary>A load fitted before the change.</summary>
public sealed record ExistingLoad(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("bus")][Ref(typeof(Bus))] string Bus,
    [Doc("current by operating condition; none means off")] Sequence<Demand> Demands,
    [Doc("breaker")][Ref(typeof(Breaker))] string? Breaker = null,
    [Doc("time after the loss of all generators when it is switched off")] Duration? ShedAt = null) : IEntity;
