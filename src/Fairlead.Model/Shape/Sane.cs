using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>What a value may be where its key states no range of its own: wide enough for any aircraft, narrow enough to catch a slip
/// of the pen. Coordinates and other values that may be negative state their range beside the key.</summary>
internal static class Sane
{
    public static (string Min, string Max) Of(Dimension dimension) => dimension switch
    {
        Dimension.Fraction => ("0 %", "100 %"),
        Dimension.Length => ("0 in", "5000 in"),
        Dimension.Area => ("0 m2", "1000 m2"),
        Dimension.Volume => ("0 L", "1000000 L"),
        Dimension.Mass => ("0 kg", "100000 kg"),
        Dimension.MassMoment => ("-100000000 kg m", "100000000 kg m"),
        Dimension.LinearMass => ("0 kg/m", "100 kg/m"),
        Dimension.AreaMass => ("0 kg/m2", "100000 kg/m2"),
        Dimension.Density => ("0 kg/L", "25 kg/L"),
        Dimension.Time => ("0 s", "20000 day"),
        Dimension.Temperature => ("-90 degC", "1000 degC"),
        Dimension.TemperatureRise => ("0 K", "1000 K"),
        Dimension.Current => ("0 A", "10000 A"),
        Dimension.Voltage => ("0 V", "1000 V"),
        Dimension.Resistance => ("0 ohm", "1000 Mohm"),
        Dimension.LinearResistance => ("0 ohm/m", "1000 ohm/m"),
        Dimension.Power => ("0 W", "1000 kW"),
        Dimension.Charge => ("0 Ah", "10000 Ah"),
        Dimension.SquareCurrentTime => ("0 A2s", "1000000000 A2s"),
        Dimension.Force => ("0 N", "10000 kN"),
        Dimension.Torque => ("0 N m", "1000000 N m"),
        Dimension.Pressure => ("0 MPa", "10000 MPa"),
        Dimension.Speed => ("0 kt", "1000 kt"),
        Dimension.Frequency => ("0 Hz", "300 GHz"),
        Dimension.Angle => ("-360 deg", "360 deg"),
        _ => ("", ""),
    };
}
