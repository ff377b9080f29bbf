using System.Globalization;
using System.Text.RegularExpressions;

namespace Fairlead.Calculations;

/// <summary>Reads quantities as people write them: <c>24.5 in</c>, <c>3 ft 2 in</c>, <c>2.5 mohm</c>, <c>-20 degC</c>, <c>80 %</c>.
/// The dimension is known beforehand, so one symbol may serve two dimensions (<c>C</c>: degree Celsius or coulomb).</summary>
public static partial class QuantityReader
{
    /// <summary>Reads an SI value of a dimension; on failure says what was expected.</summary>
    public static bool TryRead(Dimension dimension, string? text, out double si, out string expected)
    {
        expected = Expected(dimension);
        return TryRead(dimension, text, out si);
    }

    /// <summary>Reads an SI value of a dimension.</summary>
    public static bool TryRead(Dimension dimension, string? text, out double si)
    {
        var read = TryReadParts(dimension, (text ?? "").Trim(), previous: null, out si) && double.IsFinite(si);
        si += 0.0; // "-0" is zero, and must not print as "-0"
        return read;
    }

    /// <summary>Reads a quantity of a known kind.</summary>
    /// <exception cref="FormatException">The text is not a quantity of this kind.</exception>
    public static Quantity<TKind> Read<TKind>(string text)
        where TKind : IKind =>
        TryRead(TKind.Dimension, text, out var si, out var expected) ? new(si) : throw new FormatException($"'{text}' is not {expected}.");

    /// <summary>What a good value looks like, for messages.</summary>
    public static string Expected(Dimension dimension) => dimension switch
    {
        Dimension.Number => "a number",
        Dimension.Fraction => "a fraction, for example '0.8' or '80 %'",
        _ => $"a number with a unit of {Words(dimension)} ({string.Join(", ", Units.Symbols(dimension))}), for example '12.5 {Units.Default(dimension).Symbol}'",
    };

    private static string Words(Dimension dimension) => Capital().Replace(dimension.ToString(), " ${capital}").Trim().ToLowerInvariant();

    // "3 ft 2 in" is the number 3, the longest spelling "ft" that the rest starts with, then the same again with a smaller unit.
    private static bool TryReadParts(Dimension dimension, string text, Unit? previous, out double si)
    {
        si = 0;
        var number = LeadingNumber().Match(text);
        if (!number.Success || !double.TryParse(number.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            || (previous is not null && number.Value[0] is '-' or '+'))
        {
            return false;
        }

        var rest = text[number.Length..].Trim();
        if (Units.Find(dimension, rest) is { } last)
        {
            si = last.ToSi(value);
            return IsSmaller(last, previous);
        }

        foreach (var spelling in Units.Spellings(dimension).Where(s => rest.StartsWith(s, StringComparison.Ordinal)).OrderByDescending(s => s.Length))
        {
            var unit = Units.Get(dimension, spelling);
            if (unit.Offset == 0 && IsSmaller(unit, previous) && TryReadParts(dimension, rest[spelling.Length..].Trim(), unit, out var more))
            {
                var negative = number.Value[0] == '-';
                si = unit.ToSi(value) + (negative ? -more : more);
                return true;
            }
        }

        return false;
    }

    private static bool IsSmaller(Unit unit, Unit? previous) => previous is null || (unit.Offset == 0 && unit.Factor < previous.Factor);

    [GeneratedRegex("^[-+]?(?:\\d+(?:\\.\\d+)?|\\.\\d+)(?:[eE][-+]?\\d+)?", RegexOptions.CultureInvariant, 200)]
    private static partial Regex LeadingNumber();

    [GeneratedRegex("(?<capital>[A-Z])", RegexOptions.CultureInvariant, 200)]
    private static partial Regex Capital();
}
