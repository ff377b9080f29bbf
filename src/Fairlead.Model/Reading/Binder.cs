using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>A use of an id, to be resolved when all files are read.</summary>
internal sealed record Reference(RefAttribute Ref, string Id, Location At);

/// <summary>Turns nodes into records by the shape of their constructors. It goes on after each problem, so that all are found.</summary>
internal sealed class Binder(ProblemList problems, SourceMap sources)
{
    /// <summary>Where each entity stands, by record type and id.</summary>
    public Dictionary<(Type Type, string Id), Location> Entities { get; } = [];

    /// <summary>Every use of an id.</summary>
    public List<Reference> References { get; } = [];

    /// <summary>The record of a node; missing or wrong parts are reported and stand at their defaults.</summary>
    public object Record(Node node, Type type, string path, string? id = null)
    {
        var shape = RecordShape.Of(type);
        var entries = Entries(node, shape, path);
        var values = new object?[shape.Fields.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var field = shape.Fields[i];
            values[i] = field.IsKey ? id ?? "" : entries.TryGetValue(field.Key, out var entry) ? Value(entry.Value, field, $"{path}/{field.Key}") ?? field.Default : field.Default;
            if (field is { IsKey: false, Required: true } && !entries.ContainsKey(field.Key) && node is MapNode)
            {
                problems.Add("missing-key", node.At, $"'{field.Key}' is missing", expected: $"{field.Key}: {field.Meaning}");
            }
        }

        return shape.Construct(values);
    }

    private Dictionary<string, Entry> Entries(Node node, RecordShape shape, string path)
    {
        var known = new Dictionary<string, Entry>(StringComparer.Ordinal);
        sources.Add(path, node.At);
        if (node is not MapNode map)
        {
            problems.Add("wrong-form", node.At, "keys with values are needed here", node.Form, string.Join(", ", shape.Fields.Where(f => !f.IsKey).Select(f => f.Key)));
            return known;
        }

        foreach (var entry in map.Entries)
        {
            if (shape.Fields.All(f => f.IsKey || f.Key != entry.Key))
            {
                var keys = shape.Fields.Where(f => !f.IsKey).Select(f => f.Key).ToArray();
                problems.Add("unknown-key", entry.KeyAt, $"'{entry.Key}' is not a key here", expected: $"one of {string.Join(", ", keys)}", fix: Hint(entry.Key, keys));
            }
            else if (!known.TryAdd(entry.Key, entry))
            {
                problems.Add("duplicate-key", entry.KeyAt, $"'{entry.Key}' stands twice; first at {known[entry.Key].KeyAt}");
            }
            else
            {
                sources.Add($"{path}/{entry.Key}", entry.KeyAt);
            }
        }

        return known;
    }

    private object? Value(Node node, Field field, string path) =>
        RecordShape.IsCatalog(field.Type) ? CatalogOf(node, field.Type, path)
        : RecordShape.IsSequence(field.Type) ? List(node, field, path)
        : RecordShape.IsRecord(field.Type) ? Record(node, field.Type, path)
        : Scalar(node, field, path);

    private object? CatalogOf(Node node, Type type, string path)
    {
        var entity = type.GetGenericArguments()[0];
        if (node is not MapNode map)
        {
            problems.Add("wrong-form", node.At, "entries by id are needed here", node.Form, "an id, a colon, and below it the keys of the entry");
            return null;
        }

        var seen = new Dictionary<string, Location>(StringComparer.Ordinal);
        var items = new List<object>();
        foreach (var entry in map.Entries)
        {
            if (!entry.Key.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-'))
            {
                problems.Add("bad-id", entry.KeyAt, "an id has letters, digits, '.', '_' and '-' only", $"'{entry.Key}'");
            }

            if (!seen.TryAdd(entry.Key, entry.KeyAt))
            {
                problems.Add("duplicate-id", entry.KeyAt, $"the id '{entry.Key}' stands twice; first at {seen[entry.Key]}");
                continue;
            }

            Entities.TryAdd((entity, entry.Key), entry.KeyAt);
            sources.Add($"{path}/{entry.Key}", entry.KeyAt);
            items.Add(Record(entry.Value, entity, $"{path}/{entry.Key}", entry.Key));
        }

        var array = Array.CreateInstance(entity, items.Count);
        for (var i = 0; i < items.Count; i++)
        {
            array.SetValue(items[i], i);
        }

        return Activator.CreateInstance(type, array);
    }

    private object? List(Node node, Field field, string path)
    {
        if (node is not ListNode list)
        {
            problems.Add("wrong-form", node.At, $"'{field.Key}' is a list", node.Form, "items in [ ] or each on a line of its own after '- '");
            return null;
        }

        var item = field.Type.GetGenericArguments()[0];
        var itemField = field with { Type = item };
        var array = Array.CreateInstance(item, list.Items.Length);
        for (var i = 0; i < list.Items.Length; i++)
        {
            var itemPath = string.Create(CultureInfo.InvariantCulture, $"{path}/{i}");
            sources.Add(itemPath, list.Items[i].At);
            var value = Value(list.Items[i], itemField, itemPath);
            array.SetValue(value ?? (item.IsValueType ? Activator.CreateInstance(item) : ""), i);
        }

        return typeof(Sequence).GetMethod(nameof(Sequence.ToSequence))!.MakeGenericMethod(item).Invoke(null, [array]);
    }

    private object? Scalar(Node node, Field field, string path)
    {
        sources.Add(path, node.At);
        if (node is not ScalarNode scalar)
        {
            problems.Add("wrong-form", node.At, $"'{field.Key}' is a single value", node.Form, ScalarReader.Expected(field.Type));
            return null;
        }

        var text = scalar.Text.Trim();
        if (ScalarReader.Read(field.Type, text) is not { } value)
        {
            problems.Add("bad-value", node.At, $"'{field.Key}' cannot be read", scalar.Form, ScalarReader.Expected(field.Type), ScalarReader.Hint(field.Type, text));
            return null;
        }

        if (ScalarReader.OutOfRange(field, value))
        {
            problems.Add("out-of-range", node.At, $"'{field.Key}' ({field.Meaning}) is not a sensible value", scalar.Form, ScalarReader.Range(field));
        }

        if (field.Ref is not null && text != field.Ref.Or)
        {
            References.Add(new Reference(field.Ref, text, node.At));
        }

        return value;
    }

    internal static string Hint(string typed, IEnumerable<string> known) => Words.Nearest(typed, known) is { } near ? $"did you mean '{near}'?" : "";
}
