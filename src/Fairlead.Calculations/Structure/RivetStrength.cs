using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="RivetStrength"/>.</summary>
/// <param name="Diameter">Rivet diameter.</param>
/// <param name="Alloy">Rivet alloy.</param>
/// <param name="Sheet">Thinner sheet in single shear, middle sheet in double shear.</param>
/// <param name="Bearing">Ultimate bearing strength of that sheet, for the edge distance of the joint.</param>
/// <param name="Planes">Shear planes.</param>
/// <param name="Load">Ultimate load on one rivet, to be checked.</param>
/// <param name="Head">Head of the rivet.</param>
public sealed record RivetStrengthInput(
    [In("D", "rivet diameter", "in", Min = 0.09, Max = 0.38)] Length Diameter,
    [In("alloy", "rivet alloy")] RivetAlloy Alloy,
    [In("t", "thinner sheet, or middle sheet in double shear", "in", Min = 0.005, Max = 1)] Length Sheet,
    [In("Fbru", "ultimate bearing strength of that sheet at the edge distance of the joint", "ksi", Min = 1, Max = 400)] Pressure Bearing,
    [In("planes", "shear planes", Min = 1, Max = 2, Default = "1")] int Planes = 1,
    [In("P", "ultimate load on one rivet", "lbf", Min = 0, Max = 100000, Default = "not checked")] Force? Load = null,
    [In("head", "head of the rivet", Default = "protruding")] RivetHead Head = RivetHead.Protruding);

/// <summary>Ultimate strength of one solid rivet: the lesser of shear, k · planes · Fsu · π/4 · Dh², and bearing, Fbru · Dh · t, both on the nominal hole.</summary>
/// <remarks>Check values: 1/8 in AD, .1285 hole, 389.1 lbf (handbook 388); .032 in sheet of Fbru 121 ksi, 497.6 lbf in bearing.</remarks>
public sealed class RivetStrength : ICalculation<RivetStrengthInput>
{
    private static readonly Source Bearing = new("MIL-HDBK-5J", "as transcribed by a third party", "table 8.1.2.1(a), unit bearing");

    /// <inheritdoc/>
    public static CalculationInfo<RivetStrengthInput> Info { get; } = new(
        "rivet-strength", "Strength of a solid rivet", Discipline.Structure,
        "Ultimate strength of one rivet in shear and bearing", "D='0.125 in' alloy=ad2117 t='0.032 in' Fbru='121 ksi' P='250 lbf'", StructureSources.Joints);

    /// <inheritdoc/>
    public static Sheet Run(RivetStrengthInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Head == RivetHead.Flush)
        {
            s.CannotTell("A flush rivet in countersunk sheet is weaker than these formulas by an amount found by test: take its strength from the handbook's table for its head, sheet and thickness.");
        }

        if (Add(s, input) is { } strength && input.Load is { } load)
        {
            s.Check("load on the rivet", load.As("lbf"), Sense.AtMost, strength.As("lbf"), "ultimate load within the lesser of shear and bearing", StructureSources.Joints);
            if (load.Si > 0)
            {
                s.Step("MS", "margin of safety", "Pu / P − 1", (strength / load) - 1);
            }
        }

        s.Caution("No rivet is loaded in tension (AC 43.13-1B 4-57g). Room temperature; sound sheet; edge distance as that of Fbru.");
        s.DeferToApprovedData();
    });

    /// <summary>Puts hole, shear and bearing on a sheet and returns the lesser; null where it cannot be told.</summary>
    internal static Force? Add(SheetBuilder s, RivetStrengthInput input)
    {
        if (s.Step("Dh", "nominal hole", "by the rivet diameter", Rivets.StrengthHole(input.Diameter), "in") is not { } hole)
        {
            return null;
        }

        if (!Rivets.BearingIsValid(input.Diameter, input.Sheet))
        {
            s.CannotTell($"t/D is {NumberFormat.Text(input.Sheet / input.Diameter)}; unit bearing is valid from 0.18: thinner sheet needs tests.");
        }

        if (s.Step("k", "factor on shear in thin sheet", "by shear planes, D and t", Rivets.Correction(input.Planes, input.Diameter, input.Sheet)) is not { } k)
        {
            return null;
        }

        if (k < 1)
        {
            s.Caution("The factor on shear in thin sheet comes from a transcription that does not fully agree with itself: confirm it in the handbook.", true);
        }

        var (stress, source) = Rivets.Shear(input.Alloy);
        var tau = s.Step("Fsu", "ultimate shear stress of the rivet", "by its alloy", stress, "ksi", source);
        var area = s.Step("As", "shear area", "π/4 · Dh²", new Area(Math.PI / 4 * hole.Si * hole.Si), "in²", StructureSources.Joints);
        var shear = s.Step("Ps", "ultimate strength in shear", "k · planes · Fsu · As", new Force(k * input.Planes * tau.Si * area.Si), "lbf", StructureSources.Joints);
        var bearing = s.Step("Pb", "ultimate strength of the sheet in bearing", "Fbru · Dh · t", new Force(input.Bearing.Si * hole.Si * input.Sheet.Si), "lbf", Bearing);
        return s.Step("Pu", shear < bearing ? "ultimate strength, shear governs" : "ultimate strength, bearing governs", "lesser of Ps and Pb", shear < bearing ? shear : bearing, "lbf");
    }
}
