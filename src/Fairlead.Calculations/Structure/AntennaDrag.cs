namespace Fairlead.Calculations.Structure;

/// <summary>How the force of the air on an antenna is found.</summary>
public enum DragMethod
{
    /// <summary>AC 43.13-2B 303e: 0.000327 · A · V², ft² and mph at sea level; a flat plate less 90 % for streamlining.</summary>
    Circular,

    /// <summary>½ · ρ · V² · Cd · A with a drag coefficient.</summary>
    Coefficient,
}

/// <summary>Which speed is given.</summary>
public enum SpeedBasis
{
    /// <summary>Equivalent airspeed: sea level density goes with it.</summary>
    Equivalent,

    /// <summary>True airspeed: the density of the altitude goes with it.</summary>
    True,
}

/// <summary>Input of <see cref="AntennaDrag"/>.</summary>
/// <param name="Area">Frontal area.</param>
/// <param name="Speed">Never-exceed speed.</param>
/// <param name="Method">Formula.</param>
/// <param name="SideArea">Apparent side area.</param>
/// <param name="Coefficient">Drag coefficient, by the frontal area.</param>
/// <param name="SideCoefficient">Side force coefficient, by the side area.</param>
/// <param name="Basis">Which speed it is.</param>
/// <param name="Altitude">Pressure altitude.</param>
/// <param name="Height">Height of the centre of pressure above the base.</param>
public sealed record AntennaDragInput(
    [In("A", "frontal area", "ft²", Min = 0, Max = 20)] Area Area,
    [In("V", "never-exceed speed", "kt", Min = 0, Max = 450)] Speed Speed,
    [In("method", "formula")] DragMethod Method,
    [In("As", "apparent side area", "ft²", Min = 0, Max = 20, Default = "no side load")] Area? SideArea = null,
    [In("Cd", "drag coefficient by the frontal area", Min = 0, Max = 3, Default = "flat plate, 1.28")] double? Coefficient = null,
    [In("Cs", "side force coefficient by the side area", Min = 0, Max = 3, Default = "flat plate, 1.28")] double? SideCoefficient = null,
    [In("basis", "which speed it is", Default = "equivalent")] SpeedBasis Basis = SpeedBasis.Equivalent,
    [In("h", "pressure altitude", "ft", Min = 0, Max = 65000, Default = "sea level")] Length Altitude = default,
    [In("z", "height of the centre of pressure above the base", "in", Min = 0, Max = 120, Default = "no moment")] Length? Height = null);

/// <summary>Drag and side load of an antenna, and their moments at its base.</summary>
/// <remarks>
/// Check value: .135 ft² at 250 mph: 2.759 lb, printed 2.75 in AC 43.13-2B 303e, which cuts instead of rounding. The constant is ½·ρ0·1.28·0.10 with V in mph: 0.00032723.
/// </remarks>
public sealed class AntennaDrag : ICalculation<AntennaDragInput>
{
    private const double FlatPlate = 1.28;
    private static readonly Source Circular = StructureSources.Alteration("303e and 303f");
    private static readonly Source Dynamic = StructureSources.Derived("Dynamic pressure");

    /// <inheritdoc/>
    public static CalculationInfo<AntennaDragInput> Info { get; } = new(
        "antenna-drag", "Air load on an antenna", Discipline.Structure,
        "Drag and side load of an antenna at speed, and the moment at its base", "A='0.135 ft2' V='250 mph' method=circular As='0.5 ft2' z='5 in'", Circular);

    /// <inheritdoc/>
    public static Sheet Run(AntennaDragInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (drag, side) = input.Method == DragMethod.Circular ? ByCircular(s, input) : ByCoefficient(s, input);
        if (input.Height is { } height)
        {
            s.Step("M", "moment of the drag at the base", "D · z", new Torque(drag.Si * height.Si), "lbf·in");
            if (side is { } across)
            {
                s.Step("Ms", "moment of the side load at the base", "Ds · z", new Torque(across.Si * height.Si), "lbf·in");
            }
        }

        s.Caution("This is the air load at the speed given, without factor of safety, gust, ice or bird strike; add the inertia of the antenna and apply 1.5 for ultimate.");
        s.Caution("An aeroplane that sideslips to descend meets the antenna obliquely: give the apparent side area (AC 43.13-2B 303a). The maker's limits come first.");
        s.DeferToApprovedData();
    });

    /// <summary>Density of the standard atmosphere. Check value: sea level 1.225 kg/m³ (0.0023769 slug/ft³); 36,089 ft 0.3639 kg/m³.</summary>
    /// <param name="altitude">Pressure altitude, up to 20 km.</param>
    public static Density StandardDensity(Length altitude)
    {
        const double Tropopause = 11000, Lapse = 0.0065, SeaLevel = 288.15, Gas = 287.05287;
        var temperature = SeaLevel - (Lapse * Math.Min(altitude.Si, Tropopause));
        var density = 1.225 * Math.Pow(temperature / SeaLevel, (Weight.Gravity / (Gas * Lapse)) - 1);
        return new(altitude.Si <= Tropopause ? density : density * Math.Exp(-Weight.Gravity * (altitude.Si - Tropopause) / (Gas * temperature)));
    }

    private static (Force Drag, Force? Side) ByCircular(SheetBuilder s, AntennaDragInput input)
    {
        Force At(Area area) => Force.Of(0.000327 * area.In("ft²") * Math.Pow(input.Speed.In("mph"), 2), "lbf");
        if (input.Coefficient is not null || input.SideCoefficient is not null || input.Basis == SpeedBasis.True)
        {
            s.Caution("The circular's formula has its own coefficient and sea level density: Cd, Cs, basis and altitude are not used. Choose method=coefficient for them.", true);
        }

        var drag = s.Step("D", "drag", "0.000327 · A · V², ft² and mph", At(input.Area), "lbf", Circular);
        s.Caution("The circular's formula counts a tenth of a flat plate, for streamlined antennas only; a flat or blunt one has ten times as much.");
        return (drag, input.SideArea is { } side ? s.Step("Ds", "side load", "0.000327 · As · V², ft² and mph", At(side), "lbf", Circular) : null);
    }

    private static (Force Drag, Force? Side) ByCoefficient(SheetBuilder s, AntennaDragInput input)
    {
        var density = s.Step("rho", "density that goes with the speed", input.Basis == SpeedBasis.True ? "standard atmosphere at h" : "sea level",
            StandardDensity(input.Basis == SpeedBasis.True ? input.Altitude : default), "kg/m³", StructureSources.Derived("Standard atmosphere"));
        var pressure = s.Step("q", "dynamic pressure", "½ · rho · V²", new Pressure(density.Si * input.Speed.Si * input.Speed.Si / 2), "psi", Dynamic);
        var cd = s.Step("C", "drag coefficient", input.Coefficient is null ? "flat plate" : "Cd", input.Coefficient ?? FlatPlate);
        var drag = s.Step("D", "drag", "q · C · A", new Force(pressure.Si * cd * input.Area.Si), "lbf", Dynamic);
        if (input.SideArea is not { } side)
        {
            return (drag, null);
        }

        var cs = s.Step("Cside", "side force coefficient", input.SideCoefficient is null ? "flat plate" : "Cs", input.SideCoefficient ?? FlatPlate);
        return (drag, s.Step("Ds", "side load", "q · Cside · As", new Force(pressure.Si * cs * side.Si), "lbf", Dynamic));
    }
}
