using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;

namespace Fairlead.Records;

/// <summary>One entry of the log. Its hash covers everything in it and the hash of the entry before, so that no entry can be altered, taken out
/// or put in without every later hash telling.</summary>
/// <param name="Sequence">1 for the first entry, and one more for each.</param>
/// <param name="At">When, by the clock of the place; UTC, to the millisecond.</param>
/// <param name="Who">Who: the id of a person of the job.</param>
/// <param name="Kind">What happened: a name of <see cref="Kinds"/>.</param>
/// <param name="Subject">To what: a class and an id, <c>panel/FLOOR-1</c>.</param>
/// <param name="Payload">What else there is to tell.</param>
/// <param name="Previous">Hash of the entry before; of the first, <see cref="Origin"/>.</param>
/// <param name="Hash">SHA-256 over the canonical JSON of everything else, in hexadecimal.</param>
public sealed record Entry(long Sequence, DateTimeOffset At, string Who, string Kind, string Subject, Payload Payload, string Previous, string Hash)
{
    /// <summary>What the first entry follows.</summary>
    public const string Origin = "0000000000000000000000000000000000000000000000000000000000000000";

    private static readonly string[] Names = ["at", "hash", "kind", "payload", "previous", "sequence", "subject", "who"];

    /// <summary>The entry that follows another, or the first.</summary>
    public static Entry After(long sequence, string previous, DateTimeOffset at, string who, string kind, string subject, Payload payload)
    {
        ArgumentNullException.ThrowIfNull(payload);
        var entry = new Entry(sequence + 1, Instant.Kept(at), who, kind, subject, payload, previous, "");
        return entry with { Hash = entry.Computed() };
    }

    /// <summary>The hash that belongs to what the entry says.</summary>
    public string Computed() => Convert.ToHexStringLower(SHA256.HashData(CanonicalJson.Bytes(Json(hash: null))));

    /// <summary>The entry as one line of canonical JSON: what is stored and exported, and the leaf of the Merkle tree.</summary>
    public string Line() => Json(Hash);

    /// <summary>Reads a line, which must be exactly what <see cref="Line"/> writes.</summary>
    /// <exception cref="FormatException">It is not.</exception>
    public static Entry Read(string line)
    {
        try
        {
            using var document = JsonDocument.Parse(line, new JsonDocumentOptions { AllowDuplicateProperties = false });
            var json = document.RootElement;
            var entry = new Entry(
                json.GetProperty("sequence").GetInt64(),
                Instant.TryRead(json.GetProperty("at").GetString()!, out var at) ? at : throw new FormatException("The time is not in the form of the log."),
                json.GetProperty("who").GetString()!,
                json.GetProperty("kind").GetString()!,
                json.GetProperty("subject").GetString()!,
                Payload.Read(json.GetProperty("payload")),
                json.GetProperty("previous").GetString()!,
                json.GetProperty("hash").GetString()!);
            return json.EnumerateObject().Count() == Names.Length && entry.Line() == line ? entry : throw new FormatException("The line is not canonical JSON of an entry.");
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or KeyNotFoundException or ArgumentException)
        {
            throw new FormatException($"The line is not an entry, which has {string.Join(", ", Names)}, each in its form.", e);
        }
    }

    private string Json(string? hash) => string.Concat(
        "{\"at\":\"", Instant.Text(At),
        hash is null ? "" : "\",\"hash\":" + CanonicalJson.Text(hash)[..^1],
        "\",\"kind\":" + CanonicalJson.Text(Kind),
        ",\"payload\":" + Payload.Json,
        ",\"previous\":" + CanonicalJson.Text(Previous),
        ",\"sequence\":" + Sequence.ToString(CultureInfo.InvariantCulture),
        ",\"subject\":" + CanonicalJson.Text(Subject),
        ",\"who\":" + CanonicalJson.Text(Who) + "}");
}
