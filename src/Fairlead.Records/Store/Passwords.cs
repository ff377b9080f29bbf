using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Konscious.Security.Cryptography;

namespace Fairlead.Records;

/// <summary>PINs and passwords as Argon2id verifiers (RFC 9106, with the second recommended option of section 4: three passes, four lanes, 64 MiB).</summary>
public static class Passwords
{
    /// <summary>Bytes of salt.</summary>
    public const int SaltBytes = 16;

    private const int Passes = 3;
    private const int Lanes = 4;
    private const int Kibibytes = 65536;
    private const int TagBytes = 32;

    // Each takes 64 MiB: many who come at once wait, or they would take the memory of the whole machine.
    private static readonly SemaphoreSlim Turn = new(Math.Max(2, Environment.ProcessorCount / 2));
    private static readonly string Head = string.Create(CultureInfo.InvariantCulture, $"$argon2id$v=19$m={Kibibytes},t={Passes},p={Lanes}$");

    /// <summary>The verifier of a password.</summary>
    /// <param name="password">The PIN or password.</param>
    /// <param name="salt">Sixteen random bytes, new for each verifier.</param>
    public static string Verifier(string password, ReadOnlySpan<byte> salt)
    {
        ArgumentException.ThrowIfNullOrEmpty(password);
        if (salt.Length != SaltBytes)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The salt has {salt.Length} bytes, expected {SaltBytes}."), nameof(salt));
        }

        return Head + Convert.ToBase64String(salt).TrimEnd('=') + "$" + Convert.ToBase64String(Tag(password, salt.ToArray())).TrimEnd('=');
    }

    /// <summary>Whether a password is the one of a verifier; the time it takes does not tell how nearly.</summary>
    public static bool Matches(string password, string verifier)
    {
        ArgumentNullException.ThrowIfNull(verifier);
        var parts = verifier.Split('$');
        return !string.IsNullOrEmpty(password) && parts.Length == 6 && verifier.StartsWith(Head, StringComparison.Ordinal)
            && CryptographicOperations.FixedTimeEquals(Tag(password, Bytes(parts[4])), Bytes(parts[5]));
    }

    // Unicode has several ways to write a letter; a keyboard decides which.
    private static byte[] Tag(string password, byte[] salt)
    {
        Turn.Wait();
        try
        {
            return Worked(password, salt);
        }
        finally
        {
            Turn.Release();
        }
    }

    private static byte[] Worked(string password, byte[] salt)
    {
        using var argon = new Argon2id(Encoding.UTF8.GetBytes(password.Normalize(NormalizationForm.FormC))) { Salt = salt, Iterations = Passes, DegreeOfParallelism = Lanes, MemorySize = Kibibytes };
        return argon.GetBytes(TagBytes);
    }

    private static byte[] Bytes(string base64) => Convert.FromBase64String(base64.PadRight((base64.Length + 3) / 4 * 4, '='));
}
