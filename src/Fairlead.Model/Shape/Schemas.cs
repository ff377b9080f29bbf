using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Fairlead.Calculations;
using Fairlead.Model.Reading;

namespace Fairlead.Model;

/// <summary>JSON Schemas (draft 2020-12) of the job files, from the same shapes that the reader goes by: so an editor completes and
/// checks what the reader accepts. A schema sees one file; ids of other files are checked by the reader alone.</summary>
public static class Schemas
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schemas by file name: <c>job.schema.json</c>, <c>aircraft.schema.json</c>, <c>parts.schema.json</c>, <c>change.schema.json</c>, <c>stock.schema.json</c>.</summary>
    public static IReadOnlyDictionary<string, string> Write() => new SortedDictionary<string, string>(StringComparer.Ordinal)
    {
        ["job.schema.json"] = Write(typeof(WorkOrder), "Work order"),
        ["aircraft.schema.json"] = Write(typeof(Aircraft), "Aircraft record"),
        ["parts.schema.json"] = Write(typeof(PartsCatalog), "Parts catalogue"),
        ["change.schema.json"] = Write(typeof(Change), "Change"),
        ["stock.schema.json"] = Write(typeof(Stock), "Stock"),
    };

    private static string Write(Type root, string title)
    {
        var definitions = new SortedDictionary<string, JsonNode?>(StringComparer.Ordinal);
        var schema = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = title };
        foreach (var (key, value) in Record(root, definitions).ToArray())
        {
            schema[key] = value?.DeepClone();
        }

        schema["$defs"] = new JsonObject(definitions);
        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonObject Record(Type type, SortedDictionary<string, JsonNode?> definitions)
    {
        var fields = RecordShape.Of(type).Fields.Where(f => !f.IsKey).ToArray();
        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject(fields.Select(f => KeyValuePair.Create<string, JsonNode?>(f.Key, Described(f, definitions)))),
            ["required"] = new JsonArray([.. fields.Where(f => f.Required).Select(f => JsonValue.Create(f.Key))]),
            ["additionalProperties"] = false,
        };
    }

    private static JsonObject Described(Field field, SortedDictionary<string, JsonNode?> definitions)
    {
        var schema = Value(field, definitions);
        schema["description"] = string.Join("; ", new[]
        {
            field.Meaning,
            field.Min.Length + field.Max.Length > 0 ? ScalarReader.Range(field) : "",
            field.Ref is { } reference ? "the id of " + reference.Names + (reference.Or.Length > 0 ? $", or '{reference.Or}'" : "") : "",
            field.Required || DefaultText(field.Default) is not { Length: > 0 } text ? "" : $"'{text}' when left out",
        }.Where(s => s.Length > 0));
        return schema;
    }

    private static JsonObject Value(Field field, SortedDictionary<string, JsonNode?> definitions)
    {
        var type = field.Type;
        if (RecordShape.IsCatalog(type))
        {
            return new JsonObject
            {
                ["type"] = "object",
                ["propertyNames"] = new JsonObject { ["pattern"] = Ids.Pattern },
                ["additionalProperties"] = Referred(type.GetGenericArguments()[0], definitions),
            };
        }

        return RecordShape.IsSequence(type) ? new JsonObject { ["type"] = "array", ["items"] = Value(field with { Type = type.GetGenericArguments()[0] }, definitions) }
            : RecordShape.IsRecord(type) ? Referred(type, definitions)
            : SchemaText.Scalar(field);
    }

    private static JsonObject Referred(Type type, SortedDictionary<string, JsonNode?> definitions)
    {
        var name = Words.Kebab(type.Name);
        if (definitions.TryAdd(name, null))
        {
            definitions[name] = Record(type, definitions);
        }

        return new JsonObject { ["$ref"] = "#/$defs/" + name };
    }

    private static string DefaultText(object? value) => value switch
    {
        bool b => b ? "yes" : "no",
        Enum e => Words.Kebab(e.ToString()),
        string or int or double => Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture)!,
        _ => "",
    };
}
