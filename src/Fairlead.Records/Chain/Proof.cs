using System.Globalization;
using System.Text.Json;

namespace Fairlead.Records;

/// <summary>One entry with the hashes that lead from it to the root of the log: it shows that the entry belongs to the log, and nothing else of it.</summary>
/// <param name="Line">The line of the entry.</param>
/// <param name="Log">Number of entries and root of the log.</param>
/// <param name="Path">The hashes, lowest first, in hexadecimal (RFC 6962 section 2.1.1).</param>
public sealed record Proof(string Line, Witness Log, IReadOnlyList<string> Path)
{
    /// <summary>The proof of an entry of a log that was checked.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="sequence">The one to prove, from 1.</param>
    public static Proof Of(IReadOnlyList<Entry> entries, long sequence)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentOutOfRangeException.ThrowIfLessThan(sequence, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(sequence, entries.Count);
        var tree = new MerkleTree();
        foreach (var entry in entries)
        {
            tree.Add(CanonicalJson.Bytes(entry.Line()));
        }

        var index = (int)sequence - 1;
        return new Proof(entries[index].Line(), new Witness(tree.Count, Convert.ToHexStringLower(tree.Root())), [.. tree.Inclusion(index, tree.Count).Select(Convert.ToHexStringLower)]);
    }

    /// <summary>Why it proves nothing, in plain words; null when the entry belongs to the log of the root.</summary>
    public string? Fault()
    {
        try
        {
            var entry = Entry.Read(Line);
            return entry.Computed() != entry.Hash ? "the entry was altered"
                : MerkleTree.Includes(Convert.FromHexString(Log.Root), Log.Entries, entry.Sequence - 1, CanonicalJson.Bytes(Line), [.. Path.Select(Convert.FromHexString)]) ? null
                : "the hashes do not lead from the entry to the root of the log";
        }
        catch (FormatException e)
        {
            return e.Message;
        }
    }

    /// <summary>The proof as canonical JSON.</summary>
    public string Json() => CanonicalJson.Of(string.Create(CultureInfo.InvariantCulture,
        $"{{\"entry\":{Line},\"entries\":{Log.Entries},\"root\":{CanonicalJson.Text(Log.Root)},\"path\":[{string.Join(',', Path.Select(CanonicalJson.Text))}]}}"));

    /// <summary>Reads a proof.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static Proof Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            var proof = document.RootElement;
            return new Proof(
                CanonicalJson.Of(proof.GetProperty("entry")),
                new Witness(proof.GetProperty("entries").TryGetInt64(out var entries) ? entries : throw new JsonException("'entries' is no number of entries."), Hash(proof.GetProperty("root"))),
                [.. proof.GetProperty("path").EnumerateArray().Select(Hash)]);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or KeyNotFoundException)
        {
            throw new FormatException("This is no proof: " + e.Message, e);
        }
    }

    private static string Hash(JsonElement json) =>
        json.GetString() is { Length: 64 } hash && hash.All(char.IsAsciiHexDigit) ? hash : throw new JsonException($"{json.GetRawText()} is no SHA-256.");
}
