namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="SkinMoment"/>.</summary>
/// <param name="Moment">Overturning moment at the base.</param>
/// <param name="Span">Distance between the members that hold the skin, along the tilt.</param>
/// <param name="Width">Width of skin that works with the base: as far as its fasteners spread, or its doubler.</param>
/// <param name="Thickness">Skin thickness.</param>
/// <param name="Modulus">Young's modulus.</param>
/// <param name="Allowed">Allowable stress, of the same kind as the moment.</param>
public sealed record SkinMomentInput(
    [In("M", "overturning moment at the base, limit or ultimate", "lbf·in", Min = 0, Max = 1e6)] Torque Moment,
    [In("L", "distance between the members that hold the skin, along the tilt", "in", Min = 0.5, Max = 200)] Length Span,
    [In("b", "width of skin that works: spread of the fasteners, or of the doubler, across the tilt", "in", Min = 0.1, Max = 200)] Length Width,
    [In("t", "skin thickness", "in", Min = 0.005, Max = 2)] Length Thickness,
    [In("E", "Young's modulus", "ksi", Min = 10, Max = 100000)] Pressure Modulus,
    [In("F", "allowable stress, limit or ultimate as M", "ksi", Min = 0.1, Max = 500)] Pressure Allowed);

/// <summary>Bending of a skin under an overturning moment, as by an antenna's drag: a strip on two edges with a couple in its middle, f = 6 · (M/2) / (b · t²),
/// tilting by M · L / (12 · E · I).</summary>
/// <remarks>The strip alone works: skin beside it, thickness of a doubler and curvature are left out, so the stress is on the safe side. Check value: 20 lbf·in, 16 in, 4 in, .040 in, 10,500 ksi: 9,375 psi and .1190 rad.</remarks>
public sealed class SkinMoment : ICalculation<SkinMomentInput>
{
    private const double Small = 0.1;
    private static readonly Source Beam = StructureSources.Derived("Beam theory, couple in the middle of a strip on two edges");

    /// <inheritdoc/>
    public static CalculationInfo<SkinMomentInput> Info { get; } = new(
        "skin-moment", "Skin under an overturning moment", Discipline.Structure,
        "Whether a skin bears the moment of what stands on it, such as an antenna in the air stream", "M='20 lbf in' L='16 in' b='4 in' t='0.040 in' E='10500 ksi' F='60 ksi'", Beam);

    /// <inheritdoc/>
    public static Sheet Run(SkinMomentInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (b, t) = (input.Width.Si, input.Thickness.Si);
        var inertia = b * t * t * t / 12;
        var most = s.Step("Mm", "greatest bending moment, on either side of the base", "M / 2", input.Moment / 2, "lbf·in", Beam);
        var stress = s.Step("f", "bending stress", "6 · Mm / (b · t²)", new Pressure(6 * most.Si / (b * t * t)), "psi", Beam);
        var tilt = s.Step("tilt", "tilt of the base in radians, I = b · t³ / 12", "M · L / (12 · E · I)", input.Moment.Si * input.Span.Si / (12 * input.Modulus.Si * inertia), Beam);
        s.Check("bending stress", stress.As("psi"), Sense.AtMost, input.Allowed.As("psi"), "within the allowable of the same kind, limit or ultimate", new Source("Allowable stress stated", "", "", Basis.Stated));
        if (tilt > Small)
        {
            s.Caution("By this strip the base would tilt by more than 0.1 rad: the skin beside it, the doubler and the tension of the skin carry part of the moment. The stress here is an upper bound; the tilt is not to be taken for real.");
        }

        s.Caution("The cut-out, the edge of the doubler, fatigue, flutter and buffet are not covered; a base near a frame or stringer loads that member.");
        s.DeferToApprovedData();
    });
}
