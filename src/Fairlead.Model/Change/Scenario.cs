namespace Fairlead.Model;

/// <summary>Sensitivity level of a traffic advisory system.</summary>
public enum SensitivityLevel
{
    /// <summary>Low or with the gear down.</summary>
    A,

    /// <summary>Otherwise.</summary>
    B,
}

/// <summary>An advisory that a simulated target is to raise.</summary>
public enum ExpectedAdvisory
{
    /// <summary>None at all.</summary>
    None,

    /// <summary>A traffic advisory.</summary>
    Traffic,

    /// <summary>A resolution advisory.</summary>
    Resolution,
}

/// <summary>Simulated traffic for a traffic sensor on the ramp.</summary>
public sealed record Scenario(
    [Key] string Id,
    [Doc("traffic sensor tested")][Ref(typeof(FittedItem), typeof(InstalledItem))] string Sensor,
    [Doc("own pressure altitude, as the sensor is told", Min = "-1500 ft", Max = "60000 ft")] Length Altitude,
    [Doc("simulated targets")] Catalog<SimulatedTarget> Targets,
    [Doc("sensitivity level, for a traffic advisory system")] SensitivityLevel Level = SensitivityLevel.B) : IEntity;

/// <summary>A simulated target. It flies straight at us, or away, at a constant rate.</summary>
public sealed record SimulatedTarget(
    [Key] string Id,
    [Doc("range when it appears", Min = "0.01 nmi", Max = "100 nmi")] Length Range,
    [Doc("bearing from the nose, + right")] Angle Bearing,
    [Doc("closing rate; negative when it draws away", Min = "-2000 kt", Max = "2000 kt")] Speed Closing,
    [Doc("when it disappears", Min = "1 s", Max = "3600 s")] Duration End,
    [Doc("when it appears", Min = "0 s", Max = "3600 s")] Duration Start = default,
    [Doc("altitude relative to ours when it appears, + above", Min = "-50000 ft", Max = "50000 ft")] Length Above = default,
    [Doc("vertical rate, + up", Min = "-20000 ft/min", Max = "20000 ft/min")] Speed Climb = default,
    [Doc("whether it reports altitude")] bool Reports = true,
    [Doc("advisory it is to raise")] ExpectedAdvisory? Expect = null,
    [Doc("when that advisory is to begin, on the clock of the scenario", Min = "0 s", Max = "3600 s")] Duration? At = null) : IEntity;

/// <summary>What a transponder is set to for a test on the ramp, so that the replies it must give follow.</summary>
public sealed record ExpectedReplies(
    [Doc("code set, four octal digits")] string Squawk = "",
    [Doc("pressure altitude it is given", Min = "-1200 ft", Max = "126700 ft")] Length? Altitude = null,
    [Doc("24-bit address set, six hexadecimal digits")] string Address = "",
    [Doc("flight identification set")] string Flight = "",
    [Doc("latitude it is given, + north", Min = "-90 deg", Max = "90 deg")] Angle? Latitude = null,
    [Doc("longitude it is given, + east", Min = "-180 deg", Max = "180 deg")] Angle? Longitude = null,
    [Doc("whether ident is pressed")] bool Ident = false);
