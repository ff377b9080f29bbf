using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace Fairlead.Model;

/// <summary>An entity that stands in a catalogue under its id.</summary>
public interface IEntity
{
    /// <summary>The id, unique within its catalogue.</summary>
    string Id { get; }
}

/// <summary>An immutable, ordered collection of entities with unique ids. Equal to another when its entities are, in order.</summary>
/// <typeparam name="T">The entity.</typeparam>
public sealed class Catalog<T> : IReadOnlyList<T>, IEquatable<Catalog<T>>
    where T : class, IEntity
{
    private readonly T[] items;
    private readonly Dictionary<string, int> index;

    private Catalog(T[] items, Dictionary<string, int> index)
    {
        this.items = items;
        this.index = index;
    }

    /// <summary>A catalogue of some entities.</summary>
    /// <exception cref="ArgumentException">Two entities have the same id.</exception>
    public Catalog(IEnumerable<T> entities)
    {
        ArgumentNullException.ThrowIfNull(entities);
        items = [.. entities];
        index = new Dictionary<string, int>(items.Length, StringComparer.Ordinal);
        for (var i = 0; i < items.Length; i++)
        {
            if (!index.TryAdd(items[i].Id, i))
            {
                throw new ArgumentException($"The id '{items[i].Id}' stands twice.", nameof(entities));
            }
        }
    }

    /// <summary>The catalogue without entities.</summary>
    public static Catalog<T> Empty { get; } = new([]);

    /// <inheritdoc/>
    public int Count => items.Length;

    /// <inheritdoc/>
    public T this[int index] => items[index];

    /// <summary>The entity of an id.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public T this[string id] => Find(id) ?? throw new KeyNotFoundException($"There is no {typeof(T).Name} '{id}'.");

    /// <summary>The entity of an id, or null.</summary>
    public T? Find(string? id) => id is not null && index.TryGetValue(id, out var i) ? items[i] : null;

    /// <summary>Whether an id is present.</summary>
    public bool Contains([NotNullWhen(true)] string? id) => id is not null && index.ContainsKey(id);

    /// <summary>The catalogue with one entity put in place of that of the same id, or added at the end. The others stay the very same objects.</summary>
    public Catalog<T> With(T entity)
    {
        ArgumentNullException.ThrowIfNull(entity);
        if (!index.TryGetValue(entity.Id, out var at))
        {
            return new Catalog<T>(items.Append(entity));
        }

        var copy = (T[])items.Clone();
        copy[at] = entity;
        return new Catalog<T>(copy, index);
    }

    /// <summary>The catalogue without the entity of an id.</summary>
    public Catalog<T> Without(string id) => new(items.Where(e => e.Id != id));

    /// <inheritdoc/>
    public bool Equals(Catalog<T>? other) => other is not null && (ReferenceEquals(this, other) || items.AsSpan().SequenceEqual(other.items));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Catalog<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();
}
