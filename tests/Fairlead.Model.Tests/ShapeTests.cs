using System.Reflection;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CsCheck;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Tests.Model;

/// <summary>Records, schemas and reader go by one shape; these hold it together.</summary>
public sealed class ShapeTests
{
    public static TheoryData<Type> All => [.. Records.All];

    public static TheoryData<string, Type> Files => new() { { "job", typeof(WorkOrder) }, { "aircraft", typeof(Aircraft) }, { "parts", typeof(PartsCatalog) }, { "change", typeof(Change) } };

    [Theory]
    [MemberData(nameof(All))]
    public void Every_key_is_explained_and_named_after_its_property(Type record)
    {
        foreach (var parameter in record.GetConstructors().OrderByDescending(c => c.GetParameters().Length).First().GetParameters())
        {
            var isKey = parameter.GetCustomAttribute<KeyAttribute>() is not null;
            Assert.True(isKey ^ (parameter.GetCustomAttribute<DocAttribute>()?.Meaning.Length > 0), $"{record.Name}.{parameter.Name} has neither a meaning nor is it the id");
            Assert.NotNull(record.GetProperty(parameter.Name!));
        }

        var shape = RecordShape.Of(record);
        Assert.Equal(record.IsAssignableTo(typeof(IEntity)) ? ["id"] : [], shape.Fields.Where(f => f.IsKey).Select(f => f.Key));
        Assert.Equal(shape.Keys.Length, shape.Keys.Distinct(StringComparer.Ordinal).Count());
        Assert.All(shape.Keys, key => Assert.Matches("^[a-z][a-z0-9]*(-[a-z0-9]+)*$", key));
        Assert.All(shape.Keys, key => Assert.NotNull(record.GetProperty(key.Replace("-", "", StringComparison.Ordinal), BindingFlags.IgnoreCase | BindingFlags.Public | BindingFlags.Instance)));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Every_reference_is_to_a_kind_that_some_file_holds(Type record)
    {
        var held = Records.All.SelectMany(r => RecordShape.Of(r).Fields).Where(f => RecordShape.IsCatalog(f.Type)).Select(f => Records.Item(f.Type)).ToHashSet();
        foreach (var field in RecordShape.Of(record).Fields.Where(f => f.Ref is not null))
        {
            Assert.Equal(typeof(string), Records.Item(field.Type));
            Assert.NotEmpty(field.Ref!.Kinds);
            Assert.All(field.Ref.Kinds, kind => Assert.Contains(kind, held));
        }
    }

    [Fact]
    public void No_two_records_share_a_name_in_the_schemas() => Assert.Equal(Records.All.Count(), Records.All.Select(r => Words.Kebab(r.Name)).Distinct(StringComparer.Ordinal).Count());

    [Theory]
    [MemberData(nameof(Files))]
    public void Schema_and_reader_know_the_same_keys(string name, Type root)
    {
        var schema = JsonNode.Parse(Schemas.Write()[name + ".schema.json"])!.AsObject();
        Same(schema, root);
        var inner = Records.From(root).Skip(1).ToArray();
        Assert.Equal(inner.Select(r => Words.Kebab(r.Name)).Order(StringComparer.Ordinal), schema["$defs"]!.AsObject().Select(d => d.Key));
        Assert.All(inner, r => Same(schema["$defs"]![Words.Kebab(r.Name)]!.AsObject(), r));
    }

    private static void Same(JsonObject schema, Type record)
    {
        var shape = RecordShape.Of(record);
        Assert.Equal(shape.Keys.Order(StringComparer.Ordinal), schema["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));
        Assert.Equal(shape.Fields.Where(f => f is { Required: true, IsKey: false }).Select(f => f.Key), schema["required"]!.AsArray().Select(k => k!.GetValue<string>()));
        Assert.False(schema["additionalProperties"]!.GetValue<bool>());
    }

    public static TheoryData<Dimension> Dimensions => [.. Records.All.SelectMany(r => RecordShape.Of(r).Fields).Select(f => Records.Item(f.Type)).Where(RecordShape.IsQuantity).Select(RecordShape.DimensionOf).Distinct()];

    [Theory]
    [MemberData(nameof(Dimensions))]
    public void The_schema_takes_every_quantity_that_the_reader_takes(Dimension dimension)
    {
        var field = Records.All.SelectMany(r => RecordShape.Of(r).Fields).Select(f => f with { Type = Records.Item(f.Type) }).First(f => RecordShape.IsQuantity(f.Type) && RecordShape.DimensionOf(f.Type) == dimension);
        var pattern = new Regex(SchemaText.Scalar(field)["pattern"]!.GetValue<string>(), RegexOptions.ECMAScript, TimeSpan.FromSeconds(1));
        var piece = Gen.OneOf(
            Pick([.. Units.Spellings(dimension), ""]), Pick("0", "12", "3.25", ".5", "5.", "1e3", "2E-4", "-", "+", "1,5", "e"), Pick(" ", "  ", "", "kg", "ft", "A", "%"));
        var read = 0;
        piece.Array[1, 6].Select(string.Concat).Sample(
            text =>
            {
                text = text.Trim();
                if (QuantityReader.TryRead(dimension, text, out _, out _))
                {
                    Interlocked.Increment(ref read);
                    Assert.Matches(pattern, text);
                }
            },
            iter: 3000, seed: "0N0XIzNsQ0O2");
        Assert.True(read > 20, $"only {read} texts were quantities");
    }

    private static Gen<string> Pick(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);
}
