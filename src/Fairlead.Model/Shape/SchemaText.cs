using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Fairlead.Calculations;
using Fairlead.Model.Reading;

namespace Fairlead.Model;

/// <summary>Schemas of single values. The reader takes every value as text, so a value that an editor sees as a number is allowed where text is meant.</summary>
internal static class SchemaText
{
    private const string Number = "(\\d+(\\.\\d+)?|\\.\\d+)([eE][-+]?\\d+)?";

    public static JsonObject Scalar(Field field) => field.Type switch
    {
        var t when t == typeof(string) => new JsonObject { ["type"] = Types("string", "number", "boolean") },
        var t when t == typeof(bool) => new JsonObject { ["enum"] = new JsonArray(true, false, "yes", "no", "true", "false") },
        var t when t == typeof(int) => Numeric(field, "integer", "^[-+]?\\d+$"),
        var t when t == typeof(double) => Numeric(field, "number", $"^[-+]?{Number}$"),
        var t when t == typeof(DateOnly) => Text("^\\d{4}-\\d{2}-\\d{2}$", "2027-03-31"),
        var t when t == typeof(TimeOnly) => Text("^([01]\\d|2[0-3]):[0-5]\\d$", "07:30"),
        var t when t == typeof(Gauge) => Gauges(),
        var t when t == typeof(Endpoint) => Text(Ids.EndPattern, "A1 P1-12", "CB12"),
        { IsEnum: true } t => new JsonObject { ["enum"] = new JsonArray([.. ScalarReader.Choices(t).Select(c => JsonValue.Create(c))]) },
        var t => Quantity(RecordShape.DimensionOf(t)),
    };

    private static JsonArray Types(params string[] names) => new([.. names.Select(n => JsonValue.Create(n))]);

    private static JsonObject Text(string pattern, params string[] examples) => new()
    {
        ["type"] = "string",
        ["pattern"] = pattern,
        ["examples"] = new JsonArray([.. examples.Select(e => JsonValue.Create(e))]),
    };

    private static JsonObject Numeric(Field field, string type, string pattern)
    {
        var schema = new JsonObject { ["type"] = Types(type, "string"), ["pattern"] = pattern };
        foreach (var (key, bound) in new[] { ("minimum", field.Min), ("maximum", field.Max) })
        {
            if (bound.Length > 0)
            {
                schema[key] = double.Parse(bound, CultureInfo.InvariantCulture);
            }
        }

        return schema;
    }

    private static JsonObject Gauges()
    {
        var schema = Text("^(AWG ?)?([1-9]|[123]\\d|40|0{1,4}|[1-4]/0)$", "22", "00");
        schema["type"] = Types("string", "integer");
        (schema["minimum"], schema["maximum"]) = (0, 40);
        return schema;
    }

    private static JsonObject Quantity(Dimension dimension)
    {
        if (dimension == Dimension.Fraction)
        {
            var fraction = Text($"^[-+]?{Number} *({Alternatives(dimension)})?$", "80 %", "0.8");
            fraction["type"] = Types("string", "number");
            return fraction;
        }

        return Text($"^[-+]?{Number} *({Alternatives(dimension)})( *{Number} *({Alternatives(dimension)}))*$", $"12.5 {Units.Default(dimension).Symbol}");
    }

    private static string Alternatives(Dimension dimension) =>
        string.Join('|', Units.Spellings(dimension).OrderByDescending(s => s.Length).ThenBy(s => s, StringComparer.Ordinal).Select(Escaped));

    // Only what every dialect of patterns lets one escape.
    private static string Escaped(string literal)
    {
        var text = new StringBuilder();
        foreach (var c in literal)
        {
            text.Append(".^$*+?()[]{}|\\/".Contains(c, StringComparison.Ordinal) ? "\\" : "").Append(c);
        }

        return text.ToString();
    }
}
