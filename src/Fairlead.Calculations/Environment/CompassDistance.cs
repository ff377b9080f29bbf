namespace Fairlead.Calculations.Environment;

/// <summary>Input of <see cref="CompassDistance"/>.</summary>
/// <param name="Distance">Distance from the compass to the nearest point of the box.</param>
/// <param name="Safe">Compass-safe distance the maker declares.</param>
/// <param name="Field">Horizontal field of the earth where the aircraft flies, in A/m.</param>
public sealed record CompassDistanceInput(
    [In("d", "distance from the compass to the nearest point of the box", "m", Min = 0, Max = 200)] Length Distance,
    [In("CSD", "compass-safe distance", "m", Min = 0.001, Max = 50)] Length Safe,
    [In("H", "horizontal field of the earth in A/m", Min = 3, Max = 40, Default = "14.4, the field of the criterion")] double? Field = null);

/// <summary>Distance of a box from the magnetic compass. At its compass-safe distance a box deflects a compass by 1° in a field of 14.4 A/m;
/// in a weaker field by 14.4/H degrees. Beyond it the field of a small magnet falls with the cube of distance: φ = 1° · (14.4/H) · (CSD/d)³.</summary>
/// <remarks>Check value: at twice the compass-safe distance 1/8 of a degree. Nearer than it nothing is said of the deflection: the law of the
/// cube holds far from the box only.</remarks>
public sealed class CompassDistance : ICalculation<CompassDistanceInput>
{
    private const double Criterion = 14.4;
    private static readonly Source Standard = new("RTCA DO-160", "", "section 15, magnetic effect: 1° in 14.4 A/m, equivalent angle 14.4/H", Basis.Memory);
    private static readonly Source Dipole = new("Field of a small magnet far away", "", "", Basis.Derived);

    /// <inheritdoc/>
    public static CalculationInfo<CompassDistanceInput> Info { get; } = new(
        "compass-distance", "Distance from the compass", Discipline.Environment,
        "Whether a box stands far enough from the magnetic compass", "d='0.9 m' CSD='0.3 m'", Standard, Dipole);

    /// <inheritdoc/>
    public static Sheet Run(CompassDistanceInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var field = input.Field ?? s.Step("H", "horizontal field in A/m, as none is stated", "field of the criterion", Criterion, Standard);
        var needed = s.Step("dmin", "distance at which it deflects the compass by 1° in this field", "CSD · (14.4 / H)^(1/3)", input.Safe * Math.Cbrt(Criterion / field), "m", Dipole);
        if (input.Distance >= input.Safe)
        {
            s.Step("phi", "deflection at its distance", "1° · (14.4 / H) · (CSD / d)³", Angle.Of(Criterion / field * Math.Pow(input.Safe / input.Distance, 3), "°"), "°", Dipole);
        }

        s.Check("distance from the compass", input.Distance.As("m"), Sense.AtLeast, needed.As("m"), "the box stands no nearer to the compass than its compass-safe distance", Standard);
        s.Caution("Several boxes add up, and so do the wires that carry their current: swing the compass after the installation, with the equipment on and off.");
    });
}
