using System.Text.Json;
using System.Text.Json.Nodes;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Json.Schema;
using YamlDotNet.RepresentationModel;

namespace Fairlead.Tests.Model;

/// <summary>The schemas, judged by a validator that is not ours.</summary>
public sealed class SchemaTests
{
    public static TheoryData<string> Names => [.. Schemas.Write().Keys];

    public static TheoryData<string, string> StarterFiles => new()
    {
        { "job.yaml", "job.schema.json" },
        { "aircraft.yaml", "aircraft.schema.json" },
        { "parts/equipment.yaml", "parts.schema.json" },
        { "parts/wiring.yaml", "parts.schema.json" },
        { "change.yaml", "change.schema.json" },
    };

    public static TheoryData<string> DemoFiles => [.. Directory.EnumerateFiles(Demo.Folder, "*.yaml", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Demo.Folder, f)).Order(StringComparer.Ordinal)];

    public static TheoryData<string, string, string> Wrong => new()
    {
        { "a unit of another kind", "ceiling: 18000 ft", "ceiling: 18000 kg" },
        { "a quantity without unit", "mass: 2100 lb", "mass: 2100" },
        { "an unknown key", "registration: X9-001", "registration: X9-001\ncolour: blue" },
        { "a missing key", "registration: X9-001", "" },
        { "an unknown word", "kind: cover", "kind: lid" },
        { "a scalar for a list", "panels: [AFT]", "panels: AFT" },
        { "an id with a space", "COCKPIT: {", "COCK PIT: {" },
        { "a number outside its range", "fasteners: 6", "fasteners: -6" },
        { "a date of another form", "date: 2026-03-02", "date: 2 March 2026" },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_schema_is_valid_by_the_metaschema_of_its_draft(string name)
    {
        var result = MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(Schemas.Write()[name]).RootElement, Listed);
        Assert.True(result.IsValid, Errors(result));
    }

    [Theory]
    [MemberData(nameof(StarterFiles))]
    public void The_starter_files_are_valid(string file, string schema)
    {
        var result = Evaluate(Text(file), schema);
        Assert.True(result.IsValid, Errors(result));
    }

    [Theory]
    [MemberData(nameof(DemoFiles))]
    public void The_files_of_the_demonstration_job_are_valid(string file)
    {
        var kind = file.StartsWith("parts", StringComparison.Ordinal) ? "parts" : Path.GetFileNameWithoutExtension(file);
        var result = Evaluate(File.ReadAllText(Path.Combine(Demo.Folder, file)), kind + ".schema.json");
        Assert.True(result.IsValid, Errors(result));
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_aircraft_is_refused(string what, string good, string bad)
    {
        var text = Text("aircraft.yaml");
        Assert.True(text.Contains(good, StringComparison.Ordinal), what);
        Assert.False(Evaluate(text.Replace(good, bad, StringComparison.Ordinal), "aircraft.schema.json").IsValid, what);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_key_says_what_it_means(string name)
    {
        var properties = Objects(JsonNode.Parse(Schemas.Write()[name])!).Select(o => o["properties"]).OfType<JsonObject>().SelectMany(p => p).ToArray();
        Assert.NotEmpty(properties);
        Assert.All(properties, p => Assert.False(string.IsNullOrWhiteSpace(p.Value!["description"]?.GetValue<string>()), p.Key));
    }

    private static readonly EvaluationOptions Listed = new() { OutputFormat = OutputFormat.List };

    private static readonly Dictionary<string, JsonSchema> Compiled = Schemas.Write().ToDictionary(s => s.Key, s => JsonSchema.FromText(s.Value), StringComparer.Ordinal);

    private static EvaluationResults Evaluate(string yaml, string schema) => Compiled[schema].Evaluate(JsonSerializer.SerializeToElement(Json(yaml)), Listed);

    private static string Text(string file) => System.Text.Encoding.UTF8.GetString(Starter.Files().Read(file));

    private static string Errors(EvaluationResults results) =>
        string.Join('\n', (results.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation} {e.Key}: {e.Value}")).Take(20));

    private static JsonNode? Json(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return Json(stream.Documents[0].RootNode);
    }

    // Plain scalars as the YAML 1.2 core schema types them, which is what editors do.
    private static JsonNode? Json(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(map.Children.Select(c => KeyValuePair.Create(((YamlScalarNode)c.Key).Value!, Json(c.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Json)]),
        YamlScalarNode { Style: not YamlDotNet.Core.ScalarStyle.Plain } quoted => JsonValue.Create(quoted.Value),
        YamlScalarNode { Value: "true" or "false" } word => JsonValue.Create(word.Value == "true"),
        YamlScalarNode { Value: "" or "~" or "null" } => null,
        YamlScalarNode plain when double.TryParse(plain.Value, System.Globalization.CultureInfo.InvariantCulture, out var number) => JsonValue.Create(number),
        YamlScalarNode plain => JsonValue.Create(plain.Value),
        _ => throw new InvalidOperationException(),
    };

    private static IEnumerable<JsonObject> Objects(JsonNode node) => node switch
    {
        JsonObject o => o.Where(p => p.Value is not null).SelectMany(p => Objects(p.Value!)).Prepend(o),
        JsonArray a => a.Where(i => i is not null).SelectMany(i => Objects(i!)),
        _ => [],
    };
}
