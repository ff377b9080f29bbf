namespace Fairlead.Calculations.Structure;

/// <summary>Which rule a machine countersink is held to.</summary>
public enum CountersinkRule
{
    /// <summary>Both rules: the stricter governs.</summary>
    Stricter,

    /// <summary>Depth at most two thirds of the sheet (FAA-H-8083-31B).</summary>
    TwoThirds,

    /// <summary>Sheet thicker than the head is high (AC 65-15A).</summary>
    HeadHeight,
}

/// <summary>Input of <see cref="CountersinkDepth"/>.</summary>
/// <param name="Diameter">Rivet diameter.</param>
/// <param name="Sheet">Outer sheet.</param>
/// <param name="Rule">Rule.</param>
/// <param name="Head">Head diameter, where the rivet is none of the table.</param>
public sealed record CountersinkDepthInput(
    [In("D", "rivet or screw diameter", "in", Min = 0.05, Max = 0.5)] Length Diameter,
    [In("t", "outer sheet", "in", Min = 0.005, Max = 1)] Length Sheet,
    [In("rule", "rule", Default = "stricter")] CountersinkRule Rule = CountersinkRule.Stricter,
    [In("Dh", "head diameter, 100° head", "in", Min = 0.06, Max = 2, Default = "table")] Length? Head = null);

/// <summary>Depth of a 100° countersink against the sheet. Head height h = (Dh − D)/(2 · tan 50°).</summary>
/// <remarks>Check value: 1/8 in MS20426, head .225 in: h .0420 in, so two thirds asks .063 in of sheet, the head height .042 in, the table of TM 9-2320 .050 in.</remarks>
public sealed class CountersinkDepth : ICalculation<CountersinkDepthInput>
{
    private static readonly TableFile Table = TableFile.Load("countersink");
    private static readonly Source TwoThirds = StructureSources.Handbook("countersinking");
    private static readonly Source HeadHeight = new("FAA AC 65-15A", "", "countersinking, as quoted in a secondary copy");
    private static readonly Source Shank = StructureSources.Handbook("countersinking, shank bearing");

    /// <inheritdoc/>
    public static CalculationInfo<CountersinkDepthInput> Info { get; } = new(
        "countersink-depth", "Countersink against sheet", Discipline.Structure,
        "Whether a sheet is thick enough for a machine countersink", "D='0.125 in' t='0.063 in'", TwoThirds, HeadHeight);

    /// <inheritdoc/>
    public static Sheet Run(CountersinkDepthInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var row = Row(input.Diameter);
        if (row is null && input.Head is null)
        {
            s.CannotTell($"The table has no flush rivet of {input.Diameter.As("in")} (it has 3/32, 1/8, 5/32, 3/16 in): give the head diameter Dh.");
            return;
        }

        var head = input.Head ?? Length.Of(Table.Rows[row!.Value][Table.Column("head diameter in")]!.Value, "in");
        s.Step("DH", "head diameter", input.Head is null ? "by the rivet diameter" : "Dh", head, "in", input.Head is null ? Table.SourceOf(row!.Value) : null);
        if (head <= input.Diameter)
        {
            s.CannotTell("The head is no wider than the shank.");
            return;
        }

        var depth = s.Step("h", "depth of the countersink", "(DH − D) / (2 · tan 50°)", new Length((head.Si - input.Diameter.Si) / (2 * Math.Tan(Math.PI * 50 / 180))), "in", StructureSources.Derived("Cone of 100°"));
        var left = s.Step("r", "straight hole left in the sheet", "t − h", input.Sheet - depth, "in");
        if (input.Rule != CountersinkRule.HeadHeight)
        {
            s.Check("two thirds of the sheet", depth.As("in"), Sense.AtMost, (input.Sheet * (2.0 / 3)).As("in"), "depth at most two thirds of the sheet", TwoThirds);
        }

        if (input.Rule != CountersinkRule.TwoThirds)
        {
            s.Check("head height", depth.As("in"), Sense.AtMost, input.Sheet.As("in"), "sheet thicker than the head is high: no knife edge", HeadHeight);
        }

        s.Check("shank bearing", left.As("in"), Sense.AtLeast, Length.Of(0.020, "in").As("in"), "0.020 in of straight hole left for the shank: the handbook's alternative", Shank, Verdict.Caution);
        if (row is { } known)
        {
            s.Check("least sheet by table", input.Sheet.As("in"), Sense.AtLeast, Length.Of(Table.Rows[known][Table.Column("least sheet in")]!.Value, "in").As("in"), "a third published rule, between the two", Table.SourceOf(known), Verdict.Caution);
        }

        s.Caution("The rules disagree: two thirds of the sheet is the stricter, the head height the weaker. Thinner sheet is dimpled (7075-T6 hot), not countersunk.");
        s.DeferToApprovedData();
    });

    private static int? Row(Length diameter) => Rivets.Nominal(diameter) is { } inches ? Table.RowWhere("D in", inches) : null;
}
