using System.Collections.Frozen;

namespace Fairlead.Calculations;

/// <summary>The units people write. Conversion factors are built from the exact definitions (1 in = 25.4 mm,
/// 1 lb = 0.45359237 kg, 1 US gal = 231 in³, standard gravity 9.80665 m/s²).</summary>
public static class Units
{
    private const double Inch = 0.0254;
    private const double Pound = 0.45359237;
    private const double Gravity = 9.80665;
    private const double Gallon = 231 * Inch * Inch * Inch;

    // Every symbol and spelling, grouped by dimension; the first unit of a dimension is the one used when none is asked for.
    private static readonly (Unit Unit, string[] Spellings)[] Table =
    [
        (new("", Dimension.Number, 1), []),
        (new("", Dimension.Fraction, 1), []),
        (new("%", Dimension.Fraction, 0.01), ["percent", "per cent", "pct"]),
        (new("in", Dimension.Length, Inch), ["inch", "inches", "\""]),
        (new("ft", Dimension.Length, 12 * Inch), ["foot", "feet", "'"]),
        (new("m", Dimension.Length, 1), ["metre", "metres"]),
        (new("mm", Dimension.Length, 1e-3), []),
        (new("cm", Dimension.Length, 1e-2), []),
        (new("km", Dimension.Length, 1e3), []),
        (new("nmi", Dimension.Length, 1852), ["NM"]),
        (new("mil", Dimension.Length, Inch / 1000), ["thou"]),
        (new("mm²", Dimension.Area, 1e-6), ["mm2"]),
        (new("in²", Dimension.Area, Inch * Inch), ["in2", "sq in"]),
        (new("ft²", Dimension.Area, 144 * Inch * Inch), ["ft2", "sq ft"]),
        (new("m²", Dimension.Area, 1), ["m2"]),
        (new("cmil", Dimension.Area, Math.PI / 4 * Inch * Inch * 1e-6), ["circ mil", "circular mil"]),
        (new("gal", Dimension.Volume, Gallon), ["US gal", "usg"]),
        (new("qt", Dimension.Volume, Gallon / 4), ["US qt"]),
        (new("L", Dimension.Volume, 1e-3), ["l", "litre", "litres"]),
        (new("m³", Dimension.Volume, 1), ["m3"]),
        (new("lb", Dimension.Mass, Pound), ["lbs", "lbm"]),
        (new("kg", Dimension.Mass, 1), []),
        (new("g", Dimension.Mass, 1e-3), []),
        (new("oz", Dimension.Mass, Pound / 16), []),
        (new("lb·in", Dimension.MassMoment, Pound * Inch), ["lb in", "lb-in", "lb*in", "in-lb"]),
        (new("kg·m", Dimension.MassMoment, 1), ["kg m", "kg-m", "kg*m"]),
        (new("kg·mm", Dimension.MassMoment, 1e-3), ["kg mm", "kg-mm", "kg*mm"]),
        (new("lb/1000ft", Dimension.LinearMass, Pound / (12000 * Inch)), ["lb/1000 ft", "lb/kft"]),
        (new("g/m", Dimension.LinearMass, 1e-3), []),
        (new("kg/m", Dimension.LinearMass, 1), []),
        (new("kg/km", Dimension.LinearMass, 1e-3), []),
        (new("lb/ft", Dimension.LinearMass, Pound / (12 * Inch)), []),
        (new("lb/ft²", Dimension.AreaMass, Pound / (144 * Inch * Inch)), ["lb/ft2", "lb/sq ft"]),
        (new("kg/m²", Dimension.AreaMass, 1), ["kg/m2"]),
        (new("lb/gal", Dimension.Density, Pound / Gallon), ["lb/US gal"]),
        (new("kg/L", Dimension.Density, 1000), ["kg/l"]),
        (new("kg/m³", Dimension.Density, 1), ["kg/m3"]),
        (new("g/cm³", Dimension.Density, 1000), ["g/cm3"]),
        (new("lb/in³", Dimension.Density, Pound / (Inch * Inch * Inch)), ["lb/in3"]),
        (new("s", Dimension.Time, 1), ["sec", "second", "seconds"]),
        (new("ms", Dimension.Time, 1e-3), []),
        (new("µs", Dimension.Time, 1e-6), ["us", "μs", "microsecond", "microseconds"]),
        (new("ns", Dimension.Time, 1e-9), ["nanosecond", "nanoseconds"]),
        (new("min", Dimension.Time, 60), ["minute", "minutes"]),
        (new("h", Dimension.Time, 3600), ["hr", "hour", "hours"]),
        (new("day", Dimension.Time, 86400), ["days", "d"]),
        (new("°C", Dimension.Temperature, 1, 273.15), ["degC", "C", "deg C"]),
        (new("K", Dimension.Temperature, 1), []),
        (new("°F", Dimension.Temperature, 5.0 / 9.0, 273.15 - (32 * 5.0 / 9.0)), ["degF", "F", "deg F"]),
        (new("°C", Dimension.TemperatureRise, 1), ["degC", "C", "K", "deg C"]),
        (new("°F", Dimension.TemperatureRise, 5.0 / 9.0), ["degF", "F", "deg F"]),
        (new("A", Dimension.Current, 1), ["amp", "amps", "ampere"]),
        (new("mA", Dimension.Current, 1e-3), []),
        (new("kA", Dimension.Current, 1e3), []),
        (new("V", Dimension.Voltage, 1), ["volt", "volts", "Vdc", "VDC"]),
        (new("mV", Dimension.Voltage, 1e-3), []),
        (new("Ω", Dimension.Resistance, 1), ["ohm", "ohms", "Ω"]),
        (new("mΩ", Dimension.Resistance, 1e-3), ["mohm", "milliohm", "mΩ"]),
        (new("kΩ", Dimension.Resistance, 1e3), ["kohm", "kΩ"]),
        (new("MΩ", Dimension.Resistance, 1e6), ["Mohm", "megohm", "MΩ"]),
        (new("Ω/1000ft", Dimension.LinearResistance, 1 / (12000 * Inch)), ["ohm/1000ft", "ohm/1000 ft", "ohm/kft"]),
        (new("Ω/ft", Dimension.LinearResistance, 1 / (12 * Inch)), ["ohm/ft"]),
        (new("Ω/km", Dimension.LinearResistance, 1e-3), ["ohm/km"]),
        (new("mΩ/m", Dimension.LinearResistance, 1e-3), ["mohm/m"]),
        (new("Ω/m", Dimension.LinearResistance, 1), ["ohm/m"]),
        (new("W", Dimension.Power, 1), ["watt", "watts"]),
        (new("kW", Dimension.Power, 1e3), []),
        (new("VA", Dimension.Power, 1), []),
        (new("hp", Dimension.Power, 550 * 12 * Inch * Pound * Gravity), []),
        (new("A·h", Dimension.Charge, 3600), ["Ah", "A h", "A*h"]),
        (new("A·min", Dimension.Charge, 60), ["A-min", "Amin", "A min", "A*min"]),
        (new("C", Dimension.Charge, 1), ["A·s", "As"]),
        (new("A²·s", Dimension.SquareCurrentTime, 1), ["A2s", "A²s", "A^2 s", "A2 s"]),
        (new("lbf", Dimension.Force, Pound * Gravity), []),
        (new("N", Dimension.Force, 1), []),
        (new("kN", Dimension.Force, 1e3), []),
        (new("lbf·in", Dimension.Torque, Pound * Gravity * Inch), ["lbf in", "lbf-in", "in-lbf", "in·lbf", "lbf*in"]),
        (new("N·m", Dimension.Torque, 1), ["Nm", "N m", "N*m"]),
        (new("psi", Dimension.Pressure, Pound * Gravity / (Inch * Inch)), ["lbf/in2", "lbf/in²"]),
        (new("ksi", Dimension.Pressure, 1000 * Pound * Gravity / (Inch * Inch)), []),
        (new("MPa", Dimension.Pressure, 1e6), []),
        (new("kPa", Dimension.Pressure, 1e3), []),
        (new("Pa", Dimension.Pressure, 1), []),
        (new("hPa", Dimension.Pressure, 100), []),
        (new("kt", Dimension.Speed, 1852.0 / 3600.0), ["kn", "knot", "knots", "KEAS", "KCAS"]),
        (new("m/s", Dimension.Speed, 1), []),
        (new("mph", Dimension.Speed, 63360 * Inch / 3600), ["mi/h"]),
        (new("ft/s", Dimension.Speed, 12 * Inch), ["fps"]),
        (new("ft/min", Dimension.Speed, 12 * Inch / 60), ["fpm"]),
        (new("MHz", Dimension.Frequency, 1e6), []),
        (new("Hz", Dimension.Frequency, 1), []),
        (new("kHz", Dimension.Frequency, 1e3), []),
        (new("GHz", Dimension.Frequency, 1e9), []),
        (new("°", Dimension.Angle, Math.PI / 180), ["deg", "degree", "degrees"]),
        (new("rad", Dimension.Angle, 1), []),
    ];

