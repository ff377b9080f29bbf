using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>Reads single values: words, numbers, quantities, dates, ends of circuits.</summary>
internal static partial class ScalarReader
{
    /// <summary>Longest text that is tried as a number, date, end or the like.</summary>
    private const int LongestValue = 200;

    private static readonly ConcurrentDictionary<Type, Func<string, object?>> Readers = new();
    private static readonly ConcurrentDictionary<(Dimension Dimension, string Text), double?> Bounds = new();

    public static object? Read(Type type, string text) => text.Length > LongestValue && type != typeof(string) ? null : Readers.GetOrAdd(type, ReaderOf)(text);

    private static Func<string, object?> ReaderOf(Type type) => type switch
    {
        _ when type == typeof(string) => text => text.Length > 0 ? text : null,
        _ when type == typeof(bool) => text => text switch { "yes" or "true" => true, "no" or "false" => false, _ => null },
        _ when type == typeof(int) => text => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n) ? n : null,
        _ when type == typeof(double) => text => QuantityReader.TryRead(Dimension.Number, text, out var d) ? d : null,
        _ when type == typeof(DateOnly) => text => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null,
        _ when type == typeof(TimeOnly) => text => TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null,
        _ when type == typeof(Gauge) => text => Gauge.TryRead(text, out var gauge) ? gauge : null,
        _ when type == typeof(Endpoint) => text => Endpoint.TryRead(text, out var end) ? end : null,
        { IsEnum: true } => Enum.GetNames(type).ToDictionary(Words.Kebab, name => Enum.Parse(type, name), StringComparer.Ordinal).GetValueOrDefault,
        _ when RecordShape.IsQuantity(type) => QuantityOf(type),
        _ => throw new InvalidOperationException($"{type.Name} cannot stand in a job file."),
    };

    private static Func<string, object?> QuantityOf(Type type)
    {
        var (dimension, maker) = (RecordShape.DimensionOf(type), ConstructorInvoker.Create(type.GetConstructor([typeof(double)])!));
        return text => QuantityReader.TryRead(dimension, text, out var si) ? maker.Invoke(si) : null;
    }

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
        double? number = value is int n ? n : value is double d ? d : value is IQuantity quantity ? quantity.Si : null;
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

    private static double? Bound(Field field, string text) => text.Length == 0 ? null
        : Bounds.GetOrAdd((RecordShape.IsQuantity(field.Type) ? RecordShape.DimensionOf(field.Type) : Dimension.Number, text), bound =>
            QuantityReader.TryRead(bound.Dimension, bound.Text, out var si) ? si
            : throw new InvalidOperationException($"The range '{text}' of '{field.Key}' is not {QuantityReader.Expected(bound.Dimension)}."));
}
