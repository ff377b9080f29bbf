using System.Globalization;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Structure;

/// <summary>Ultimate single shear and tension of a bolt.</summary>
/// <param name="Shear">Single shear through the full shank.</param>
/// <param name="Tension">Tension.</param>
public readonly record struct BoltStrength(Force Shear, Force Tension);

/// <summary>AN bolts of 125 ksi steel by name. Check value: AN3, 2,126 lbf shear (AC 43.13-1B, note of table 4-9), 2,210 lbf tension (from memory).</summary>
public static class Bolts
{
    private static readonly TableFile Table = TableFile.Load("bolts");

    /// <summary>The strength of "AN3" to "AN6".</summary>
    public static Looked<BoltStrength> Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var known = name.StartsWith("AN", StringComparison.Ordinal) && int.TryParse(name.AsSpan(2), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? Table.RowWhere("AN", number) : null;
        return known is { } row
            ? new(new(Force.Of(Cell(row, "shear lbf"), "lbf"), Force.Of(Cell(row, "tension lbf"), "lbf")), Table.SourceOf(row))
            : new(default, Table.Source, $"The table has no bolt '{name}' (it has AN3, AN4, AN5, AN6): give its allowable shear and tension.");
    }

    private static double Cell(int row, string column) => Table.Rows[row][Table.Column(column)]!.Value;
}
