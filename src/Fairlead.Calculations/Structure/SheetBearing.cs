namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="SheetBearing"/>.</summary>
/// <param name="Shear">Ultimate shear on the fastener.</param>
/// <param name="Diameter">Fastener diameter.</param>
/// <param name="Sheet">Sheet thickness.</param>
/// <param name="Bearing">Ultimate bearing strength at an edge distance of twice the diameter.</param>
/// <param name="Edge">Edge distance, from the middle of the hole.</param>
/// <param name="Near">Ultimate bearing strength at an edge distance of 1.5 diameters.</param>
/// <param name="Strength">Ultimate shear strength of the sheet.</param>
public sealed record SheetBearingInput(
    [In("V", "ultimate shear on the fastener, with any fitting factor", "lbf", Min = 0, Max = 1e6)] Force Shear,
    [In("D", "fastener diameter", "in", Min = 0.05, Max = 2)] Length Diameter,
    [In("t", "sheet thickness", "in", Min = 0.005, Max = 2)] Length Sheet,
    [In("Fbru", "ultimate bearing strength of the sheet at e/D = 2", "ksi", Min = 0.1, Max = 1000)] Pressure Bearing,
    [In("e", "edge distance, from the middle of the hole", "in", Min = 0.01, Max = 100)] Length Edge,
    [In("Fbru15", "ultimate bearing strength of the sheet at e/D = 1.5", "ksi", Min = 0.1, Max = 1000, Default = "not known")] Pressure? Near = null,
    [In("Fsu", "ultimate shear strength of the sheet", "ksi", Min = 0.1, Max = 1000, Default = "tear-out not worked by itself")] Pressure? Strength = null);

/// <summary>Bearing and tear-out of the sheet under a screw or bolt: Pb = Fbru · D · t; Pt = 2 · t · (e − D/2) · Fsu, two planes from the edge of the hole.</summary>
/// <remarks>
/// Bearing strengths belong to an edge distance: from 2 D the value at 2 D holds, between 1.5 D and 2 D a straight line between both values, below 1.5 D nothing.
/// Check values: .250 in bolt, .10 in sheet, 156 ksi: 3,900 lbf in bearing; e .5 in and 40 ksi in shear: 3,000 lbf in tear-out.
/// </remarks>
public sealed class SheetBearing : ICalculation<SheetBearingInput>
{
    private const double Least = 1.5;
    private const double Full = 2;
    private const double ThinSheet = 0.18;
    private static readonly Source Method = new("MIL-HDBK-5H", "", "page 8-9 and 8.1.5: unit bearing by D · t, valid from t/D = 0.18; read for rivets, taken for screws alike");
    private static readonly Source Planes = StructureSources.Derived("Shear on two planes from the edge of the hole");

    /// <inheritdoc/>
    public static CalculationInfo<SheetBearingInput> Info { get; } = new(
        "sheet-bearing", "Sheet under a screw", Discipline.Structure,
        "Whether the sheet holds a screw or bolt in bearing and does not tear out to its edge",
        "V='300 lbf' D='0.190 in' t='0.063 in' Fbru='120 ksi' e='0.40 in' Fsu='37 ksi'", Method, Planes);

    /// <inheritdoc/>
    public static Sheet Run(SheetBearingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Sheet / input.Diameter < ThinSheet - 1e-9)
        {
            s.CannotTell($"t/D is {NumberFormat.Text(input.Sheet / input.Diameter)}; unit bearing is valid from 0.18: thinner sheet needs tests.");
            return;
        }

        var ratio = s.Step("e/D", "edge distance in diameters", "e / D", input.Edge / input.Diameter);
        if (ratio < Least - 1e-9 || (ratio < Full - 1e-9 && input.Near is null))
        {
            s.CannotTell(ratio < Least - 1e-9
                ? "The edge distance is less than 1.5 D: no bearing strength is published for it."
                : "The edge distance is less than 2 D, and the bearing strength at 1.5 D is not known: the value at 2 D does not hold there.");
            return;
        }

        var near = ratio < Full - 1e-9;
        var strength = near
            ? s.Step("Fb", "bearing strength at this edge distance", "Fbru15 + (e/D − 1.5) / 0.5 · (Fbru − Fbru15)", new Pressure(input.Near!.Value.Si + ((ratio - Least) / (Full - Least) * (input.Bearing.Si - input.Near.Value.Si))), "ksi", Method)
            : s.Step("Fb", "bearing strength at this edge distance", "Fbru", input.Bearing, "ksi", Method);
        var bearing = s.Step("Pb", "ultimate strength in bearing", "Fb · D · t", new Force(strength.Si * input.Diameter.Si * input.Sheet.Si), "lbf", Method);
        s.Check("bearing of the sheet", input.Shear.As("lbf"), Sense.AtMost, bearing.As("lbf"), "ultimate load within ultimate strength", Method);
        if (input.Strength is { } shear)
        {
            var tear = s.Step("Pt", "ultimate strength against tear-out", "2 · t · (e − D/2) · Fsu", new Force(2 * input.Sheet.Si * (input.Edge.Si - (input.Diameter.Si / 2)) * shear.Si), "lbf", Planes);
            s.Check("tear-out to the edge", input.Shear.As("lbf"), Sense.AtMost, tear.As("lbf"), "ultimate load within ultimate strength", Planes);
        }
        else
        {
            s.Caution("Tear-out is not worked by itself: the shear strength of the sheet is not given. A bearing strength found at this edge distance includes it.");
        }

        s.Caution("The head pulling through thin sheet and the wear of a loose hole are not covered; no thread belongs in bearing.");
        s.DeferToApprovedData();
    });
}