    private static readonly FrozenDictionary<(Dimension, string), Unit> BySpelling = Table
        .SelectMany(row => row.Spellings.Append(row.Unit.Symbol).Distinct(StringComparer.Ordinal)
            .Select(s => KeyValuePair.Create((row.Unit.Dimension, s), row.Unit)))
        .ToFrozenDictionary();

    private static readonly FrozenDictionary<Dimension, Unit> Preferred = Table
        .GroupBy(row => row.Unit.Dimension).ToFrozenDictionary(g => g.Key, g => g.First().Unit);

    /// <summary>The unit of a dimension by symbol or spelling, or null.</summary>
    public static Unit? Find(Dimension dimension, string spelling) => BySpelling.GetValueOrDefault((dimension, spelling));

    /// <summary>The unit of a dimension by symbol or spelling.</summary>
    /// <exception cref="ArgumentException">No such unit in this dimension.</exception>
    public static Unit Get(Dimension dimension, string spelling) => Find(dimension, spelling)
        ?? throw new ArgumentException($"'{spelling}' is not a unit of {dimension}; known: {string.Join(", ", Symbols(dimension))}.", nameof(spelling));

    /// <summary>The unit used for a dimension when none is asked for.</summary>
    public static Unit Default(Dimension dimension) => Preferred[dimension];

    /// <summary>The symbols of a dimension, for messages and schemas.</summary>
    public static IEnumerable<string> Symbols(Dimension dimension) =>
        Table.Where(row => row.Unit.Dimension == dimension && row.Unit.Symbol.Length > 0).Select(row => row.Unit.Symbol);

    /// <summary>Every spelling of a dimension's units, symbols included.</summary>
    public static IEnumerable<string> Spellings(Dimension dimension) =>
        BySpelling.Keys.Where(k => k.Item1 == dimension && k.Item2.Length > 0).Select(k => k.Item2);
}
