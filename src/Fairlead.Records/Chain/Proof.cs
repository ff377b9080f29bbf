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
            return char.ToLowerInvariant(e.Message[0]) + e.Message[1..].TrimEnd('.');
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
                CanonicalJson.Of(Member(proof, "entry", JsonValueKind.Object)),
                new Witness(Member(proof, "entries", JsonValueKind.Number).TryGetInt64(out var entries) && entries > 0 ? entries : throw None("an 'entries' that is no whole number"), Hash(Member(proof, "root", JsonValueKind.String))),
                [.. Member(proof, "path", JsonValueKind.Array).EnumerateArray().Select(Hash)]);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            throw None("what cannot be read as JSON");
        }
    }

    private static JsonElement Member(JsonElement proof, string name, JsonValueKind kind) =>
        proof.ValueKind != JsonValueKind.Object ? throw None("no object of JSON")
        : !proof.TryGetProperty(name, out var member) ? throw None($"no '{name}'")
        : member.ValueKind == kind ? member : throw None($"another form of '{name}'");

    private static string Hash(JsonElement json) =>
        json.ValueKind == JsonValueKind.String && json.GetString() is { Length: 64 } hash && hash.All(char.IsAsciiHexDigit) ? hash : throw None($"{json.GetRawText()} where a SHA-256 is due");

    private static FormatException None(string found) => new($"This is no proof: found {found}, expected an object with the 'entry', the number of 'entries', their 'root' and the 'path' of hashes to it.");
}
