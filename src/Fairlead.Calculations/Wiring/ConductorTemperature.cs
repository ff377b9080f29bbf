namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="ConductorTemperature"/>.</summary>
/// <param name="Ambient">Ambient temperature, −65 °C to 250 °C.</param>
/// <param name="Rating">Conductor temperature rating, above ambient, up to 260 °C.</param>
/// <param name="Current">Circuit current, 0 A up to the allowed current.</param>
/// <param name="Allowed">Allowed current at the rating.</param>
public sealed record ConductorTemperatureInput(
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("TR", "conductor temperature rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("I", "circuit current", "A", Min = 0, Max = 1000)] Current Current,
    [In("Imax", "allowed current at the rating", "A", Min = 0.01, Max = 1000)] Current Allowed);

/// <summary>Estimated conductor temperature: T2 = T1 + (TR − T1) · √(I / Imax).</summary>
/// <remarks>Check value: 50 °C ambient, 200 °C rating, 20 A of 26 A gives 182 °C (AC 43.13-1B page 11-27, step 2).</remarks>
public sealed class ConductorTemperature : ICalculation<ConductorTemperatureInput>
{
    private static readonly Source Paragraph = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "11-66 d");

    /// <inheritdoc/>
    public static CalculationInfo<ConductorTemperatureInput> Info { get; } = new(
        "conductor-temperature", "Conductor temperature", Discipline.Wiring,
        "How hot a conductor runs at its circuit current", "T1='50 degC' TR='200 degC' I='20 A' Imax='26 A'", Paragraph);

    /// <inheritdoc/>
    public static Sheet Run(ConductorTemperatureInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Rating <= input.Ambient)
        {
            s.CannotTell("The conductor rating is not above the ambient temperature: the wire may carry no current there.");
            return;
        }

        var fraction = s.Step("k", "share of the allowed current", "I / Imax", input.Current / input.Allowed);
        var temperature = s.Step(
            "T2", "estimated conductor temperature", "T1 + (TR − T1) · √(k)", Estimate(input.Ambient, input.Rating, fraction), "°C", Paragraph);
        s.Step(
            "T2s", "conductor temperature by square law, for comparison", "T1 + (TR − T1) · k²",
            input.Ambient + (Temperature.Rise(input.Ambient, input.Rating) * (fraction * fraction)), "°C");
        s.Check("conductor temperature", temperature.As("°C"), Sense.AtMost, input.Rating.As("°C"), "the conductor stays within its temperature rating", Paragraph);
        s.Caution("The square root is the circular's deliberately high estimate up to the allowed current; heating follows the square of the current.");
    });

    /// <summary>Estimated conductor temperature at a share of the allowed current.</summary>
    /// <param name="ambient">Ambient temperature.</param>
    /// <param name="rating">Conductor temperature rating, above ambient.</param>
    /// <param name="share">Circuit current over allowed current, 0 to 1.</param>
    public static Temperature Estimate(Temperature ambient, Temperature rating, double share) =>
        ambient + (Temperature.Rise(ambient, rating) * Math.Sqrt(share));
}
