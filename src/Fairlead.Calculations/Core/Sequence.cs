using System.Collections;
using System.Runtime.CompilerServices;

namespace Fairlead.Calculations;

/// <summary>Makes a <see cref="Sequence{T}"/> from a collection expression.</summary>
public static class Sequence
{
    /// <summary>The sequence of some items.</summary>
    public static Sequence<T> Create<T>(ReadOnlySpan<T> items) => new(items.ToArray());

    /// <summary>The sequence of some items.</summary>
    public static Sequence<T> ToSequence<T>(this IEnumerable<T> items) => new([.. items]);
}

/// <summary>An immutable list that is equal to another when its items are: so an input record that holds one can key a cache.
/// The default value is the empty list.</summary>
/// <typeparam name="T">Item type, itself with value equality.</typeparam>
[CollectionBuilder(typeof(Sequence), nameof(Sequence.Create))]
public readonly struct Sequence<T> : IReadOnlyList<T>, IEquatable<Sequence<T>>
{
    private readonly T[]? items;

    internal Sequence(T[] items) => this.items = items;

    /// <summary>How many.</summary>
    public int Count => items?.Length ?? 0;

    /// <summary>The items, without copying.</summary>
    public ReadOnlySpan<T> Span => items;

    /// <inheritdoc/>
    public T this[int index] => Span[index];

    /// <inheritdoc/>
    public bool Equals(Sequence<T> other) => ReferenceEquals(items, other.items) || Span.SequenceEqual(other.Span, EqualityComparer<T>.Default);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Sequence<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in Span)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)(items ?? [])).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Equal items.</summary>
    public static bool operator ==(Sequence<T> left, Sequence<T> right) => left.Equals(right);

    /// <summary>Different items.</summary>
    public static bool operator !=(Sequence<T> left, Sequence<T> right) => !left.Equals(right);

    /// <inheritdoc/>
    public override string ToString() => $"[{Count}]";
}
