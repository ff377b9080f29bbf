using System.Security.Cryptography;
using System.Text;
using Fairlead.Server.Hosting;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Records;

/// <summary>Opens what was sealed on a tablet. The key is made here, lies in the data folder for the account of the server alone, and never leaves it.</summary>
/// <param name="options">Where the data are.</param>
internal sealed class Seals(ServerOptions options) : IDisposable
{
    private const int Bits = 3072;
    private readonly Lock turn = new();
    private RSA? pair;

    /// <summary>The public half.</summary>
    public SealKey Public
    {
        get
        {
            var spki = Pair().ExportSubjectPublicKeyInfo();
            return new SealKey(Convert.ToHexStringLower(SHA256.HashData(spki)), Convert.ToBase64String(spki));
        }
    }

    /// <summary>The secret that was sealed for an entry, or why it cannot be had.</summary>
    public (string? Secret, string Refusal) Open(TabletNote note, byte[] digest)
    {
        if (note.Key != Public.Id)
        {
            return (null, "The signature was sealed for another server, or before this one's key was made anew. Sign it again.");
        }

        try
        {
            var text = Pair().Decrypt(Convert.FromBase64String(note.Sealed), RSAEncryptionPadding.OaepSHA256);
            return text.Length > SealText.DigestBytes && CryptographicOperations.FixedTimeEquals(text.AsSpan(0, SealText.DigestBytes), digest) ? (Encoding.UTF8.GetString(text, SealText.DigestBytes, text.Length - SealText.DigestBytes), "")
                : (null, "The signature was sealed for another entry. Sign this one.");
        }
        catch (Exception e) when (e is CryptographicException or FormatException)
        {
            return (null, "The seal of the signature cannot be opened: it was altered. Sign it again.");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => pair?.Dispose();

    private RSA Pair()
    {
        lock (turn)
        {
            return pair ??= File.Exists(options.SealKey) ? Read() : Make();
        }
    }

    private RSA Read()
    {
        var read = RSA.Create();
        read.ImportFromPem(File.ReadAllText(options.SealKey));
        return read;
    }

    private RSA Make()
    {
        var made = RSA.Create(Bits);
        // A key that was cut off while it was written would shut out everything sealed with it.
        var beside = options.SealKey + ".new";
        PrivateFiles.Write(beside, Encoding.ASCII.GetBytes(made.ExportPkcs8PrivateKeyPem()));
        File.Move(beside, options.SealKey, overwrite: true);
        return made;
    }
}
