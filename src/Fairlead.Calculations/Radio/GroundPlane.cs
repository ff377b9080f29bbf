namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="GroundPlane"/>.</summary>
/// <param name="Frequency">Lowest frequency used.</param>
/// <param name="Radius">Distance from the antenna to the nearest edge of conducting skin.</param>
public sealed record GroundPlaneInput(
    [In("f", "lowest frequency used", "MHz", Min = 1, Max = 40000)] Frequency Frequency,
    [In("R", "distance to the nearest edge of conducting skin", "in", Min = 0.1, Max = 10000, Default = "not checked")] Length? Radius = null);

/// <summary>Ground plane of a monopole: at least a quarter of a wavelength of conducting skin on every side.</summary>
/// <remarks>Check value: 1090 MHz needs 2.707 in on every side, 5.41 in across.</remarks>
public sealed class GroundPlane : ICalculation<GroundPlaneInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<GroundPlaneInput> Info { get; } = new(
        "ground-plane", "Ground plane of a monopole", Discipline.Radio,
        "How much conducting skin a monopole needs around it", "f='118 MHz' R='30 in'", RadioSources.AntennaTheory);

    /// <inheritdoc/>
    public static Sheet Run(GroundPlaneInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var lambda = s.Step("lambda", "wavelength", "299792458 m/s / f", Propagation.Wavelength(input.Frequency), "in");
        var radius = s.Step("Rmin", "least radius", "lambda / 4", lambda / 4, "in", RadioSources.AntennaTheory);
        s.Step("Dmin", "least diameter", "2 · Rmin", radius * 2, "in");
        if (input.Radius is { } given)
        {
            s.Check("radius of the ground plane", given.As("in"), Sense.AtLeast, radius.As("in"), "a quarter of a wavelength of conducting skin on every side", RadioSources.AntennaTheory, Verdict.Caution);
        }

        s.Caution("The lobe leans towards the side with more ground plane. The antenna maker's own installation data govern, and the antenna must be bonded to the skin it stands on.");
    });
}
