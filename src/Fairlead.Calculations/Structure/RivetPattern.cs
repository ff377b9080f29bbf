using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Structure;

/// <summary>Which table of rivets per inch serves the sheet.</summary>
public enum SheetGroup
{
    /// <summary>2014-T6, 2024-T3, 7075-T6 and alike: table 4-9, the greater numbers.</summary>
    HighStrength,

    /// <summary>2017 and 2024-T3 Alclad: table 4-10.</summary>
    Alclad2024,

    /// <summary>5052: table 4-11.</summary>
    Alloy5052,
}

/// <summary>What is spliced: some places need a share of the table's number.</summary>
public enum SplicePlace
{
    /// <summary>The full number of the table.</summary>
    Full,

    /// <summary>Stringers of the upper wing or of the fuselage: 80 %.</summary>
    Stringer,

    /// <summary>Intermediate frames: 60 %.</summary>
    Frame,

    /// <summary>Single-lap sheet joints: 75 %.</summary>
    LapJoint,
}

/// <summary>Input of <see cref="RivetPattern"/>.</summary>
/// <param name="Sheet">Table of the sheet.</param>
/// <param name="Thickness">Sheet thickness.</param>
/// <param name="Diameter">Rivet diameter, 3/32 to 1/4 in.</param>
/// <param name="Width">Width of the damage or cut, across the load.</param>
/// <param name="Place">What is spliced.</param>
/// <param name="Rows">Rows of rivets on each side.</param>
public sealed record RivetPatternInput(
    [In("sheet", "table of the sheet")] SheetGroup Sheet,
    [In("t", "sheet thickness", "in", Min = 0.005, Max = 0.2)] Length Thickness,
    [In("D", "rivet diameter", "in", Min = 0.09, Max = 0.26)] Length Diameter,
    [In("w", "width across the load", "in", Min = 0.01, Max = 200)] Length Width,
    [In("place", "what is spliced", Default = "full")] SplicePlace Place = SplicePlace.Full,
    [In("rows", "rows of rivets on each side", Min = 1, Max = 10, Default = "1")] int Rows = 1);

/// <summary>Rivets needed on each side of a cut or damage: n = rivets per inch (AC 43.13-1B tables 4-9 to 4-11) · width · share, rounded up.</summary>
/// <remarks>
/// AD protruding head. A thickness between two rows takes the thicker row, which needs more. Check value: .040 in 2024-T3 Alclad, 1/8 in, 6.2 per inch;
/// 0.6 in wide 3.72, so 4; of an intermediate frame 60 %, 3 (figure 4-20).
/// </remarks>
public sealed class RivetPattern : ICalculation<RivetPatternInput>
{
    private static readonly TableFile[] Tables = [.. new[] { "4-9", "4-10", "4-11" }.Select(n => TableFile.Load("rivets-per-inch-" + n))];
    private static readonly Source Shares = StructureSources.Repair("tables 4-9 to 4-11, notes a to c");

    /// <inheritdoc/>
    public static CalculationInfo<RivetPatternInput> Info { get; } = new(
        "rivet-pattern", "Number of rivets", Discipline.Structure,
        "How many rivets each side of a cut or damage needs, and at what pitch", "sheet=alclad2024 t='0.040 in' D='0.125 in' w='6 in' place=lap-joint rows=2", Shares);

    /// <inheritdoc/>
    public static Sheet Run(RivetPatternInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (s.Step("N", "rivets per inch", "by sheet, thickness and diameter", PerInch(input.Sheet, input.Thickness, input.Diameter)) is not { } perInch)
        {
            return;
        }

        var share = s.Step("share", "share of the number", "by what is spliced", Share(input.Place), Shares);
        var exact = s.Step("ne", "rivets on each side, before rounding", "N · w · share", perInch * input.Width.In("in") * share, Shares);
        var number = s.Step("n", "rivets on each side", "ne rounded up", Math.Max(1, Math.Ceiling(exact - 1e-9)));
        var inRow = s.Step("nr", "rivets in the fullest row", "n / rows rounded up", Math.Ceiling(number / input.Rows));
        var pitch = s.Step("p", "pitch over the width", "w / nr", input.Width / inRow, "in");
        s.Check("pitch", pitch.As("in"), Sense.AtLeast, (input.Diameter * 3).As("in"), "at least 3 D: otherwise more rows or a larger rivet", StructureSources.Repair("4-57c"), Verdict.Caution);
        if (input.Sheet != SheetGroup.Alloy5052)
        {
            s.Caution("Tables 4-9 and 4-10 both name 2024-T3 in their titles and disagree (t .064, 1/8 in: 12.3 and 9.9); paragraph 4-58m quotes 9.9 as if from table 4-9. Table 4-9 needs more rivets and is the safe choice.");
        }

        s.DeferToApprovedData();
    });

    /// <summary>Rivets per inch of width. Check value: table 4-10, .064 in, 1/8 in: 9.9.</summary>
    public static Looked<double> PerInch(SheetGroup sheet, Length thickness, Length diameter)
    {
        var table = Tables[(int)sheet];
        if (ColumnOf(diameter.In("in")) is { } name)
        {
            var (column, t) = (table.Column(name), thickness.In("in"));
            var printed = Enumerable.Range(0, table.Rows.Length).Where(r => table.Rows[r][column] is not null).ToArray();
            var thicker = Array.FindIndex(printed, r => table.Rows[r][0]!.Value >= t - 1e-9);
            if (thicker > 0 || (thicker == 0 && table.Rows[printed[0]][0]!.Value <= t + 1e-9))
            {
                return new(table.Rows[printed[thicker]][column]!.Value, table.SourceOf(printed[thicker]));
            }
        }

        return new(default, table.Source, $"{table.Source.Paragraph} gives no number for {thickness.As("in")} and a rivet of {diameter.As("in")}: take a rivet of about three times the sheet.");
    }

    /// <summary>The share of the table's number a place needs.</summary>
    public static double Share(SplicePlace place) => place switch { SplicePlace.Stringer => 0.8, SplicePlace.Frame => 0.6, SplicePlace.LapJoint => 0.75, _ => 1 };

    private static string? ColumnOf(double inches) =>
        new[] { (0.09375, "3/32"), (0.125, "1/8"), (0.15625, "5/32"), (0.1875, "3/16"), (0.25, "1/4") }.FirstOrDefault(c => Math.Abs(c.Item1 - inches) <= 0.001).Item2;
}
