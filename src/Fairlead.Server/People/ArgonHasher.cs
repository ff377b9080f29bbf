using System.Security.Cryptography;
using Fairlead.Records;
using Microsoft.AspNetCore.Identity;

namespace Fairlead.Server.People;

/// <summary>Passwords are kept as the Argon2id verifiers that PINs of the log are kept as.</summary>
internal sealed class ArgonHasher : IPasswordHasher<Member>
{
    private static readonly Lazy<string> Nobody = new(() => Hash("nobody"));

    public string HashPassword(Member user, string password) => Hash(password);

    public PasswordVerificationResult VerifyHashedPassword(Member user, string hashedPassword, string providedPassword) =>
        Passwords.Matches(providedPassword, hashedPassword) ? PasswordVerificationResult.Success : PasswordVerificationResult.Failed;

    /// <summary>Takes as long as verifying does, so that the time does not tell which names exist.</summary>
    public static void TakeTime(string password) => _ = Passwords.Matches(password, Nobody.Value);

    private static string Hash(string password) => Passwords.Verifier(password, RandomNumberGenerator.GetBytes(Passwords.SaltBytes));
}
