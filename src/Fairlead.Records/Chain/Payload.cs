using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Fairlead.Records;

/// <summary>What an entry tells beyond its kind and subject: named texts and numbers.</summary>
public sealed class Payload : IEquatable<Payload>
{
    private readonly ImmutableSortedDictionary<string, object> fields;

    private Payload(ImmutableSortedDictionary<string, object> fields)
    {
        this.fields = fields;
        Json = "{" + string.Join(',', fields.Select(f => CanonicalJson.Text(f.Key) + ":" + (f.Value is double number ? CanonicalJson.Number(number) : CanonicalJson.Text((string)f.Value)))) + "}";
    }

    /// <summary>Nothing told.</summary>
    public static Payload Empty { get; } = new(ImmutableSortedDictionary.Create<string, object>(StringComparer.Ordinal));

    /// <summary>The canonical form.</summary>
    public string Json { get; }

    /// <summary>The names told, in order.</summary>
    public IEnumerable<string> Names => fields.Keys;

    /// <summary>A text; empty where it is not told.</summary>
    public string Text(string name) => fields.GetValueOrDefault(name) switch
    {
        string text => text,
        double number => CanonicalJson.Number(number),
        _ => "",
    };

    /// <summary>A number, or null.</summary>
    public double? Number(string name) => fields.GetValueOrDefault(name) as double?;

    /// <summary>A time, or null.</summary>
    public DateTimeOffset? Time(string name) => Instant.TryRead(Text(name), out var time) ? time : null;

    /// <summary>The payload with one more text; an empty one is not told.</summary>
    public Payload With(string name, string text) => string.IsNullOrEmpty(text) ? this : new(fields.SetItem(name, text));

    /// <summary>The payload with one more number.</summary>
    public Payload With(string name, double number) => new(fields.SetItem(name, number));

    /// <summary>The payload with one more time.</summary>
    public Payload With(string name, DateTimeOffset time) => With(name, Instant.Text(time));

    /// <summary>Reads a payload.</summary>
    /// <exception cref="FormatException">It holds something other than texts and numbers.</exception>
    public static Payload Read(JsonElement json)
    {
        if (json.ValueKind != JsonValueKind.Object)
        {
            throw new FormatException("A payload is an object.");
        }

        var read = Empty.fields.ToBuilder();
        foreach (var field in json.EnumerateObject())
        {
            read.Add(field.Name, field.Value.ValueKind switch
            {
                JsonValueKind.String => field.Value.GetString()!,
                JsonValueKind.Number => field.Value.GetDouble(),
                _ => throw new FormatException($"'{field.Name}' is neither a text nor a number."),
            });
        }

        return read.Count == 0 ? Empty : new Payload(read.ToImmutable());
    }

    /// <inheritdoc/>
    public bool Equals(Payload? other) => other is not null && other.Json == Json;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Payload);

    /// <inheritdoc/>
    public override int GetHashCode() => Json.GetHashCode(StringComparison.Ordinal);

    /// <inheritdoc/>
    public override string ToString() => string.Join(", ", fields.Select(f => $"{f.Key} {Convert.ToString(f.Value, CultureInfo.InvariantCulture)}"));
}
