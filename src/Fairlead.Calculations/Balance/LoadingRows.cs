namespace Fairlead.Calculations.Balance;

/// <summary>A place that takes load: a seat row, a baggage hold, an oil tank that is always full (least = most).</summary>
/// <param name="Name">Name; each only once.</param>
/// <param name="Arm">Fuselage station of the load.</param>
/// <param name="Max">Greatest mass.</param>
/// <param name="Min">Least mass: a pilot is always there.</param>
/// <param name="Groups">The groups it belongs to, joined by <c>+</c>; none when empty.</param>
public sealed record LoadingStationRow(
    [In("name", "loading station")] string Name,
    [In("FS", "fuselage station", "in", Min = -5000, Max = 5000)] Length Arm,
    [In("max", "greatest mass", "lb", Min = 0, Max = 200000)] Mass Max,
    [In("min", "least mass", "lb", Min = 0, Max = 200000, Default = "0")] Mass Min = default,
    [In("group", "groups, joined by +", Default = "none")] string Groups = "");

/// <summary>A limit shared by several loading stations.</summary>
/// <param name="Name">Name; each only once.</param>
/// <param name="Max">Greatest mass on all of them together.</param>
public sealed record LoadingGroupRow(
    [In("name", "group")] string Name,
    [In("max", "greatest mass together", "lb", Min = 0, Max = 200000)] Mass Max);

/// <summary>A fuel tank.</summary>
/// <param name="Name">Name; each only once.</param>
/// <param name="Arm">Fuselage station of its contents.</param>
/// <param name="Usable">Usable fuel when full.</param>
/// <param name="BurnOrder">Which empties first: 1, then 2 ...; tanks of equal order empty together, in proportion to their contents.</param>
public sealed record LoadingTankRow(
    [In("name", "tank")] string Name,
    [In("FS", "fuselage station", "in", Min = -5000, Max = 5000)] Length Arm,
    [In("usable", "usable fuel", "lb", Min = 0, Max = 500000)] Mass Usable,
    [In("order", "burn order", Min = 1, Max = 100, Default = "1")] int BurnOrder = 1);

/// <summary>A corner of the centre of gravity envelope. Its edges are straight in the plane of mass and fuselage station.</summary>
/// <param name="Mass">Mass.</param>
/// <param name="Fs">Fuselage station of the limit.</param>
public sealed record EnvelopeRow(
    [In("W", "mass", "lb", Min = 0, Max = 2000000)] Mass Mass,
    [In("FS", "fuselage station", "in", Min = -5000, Max = 5000)] Length Fs);
