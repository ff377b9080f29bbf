namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="RivetLayout"/>.</summary>
/// <param name="Diameter">Rivet diameter.</param>
/// <param name="Head">Head.</param>
/// <param name="Rows">Rows of rivets.</param>
/// <param name="Pitch">Distance of rivets in a row, centre to centre.</param>
/// <param name="Edge">Distance of the rivet centre from the edge of the sheet.</param>
/// <param name="Spacing">Distance of rows.</param>
/// <param name="Sheet">Thicker sheet.</param>
public sealed record RivetLayoutInput(
    [In("D", "rivet diameter", "in", Min = 0.05, Max = 0.38)] Length Diameter,
    [In("head", "head of the rivet")] RivetHead Head,
    [In("rows", "rows of rivets", Min = 1, Max = 20)] int Rows,
    [In("p", "pitch in a row", "in", Min = 0, Max = 50)] Length Pitch,
    [In("e", "edge distance", "in", Min = 0, Max = 50)] Length Edge,
    [In("s", "row spacing", "in", Min = 0, Max = 50, Default = "not checked")] Length? Spacing = null,
    [In("t", "thicker sheet", "in", Min = 0.005, Max = 1, Default = "not checked")] Length? Sheet = null);

/// <summary>Edge distance, pitch and row spacing of rivets against the published rules, as multiples of the diameter.</summary>
/// <remarks>Check values: 1/8 in protruding, edge 0.250 in, pitch 0.375 in (AC 43.13-1B 4-57c); flush edge 0.313 in (FAA-H-8083-31B).</remarks>
public sealed class RivetLayout : ICalculation<RivetLayoutInput>
{
    private static readonly Source Rule = StructureSources.Repair("4-57c");
    private static readonly Source Handbook = StructureSources.Handbook("rivet edge distance, pitch and transverse pitch");

    /// <inheritdoc/>
    public static CalculationInfo<RivetLayoutInput> Info { get; } = new(
        "rivet-layout", "Layout of a rivet joint", Discipline.Structure,
        "Whether pitch, edge distance and row spacing follow the published rules",
        "D='0.125 in' head=protruding rows=2 p='0.75 in' e='0.3125 in' s='0.5625 in' t='0.040 in'", Rule, Handbook);

    /// <inheritdoc/>
    public static Sheet Run(RivetLayoutInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (d, flush) = (input.Diameter, input.Head == RivetHead.Flush);
        var edge = s.Step("emin", "least edge distance", flush ? "2.5 · D" : "2 · D", d * (flush ? 2.5 : 2), "in", flush ? Handbook : Rule);
        s.Check("edge distance", input.Edge.As("in"), Sense.AtLeast, edge.As("in"), "a rivet stands no nearer to the edge", flush ? Handbook : Rule);
        s.Check("edge distance, greatest", input.Edge.As("in"), Sense.AtMost, (d * 4).As("in"), "beyond 4 D the edge may curl up", Handbook, Verdict.Caution);
        s.Check("pitch", input.Pitch.As("in"), Sense.AtLeast, (d * 3).As("in"), "never less than 3 D", Rule);
        var usual = s.Step("pmin", "least pitch by rows and head", "multiple of D by rows and head", d * UsualPitch(input.Rows, flush), "in", Handbook);
        s.Check("pitch by rows and head", input.Pitch.As("in"), Sense.AtLeast, usual.As("in"), "recommended for these rows and this head", Handbook, Verdict.Caution);
        s.Check("pitch, greatest", input.Pitch.As("in"), Sense.AtMost, (d * 10).As("in"), "10 D at most: the sheet must not buckle between rivets", Handbook, Verdict.Caution);
        if (input.Spacing is { } spacing && input.Rows > 1)
        {
            s.Check("row spacing", spacing.As("in"), Sense.AtLeast, (d * 2.5).As("in"), "never less than 2.5 D", Handbook);
            s.Check("row spacing against pitch", spacing.As("in"), Sense.AtLeast, (input.Pitch * 0.75).As("in"), "75 % of the pitch", Handbook, Verdict.Caution);
        }

        if (input.Sheet is { } sheet)
        {
            s.Check("diameter, least", d.As("in"), Sense.AtLeast, (sheet * 2.5).As("in"), "2.5 to 3 times the thicker sheet", Handbook, Verdict.Caution);
            s.Check("diameter in structure", d.As("in"), Sense.AtLeast, Length.Of(0.09375, "in").As("in"), "never below 3/32 in in structure", Handbook);
        }

        if (input.Rows > 1)
        {
            s.Caution("AC 43.13-1B gives numbers for a single row only; for more rows it points to a drawing (figure 4-5).");
        }

        s.DeferToApprovedData();
    });

    // 1 and 3 rows 3 D, 2 rows 4 D; flush half a diameter more. More than three rows as three.
    private static double UsualPitch(int rows, bool flush) => (rows == 2 ? 4 : 3) + (flush ? 0.5 : 0);
}
