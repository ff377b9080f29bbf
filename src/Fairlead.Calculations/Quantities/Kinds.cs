namespace Fairlead.Calculations;

/// <summary>Marks a quantity of dimension Fraction.</summary>
public readonly struct FractionKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Fraction;
}

/// <summary>Marks a quantity of dimension Length.</summary>
public readonly struct LengthKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Length;
}

/// <summary>Marks a quantity of dimension Area.</summary>
public readonly struct AreaKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Area;
}

/// <summary>Marks a quantity of dimension Volume.</summary>
public readonly struct VolumeKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Volume;
}

/// <summary>Marks a quantity of dimension Mass.</summary>
public readonly struct MassKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Mass;
}

/// <summary>Marks a quantity of dimension MassMoment.</summary>
public readonly struct MassMomentKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.MassMoment;
}

/// <summary>Marks a quantity of dimension LinearMass.</summary>
public readonly struct LinearMassKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.LinearMass;
}

/// <summary>Marks a quantity of dimension AreaMass.</summary>
public readonly struct AreaMassKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.AreaMass;
}

/// <summary>Marks a quantity of dimension Density.</summary>
public readonly struct DensityKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Density;
}

/// <summary>Marks a quantity of dimension Time.</summary>
public readonly struct TimeKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Time;
}

/// <summary>Marks a quantity of dimension Temperature.</summary>
public readonly struct TemperatureKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Temperature;
}

/// <summary>Marks a quantity of dimension TemperatureRise.</summary>
public readonly struct TemperatureRiseKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.TemperatureRise;
}

/// <summary>Marks a quantity of dimension Current.</summary>
public readonly struct CurrentKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Current;
}

/// <summary>Marks a quantity of dimension Voltage.</summary>
public readonly struct VoltageKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Voltage;
}

/// <summary>Marks a quantity of dimension Resistance.</summary>
public readonly struct ResistanceKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Resistance;
}

/// <summary>Marks a quantity of dimension LinearResistance.</summary>
public readonly struct LinearResistanceKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.LinearResistance;
}

/// <summary>Marks a quantity of dimension Power.</summary>
public readonly struct PowerKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Power;
}

/// <summary>Marks a quantity of dimension Charge.</summary>
public readonly struct ChargeKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Charge;
}

/// <summary>Marks a quantity of dimension SquareCurrentTime.</summary>
public readonly struct SquareCurrentTimeKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.SquareCurrentTime;
}

/// <summary>Marks a quantity of dimension Force.</summary>
public readonly struct ForceKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Force;
}

/// <summary>Marks a quantity of dimension Torque.</summary>
public readonly struct TorqueKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Torque;
}

/// <summary>Marks a quantity of dimension Pressure.</summary>
public readonly struct PressureKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Pressure;
}

/// <summary>Marks a quantity of dimension Speed.</summary>
public readonly struct SpeedKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Speed;
}

/// <summary>Marks a quantity of dimension Frequency.</summary>
public readonly struct FrequencyKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Frequency;
}

/// <summary>Marks a quantity of dimension Angle.</summary>
public readonly struct AngleKind : IKind
{
    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Angle;
}
