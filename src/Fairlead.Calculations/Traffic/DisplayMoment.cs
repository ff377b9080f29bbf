namespace Fairlead.Calculations.Traffic;

/// <summary>How a display marks traffic, the gravest last.</summary>
public enum TrafficMark
{
    /// <summary>Other traffic.</summary>
    Other,

    /// <summary>Proximate traffic.</summary>
    Proximate,

    /// <summary>Under a traffic advisory.</summary>
    Traffic,

    /// <summary>Under a resolution advisory.</summary>
    Resolution,
}

/// <summary>What a display should show of a simulated target at a moment.</summary>
/// <param name="Second">The moment on the clock of the scenario, s.</param>
/// <param name="Range">Horizontal range.</param>
/// <param name="Bearing">Bearing from our nose, + right.</param>
/// <param name="Tag">Relative altitude as the display writes it; none when the target reports no altitude.</param>
/// <param name="Arrow">up, down or none.</param>
/// <param name="Mark">How it is marked.</param>
public sealed record DisplayMoment(double Second, Length Range, Angle Bearing, string Tag, string Arrow, TrafficMark Mark);
