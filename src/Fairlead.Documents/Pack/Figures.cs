using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Documents;

/// <summary>Numbers of tables: a fixed count of decimals, so that they line up.</summary>
internal static class Figures
{
    /// <summary>The number in a unit, without the unit: the column's heading names it.</summary>
    public static string Fixed<TKind>(Quantity<TKind> quantity, string unit, int decimals)
        where TKind : IKind => Fixed(quantity.In(unit), decimals);

    /// <summary>A dash where there is no value.</summary>
    public static string Fixed<TKind>(Quantity<TKind>? quantity, string unit, int decimals)
        where TKind : IKind => quantity is { } value ? Fixed(value, unit, decimals) : "–";

    /// <summary>With its unit, or a dash.</summary>
    public static string Or<TKind>(Quantity<TKind>? quantity, string unit)
        where TKind : IKind => quantity is { } value ? value.As(unit).ToString() : "–";

    /// <summary>A number with a count of decimals; zero has no sign.</summary>
    public static string Fixed(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>A count with its noun.</summary>
    public static string Count(int count, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    /// <summary>Words with a capital at their beginning.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>With its unit and a count of decimals.</summary>
    public static string With<TKind>(Quantity<TKind> quantity, string unit, int decimals)
        where TKind : IKind => Fixed(quantity, unit, decimals) + " " + unit;

    /// <summary>With its unit and a count of decimals, or a dash.</summary>
    public static string With<TKind>(Quantity<TKind>? quantity, string unit, int decimals)
        where TKind : IKind => quantity is { } value ? With(value, unit, decimals) : "–";

    /// <summary>A calendar day.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
