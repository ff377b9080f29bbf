using Fairlead.Calculations;
using UnitsNet;

namespace Fairlead.Tests.Calculations;

/// <summary>A second opinion on every conversion factor that the general-purpose units library also knows.</summary>
public sealed class UnitsAgainstUnitsNetTests
{
    public static TheoryData<Dimension, string, double> Oracle => new()
    {
        { Dimension.Length, "in", UnitsNet.Length.FromInches(1).Meters },
        { Dimension.Length, "ft", UnitsNet.Length.FromFeet(1).Meters },
        { Dimension.Length, "nmi", UnitsNet.Length.FromNauticalMiles(1).Meters },
        { Dimension.Length, "mil", UnitsNet.Length.FromMils(1).Meters },
        { Dimension.Area, "in²", UnitsNet.Area.FromSquareInches(1).SquareMeters },
        { Dimension.Area, "ft²", UnitsNet.Area.FromSquareFeet(1).SquareMeters },
        { Dimension.Volume, "gal", UnitsNet.Volume.FromUsGallons(1).CubicMeters },
        { Dimension.Volume, "qt", UnitsNet.Volume.FromUsQuarts(1).CubicMeters },
        { Dimension.Volume, "L", UnitsNet.Volume.FromLiters(1).CubicMeters },
        { Dimension.Mass, "lb", UnitsNet.Mass.FromPounds(1).Kilograms },
        { Dimension.Mass, "oz", UnitsNet.Mass.FromOunces(1).Kilograms },
        { Dimension.LinearMass, "lb/ft", LinearDensity.FromPoundsPerFoot(1).KilogramsPerMeter },
        { Dimension.Density, "lb/gal", UnitsNet.Density.FromPoundsPerUSGallon(1).KilogramsPerCubicMeter },
        { Dimension.Charge, "A·h", ElectricCharge.FromAmpereHours(1).Coulombs },
        { Dimension.Force, "lbf", UnitsNet.Force.FromPoundsForce(1).Newtons },
        { Dimension.Torque, "lbf·in", UnitsNet.Torque.FromPoundForceInches(1).NewtonMeters },
        { Dimension.Pressure, "psi", UnitsNet.Pressure.FromPoundsForcePerSquareInch(1).Pascals },
        { Dimension.Pressure, "ksi", UnitsNet.Pressure.FromKilopoundsForcePerSquareInch(1).Pascals },
        { Dimension.Speed, "kt", UnitsNet.Speed.FromKnots(1).MetersPerSecond },
        { Dimension.Speed, "mph", UnitsNet.Speed.FromMilesPerHour(1).MetersPerSecond },
        { Dimension.Speed, "ft/s", UnitsNet.Speed.FromFeetPerSecond(1).MetersPerSecond },
        { Dimension.Speed, "ft/min", UnitsNet.Speed.FromFeetPerMinute(1).MetersPerSecond },
        { Dimension.Time, "µs", UnitsNet.Duration.FromMicroseconds(1).Seconds },
        { Dimension.Time, "ns", UnitsNet.Duration.FromNanoseconds(1).Seconds },
        { Dimension.Angle, "°", UnitsNet.Angle.FromDegrees(1).Radians },
        { Dimension.Temperature, "°F", UnitsNet.Temperature.FromDegreesFahrenheit(1).Kelvins },
        { Dimension.Temperature, "°C", UnitsNet.Temperature.FromDegreesCelsius(1).Kelvins },
    };

    // The library rounds a few of its constants (horsepower, pound-force derived units) at about the ninth digit.
    [Theory]
    [MemberData(nameof(Oracle))]
    public void One_of_a_unit_is_the_same_in_SI(Dimension dimension, string unit, double expected) =>
        Assert.Equal(expected, Units.Get(dimension, unit).ToSi(1), Math.Abs(expected) * 1e-7);

    [Fact]
    public void Exact_definitions_are_exact()
    {
        Assert.Equal(0.0254, Units.Get(Dimension.Length, "in").Factor);
        Assert.Equal(0.45359237, Units.Get(Dimension.Mass, "lb").Factor);
        Assert.Equal(550 * 0.3048 * 0.45359237 * 9.80665, Units.Get(Dimension.Power, "hp").Factor, 1e-10);
        Assert.Equal(0.45359237 / (0.0254 * 0.0254 * 0.0254), Units.Get(Dimension.Density, "lb/in³").Factor, 1e-9);
        Assert.Equal(0.003785411784, Units.Get(Dimension.Volume, "gal").Factor, 1e-18);
    }
}
