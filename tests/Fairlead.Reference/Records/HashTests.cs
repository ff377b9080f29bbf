using System.Security.Cryptography;
using System.Text;
using Fairlead.Records;
using Konscious.Security.Cryptography;

namespace Fairlead.Tests.Reference.Records;

/// <summary>The hashes everything rests on, against their standards.</summary>
public sealed class HashTests
{
    // FIPS 180-4, example messages (the empty one read in public test suites; that the others are the standard's own is from memory: confirm).
    [Theory]
    [InlineData("", 1, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("abc", 1, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 1, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    [InlineData("abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu", 1, "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1")]
    [InlineData("a", 1_000_000, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0")]
    public void Sha_256_gives_the_digests_of_its_standard(string message, int times, string digest) =>
        Assert.Equal(digest, Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat(message, times))))));

    // RFC 9106 section 5.3, read in public test suites that quote it.
    [Fact]
    public void Argon2id_gives_the_tag_of_rfc_9106()
    {
        using var argon = new Argon2id([.. Enumerable.Repeat((byte)1, 32)])
        {
            Salt = [.. Enumerable.Repeat((byte)2, 16)],
            KnownSecret = [.. Enumerable.Repeat((byte)3, 8)],
            AssociatedData = [.. Enumerable.Repeat((byte)4, 12)],
            Iterations = 3,
            MemorySize = 32,
            DegreeOfParallelism = 4,
        };
        Assert.Equal("0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659", Convert.ToHexStringLower(argon.GetBytes(32)));
    }

    // RFC 9106 section 4, second recommended option: t 3, p 4, m 64 MiB, 128-bit salt, 256-bit tag.
    [Fact]
    public void A_verifier_states_the_second_recommended_option() =>
        Assert.StartsWith("$argon2id$v=19$m=65536,t=3,p=4$", Passwords.Verifier("some password", new byte[16]), StringComparison.Ordinal);
}
