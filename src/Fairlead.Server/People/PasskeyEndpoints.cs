using System.Buffers.Text;
using Fairlead.Server.Hosting;
using Microsoft.AspNetCore.Identity;

namespace Fairlead.Server.People;

/// <summary>A passkey of one's own.</summary>
/// <param name="Id">Its id, base64url.</param>
/// <param name="Name">What its owner calls it.</param>
/// <param name="Made">When it was added.</param>
public sealed record PasskeyLine(string Id, string Name, DateTimeOffset Made);

/// <summary>Asks for a passkey to be offered; the password is asked again, so that a tablet left open gives nobody a way in of their own.</summary>
public sealed record PasskeyOfferAsk(string Password)
{
    /// <summary>Nothing of it.</summary>
    public override string ToString() => "";
}

/// <summary>A passkey that an authenticator made or showed.</summary>
/// <param name="Credential">The public key credential as JSON (W3C Web Authentication Level 3, 5.1 toJSON).</param>
/// <param name="Name">What to call it; empty when one is shown.</param>
public sealed record PasskeyAsk(string Credential, string Name = "");

/// <summary>Passkeys: one's own, and signing in by one (W3C Web Authentication Level 3). The authenticator is asked to verify its user each time.</summary>
internal static class PasskeyEndpoints
{
    private const int Most = 10;
    private const int LongestName = 60;
    private const string Unknown = "This passkey opens nothing here. Sign in with your password, or ask a keeper for a code.";

    public static void MapPasskeys(this IEndpointRouteBuilder routes)
    {
        var own = routes.MapGroup("/passkeys").WithTags("sign-in").RequireAuthorization(Policies.View);
        own.MapGet("", All).WithSummary("One's own passkeys.");
        own.MapPost("/offer", Offer).WithSummary("What an authenticator needs to make a passkey.").RequireRateLimiting(Limits.SignIn);
        own.MapPost("", Add).WithSummary("Adds the passkey that was made.").RequireRateLimiting(Limits.SignIn);
        own.MapDelete("/{id}", Remove).WithSummary("Removes a passkey of one's own.");
        var shown = routes.MapGroup("/sign-in/passkey").WithTags("sign-in").AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        shown.MapPost("/offer", Ask).WithSummary("What an authenticator needs to show a passkey.");
        shown.MapPost("", SignIn).WithSummary("Signs in by the passkey that was shown.");
    }

    private static async Task<IResult> All(HttpContext context, UserManager<Member> users) =>
        await users.GetUserAsync(context.User) is { } member ? TypedResults.Ok((await users.GetPasskeysAsync(member)).Select(p => new PasskeyLine(Base64Url.EncodeToString(p.CredentialId), p.Name ?? "", p.CreatedAt)).ToArray()) : TypedResults.NotFound();

    private static Task<IResult> Offer(PasskeyOfferAsk ask, HttpContext context, SignInManager<Member> signIns, SignInAudit audit, SignInTurns turns) =>
        turns.Take(signIns.UserManager.NormalizeName(context.User.Identity?.Name ?? ""), () => Offered(ask, context, signIns, audit), context.RequestAborted);

    private static async Task<IResult> Offered(PasskeyOfferAsk ask, HttpContext context, SignInManager<Member> signIns, SignInAudit audit)
    {
        if (await signIns.UserManager.GetUserAsync(context.User) is not { } member)
        {
            return TypedResults.NotFound();
        }

        if (ask.Password.Length > PasswordRules.Most || !(await signIns.CheckPasswordSignInAsync(member, ask.Password, lockoutOnFailure: true)).Succeeded)
        {
            await audit.Note(context, member.UserName!, "passkey not offered");
            return TypedResults.Problem(SignInEndpoints.Refusal, statusCode: StatusCodes.Status403Forbidden);
        }

        var options = await signIns.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity { Id = member.Id, Name = member.UserName!, DisplayName = member.UserName! });
        return TypedResults.Text(options, "application/json");
    }

    private static async Task<IResult> Add(PasskeyAsk ask, HttpContext context, SignInManager<Member> signIns, SignInAudit audit)
    {
        var users = signIns.UserManager;
        if (await users.GetUserAsync(context.User) is not { } member)
        {
            return TypedResults.NotFound();
        }

        if ((await users.GetPasskeysAsync(member)).Count >= Most)
        {
            return Answers.Refused($"There are {Most} passkeys already. Remove one first.");
        }

        var made = await Read(() => signIns.PerformPasskeyAttestationAsync(ask.Credential));
        if (made is not { Succeeded: true } || made.UserEntity.Id != member.Id)
        {
            return Answers.Refused("The passkey was not made for this offer. Begin again.");
        }

        made.Passkey.Name = ask.Name.Trim() is { Length: > 0 } name ? name[..Math.Min(name.Length, LongestName)] : "passkey";
        var added = await users.AddOrUpdatePasskeyAsync(member, made.Passkey);
        await audit.Note(context, member.UserName!, added.Succeeded ? "passkey added" : "passkey not added");
        return added.Succeeded ? TypedResults.NoContent() : Answers.Refused(added);
    }

    private static async Task<IResult> Remove(string id, HttpContext context, UserManager<Member> users, SignInAudit audit)
    {
        var bytes = Base64Url.IsValid(id) ? Base64Url.DecodeFromChars(id) : [];
        if (await users.GetUserAsync(context.User) is not { } member || await users.GetPasskeyAsync(member, bytes) is null)
        {
            return TypedResults.NotFound();
        }

        await users.RemovePasskeyAsync(member, bytes);
        await audit.Note(context, member.UserName!, "passkey removed");
        return TypedResults.NoContent();
    }

    private static async Task<IResult> Ask(SignInManager<Member> signIns, ServerOptions options) =>
        options.Lan ? TypedResults.Text(await signIns.MakePasskeyRequestOptionsAsync(null), "application/json") : TypedResults.NotFound();

    private static async Task<IResult> SignIn(PasskeyAsk ask, HttpContext context, SignInManager<Member> signIns, SignInAudit audit, ServerOptions options)
    {
        if (!options.Lan)
        {
            return TypedResults.NotFound();
        }

        var shown = await Read(() => signIns.PerformPasskeyAssertionAsync(ask.Credential));
        if (shown is not { Succeeded: true })
        {
            return await SignInEndpoints.Refuse(context, audit, "?", "unknown passkey", Unknown);
        }

        // A code in place of the password takes every other way in with it.
        var name = shown.User.UserName!;
        if (shown.User.CodeUntil is not null || await signIns.UserManager.IsLockedOutAsync(shown.User))
        {
            return await SignInEndpoints.Refuse(context, audit, name, shown.User.CodeUntil is null ? "locked" : "code not replaced", Unknown);
        }

        await signIns.UserManager.AddOrUpdatePasskeyAsync(shown.User, shown.Passkey);
        await signIns.SignInAsync(shown.User, isPersistent: false);
        await audit.Note(context, name, "signed in by passkey");
        return TypedResults.NoContent();
    }

    // Without an offer that stands open the framework throws; to the asker that is the same as a passkey made for another offer.
    private static async Task<T?> Read<T>(Func<Task<T>> read)
        where T : class
    {
        try
        {
            return await read();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
