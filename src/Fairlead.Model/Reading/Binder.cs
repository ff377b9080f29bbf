using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>A use of an id, to be resolved when all files are read.</summary>
internal sealed record Reference(RefAttribute Ref, string Id, Location At);

/// <summary>Turns nodes into records by the shape of their constructors. It goes on after each problem, so that all are found.</summary>
internal sealed class Binder(ProblemList problems)
{
    // By path, so that an id is found to stand twice in several files of one catalogue.
    private readonly Dictionary<string, Location> stands = new(StringComparer.Ordinal);

    private int left;

    // How many lines further down the piece that is bound stands than its places say.
    private int down;

    /// <summary>Where things stand, which ids there are and which are used.</summary>
    public Facts Facts { get; private set; } = new(0);

    /// <summary>Kinds of entity of which some may have gone unread: that an id of theirs is unknown proves nothing.</summary>
    public HashSet<Type> Unread { get; } = [];

    /// <summary>Entities with a problem of their own: what seems wrong because of them is not reported again.</summary>
    public HashSet<(Type Type, string Id)> Doubtful { get; } = [];

    /// <summary>Says that nothing of a record was read, so that none of its entities is known.</summary>
    public void Skip(RecordShape shape) => shape.Fields.ToList().ForEach(MarkUnread);

    /// <summary>The record that a file holds.</summary>
    /// <param name="file">The file.</param>
    /// <param name="type">The record.</param>
    /// <param name="path">Its path.</param>
    /// <param name="shared">Whether several files have that path: what one holds may then clash with another, so only entries are taken over.</param>
    public object File(Piece file, Type type, string path, bool shared = false) => Kept(file.At(file.Line), !shared, () => Record(file.Entry.Value, type, path, shared: shared))!;

    // What is made of an entry; of a piece that was bound before without a problem, what was made of it then.
    private object? Kept(Entry entry, bool known, Func<object?> bind)
    {
        var (outer, faults) = (Facts, problems.Count + left);
        down += entry.Down;
        if (entry.Piece is not { } piece)
        {
            var value = bind();
            down -= entry.Down;
            return value;
        }

        if (!known || piece.Bound is not { Whole: true } bound)
        {
            Facts = new Facts(down);
            var value = bind();
            bound = piece.Keep(value, Facts, whole: problems.Count + left == faults);
        }

        outer.Add(bound.Facts, down);
        (Facts, down) = (outer, down - entry.Down);
        return bound.Value;
    }

    private Location Here(Location at) => at.Below(down);

    private Location KeyOf(Entry entry) => entry.KeyAt.Below(down + entry.Down);

    /// <summary>The record of a node; missing or wrong parts are reported and stand at their defaults.</summary>
    private object Record(Node node, Type type, string path, string? id = null, bool shared = false)
    {
        var shape = RecordShape.Of(type);
        var entries = Entries(node, shape, path);
        var values = new object?[shape.Fields.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var field = shape.Fields[i];
            values[i] = field.IsKey ? id ?? "" : entries.TryGetValue(field.Key, out var entry) ? Kept(entry, !shared, () => Value(entry.Value, field, $"{path}/{field.Key}")) ?? field.Default : field.Default;
            if (field is { IsKey: false, Required: true } && !entries.ContainsKey(field.Key) && node is MapNode)
            {
                problems.Add("missing-key", Here(node.At), $"'{field.Key}' is missing", expected: $"{field.Key}: {field.Meaning}");
                MarkUnread(field);
            }
        }

        return shape.Construct(values);
    }

