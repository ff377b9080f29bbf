using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Records;

/// <summary>The photographs of a log: what they are called, and their bytes.</summary>
public static class Pictures
{
    /// <summary>Most bytes of a photograph that is taken: some four times what the pages of the work make of one.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>The hash of the photograph that an entry names; empty when it names none.</summary>
    public static string Hash(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Payload.Text(entry.Kind == "photographed" ? "sha256" : "photo");
    }

    /// <summary>What a photograph is called, on paper and as a file: by the entry that names it.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="bytes">The photograph; empty when it is not at hand.</param>
    public static string Name(Entry entry, ReadOnlySpan<byte> bytes)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return string.Create(CultureInfo.InvariantCulture, $"photograph-{entry.Sequence}{(bytes.IsEmpty ? "" : bytes[0] == 0xFF ? ".jpeg" : ".png")}");
    }

    /// <summary>The photographs of which the store has the bytes, by hash.</summary>
    public static ImmutableDictionary<string, ImmutableArray<byte>> Of(HangarState state, ILogStore store)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(store);
        return state.Counted.Select(Hash).Where(h => h.Length > 0).Distinct(StringComparer.Ordinal).Select(h => (Hash: h, Bytes: store.Content(h))).Where(p => p.Bytes is { Length: > 0 })
            .ToImmutableDictionary(p => p.Hash, p => ImmutableArray.Create(p.Bytes!), StringComparer.Ordinal);
    }
}
