namespace Fairlead.Model;

/// <summary>Whose thresholds a traffic sensor uses.</summary>
public enum TrafficThresholds
{
    /// <summary>Traffic advisory system: traffic advisories, by sensitivity level A or B.</summary>
    Tas,

    /// <summary>TCAS II: traffic and resolution advisories, by altitude.</summary>
    Tcas2,
}

/// <summary>What a traffic sensor takes in, and how it tells.</summary>
public sealed record TrafficSensor(
    [Doc("thresholds of its advisories")] TrafficThresholds Thresholds,
    [Doc("greatest range of the traffic it shows", Min = "0.1 nmi", Max = "200 nmi")] Length Range,
    [Doc("greatest altitude above or below ours of the traffic it shows", Min = "100 ft", Max = "50000 ft")] Length Altitude,
    [Doc("time between two updates", Min = "0.1 s", Max = "10 s")] Duration? Update = null,
    [Doc("greatest error of the bearing shown", Min = "1 deg", Max = "180 deg")] Angle? BearingError = null,
    [Doc("whether its ARINC 429 bus carries range, relative altitude and bearing of each intruder as labels 130, 131 and 132")] bool Words = false);
