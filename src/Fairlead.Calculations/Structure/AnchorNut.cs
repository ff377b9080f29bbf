namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="AnchorNut"/>.</summary>
/// <param name="Tension">Ultimate tension of the screw.</param>
/// <param name="NutStrength">Ultimate tension the nut stands, by its own standard.</param>
/// <param name="Torque">Torque that turns the nut: installation torque or the torque to break a stuck screw.</param>
/// <param name="Spacing">Distance of its two rivets.</param>
/// <param name="Diameter">Diameter of the rivets.</param>
/// <param name="Alloy">Alloy of the rivets.</param>
/// <param name="Sheet">Sheet the nut is riveted to.</param>
/// <param name="Bearing">Ultimate bearing strength of the sheet.</param>
/// <param name="Push">Push on the nut, away from the sheet.</param>
/// <param name="RivetTension">Ultimate tension one rivet stands, by test.</param>
/// <param name="Edge">Edge distance of the rivets.</param>
public sealed record AnchorNutInput(
    [In("P", "ultimate tension of the screw", "lbf", Min = 0, Max = 50000)] Force Tension,
    [In("Pn", "ultimate tension of the nut by its standard", "lbf", Min = 1, Max = 50000)] Force NutStrength,
    [In("T", "torque on the nut", "lbf·in", Min = 0, Max = 1000)] Torque Torque,
    [In("s", "distance of the two rivets", "in", Min = 0.1, Max = 5)] Length Spacing,
    [In("D", "diameter of the rivets", "in", Min = 0.09, Max = 0.19)] Length Diameter,
    [In("alloy", "alloy of the rivets")] RivetAlloy Alloy,
    [In("t", "sheet", "in", Min = 0.01, Max = 0.5)] Length Sheet,
    [In("Fbru", "ultimate bearing strength of the sheet", "ksi", Min = 1, Max = 400)] Pressure Bearing,
    [In("Q", "push on the nut, away from the sheet", "lbf", Min = 0, Max = 1000, Default = "none")] Force Push = default,
    [In("Ftr", "ultimate tension of one rivet, by test", "lbf", Min = 1, Max = 5000, Default = "not known")] Force? RivetTension = null,
    [In("e", "edge distance of the rivets", "in", Min = 0, Max = 10, Default = "not checked")] Length? Edge = null);

/// <summary>A two-lug anchor nut: the nut in tension, its two rivets in shear under torque, V = T/s, and in tension under a push, Q/2.</summary>
/// <remarks>The pull of the screw presses the nut on the sheet and does not load the rivets. Check value: 20 lbf·in on rivets 1.000 in apart: 20 lbf each.</remarks>
public sealed class AnchorNut : ICalculation<AnchorNutInput>
{
    private static readonly Source Statics = StructureSources.Derived("Couple on two rivets");

    /// <inheritdoc/>
    public static CalculationInfo<AnchorNutInput> Info { get; } = new(
        "anchor-nut", "Anchor nut and its rivets", Discipline.Structure,
        "Whether an anchor nut stands the screw's tension, and its two rivets the torque and push",
        "P='69 lbf' Pn='2210 lbf' T='25 lbf in' s='1.0 in' D='0.09375 in' alloy=ad2117 t='0.040 in' Fbru='100 ksi' e='0.19 in'", StructureSources.Joints);

    /// <inheritdoc/>
    public static Sheet Run(AnchorNutInput input) => SheetBuilder.Work(Info, input, s =>
    {
        s.Check("nut in tension", input.Tension.As("lbf"), Sense.AtMost, input.NutStrength.As("lbf"), "the screw's ultimate tension within the nut's", new Source("Standard of the anchor nut", "", "", Basis.Stated));
        var shear = s.Step("V", "shear on each rivet under torque", "T / s", new Force(input.Torque.Si / input.Spacing.Si), "lbf", Statics);
        if (RivetStrength.Add(s, new(input.Diameter, input.Alloy, input.Sheet, input.Bearing)) is { } strength)
        {
            s.Check("rivets under torque", shear.As("lbf"), Sense.AtMost, strength.As("lbf"), "within the lesser of shear and bearing of one rivet", StructureSources.Joints);
        }

        if (input.Push.Si > 0)
        {
            var pull = s.Step("Tr", "tension of each rivet under the push", "Q / 2", input.Push / 2, "lbf", Statics);
            if (input.RivetTension is { } allowed)
            {
                s.Check("rivets under push", pull.As("lbf"), Sense.AtMost, allowed.As("lbf"), "within what one rivet stands in tension by test", new Source("Test of the rivet in tension", "", "", Basis.Stated));
            }
            else
            {
                s.CannotTell("Rivets have no published strength in tension (AC 43.13-1B 4-57g keeps them out of it): give Ftr by test, or start the screw without pushing on the nut.");
            }
        }

        if (input.Edge is { } edge)
        {
            s.Check("edge distance", edge.As("in"), Sense.AtLeast, (input.Diameter * 2).As("in"), "2 D at least", StructureSources.Repair("4-57c"));
        }

        s.Caution("Rivets of anchor nuts are often flush: a countersunk rivet in thin sheet is weaker than printed here. A floating nut turns in its cage first: the cage has its own limit.");
        s.DeferToApprovedData();
    });
}
