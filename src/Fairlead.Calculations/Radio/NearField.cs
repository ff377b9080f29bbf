namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="NearField"/>.</summary>
/// <param name="Frequency">Frequency.</param>
/// <param name="Size">Largest dimension of the larger antenna.</param>
/// <param name="Distance">Distance intended.</param>
public sealed record NearFieldInput(
    [In("f", "frequency", "MHz", Min = 0.1, Max = 100000)] Frequency Frequency,
    [In("D", "largest dimension of the antenna", "in", Min = 0.01, Max = 1000)] Length Size,
    [In("d", "distance intended", "ft", Min = 0.001, Max = 100000, Default = "not checked")] Length? Distance = null);

/// <summary>Where the far field of an antenna begins: the greatest of 2D²/λ, 3λ and 3D. Nearer than that, levels and patterns do not follow free-space loss.</summary>
/// <remarks>Check values at 1090 MHz: D = 12 in gives 2D²/λ = 2.216 ft; for a quarter-wave monopole 3λ = 0.825 m governs.</remarks>
public sealed class NearField : ICalculation<NearFieldInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<NearFieldInput> Info { get; } = new(
        "near-field", "Near field of an antenna", Discipline.Radio,
        "How far from an antenna its far field begins", "f='1090 MHz' D='12 in' d='25 ft'", RadioSources.AntennaTheory);

    /// <summary>Distance at which the far field begins.</summary>
    public static Length FarField(Frequency frequency, Length size)
    {
        var lambda = Propagation.Wavelength(frequency);
        return new(Math.Max(2 * size.Si * size.Si / lambda.Si, 3 * Math.Max(lambda.Si, size.Si)));
    }

    /// <inheritdoc/>
    public static Sheet Run(NearFieldInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var lambda = s.Step("lambda", "wavelength", "299792458 m/s / f", Propagation.Wavelength(input.Frequency), "ft");
        s.Step("r1", "edge of the reactive near field", "0.62 · √(D · D · D / lambda)", new Length(0.62 * Math.Sqrt(Math.Pow(input.Size.Si, 3) / lambda.Si)), "ft", RadioSources.AntennaTheory);
        s.Step("r2", "beginning of the far field by aperture", "2 · D · D / lambda", new Length(2 * input.Size.Si * input.Size.Si / lambda.Si), "ft", RadioSources.AntennaTheory);
        s.Step("r3", "beginning of the far field by wavelength", "3 · lambda", lambda * 3, "ft", RadioSources.AntennaTheory);
        s.Step("r4", "beginning of the far field by size", "3 · D", input.Size * 3, "ft", RadioSources.AntennaTheory);
        var far = s.Step("r", "beginning of the far field", "the greatest of r2, r3 and r4", FarField(input.Frequency, input.Size), "ft");
        if (input.Distance is { } distance)
        {
            s.Check("distance", distance.As("ft"), Sense.AtLeast, far.As("ft"), "the distance lies in the far field, so free-space loss applies", RadioSources.AntennaTheory, Verdict.Caution);
        }

        s.Caution("This is no safety distance for people: use the exposure limits of the local authority and the transmitter's own data.");
    });
}
