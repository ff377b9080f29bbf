using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Structure;

/// <summary>Alloy of a solid rivet, by the letters of its part number.</summary>
public enum RivetAlloy
{
    /// <summary>A: 1100.</summary>
    A1100,

    /// <summary>AD: 2117-T3, the usual one.</summary>
    Ad2117,

    /// <summary>D: 2017-T3.</summary>
    D2017,

    /// <summary>2017-T31, driven hard.</summary>
    Hd2017,

    /// <summary>DD: 2024-T4.</summary>
    Dd2024,

    /// <summary>B: 5056.</summary>
    B5056,

    /// <summary>M: monel.</summary>
    Monel,
}

/// <summary>Head of a rivet.</summary>
public enum RivetHead
{
    /// <summary>Universal, round, flat or brazier.</summary>
    Protruding,

    /// <summary>Countersunk, 100°.</summary>
    Flush,
}

/// <summary>Solid rivets: sizes, holes, strength. Check value: 1/8 in, drill No. 30, hole .1285 in, AD 388.9 lbf single shear (AC 43.13-1B table 4-8 on the hole's area).</summary>
public static class Rivets
{
    // Thickness over diameter from which unit bearing is valid, and single shear has no loss in any printed row.
    private const double ThinSheet = 0.18;
    private static readonly TableFile Holes = TableFile.Load("rivet-holes");
    private static readonly TableFile Alloys = TableFile.Load("rivet-alloys");
    private static readonly TableFile Corrections = TableFile.Load("rivet-shear-correction");

    /// <summary>The standard diameter in inches within 0.001 in of one given, such as 3/32 for 0.094 in; null when there is none.</summary>
    public static double? Nominal(Length diameter) => Row(diameter) is { } row ? Holes.Rows[row][0] : null;

    /// <summary>Drill in words and hole of a rivet.</summary>
    public static Looked<(string Drill, Length Hole)> Drill(Length diameter)
    {
        if (Row(diameter) is { } row && Cell(row, "hole in") is { } hole)
        {
            var drill = Cell(row, "drill number") is { } number ? "No. " + NumberFormat.Text(number) : "letter " + (char)('A' + (int)Cell(row, "drill letter")!.Value - 1);
            return new((drill, Length.Of(hole, "in")), Holes.SourceOf(row));
        }

        return new(default, Holes.Source, $"The table has no drill for a rivet of {diameter.As("in")}.");
    }

    /// <summary>The hole that shear and bearing are reckoned on.</summary>
    public static Looked<Length> StrengthHole(Length diameter) => Row(diameter) is { } row
        ? new(Length.Of(Cell(row, "hole for strength in")!.Value, "in"), Holes.SourceOf(row))
        : new(default, Holes.Source, $"{diameter.As("in")} is no rivet diameter of the table: 3/32, 1/8, 5/32, 3/16, 1/4, 5/16 or 3/8 in.");

    /// <summary>Ultimate shear stress of an alloy.</summary>
    public static (Pressure Stress, Source Source) Shear(RivetAlloy alloy)
    {
        var row = Alloys.RowWhere("alloy", (int)alloy + 1)!.Value;
        return (Pressure.Of(Alloys.Rows[row][Alloys.Column("shear psi")]!.Value, "psi"), Alloys.SourceOf(row));
    }

    /// <summary>Factor on the shear strength in thin sheet. Between two printed thicknesses the thinner one's is taken.</summary>
    /// <param name="planes">Shear planes, 1 or 2.</param>
    /// <param name="diameter">Diameter of the rivet.</param>
    /// <param name="sheet">Thinnest sheet in single shear, middle sheet in double shear.</param>
    public static Looked<double> Correction(int planes, Length diameter, Length sheet)
    {
        var (d, t) = (Nominal(diameter), sheet.In("in"));
        var rows = Enumerable.Range(0, Corrections.Rows.Length).Where(r => Corrections.Rows[r][0] == planes && Corrections.Rows[r][1] == d).ToArray();
        var below = Array.FindLastIndex(rows, r => Corrections.Rows[r][2]!.Value <= t + 1e-9);
        if (below >= 0 && (below < rows.Length - 1 || Factor(rows[below]) == 1 || Math.Abs(Corrections.Rows[rows[below]][2]!.Value - t) < 1e-9))
        {
            return new(Factor(rows[below]), Corrections.Source);
        }

        return planes == 1 && d is not null && BearingIsValid(diameter, sheet)
            ? new(1, StructureSources.Derived("Every printed single-shear row has factor 1 from t/D = 0.17"))
            : new(default, Corrections.Source, $"{Corrections.Source.Paragraph} as we have it gives no factor for a rivet of {diameter.As("in")} in {(planes == 1 ? "single" : "double")} shear at {sheet.As("in")}: take it from the handbook.");
    }

    /// <summary>Whether a sheet is thick enough for the unit bearing method: t/D at least 0.18 (MIL-HDBK-5H page 8-9).</summary>
    public static bool BearingIsValid(Length diameter, Length sheet) => sheet / diameter >= ThinSheet - 1e-9;

    private static double Factor(int row) => Corrections.Rows[row][3]!.Value;

    private static double? Cell(int row, string column) => Holes.Rows[row][Holes.Column(column)];

    private static int? Row(Length diameter)
    {
        for (var row = 0; row < Holes.Rows.Length; row++)
        {
            if (Math.Abs(Holes.Rows[row][0]!.Value - diameter.In("in")) <= 0.001)
            {
                return row;
            }
        }

        return null;
    }
}
