using System.Buffers.Binary;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Fairlead.Tests.Server;

/// <summary>An authenticator of its own making: one ES256 key, no attestation (W3C Web Authentication Level 3, 6.1 authenticator data, 6.5.4 attestation object; RFC 8949 for the bytes).</summary>
internal sealed class SoftAuthenticator(string origin) : IDisposable
{
    private const byte Present = 1, Verified = 4, HasKey = 64;
    private readonly ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly byte[] id = RandomNumberGenerator.GetBytes(16);
    private string handle = "";
    private uint count;

    /// <summary>Whether it verifies who holds it.</summary>
    public bool Verifies { get; set; } = true;

    public string Make(JsonElement offer)
    {
        handle = offer.GetProperty("user").GetProperty("id").GetString()!;
        var client = Client("webauthn.create", offer);
        var point = key.ExportParameters(includePrivateParameters: false).Q;
        // COSE key (RFC 9053, 7.1.1): kty EC2, alg ES256, crv P-256, x, y.
        byte[] cose = [0xA5, 0x01, 0x02, 0x03, 0x26, 0x20, 0x01, 0x21, 0x58, 32, .. point.X!, 0x22, 0x58, 32, .. point.Y!];
        byte[] data = [.. Data(offer.GetProperty("rp").GetProperty("id").GetString()!, HasKey), .. new byte[16], 0, (byte)id.Length, .. id, .. cose];
        byte[] attestation = [0xA3, .. Text("fmt"), .. Text("none"), .. Text("attStmt"), 0xA0, .. Text("authData"), 0x58, (byte)data.Length, .. data];
        return Credential(new { clientDataJSON = Base64(client), attestationObject = Base64(attestation), transports = Array.Empty<string>() });
    }

    public string Show(JsonElement offer)
    {
        count++;
        var client = Client("webauthn.get", offer);
        var data = Data(offer.GetProperty("rpId").GetString()!, 0);
        var signature = key.SignData([.. data, .. SHA256.HashData(client)], HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        return Credential(new { clientDataJSON = Base64(client), authenticatorData = Base64(data), signature = Base64(signature), userHandle = handle });
    }

    public void Dispose() => key.Dispose();

    private byte[] Data(string party, byte more)
    {
        var counter = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(counter, count);
        return [.. SHA256.HashData(Encoding.UTF8.GetBytes(party)), (byte)(Present | (Verifies ? Verified : 0) | more), .. counter];
    }

    private byte[] Client(string type, JsonElement offer) =>
        JsonSerializer.SerializeToUtf8Bytes(new { type, challenge = offer.GetProperty("challenge").GetString(), origin, crossOrigin = false });

    private string Credential(object response) =>
        JsonSerializer.Serialize(new { id = Base64(id), rawId = Base64(id), type = "public-key", response, clientExtensionResults = new { } });

    private static byte[] Text(string text) => [(byte)(0x60 + text.Length), .. Encoding.ASCII.GetBytes(text)];

    private static string Base64(byte[] bytes) => Base64Url.EncodeToString(bytes);
}
