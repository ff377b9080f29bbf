using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>A use of an id, to be resolved when all files are read.</summary>
internal sealed record Reference(RefAttribute Ref, string Id, Location At);

/// <summary>Turns nodes into records by the shape of their constructors. It goes on after each problem, so that all are found.</summary>
internal sealed class Binder(ProblemList problems, SourceMap sources)
{
    // By path, so that an id is found to stand twice in several files of one catalogue.
    private readonly Dictionary<string, Location> stands = new(StringComparer.Ordinal);

    private int left;

    /// <summary>Where each entity stands, by record type and id.</summary>
    public Dictionary<(Type Type, string Id), Location> Entities { get; } = [];

    /// <summary>Every use of an id.</summary>
    public List<Reference> References { get; } = [];

    /// <summary>Kinds of entity of which some may have gone unread: that an id of theirs is unknown proves nothing.</summary>
    public HashSet<Type> Unread { get; } = [];

    /// <summary>Entities with a problem of their own: what seems wrong because of them is not reported again.</summary>
    public HashSet<(Type Type, string Id)> Doubtful { get; } = [];

    /// <summary>Says that nothing of a record was read, so that none of its entities is known.</summary>
    public void Skip(RecordShape shape) => shape.Fields.ToList().ForEach(MarkUnread);

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
                MarkUnread(field);
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
            if (node is not UnreadNode)
            {
                problems.Add("wrong-form", node.At, "keys with values are needed here", node.Form, string.Join(", ", shape.Keys));
            }

            Skip(shape);
            return known;
        }

        var misspelt = new List<Entry>();
        foreach (var entry in map.Entries)
        {
            if (!shape.Keys.Contains(entry.Key))
            {
                problems.Add("unknown-key", entry.KeyAt, $"'{entry.Key}' is not a key here", expected: $"one of {string.Join(", ", shape.Keys)}", fix: problems.Near(entry.Key, shape.Keys));
                misspelt.Add(entry);
            }
            else if (!known.TryAdd(entry.Key, entry))
            {
                problems.Add("duplicate-key", entry.KeyAt, $"'{entry.Key}' stands twice; first at {known[entry.Key].KeyAt}");
            }
            else if (entry.Value is not ScalarNode)
            {
                sources.Add($"{path}/{entry.Key}", entry.KeyAt);
            }
        }

        // A key that was meant is not missing as well.
        foreach (var entry in misspelt.Take(Limits.Problems))
        {
            if (Words.Nearest(entry.Key, shape.Keys) is { } meant)
            {
                known.TryAdd(meant, entry with { Value = new UnreadNode(entry.Value.At) });
            }
        }

        return known;
    }

    private void MarkUnread(Field field)
    {
        if (RecordShape.IsCatalog(field.Type))
        {
            Unread.Add(field.Type.GetGenericArguments()[0]);
        }
    }

    private object? Value(Node node, Field field, string path) =>
        node is UnreadNode ? Left(field)
        : RecordShape.IsCatalog(field.Type) ? CatalogOf(node, field, path)
        : RecordShape.IsSequence(field.Type) ? List(node, field, path)
        : RecordShape.IsRecord(field.Type) ? Record(node, field.Type, path)
        : Scalar(node, field, path);

    // What was refused where it stands has had its problem.
    private object? Left(Field field)
    {
        left++;
        MarkUnread(field);
        return null;
    }

    private object? CatalogOf(Node node, Field field, string path)
    {
        var entity = field.Type.GetGenericArguments()[0];
        if (node is not MapNode map)
        {
            problems.Add("wrong-form", node.At, "entries by id are needed here", node.Form, "an id, a colon, and below it the keys of the entry");
            return Left(field);
        }

        var items = new List<object>();
        foreach (var entry in map.Entries)
        {
            var entryPath = $"{path}/{entry.Key}";
            if (!stands.TryAdd(entryPath, entry.KeyAt))
            {
                problems.Add("duplicate-id", entry.KeyAt, $"the id '{entry.Key}' stands twice; first at {stands[entryPath]}");
                continue;
            }

            Entities.TryAdd((entity, entry.Key), entry.KeyAt);
            sources.Add(entryPath, entry.KeyAt);
            items.Add(Entity(entry, entity, entryPath));
        }

        var array = Array.CreateInstance(entity, items.Count);
        for (var i = 0; i < items.Count; i++)
        {
            array.SetValue(items[i], i);
        }

        return Activator.CreateInstance(field.Type, array);
    }

    private object Entity(Entry entry, Type type, string path)
    {
        var before = problems.Count + left;
        if (!Ids.IsValid(entry.Key))
        {
            problems.Add("bad-id", entry.KeyAt, "this cannot be an id", $"'{entry.Key}'", Ids.Expected);
        }

        var record = Record(entry.Value, type, path, entry.Key);
        if (problems.Count + left > before || entry.Value is UnreadNode)
        {
            Doubtful.Add((type, entry.Key));
        }

        return record;
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
        if (ScalarReader.Unprintable(text) is { } why)
        {
            problems.Add("bad-value", node.At, $"'{field.Key}' {why}", scalar.Form);
            return null;
        }

        if (ScalarReader.Read(field.Type, text) is not { } value)
        {
            problems.Add("bad-value", node.At, $"'{field.Key}' cannot be read", scalar.Form, ScalarReader.Expected(field.Type), problems.Full ? "" : ScalarReader.Hint(field.Type, text));
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
}
