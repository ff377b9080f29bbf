namespace Fairlead.Calculations.Radio;

/// <summary>Waves in free space: wavelength, loss between two points, and what decibels mean.</summary>
/// <remarks>Check values: 1090 MHz is 27.504 cm; 1 nmi at 1030 MHz is 98.057 dB.</remarks>
public static class Propagation
{
    /// <summary>Speed of light in vacuum, m/s (exact by definition).</summary>
    public const double LightMetresPerSecond = 299792458;

    /// <summary>Wavelength in free space: λ = c / f.</summary>
    public static Length Wavelength(Frequency frequency) => new(LightMetresPerSecond / frequency.Si);

    /// <summary>Time a wave takes over a distance in free space.</summary>
    public static Duration Delay(Length distance) => new(distance.Si / LightMetresPerSecond);

    /// <summary>Distance a wave covers in free space in a time.</summary>
    public static Length Distance(Duration time) => new(time.Si * LightMetresPerSecond);

    /// <summary>Loss between two isotropic antennas, dB: 20·log10(4π·d/λ). A loss is positive; some tables print it with the opposite sign.</summary>
    public static double FreeSpaceLoss(Frequency frequency, Length distance) => 20 * Math.Log10(4 * Math.PI * (distance / Wavelength(frequency)));

    /// <summary>Distance at which the free-space loss is that many dB.</summary>
    public static Length DistanceForLoss(Frequency frequency, double loss) => Wavelength(frequency) * (Math.Pow(10, loss / 20) / (4 * Math.PI));

    /// <summary>Power in dBm.</summary>
    public static double Dbm(Wattage power) => 10 * Math.Log10(power.Si / 1e-3);

    /// <summary>Power of a level in dBm.</summary>
    public static Wattage FromDbm(double dbm) => new(1e-3 * Math.Pow(10, dbm / 10));
}
