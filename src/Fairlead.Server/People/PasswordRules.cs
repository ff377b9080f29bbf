using Microsoft.AspNetCore.Identity;

namespace Fairlead.Server.People;

/// <summary>Long passwords without rules of composition (OWASP ASVS 4.0.3, 2.1.1, 2.1.2, 2.1.9). There is no list of leaked passwords here; what is guessed first is refused.</summary>
internal sealed class PasswordRules : IPasswordValidator<Member>
{
    public const int Least = 12;
    public const int Most = 128;
    private const int LeastDifferent = 6;

    public Task<IdentityResult> ValidateAsync(UserManager<Member> manager, Member user, string? password)
    {
        var reasons = Reasons(user.UserName ?? "", password ?? "").Select(r => new IdentityError { Code = "password", Description = r }).ToArray();
        return Task.FromResult(reasons.Length == 0 ? IdentityResult.Success : IdentityResult.Failed(reasons));
    }

    private static IEnumerable<string> Reasons(string name, string password)
    {
        if (password.Length is < Least or > Most)
        {
            yield return "A password has 12 to 128 characters. Some words in a row are easy to keep in mind.";
        }

        if (password.ToUpperInvariant().Distinct().Count() < LeastDifferent)
        {
            yield return "A password has at least six different characters.";
        }

        if ((name.Length > 2 && password.Contains(name, StringComparison.OrdinalIgnoreCase)) || password.Contains("fairlead", StringComparison.OrdinalIgnoreCase) || password.Contains("password", StringComparison.OrdinalIgnoreCase))
        {
            yield return "A password does not hold your name, the name of this program or the word itself.";
        }
    }
}
