using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>Reads single values: words, numbers, quantities, dates, ends of circuits.</summary>
internal static partial class ScalarReader
{
    /// <summary>Longest text that is tried as a number, date, end or the like.</summary>
    private const int LongestValue = 200;

    public static object? Read(Type type, string text) => text.Length > LongestValue && type != typeof(string) ? null : type switch
    {
        _ when type == typeof(string) => text.Length > 0 ? text : null,
        _ when type == typeof(bool) => text switch { "yes" or "true" => true, "no" or "false" => false, _ => null },
        _ when type == typeof(int) => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n) ? n : null,
        _ when type == typeof(double) => QuantityReader.TryRead(Dimension.Number, text, out var d, out _) ? d : null,
        _ when type == typeof(DateOnly) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null,
        _ when type == typeof(TimeOnly) => TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null,
        _ when type == typeof(Gauge) => Gauge.TryRead(text, out var gauge) ? gauge : null,
        _ when type == typeof(Endpoint) => Endpoint.TryRead(text, out var end) ? end : null,
        { IsEnum: true } => Enum.GetNames(type).FirstOrDefault(n => Words.Kebab(n) == text) is { } name ? Enum.Parse(type, name) : null,
        _ when RecordShape.IsQuantity(type) => QuantityReader.TryRead(RecordShape.DimensionOf(type), text, out var si, out _) ? Activator.CreateInstance(type, si) : null,
        _ => throw new InvalidOperationException($"{type.Name} cannot stand in a job file."),
    };

    public static string Expected(Type type) => type switch
    {
        _ when type == typeof(string) => "a word or words",
        _ when type == typeof(bool) => "'yes' or 'no'",
        _ when type == typeof(int) => "a whole number",
        _ when type == typeof(double) => "a number",
        _ when type == typeof(DateOnly) => "a date, for example 2027-03-31",
        _ when type == typeof(TimeOnly) => "a time of day, for example 07:30",
        _ when type == typeof(Gauge) => Gauge.Expected,
        _ when type == typeof(Endpoint) => Endpoint.Expected,
        { IsEnum: true } => $"one of {string.Join(", ", Choices(type))}",
        _ when RecordShape.IsQuantity(type) => QuantityReader.Expected(RecordShape.DimensionOf(type)),
        _ => "a value",
    };

    /// <summary>Why a text cannot be shown on screen and paper; null when it can.</summary>
    public static string? Unprintable(string text) =>
        text.Length > Limits.TextLength ? string.Create(CultureInfo.InvariantCulture, $"is longer than {Limits.TextLength} characters")
        : text.Any(c => char.IsControl(c) && c is not ('\n' or '\t')) || text.EnumerateRunes().Contains(Rune.ReplacementChar) ? "holds a character that cannot be printed"
        : null;

    public static IEnumerable<string> Choices(Type type) => Enum.GetNames(type).Select(Words.Kebab);

    public static string Hint(Type type, string text) =>
        type.IsEnum ? ProblemList.Hint(text, Choices(type))
        : CommaDecimal().IsMatch(text) ? $"write the decimal point as '.': {text.Replace(',', '.')}"
        : RecordShape.IsQuantity(type) && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? "add the unit"
        : "";

    public static bool OutOfRange(Field field, object value)
    {
        double? number = value is int n ? n : value is double d ? d : RecordShape.IsQuantity(field.Type) ? SiOf(value) : null;
        return number is { } x && ((Bound(field, field.Min) is { } min && x < min - Slack(min)) || (Bound(field, field.Max) is { } max && x > max + Slack(max)));
    }

    public static string Range(Field field) => (field.Min, field.Max) switch
    {
        ("", var max) => $"at most {max}",
        (var min, "") => $"at least {min}",
        var (min, max) => $"{min} to {max}",
    };

    [GeneratedRegex("^[-+]?\\d+,\\d+( |$)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CommaDecimal();

    private static double Slack(double bound) => 1e-12 * Math.Abs(bound);

    private static double SiOf(object quantity) => (double)quantity.GetType().GetProperty("Si")!.GetValue(quantity)!;

    private static double? Bound(Field field, string text)
    {
        var dimension = RecordShape.IsQuantity(field.Type) ? RecordShape.DimensionOf(field.Type) : Dimension.Number;
        return text.Length == 0 ? null : QuantityReader.TryRead(dimension, text, out var si, out _) ? si
            : throw new InvalidOperationException($"The range '{text}' of '{field.Key}' is not {QuantityReader.Expected(dimension)}.");
    }
}
