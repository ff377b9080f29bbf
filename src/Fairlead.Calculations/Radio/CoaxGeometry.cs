namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="CoaxGeometry"/>.</summary>
/// <param name="Inner">Diameter of the centre conductor.</param>
/// <param name="Outer">Diameter over the dielectric.</param>
/// <param name="Permittivity">Relative permittivity of the dielectric.</param>
/// <param name="Frequency">Frequency.</param>
/// <param name="LossTangent">Loss tangent of the dielectric.</param>
/// <param name="Stated">Attenuation that the sheet of the cable states there, dB/100 ft.</param>
public sealed record CoaxGeometryInput(
    [In("d", "diameter of the centre conductor", "in", Min = 0.001, Max = 5)] Length Inner,
    [In("D", "diameter over the dielectric", "in", Min = 0.002, Max = 10)] Length Outer,
    [In("er", "relative permittivity of the dielectric", Min = 1, Max = 20)] double Permittivity,
    [In("f", "frequency", "MHz", Min = 1, Max = 100000)] Frequency Frequency,
    [In("tand", "loss tangent of the dielectric", Min = 0, Max = 0.5, Default = "0.0002")] double LossTangent = 2e-4,
    [In("alpha", "attenuation that the sheet of the cable states there (dB/100 ft)", Min = 0.001, Max = 10000, Default = "not checked")] double? Stated = null);

/// <summary>What the dimensions of a coaxial cable say: impedance, velocity, capacitance, and the least attenuation that smooth copper allows.</summary>
/// <remarks>
/// Rs = √(π·f·µ0/σ) and R = Rs/π · (1/d + 1/D) with copper of 58 MS/m; the conductors lose R/(2·Z0), the dielectric π·f·√er·tand/c nepers a metre.
/// Braids, strands and steel cores only add to it. Check values: 0.037 in, 0.116 in, 2.07, 1000 MHz: 47.6198 Ω, 69.505 %, 11.0436 dB/100 ft;
/// er 2.2, tand 1e-4, 100 MHz: 155.4e-6 Np/m in the dielectric.
/// </remarks>
public sealed class CoaxGeometry : ICalculation<CoaxGeometryInput>
{
    private const double Copper = 5.8e7;
    private const double Permeability = 4e-7 * Math.PI;
    private const double DecibelsPerNeper = 8.685889638065037;
    private const double VacuumImpedance = Permeability * Propagation.LightMetresPerSecond;
    private static readonly Source Line = new("Transmission line theory", "", "coaxial line of smooth conductors", Basis.Memory);
    private static readonly Source Dielectric = new("symplyphysics", "caa76064", "attenuation coefficient in a dielectric");
    private static readonly Source Handbook = new("Transmission line calculator, coaxial cable", "", "138·log10(D/d)/√er, 7.36·er/log10(D/d), 100/√er, 7.5/(√er·(D + d))");

    /// <inheritdoc/>
    public static CalculationInfo<CoaxGeometryInput> Info { get; } = new(
        "coax-geometry", "What the dimensions of a coaxial cable say", Discipline.Radio,
        "Which impedance and velocity a cable has, and whether the loss its sheet states is possible", "d='0.037 in' D='0.116 in' er=2.07 f='1000 MHz' alpha=13.5", Handbook, Dielectric, Line);

    /// <inheritdoc/>
    public static Sheet Run(CoaxGeometryInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Outer <= input.Inner)
        {
            s.CannotTell("The dielectric is no thicker than the conductor within it.");
            return;
        }

        var (root, ratio, hertz) = (Math.Sqrt(input.Permittivity), input.Outer / input.Inner, input.Frequency.Si);
        var impedance = s.Step("Z0", "characteristic impedance", "59.9585 Ω / √er · ln(D / d)", new Resistance(VacuumImpedance / (2 * Math.PI) / root * Math.Log(ratio)), "Ω", Handbook);
        s.Step("v", "velocity over that of light", "1 / √er", new Fraction(1 / root), "%", Handbook);
        s.Step("C", "capacitance (pF/ft)", "1 ft / (v · 299792458 m/s · Z0)", 0.3048 * root / (Propagation.LightMetresPerSecond * impedance.Si) * 1e12, Handbook);
        s.Step("fc", "frequency from which other modes travel too", "7.5 GHz·in / (√er · (D + d))", Frequency.Of(7.5 / (root * (input.Outer + input.Inner).In("in")), "GHz"), "GHz", Handbook);
        s.Step("delta", "skin depth", "√(1 / (π · f · µ0 · σ))", new Length(1 / Math.Sqrt(Math.PI * hertz * Permeability * Copper)), "mm", Line);
        var resistance = s.Step("R", "resistance of both conductors (Ω/m)", "√(π · f · µ0 / σ) / π · (1/d + 1/D)", Math.Sqrt(Math.PI * hertz * Permeability / Copper) / Math.PI * ((1 / input.Inner.Si) + (1 / input.Outer.Si)), Line);
        var conductors = s.Step("ac", "loss of the conductors (dB/m)", "8.68589 · R / (2 · Z0)", DecibelsPerNeper * resistance / (2 * impedance.Si), Line);
        var dielectric = s.Step("ad", "loss of the dielectric (dB/m)", "8.68589 · π · f · √er · tand / 299792458 m/s", DecibelsPerNeper * Math.PI * hertz * root * input.LossTangent / Propagation.LightMetresPerSecond, Dielectric);
        var least = s.Step("amin", "least attenuation (dB/100 ft)", "(ac + ad) · 30.48", (conductors + dielectric) * 30.48, Line);
        if (input.Stated is { } stated)
        {
            s.Check("stated attenuation", Measure.Number(stated), Sense.AtLeast, Measure.Number(least), "a cable of these dimensions cannot lose less", Line);
        }
    });
}
