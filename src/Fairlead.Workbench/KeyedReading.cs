using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Workbench;

/// <summary>A reading as it is keyed in at the aircraft, key by key or typed: what the instrument shows, in the unit it shows it in.</summary>
/// <param name="Digits">Digits, with a point where there is one.</param>
/// <param name="Negative">Whether it is below nothing.</param>
/// <param name="Beyond">Whether the instrument only says that it is more.</param>
/// <param name="Open">Whether nothing reads through.</param>
/// <param name="Unit">The unit on the display.</param>
public sealed record KeyedReading(string Digits, bool Negative, bool Beyond, bool Open, string Unit)
{
    private const int Most = 12;
    private const string OverRange = "O.L";
    private static readonly string[] Bases = ["Ω", "V", "A", "Hz", "W"];

    /// <summary>Nothing yet, in a unit.</summary>
    public static KeyedReading In(string unit) => new("", false, false, false, unit);

    /// <summary>The units that a display may show for one that is due: the same with other prefixes, least first.</summary>
    public static ImmutableArray<string> Units(string due)
    {
        ArgumentNullException.ThrowIfNull(due);
        return Bases.FirstOrDefault(b => due.EndsWith(b, StringComparison.Ordinal)) is { } basis && DimensionOf(due) is { } dimension
            ? [.. Calculations.Units.Symbols(dimension).Where(s => s.EndsWith(basis, StringComparison.Ordinal)).OrderBy(s => Calculations.Units.Get(dimension, s).Factor)] : [due];
    }

    /// <summary>The reading after a key: a digit, a point, a sign, more than, open, or the last one deleted.</summary>
    public KeyedReading After(char key) => key switch
    {
        >= '0' and <= '9' => Open ? In(Unit) with { Digits = key.ToString() } : Digits.Length >= Most ? this : this with { Digits = Digits == "0" ? key.ToString() : Digits + key },
        '.' => Open || Digits.Contains('.', StringComparison.Ordinal) || Digits.Length >= Most ? this : this with { Digits = (Digits.Length == 0 ? "0" : Digits) + "." },
        '-' => Open ? this : this with { Negative = !Negative },
        '>' => Open ? this : this with { Beyond = !Beyond },
        'O' => Open ? In(Unit) : In(Unit) with { Open = true },
        '\b' => Open ? In(Unit) : Digits.Length > 0 ? this with { Digits = Digits[..^1] } : In(Unit),
        _ => this,
    };

    /// <summary>What was typed: a number, with its unit or without, after <c>&gt;</c> where the instrument only says that it is more; or what meters show beyond their range. Null when it is none of these.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="unit">The unit where none is typed.</param>
    public static KeyedReading? Typed(string words, string unit)
    {
        ArgumentNullException.ThrowIfNull(words);
        var text = words.Trim();
        if (text.Replace(".", "", StringComparison.Ordinal).ToUpperInvariant() is "OL" or "0L" or "OPEN" or "INF" or "∞")
        {
            return In(unit) with { Open = true };
        }

        var beyond = text.StartsWith('>');
        text = beyond ? text[1..].TrimStart() : text;
        var negative = text is ['-' or '−', ..];
        text = negative ? text[1..] : text;
        var digits = new string([.. text.TakeWhile(c => char.IsAsciiDigit(c) || c == '.')]);
        var named = text[digits.Length..].Trim();
        var found = named.Length == 0 ? unit : Units(unit).FirstOrDefault(u => u == named || (DimensionOf(unit) is { } d && Calculations.Units.Find(d, named)?.Symbol == u));
        var reading = found is null || digits.Length > Most ? null : new KeyedReading(digits, negative, beyond, false, found);
        return reading?.Number is null ? null : reading;
    }

    /// <summary>The reading as it stands on the display.</summary>
    public string Text => Open ? OverRange : $"{(Beyond ? ">" : "")}{(Negative ? "−" : "")}{Digits}";

    /// <summary>Its number in a unit, exactly; null while there is none.</summary>
    public decimal? As(string unit) => Number is { } number && Scale(unit) is { } scale ? number * scale : null;

    private decimal? Number => !Open && decimal.TryParse(Digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? Negative ? -number : number : null;

    // Prefixes differ by powers of ten, which a decimal holds exactly.
    private decimal? Scale(string unit) => unit == Unit ? 1 : DimensionOf(unit) is { } dimension && Calculations.Units.Find(dimension, Unit) is { } shown
        ? (decimal)Math.Round(Math.Log10(shown.Factor / Calculations.Units.Get(dimension, unit).Factor)) is var power && power >= 0 ? Power(power) : 1 / Power(-power) : null;

    private static decimal Power(decimal exponent) => Enumerable.Range(0, (int)exponent).Aggregate(1m, (p, _) => p * 10);

    private static Dimension? DimensionOf(string unit) => Enum.GetValues<Dimension>().Cast<Dimension?>().FirstOrDefault(d => Calculations.Units.Find(d!.Value, unit) is { Symbol.Length: > 0 });
}