    private Dictionary<string, Entry> Entries(Node node, RecordShape shape, string path)
    {
        var known = new Dictionary<string, Entry>(StringComparer.Ordinal);
        Facts.Place(path, Here(node.At));
        if (node is not MapNode map)
        {
            if (node is not UnreadNode)
            {
                problems.Add("wrong-form", Here(node.At), "keys with values are needed here", node.Form, string.Join(", ", shape.Keys));
            }

            Skip(shape);
            return known;
        }

        var misspelt = new List<Entry>();
        foreach (var entry in map.Entries)
        {
            if (!shape.Keys.Contains(entry.Key))
            {
                problems.Add("unknown-key", KeyOf(entry), $"'{entry.Key}' is not a key here", expected: $"one of {string.Join(", ", shape.Keys)}", fix: problems.Near(entry.Key, shape.Keys));
                misspelt.Add(entry);
            }
            else if (!known.TryAdd(entry.Key, entry))
            {
                problems.Add("duplicate-key", KeyOf(entry), $"'{entry.Key}' stands twice; first at {KeyOf(known[entry.Key])}");
            }
            else if (entry.Value is not ScalarNode)
            {
                Facts.Place($"{path}/{entry.Key}", KeyOf(entry));
            }
        }

        // A key that was meant is not missing as well.
        foreach (var entry in misspelt.Take(Limits.Problems))
        {
            if (Words.Nearest(entry.Key, shape.Keys) is { } meant)
            {
                known.TryAdd(meant, entry with { Value = new UnreadNode(entry.Value.At), Piece = null });
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
            problems.Add("wrong-form", Here(node.At), "entries by id are needed here", node.Form, "an id, a colon, and below it the keys of the entry");
            return Left(field);
        }

        var items = new List<object>();
        foreach (var entry in map.Entries)
        {
            var entryPath = $"{path}/{entry.Key}";
            if (!stands.TryAdd(entryPath, KeyOf(entry)))
            {
                problems.Add("duplicate-id", KeyOf(entry), $"the id '{entry.Key}' stands twice; first at {stands[entryPath]}");
                continue;
            }

            items.Add(Kept(entry, known: true, () => Entity(entry, entity, entryPath))!);
        }

        return CollectionForm.Of(field.Type).Make(items);
    }

    private object Entity(Entry entry, Type type, string path)
    {
        var before = problems.Count + left;
        var at = Here(entry.KeyAt);
        Facts.Id(type, entry.Key);
        Facts.Place(path, at);
        if (!Ids.IsValid(entry.Key))
        {
            problems.Add("bad-id", at, "this cannot be an id", $"'{entry.Key}'", Ids.Expected);
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
            problems.Add("wrong-form", Here(node.At), $"'{field.Key}' is a list", node.Form, "items in [ ] or each on a line of its own after '- '");
            return null;
        }

        var item = field.Type.GetGenericArguments()[0];
        var itemField = field with { Type = item };
        var values = new object?[list.Items.Length];
        for (var i = 0; i < list.Items.Length; i++)
        {
            var itemPath = string.Create(CultureInfo.InvariantCulture, $"{path}/{i}");
            Facts.Place(itemPath, Here(list.Items[i].At));
            values[i] = Value(list.Items[i], itemField, itemPath) ?? (item.IsValueType ? Activator.CreateInstance(item) : "");
        }

        return CollectionForm.Of(field.Type).Make(values);
    }

    private object? Scalar(Node node, Field field, string path)
    {
        Facts.Place(path, Here(node.At));
        if (node is not ScalarNode scalar)
        {
            problems.Add("wrong-form", Here(node.At), $"'{field.Key}' is a single value", node.Form, ScalarReader.Expected(field.Type));
            return null;
        }

        var text = scalar.Text.Trim();
        if (ScalarReader.Unprintable(text) is { } why)
        {
            problems.Add("bad-value", Here(node.At), $"'{field.Key}' {why}", scalar.Form);
            return null;
        }

        if (ScalarReader.Read(field.Type, text) is not { } value)
        {
            problems.Add("bad-value", Here(node.At), $"'{field.Key}' cannot be read", scalar.Form, ScalarReader.Expected(field.Type), problems.Full ? "" : ScalarReader.Hint(field.Type, text));
            return null;
        }

        if (ScalarReader.OutOfRange(field, value))
        {
            problems.Add("out-of-range", Here(node.At), $"'{field.Key}' ({field.Meaning}) is not a sensible value", scalar.Form, ScalarReader.Range(field));
        }

        if (field.Ref is not null && text != field.Ref.Or)
        {
            Facts.Use(new Reference(field.Ref, text, Here(node.At)));
        }

        return value;
    }
}
