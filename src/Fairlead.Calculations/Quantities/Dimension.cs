namespace Fairlead.Calculations;

/// <summary>The physical kind of a quantity. Two units are interchangeable only within one dimension.</summary>
public enum Dimension
{
    /// <summary>A pure number or count.</summary>
    Number,

    /// <summary>A ratio, written as a number or in per cent.</summary>
    Fraction,

    /// <summary>Length, SI metre.</summary>
    Length,

    /// <summary>Area, SI square metre.</summary>
    Area,

    /// <summary>Volume, SI cubic metre.</summary>
    Volume,

    /// <summary>Mass, SI kilogram.</summary>
    Mass,

    /// <summary>Mass times arm, SI kilogram metre.</summary>
    MassMoment,

    /// <summary>Mass per length, SI kilogram per metre.</summary>
    LinearMass,

    /// <summary>Mass per area, SI kilogram per square metre.</summary>
    AreaMass,

    /// <summary>Mass per volume, SI kilogram per cubic metre.</summary>
    Density,

    /// <summary>Duration, SI second.</summary>
    Time,

    /// <summary>A point on the temperature scale, SI kelvin.</summary>
    Temperature,

    /// <summary>A difference of two temperatures, SI kelvin.</summary>
    TemperatureRise,

    /// <summary>Electric current, SI ampere.</summary>
    Current,

    /// <summary>Electric potential, SI volt.</summary>
    Voltage,

    /// <summary>Electric resistance, SI ohm.</summary>
    Resistance,

    /// <summary>Resistance per length, SI ohm per metre.</summary>
    LinearResistance,

    /// <summary>Power, SI watt.</summary>
    Power,

    /// <summary>Electric charge, SI coulomb.</summary>
    Charge,

    /// <summary>Let-through integral of current squared, SI ampere squared second.</summary>
    SquareCurrentTime,

    /// <summary>Force, SI newton.</summary>
    Force,

    /// <summary>Torque, SI newton metre.</summary>
    Torque,

    /// <summary>Pressure or stress, SI pascal.</summary>
    Pressure,

    /// <summary>Speed, SI metre per second.</summary>
    Speed,

    /// <summary>Frequency, SI hertz.</summary>
    Frequency,

    /// <summary>Plane angle, SI radian.</summary>
    Angle,
}
