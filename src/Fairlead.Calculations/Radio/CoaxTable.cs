using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Radio;

/// <summary>A coaxial cable of the tables.</summary>
public enum Coax
{
    /// <summary>RG-58C/U, nominal.</summary>
    Rg58,

    /// <summary>RG-142B, nominal.</summary>
    Rg142,

    /// <summary>RG-174, nominal.</summary>
    Rg174,

    /// <summary>RG-178B, nominal.</summary>
    Rg178,

    /// <summary>RG-179, 75 Ω.</summary>
    Rg179,

    /// <summary>RG-180, 95 Ω.</summary>
    Rg180,

    /// <summary>RG-214, nominal.</summary>
    Rg214,

    /// <summary>RG-223, nominal.</summary>
    Rg223,

    /// <summary>RG-316, nominal.</summary>
    Rg316,

    /// <summary>RG-393, nominal.</summary>
    Rg393,

    /// <summary>RG-400, nominal.</summary>
    Rg400,

    /// <summary>RG-58, procurement maximum.</summary>
    Rg58Maximum,

    /// <summary>RG-213, procurement maximum.</summary>
    Rg213Maximum,
}

/// <summary>One point of a cable's attenuation, from its own sheet.</summary>
/// <param name="Frequency">Frequency, 0.1 MHz to 40,000 MHz.</param>
/// <param name="Loss">Attenuation there, dB per 100 ft, 0.001 to 1000.</param>
public sealed record LossPoint(
    [In("f", "frequency", "MHz", Min = 0.1, Max = 40000)] Frequency Frequency,
    [In("a", "attenuation (dB/100 ft)", Min = 0.001, Max = 1000)] double Loss);

/// <summary>What the tables know of a cable: two points of its attenuation and its velocity.</summary>
/// <remarks>Check value: RG-142B has 3.9 dB/100 ft at 100 MHz and 13.5 at 1000 MHz, and carries a wave at 69.5 % of the speed of light.</remarks>
public static class CoaxTable
{
    private static readonly TableFile Nominal = TableFile.Load("coax-nominal");
    private static readonly TableFile Maximum = TableFile.Load("coax-maximum");

    /// <summary>The two points of a cable, lower frequency first; empty when the table gives none.</summary>
    public static ImmutableArray<LossPoint> Points(Coax cable)
    {
        var (table, row) = Row(cable);
        ImmutableArray<string> columns = [.. table.Columns.Where(c => c.EndsWith("dB/100 ft", StringComparison.Ordinal))];
        return [.. from column in columns
                   where table.Rows[row][table.Column(column)] is not null
                   let megahertz = double.Parse(column.Split(' ')[0], CultureInfo.InvariantCulture)
                   select new LossPoint(Frequency.Of(megahertz, "MHz"), table.Rows[row][table.Column(column)]!.Value)];
    }

    /// <summary>The greatest frequency for which the form through the two points is used.</summary>
    public static Frequency? Highest(Coax cable) => Cell(cable, "MHz max") is { } value ? Frequency.Of(value, "MHz") : null;

    /// <summary>Velocity in the cable over that in vacuum.</summary>
    public static Looked<Fraction> Velocity(Coax cable) => Cell(cable, "velocity %") is { } value
        ? new(Fraction.Of(value, "%"), Source(cable))
        : new(default, Source(cable), $"The table gives no velocity for {Words.Kebab(cable.ToString())}: state it (vf) from the cable's own sheet.");

    /// <summary>Where a cable's values come from.</summary>
    public static Source Source(Coax cable)
    {
        var (table, row) = Row(cable);
        return table.SourceOf(row);
    }

    private static double? Cell(Coax cable, string column)
    {
        var (table, row) = Row(cable);
        return table.Columns.Contains(column) ? table.Rows[row][table.Column(column)] : null;
    }

    private static (TableFile Table, int Row) Row(Coax cable)
    {
        var name = cable.ToString();
        var maximum = name.EndsWith(nameof(Maximum), StringComparison.Ordinal);
        var table = maximum ? Maximum : Nominal;
        var number = int.Parse(name[2..(maximum ? name.Length - nameof(Maximum).Length : name.Length)], CultureInfo.InvariantCulture);
        return (table, table.RowWhere("RG", number) ?? throw new ArgumentOutOfRangeException(nameof(cable), cable, "not in the table"));
    }
}
