namespace Fairlead.Calculations.Wiring;

/// <summary>What is bent, and by which standard.</summary>
public enum Bend
{
    /// <summary>Wire, cable or group: ten times the largest diameter in it (AC 43.13-1B).</summary>
    Wire,

    /// <summary>Wire at a terminal strip, suitably supported: three times (AC 43.13-1B).</summary>
    AtTerminal,

    /// <summary>Coaxial or triaxial cable by AC 43.13-1B and ASTM F2639: six times.</summary>
    Coax,

    /// <summary>Coaxial cable by SAE AS50881: ten times.</summary>
    CoaxAs50881,
}

/// <summary>Input of <see cref="BendRadius"/>.</summary>
/// <param name="Diameter">Outside diameter of the largest wire or cable in the group, or of the coaxial cable.</param>
/// <param name="Bend">What is bent, and by which standard.</param>
/// <param name="Radius">Inside radius of the bend, when it is to be checked.</param>
public sealed record BendRadiusInput(
    [In("d", "outside diameter of the largest wire or cable", "in", Min = 0.005, Max = 5)] Length Diameter,
    [In("bend", "what is bent, and by which standard")] Bend Bend,
    [In("r", "bend radius", "in", Min = 0, Max = 200, Default = "not checked")] Length? Radius = null);

/// <summary>Least bend radius: a factor of the cited standard times the outside diameter.</summary>
/// <remarks>Check value: coaxial cable of 0.195 in needs 1.17 in by ASTM F2639 (6 ×) and 1.95 in by AS50881 (10 ×): the documents disagree, so the standard is part of the question.</remarks>
public sealed class BendRadius : ICalculation<BendRadiusInput>
{
    private static readonly Source Wire = Ac4313.Paragraph("11-96, bend radius of wire groups", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<BendRadiusInput> Info { get; } = new(
        "bend-radius", "Bend radius", Discipline.Wiring,
        "The least radius a wire group or coaxial cable may be bent to", "d='0.195 in' bend=coax r='1.5 in'", Wire);

    /// <inheritdoc/>
    public static Sheet Run(BendRadiusInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (factor, source) = Rule(input.Bend);
        s.Step("f", "factor of the standard", "by what is bent", factor, source);
        var least = s.Step("rmin", "least bend radius", "f · d", input.Diameter * factor, "in", source);
        if (input.Radius is { } radius)
        {
            s.Check("bend radius", radius.As("in"), Sense.AtLeast, least.As("in"), "the bend is no sharper than the standard allows", source);
        }
    });

    /// <summary>The factor of a standard, and the standard.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a known bend.</exception>
    public static (double Factor, Source Source) Rule(Bend bend) => bend switch
    {
        Bend.Wire => (10, Wire),
        Bend.AtTerminal => (3, Ac4313.Paragraph("11-96, bend radius at terminal strips", Basis.Memory)),
        Bend.Coax => (6, new Source("ASTM F2639", "2018", "7.2.1.65")),
        Bend.CoaxAs50881 => (10, new Source("SAE AS50881", "", "coaxial cable bend radius")),
        _ => throw new ArgumentOutOfRangeException(nameof(bend), bend, "Not a known kind of bend."),
    };
}
