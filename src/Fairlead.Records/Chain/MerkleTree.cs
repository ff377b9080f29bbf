using System.Numerics;
using System.Security.Cryptography;

namespace Fairlead.Records;

/// <summary>The hash tree of RFC 6962 section 2.1 (SHA-256): one root stands for a whole log, and a few hashes show that an entry belongs to it,
/// or that a longer log goes on from a shorter one, without showing the rest.</summary>
/// <remarks>The empty tree's root is SHA-256 of nothing, e3b0c442…; that of one empty leaf is 6e340b9c….</remarks>
public sealed class MerkleTree
{
    private readonly List<byte[]> leaves = [];

    /// <summary>Leaves in the tree.</summary>
    public int Count => leaves.Count;

    /// <summary>Adds a leaf at the end.</summary>
    public void Add(ReadOnlySpan<byte> data) => leaves.Add(Leaf(data));

    /// <summary>The root of the first leaves.</summary>
    /// <param name="count">How many: from 0 to all.</param>
    public byte[] Root(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Count);
        return count == 0 ? SHA256.HashData([]) : Root(0, count);
    }

    /// <summary>The root of all leaves.</summary>
    public byte[] Root() => Root(Count);

    /// <summary>The hashes that lead from a leaf to the root, lowest first (section 2.1.1).</summary>
    /// <param name="index">The leaf, from 0.</param>
    /// <param name="count">Of the tree of the first so many leaves.</param>
    public IReadOnlyList<byte[]> Inclusion(int index, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Count);
        var path = new List<byte[]>();
        Inclusion(path, index, 0, count);
        return path;
    }

    /// <summary>The hashes that lead from the root of a shorter tree to that of a longer one (section 2.1.2).</summary>
    /// <param name="from">Leaves of the shorter, from 1.</param>
    /// <param name="to">Leaves of the longer.</param>
    public IReadOnlyList<byte[]> Consistency(int from, int to)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(from, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(from, to);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(to, Count);
        var path = new List<byte[]>();
        Consistency(path, from, 0, to, whole: true);
        return path;
    }

    /// <summary>Whether a leaf at a place belongs to the tree of a root.</summary>
    public static bool Includes(ReadOnlySpan<byte> root, long count, long index, ReadOnlySpan<byte> data, IReadOnlyList<byte[]> path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (index < 0 || index >= count)
        {
            return false;
        }

        var (hash, at, last) = (Leaf(data), index, count - 1);
        foreach (var sibling in path)
        {
            if (last == 0)
            {
                return false;
            }

            if ((at & 1) == 1 || at == last)
            {
                hash = Node(sibling, hash);
                for (; (at & 1) == 0 && at != 0; at >>= 1, last >>= 1)
                {
                }
            }
            else
            {
                hash = Node(hash, sibling);
            }

            (at, last) = (at >> 1, last >> 1);
        }

        return last == 0 && root.SequenceEqual(hash);
    }

    /// <summary>Whether the tree of one root goes on, unaltered, to that of another.</summary>
    public static bool Continues(ReadOnlySpan<byte> fromRoot, long from, ReadOnlySpan<byte> toRoot, long to, IReadOnlyList<byte[]> path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (from < 1 || from > to || (from == to && path.Count > 0))
        {
            return false;
        }

        if (from == to)
        {
            return fromRoot.SequenceEqual(toRoot);
        }

        // A shorter tree that is a whole subtree of the longer is left out of the path: its root is known.
        IReadOnlyList<byte[]> hashes = BitOperations.IsPow2(from) ? [fromRoot.ToArray(), .. path] : path;
        if (hashes.Count == 0)
        {
            return false;
        }

        var (at, last) = (from - 1, to - 1);
        for (; (at & 1) == 1; at >>= 1, last >>= 1)
        {
        }

        var (shorter, longer) = (hashes[0], hashes[0]);
        foreach (var hash in hashes.Skip(1))
        {
            if (last == 0)
            {
                return false;
            }

            if ((at & 1) == 1 || at == last)
            {
                (shorter, longer) = (Node(hash, shorter), Node(hash, longer));
                for (; (at & 1) == 0 && at != 0; at >>= 1, last >>= 1)
                {
                }
            }
            else
            {
                longer = Node(longer, hash);
            }

            (at, last) = (at >> 1, last >> 1);
        }

        return last == 0 && fromRoot.SequenceEqual(shorter) && toRoot.SequenceEqual(longer);
    }

    private static byte[] Leaf(ReadOnlySpan<byte> data) => SHA256.HashData([0, .. data]);

    private static byte[] Node(ReadOnlySpan<byte> left, ReadOnlySpan<byte> right) => SHA256.HashData([1, .. left, .. right]);

    // The greatest power of two below the count.
    private static int Split(int count) => 1 << (31 - BitOperations.LeadingZeroCount((uint)(count - 1)));

    private byte[] Root(int start, int count)
    {
        if (count == 1)
        {
            return leaves[start];
        }

        var split = Split(count);
        return Node(Root(start, split), Root(start + split, count - split));
    }

    private void Inclusion(List<byte[]> path, int index, int start, int count)
    {
        if (count == 1)
        {
            return;
        }

        var split = Split(count);
        if (index < split)
        {
            Inclusion(path, index, start, split);
            path.Add(Root(start + split, count - split));
        }
        else
        {
            Inclusion(path, index - split, start + split, count - split);
            path.Add(Root(start, split));
        }
    }

    private void Consistency(List<byte[]> path, int from, int start, int count, bool whole)
    {
        if (from == count)
        {
            if (!whole)
            {
                path.Add(Root(start, count));
            }

            return;
        }

        var split = Split(count);
        if (from <= split)
        {
            Consistency(path, from, start, split, whole);
            path.Add(Root(start + split, count - split));
        }
        else
        {
            Consistency(path, from - split, start + split, count - split, whole: false);
            path.Add(Root(start, split));
        }
    }
}
