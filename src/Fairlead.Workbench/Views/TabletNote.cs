using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Fairlead.Workbench.Views;

/// <summary>How far somebody knew a log: the number of an entry and its hash.</summary>
/// <param name="Sequence">Number of the entry; 0 for the empty log.</param>
/// <param name="Hash">Its hash.</param>
public sealed record LogMark(long Sequence, string Hash);

/// <summary>The key that secrets are sealed with on a tablet, for the server alone.</summary>
/// <param name="Id">SHA-256 of the key, in hexadecimal.</param>
/// <param name="Spki">The public key, as SubjectPublicKeyInfo in base64.</param>
public sealed record SealKey(string Id, string Spki);

/// <summary>What a tablet tells beside an entry that was made on it.</summary>
/// <param name="Id">A UUID, made on the tablet: the entry is taken once, however often it is sent.</param>
/// <param name="Tablet">The tablet.</param>
/// <param name="At">When the entry was made, by the tablet's clock.</param>
/// <param name="SentAt">When it is sent, by the tablet's clock.</param>
public sealed record TabletNote(string Id, string Tablet, DateTimeOffset At, DateTimeOffset SentAt)
{
    /// <summary>Seconds the server's clock was ahead when both were compared last before the entry; null when they never were.</summary>
    public double? Ahead { get; init; }

    /// <summary>What the tablet saw of the log last; null when it saw nothing.</summary>
    public LogMark? Seen { get; init; }

    /// <summary>The key the secret is sealed with; empty when none is.</summary>
    public string Key { get; init; } = "";

    /// <summary>The secret, sealed with <see cref="SealText"/> in it, in base64; empty when there is none.</summary>
    public string Sealed { get; init; } = "";

    /// <summary>Whether its parts have the form that is taken.</summary>
    public bool IsSound => Guid.TryParseExact(Id, "D", out _) && Tablet is { Length: > 0 and <= MostName } && Ahead is not (< -MostAhead or > MostAhead or double.NaN) && Seen is not { Sequence: < 0 };

    private const int MostName = 40;

    // A century: further off no clock is set.
    private const double MostAhead = 3.2e9;
}

/// <summary>What is sealed on a tablet: the secret behind a digest of the entry it is meant for, so that it can be taken to no other entry, job or time.</summary>
public static class SealText
{
    /// <summary>Bytes of the digest.</summary>
    public const int DigestBytes = SHA256.HashSizeInBytes;

    /// <summary>Most bytes of a secret: what RSA-OAEP with SHA-256 and a key of 3072 bits leaves beside the digest (RFC 8017, 7.1.1).</summary>
    public const int MostSecret = (3072 / 8) - (2 * SHA256.HashSizeInBytes) - 2 - DigestBytes;

    /// <summary>The bytes to be sealed.</summary>
    /// <exception cref="ArgumentException">The secret is too long.</exception>
    public static byte[] Of(byte[] digest, string secret)
    {
        ArgumentNullException.ThrowIfNull(digest);
        var bytes = Encoding.UTF8.GetBytes(secret);
        return bytes.Length <= MostSecret ? [.. digest, .. bytes] : throw new ArgumentException($"The secret has {bytes.Length} bytes, and at most {MostSecret} can be sealed.", nameof(secret));
    }

    /// <summary>The digest of an entry: every part with its length, so that no two entries give the same bytes.</summary>
    public static byte[] Digest(string job, string who, string kind, string subject, IEnumerable<KeyValuePair<string, string>> payload, TabletNote note)
    {
        ArgumentNullException.ThrowIfNull(payload);
        ArgumentNullException.ThrowIfNull(note);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        string[] head = ["fairlead entry 1", job, note.Id, note.Tablet, note.At.ToUnixTimeMilliseconds().ToString(System.Globalization.CultureInfo.InvariantCulture), who, kind, subject];
        foreach (var part in head.Concat(payload.Where(p => p.Value.Length > 0).OrderBy(p => p.Key, StringComparer.Ordinal).SelectMany(p => new[] { p.Key, p.Value })))
        {
            var (length, bytes) = (new byte[4], Encoding.UTF8.GetBytes(part));
            BinaryPrimitives.WriteInt32BigEndian(length, bytes.Length);
            hash.AppendData(length);
            hash.AppendData(bytes);
        }

        return hash.GetHashAndReset();
    }
}

/// <summary>A photograph that the log names.</summary>
/// <param name="Sequence">Number of its entry.</param>
/// <param name="At">When it was entered.</param>
/// <param name="Who">Who entered it.</param>
/// <param name="Subject">What it is attached to.</param>
/// <param name="Hash">SHA-256 of its bytes.</param>
/// <param name="Caption">What it shows.</param>
/// <param name="Kept">Whether the bytes are kept here.</param>
public sealed record PhotographView(long Sequence, DateTimeOffset At, string Who, string Subject, string Hash, string Caption, bool Kept);
