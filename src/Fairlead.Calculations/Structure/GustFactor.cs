namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="GustFactor"/>.</summary>
/// <param name="Loading">Wing loading.</param>
/// <param name="Chord">Mean geometric chord.</param>
/// <param name="Slope">Lift curve slope, per radian.</param>
/// <param name="Speed">Equivalent airspeed.</param>
/// <param name="Gust">Derived gust velocity.</param>
/// <param name="Altitude">Altitude, for the air density in the mass ratio.</param>
public sealed record GustFactorInput(
    [In("WS", "wing loading", "lb/ft²", Min = 1, Max = 200)] AreaMass Loading,
    [In("C", "mean geometric chord", "ft", Min = 0.5, Max = 30)] Length Chord,
    [In("a", "lift curve slope per radian", Min = 1, Max = 10)] double Slope,
    [In("V", "equivalent airspeed", "kt", Min = 0, Max = 450)] Speed Speed,
    [In("Ude", "derived gust velocity", "ft/s", Min = 0, Max = 100)] Speed Gust,
    [In("h", "altitude", "ft", Min = 0, Max = 60000, Default = "sea level")] Length Altitude = default);

/// <summary>Limit gust load factors of 14 CFR 23.341(c): n = 1 ± Kg · Ude · V · a / (498 · W/S), Kg = 0.88 μ/(5.3 + μ), μ = 2 (W/S)/(ρ · C · a · g).</summary>
/// <remarks>Check value: 16 psf, 4.9 ft, 4.8 per radian, 120 kt, 50 ft/s at sea level: μ 17.791, Kg 0.67802, n 3.4507.</remarks>
public sealed class GustFactor : ICalculation<GustFactorInput>
{
    private static readonly Source Rule = new("14 CFR part 23", "2014 annual edition, before amendment 23-64", "23.341(c)");

    /// <inheritdoc/>
    public static CalculationInfo<GustFactorInput> Info { get; } = new(
        "gust-factor", "Gust load factor", Discipline.Structure,
        "Limit load factors of a gust on an aeroplane of part 23", "WS='16 lb/ft2' C='4.9 ft' a=4.8 V='120 kt' Ude='50 ft/s'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(GustFactorInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var density = s.Step("rho", "air density", "standard atmosphere at h", AntennaDrag.StandardDensity(input.Altitude), "kg/m³", StructureSources.Derived("Standard atmosphere"));
        var mu = s.Step("mu", "mass ratio", "2 · WS / (rho · C · a)", 2 * input.Loading.Si / (density.Si * input.Chord.Si * input.Slope), Rule);
        var kg = s.Step("Kg", "gust alleviation factor", "0.88 · mu / (5.3 + mu)", 0.88 * mu / (5.3 + mu), Rule);
        var step = s.Step("dn", "change of load factor", "Kg · Ude · V · a / (498 · WS), ft/s, kt, lb/ft²", kg * input.Gust.In("ft/s") * input.Speed.In("kt") * input.Slope / (498 * input.Loading.In("lb/ft²")), Rule);
        s.Step("n", "positive limit load factor", "1 + dn", 1 + step, Rule);
        s.Step("nneg", "negative limit load factor", "1 − dn", 1 - step, Rule);
        s.Caution("Limit factors: multiply by 1.5 for ultimate. Take the greatest over all speeds and masses the rule names.");
        s.DeferToApprovedData();
    });
}
