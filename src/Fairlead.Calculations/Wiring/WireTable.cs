using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations.Wiring;

/// <summary>What the strands of a wire are made of.</summary>
public enum Conductor
{
    /// <summary>Tin-plated copper.</summary>
    Copper,

    /// <summary>Aluminium.</summary>
    Aluminium,
}

/// <summary>Resistance, area and bundled current of stranded aircraft wire: AC 43.13-1B table 11-9 (copper, read) and table 11-10 (aluminium, from memory).</summary>
/// <remarks>Check value: copper size 20 has 9.88 Ω/1000 ft at 20 °C, 1,216 circular mils, and carries 4, 7 or 9 A at 105, 150 or 200 °C.</remarks>
public static class WireTable
{
    private static readonly TableFile CopperTable = TableFile.Load("wire-copper");
    private static readonly TableFile AluminiumTable = TableFile.Load("wire-aluminium");
    private static readonly ImmutableArray<int> Classes = [105, 150, 200];

    /// <summary>The sizes of a table, thinnest first.</summary>
    public static ImmutableArray<Gauge> Sizes(Conductor conductor) => [.. Of(conductor).Rows.Select(r => new Gauge((int)r[0]!.Value))];

    /// <summary>Resistance per length at 20 °C.</summary>
    public static Looked<LinearResistance> Resistance(Gauge gauge, Conductor conductor) =>
        Cell(gauge, conductor, "ohm/1000ft", v => LinearResistance.Of(v, "Ω/1000ft"));

    /// <summary>Metal cross-section.</summary>
    public static Looked<Area> Area(Gauge gauge, Conductor conductor) => Cell(gauge, conductor, "circ mils", v => Quantity<AreaKind>.Of(v, "cmil"));

    /// <summary>The temperature class whose current column is used: the highest of 105, 150 and 200 °C that is not above the wire's rating.</summary>
    public static Looked<Temperature> Class(Temperature rating, Conductor conductor)
    {
        var table = Of(conductor);
        var degrees = Math.Round(rating.In("°C"), 6);
        var known = Classes.Where(c => c <= degrees && (conductor == Conductor.Copper || c < 200)).ToArray();
        return known.Length == 0
            ? new(default, table.Source, $"{table.Source.Paragraph} has no column for a wire rated {rating.As("°C")}; the lowest is 105 °C.")
            : new(Temperature.Of(known[^1], "°C"), table.Source);
    }

    /// <summary>Continuous current under the table's own conditions, of the <see cref="Class"/> of a temperature rating.</summary>
    public static Looked<Current> BundledCurrent(Gauge gauge, Conductor conductor, Temperature rating)
    {
        var found = Class(rating, conductor);
        return found.WhyNot is { } why
            ? new(default, found.Source, why)
            : Cell(gauge, conductor, string.Create(CultureInfo.InvariantCulture, $"{found.Value.In("°C"):0} degC A"), v => Current.Of(v, "A"));
    }

    /// <summary>Resistance at a temperature over resistance at 20 °C: (234.5 + T)/254.5 for copper, (238.1 + T)/258.1 for aluminium (AC 43.13-1B 11-66 d).</summary>
    /// <remarks>Check value: copper at 200 °C, 1.7073.</remarks>
    public static double HotFactor(Conductor conductor, Temperature temperature) =>
        (Zero(conductor) + temperature.In("°C")) / (Zero(conductor) + 20);

    /// <summary>The constant of the circular's temperature correction, in °C.</summary>
    internal static double Zero(Conductor conductor) => conductor == Conductor.Copper ? 234.5 : 238.1;

    /// <summary>The temperature correction as formula text, for a temperature symbol.</summary>
    internal static string HotFormula(Conductor conductor, string temperature) =>
        conductor == Conductor.Copper ? $"(234.5 + {temperature}) / 254.5" : $"(238.1 + {temperature}) / 258.1";

    /// <summary>Says on a sheet what is doubtful about aluminium figures.</summary>
    internal static void CautionAluminium(SheetBuilder s, Conductor conductor)
    {
        if (conductor == Conductor.Aluminium)
        {
            s.Caution("Aluminium values of table 11-10 are from memory, and IEC 60287-1-1 corrects for temperature from 228.1 °C where the circular uses 238.1 °C: confirm before relying on this.", affectsVerdict: true);
        }
    }

    private static TableFile Of(Conductor conductor) => conductor == Conductor.Copper ? CopperTable : AluminiumTable;

    private static Looked<T> Cell<T>(Gauge gauge, Conductor conductor, string column, Func<double, T> make)
        where T : struct
    {
        var table = Of(conductor);
        return table.RowWhere("AWG", gauge.Number) is { } row && table.Rows[row][table.Column(column)] is { } value
            ? new(make(value), table.SourceOf(row))
            : new(default, table.Source, $"{table.Source.Paragraph} gives no '{column}' for size {gauge}; its sizes are {string.Join(", ", Sizes(conductor))}.");
    }
}
