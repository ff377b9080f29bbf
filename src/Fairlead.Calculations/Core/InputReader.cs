using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;

namespace Fairlead.Calculations;

/// <summary>One thing wrong with the text of an input.</summary>
/// <param name="Symbol">The input.</param>
/// <param name="Found">What was typed.</param>
/// <param name="Expected">What was expected.</param>
/// <param name="Fix">What would mend it.</param>
public sealed record InputError(string Symbol, string Found, string Expected, string Fix = "");

/// <summary>Builds an input record from texts by symbol. A table is typed as rows separated by <c>;</c> with cells separated by <c>,</c>
/// in the order of its columns; a cell may be left empty where its column is optional.</summary>
public static class InputReader
{
    /// <summary>Reads a record; null with a list of errors when anything is wrong.</summary>
    public static object? Read(Type record, ImmutableArray<InputInfo> inputs, IReadOnlyDictionary<string, string> arguments, out ImmutableArray<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(arguments);
        var found = new List<InputError>();
        foreach (var symbol in arguments.Keys.Where(k => inputs.All(i => i.Symbol != k)))
        {
            var near = Words.Nearest(symbol, inputs.Select(i => i.Symbol));
            found.Add(new InputError(symbol, arguments[symbol], $"one of {string.Join(", ", inputs.Select(i => i.Symbol))}", near is null ? "" : $"did you mean '{near}'?"));
        }

        var values = inputs.Select(i => arguments.TryGetValue(i.Symbol, out var text) ? Value(i, text, i.Symbol, found) : Missing(i, i.Symbol, found)).ToArray();
        errors = [.. found];
        return errors.IsEmpty ? Construct(record, values) : null;
    }

    private static object? Missing(InputInfo input, string name, List<InputError> errors)
    {
        if (!input.Optional)
        {
            errors.Add(new InputError(name, "nothing", Expected(input), $"give {name}=... ({input.Meaning})"));
        }

        return input.Optional ? DefaultOf(input.Parameter) : null;
    }

    private static object? DefaultOf(ParameterInfo parameter) => parameter.DefaultValue is { } value
        ? (parameter.ParameterType.IsEnum ? Enum.ToObject(parameter.ParameterType, value) : value)
        : parameter.ParameterType.IsValueType ? Activator.CreateInstance(parameter.ParameterType) : null;

    private static object? Value(InputInfo input, string text, string name, List<InputError> errors)
    {
        var type = Nullable.GetUnderlyingType(input.Parameter.ParameterType) ?? input.Parameter.ParameterType;
        var value = input.Form switch
        {
            InputForm.Words => text.Trim().Length > 0 ? text.Trim() : null,
            InputForm.YesNo => text.Trim() switch { "yes" or "true" => true, "no" or "false" => false, _ => null },
            InputForm.Count => int.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var n) ? n : null,
            InputForm.Gauge => Gauge.TryRead(text, out var gauge) ? gauge : null,
            InputForm.Choice => Choice(type, text.Trim()),
            InputForm.Table => Table(input, type, text, errors),
            _ => Number(input, type, text),
        };
        if (value is null)
        {
            var near = input.Form == InputForm.Choice ? Words.Nearest(text.Trim(), input.Choices) : null;
            errors.Add(new InputError(name, text, Expected(input), near is null ? "" : $"did you mean '{near}'?"));
        }
        else if (Si(input, text) is { } si && !input.Accepts(si))
        {
            errors.Add(new InputError(name, text, input.RangeText, "this method is not valid beyond"));
        }

        return value;
    }

    private static object? Number(InputInfo input, Type type, string text) =>
        Si(input, text) is not { } si ? null : type == typeof(double) ? si : Activator.CreateInstance(type, si);

    private static double? Si(InputInfo input, string text) =>
        input.Unit is not null && QuantityReader.TryRead(input.Unit.Dimension, text, out var si, out _) ? si : null;

    private static object? Choice(Type type, string text) =>
        Enum.GetNames(type).FirstOrDefault(n => Words.Kebab(n) == text) is { } name ? Enum.Parse(type, name) : null;

    private static object Table(InputInfo input, Type type, string text, List<InputError> errors)
    {
        var rowType = type.GetGenericArguments()[0];
        var rows = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var list = Array.CreateInstance(rowType, rows.Length);
        for (var r = 0; r < rows.Length; r++)
        {
            var row = Row(input, rowType, rows[r], $"{input.Symbol}[{(r + 1).ToString(CultureInfo.InvariantCulture)}]", errors);
            if (row is not null)
            {
                list.SetValue(row, r);
            }
        }

        return typeof(Sequence).GetMethod(nameof(Sequence.ToSequence))!.MakeGenericMethod(rowType).Invoke(null, [list])!;
    }

    private static object? Row(InputInfo input, Type rowType, string text, string name, List<InputError> errors)
    {
        var before = errors.Count;
        var cells = text.Split(',', StringSplitOptions.TrimEntries);
        if (cells.Length > input.Columns.Length)
        {
            errors.Add(new InputError(name, text, $"at most {input.Columns.Length.ToString(CultureInfo.InvariantCulture)} cells: {string.Join(", ", input.Columns.Select(c => c.Symbol))}"));
            return null;
        }

        var values = input.Columns.Select((c, i) => i < cells.Length && cells[i].Length > 0
            ? Value(c, cells[i], $"{name}.{c.Symbol}", errors) : Missing(c, $"{name}.{c.Symbol}", errors)).ToArray();
        return errors.Count == before ? Construct(rowType, values) : null;
    }

    private static object Construct(Type record, object?[] values) =>
        record.GetConstructors().OrderByDescending(c => c.GetParameters().Length).First().Invoke(values);

    private static string Expected(InputInfo input) => input.Form switch
    {
        InputForm.Words => "a word",
        InputForm.YesNo => "'yes' or 'no'",
        InputForm.Gauge => Gauge.Expected,
        InputForm.Count => "a whole number",
        InputForm.Choice => $"one of {string.Join(", ", input.Choices)}",
        InputForm.Table => $"rows of {string.Join(", ", input.Columns.Select(c => c.Symbol))}, separated by ';'",
        _ => QuantityReader.Expected(input.Unit!.Dimension),
    };
}
