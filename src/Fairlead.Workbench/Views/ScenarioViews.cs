using System.Collections.Immutable;

namespace Fairlead.Workbench.Views;

/// <summary>Simulated traffic, as a display must show it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Sensor">The traffic sensor.</param>
/// <param name="Altitude">Our altitude, as the sensor is told.</param>
/// <param name="Tracks">The targets.</param>
public sealed record ScenarioView(string Id, string Sensor, string Altitude, ImmutableArray<TrackView> Tracks);

/// <summary>A simulated target, second by second.</summary>
public sealed record TrackView(string Id, string Subject, ImmutableArray<MomentView> Moments);

/// <summary>What is shown of a target at a time.</summary>
/// <param name="Second">The time on the clock of the scenario, s.</param>
/// <param name="Range">Range, nmi.</param>
/// <param name="Bearing">Bearing from our nose, degrees, + right.</param>
/// <param name="Tag">Relative altitude in hundreds of feet; empty when it reports none.</param>
/// <param name="Arrow">up, down or none.</param>
/// <param name="Symbol">other, proximate, traffic or resolution.</param>
public sealed record MomentView(double Second, double Range, double Bearing, string Tag, string Arrow, string Symbol);
