using System.Security.Claims;
using Fairlead.Server.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace Fairlead.Server.People;

/// <summary>Who asks.</summary>
/// <param name="SignsIn">Whether people sign in here; not when only this machine is served.</param>
/// <param name="Name">The member's name; empty when nobody is signed in.</param>
/// <param name="Person">The person of the jobs in whose name entries are made.</param>
/// <param name="Roles">The roles.</param>
/// <param name="NeedsFirst">Whether the first keeper is still to be made.</param>
public sealed record WhoAmI(bool SignsIn, string Name, string Person, IReadOnlyList<string> Roles, bool NeedsFirst);

/// <summary>Asks to be signed in.</summary>
/// <param name="Name">The name.</param>
/// <param name="Password">The password, or the code the keeper handed out.</param>
/// <param name="Next">The password that replaces the code.</param>
public sealed record SignInAsk(string Name, string Password, string Next = "")
{
    /// <summary>The name alone.</summary>
    public override string ToString() => Name;
}

/// <summary>Asks to be the first keeper.</summary>
public sealed record FirstAsk(string Key, string Name, string Person, string Password)
{
    /// <summary>The name alone.</summary>
    public override string ToString() => Name;
}

/// <summary>Asks for one's password to be changed.</summary>
public sealed record PasswordAsk(string Present, string Next)
{
    /// <summary>Nothing of it.</summary>
    public override string ToString() => "";
}

/// <summary>Signing in and out.</summary>
internal static class SignInEndpoints
{
    internal const string Refusal = "Name and password do not belong together, or there were too many tries. After five wrong ones a name is shut for 15 minutes.";

    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        var api = routes.MapGroup("").WithTags("sign-in");
        api.MapGet("/me", Me).WithSummary("Who is signed in.").AllowAnonymous();
        api.MapPost("/sign-in", SignIn).WithSummary("Signs in.").AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        api.MapPost("/first-keeper", First).WithSummary("Makes the first keeper, with the key from the console.").AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        api.MapPost("/sign-out", SignOut).WithSummary("Signs out.").RequireAuthorization(Policies.View);
        api.MapPost("/password", ChangePassword).WithSummary("Changes one's password.").RequireAuthorization(Policies.View).RequireRateLimiting(Limits.SignIn);
    }

    private static WhoAmI Me(ClaimsPrincipal user, ServerOptions options, FirstKey first) => new(
        options.Lan, user.Identity is { IsAuthenticated: true, Name: { } name } ? name : "", user.FindFirstValue(Policies.Person) ?? "", [.. user.FindAll(ClaimTypes.Role).Select(c => c.Value)], options.Lan && first.Needed);

    private static async Task<IResult> SignIn(SignInAsk ask, HttpContext context, SignInManager<Member> signIns, SignInAudit audit, SignInTurns turns, TimeProvider clock) =>
        context.User.Identity?.IsAuthenticated == true ? TypedResults.Problem("Somebody is signed in here. Sign out first.", statusCode: StatusCodes.Status409Conflict)
        : await turns.Take(signIns.UserManager.NormalizeName(ask.Name), () => Try(ask, context, signIns, audit, clock), context.RequestAborted);

    private static async Task<IResult> Try(SignInAsk ask, HttpContext context, SignInManager<Member> signIns, SignInAudit audit, TimeProvider clock)
    {
        if (ask.Password.Length > PasswordRules.Most || await signIns.UserManager.FindByNameAsync(ask.Name) is not { } member)
        {
            ArgonHasher.TakeTime("nobody");
            return await Refuse(context, audit, "?", "unknown name");
        }

        var check = await signIns.CheckPasswordSignInAsync(member, ask.Password, lockoutOnFailure: true);
        if (!check.Succeeded)
        {
            return await Refuse(context, audit, member.UserName!, check.IsLockedOut ? "locked" : "wrong password");
        }

        if (member.CodeUntil is { } until && await Replace(member, ask, until < clock.GetUtcNow(), signIns.UserManager) is { } problem)
        {
            await audit.Note(context, member.UserName!, "code not replaced");
            return problem;
        }

        await signIns.SignInAsync(member, isPersistent: false);
        await audit.Note(context, member.UserName!, "signed in");
        return TypedResults.NoContent();
    }

    /// <summary>Notes that somebody was not signed in, and says as little about it as there is to say.</summary>
    internal static async Task<ProblemHttpResult> Refuse(HttpContext context, SignInAudit audit, string name, string outcome, string said = Refusal)
    {
        await audit.Note(context, name, outcome);
        return TypedResults.Problem(said, statusCode: StatusCodes.Status401Unauthorized);
    }

    // A code opens nothing by itself: it is replaced by a password in the same request.
    private static async Task<IResult?> Replace(Member member, SignInAsk ask, bool ended, UserManager<Member> users)
    {
        if (ended)
        {
            return TypedResults.Problem("The code has ended. Ask a keeper for a new one.", statusCode: StatusCodes.Status403Forbidden);
        }

        if (ask.Next.Length == 0)
        {
            return TypedResults.Problem("Choose a password in place of the code.", statusCode: StatusCodes.Status403Forbidden, title: "choose-password");
        }

        if (ask.Next == ask.Password)
        {
            return Answers.Refused("The code was another person's to give: choose a password of your own in its place.");
        }

        var changed = await users.ChangePasswordAsync(member, ask.Password, ask.Next);
        if (!changed.Succeeded)
        {
            return Answers.Refused(changed);
        }

        member.CodeUntil = null;
        await users.UpdateAsync(member);
        return null;
    }

    private static async Task<IResult> First(FirstAsk ask, HttpContext context, FirstKey first, UserManager<Member> users, SignInAudit audit)
    {
        if (!first.Matches(ask.Key))
        {
            await audit.Note(context, "?", "wrong first key");
            return TypedResults.Problem("That is not the key the console shows, or there is a keeper already.", statusCode: StatusCodes.Status403Forbidden);
        }

        var member = new Member { UserName = ask.Name, Person = ask.Person, Roles = Policies.Keeper };
        // The key works once: what would not be taken is told before it is used.
        foreach (var check in users.UserValidators.Select(rule => rule.ValidateAsync(users, member)).Concat(users.PasswordValidators.Select(rule => rule.ValidateAsync(users, member, ask.Password))))
        {
            if (await check is { Succeeded: false } wrong)
            {
                return Answers.Refused(wrong);
            }
        }

        if (!first.Use(ask.Key))
        {
            return TypedResults.Problem("There is a keeper already.", statusCode: StatusCodes.Status403Forbidden);
        }

        var made = await users.CreateAsync(member, ask.Password);
        if (!made.Succeeded)
        {
            return Answers.Refused(made);
        }

        await audit.Note(context, member.UserName!, "made first keeper");
        return TypedResults.NoContent();
    }

    private static async Task<NoContent> SignOut(HttpContext context, SignInManager<Member> signIns, SignInAudit audit, ServerOptions options)
    {
        if (options.Lan)
        {
            await audit.Note(context, context.User.Identity?.Name ?? "?", "signed out");
            await context.SignOutAsync(IdentityConstants.ApplicationScheme);
        }

        return TypedResults.NoContent();
    }

    private static Task<IResult> ChangePassword(PasswordAsk ask, HttpContext context, SignInManager<Member> signIns, Sessions sessions, SignInAudit audit, SignInTurns turns) =>
        turns.Take(signIns.UserManager.NormalizeName(context.User.Identity?.Name ?? ""), () => Change(ask, context, signIns, sessions, audit), context.RequestAborted);

    private static async Task<IResult> Change(PasswordAsk ask, HttpContext context, SignInManager<Member> signIns, Sessions sessions, SignInAudit audit)
    {
        if (await signIns.UserManager.GetUserAsync(context.User) is not { } member)
        {
            return TypedResults.NotFound();
        }

        var check = await signIns.CheckPasswordSignInAsync(member, ask.Present, lockoutOnFailure: true);
        var changed = check.Succeeded ? await signIns.UserManager.ChangePasswordAsync(member, ask.Present, ask.Next) : null;
        await audit.Note(context, member.UserName!, changed?.Succeeded == true ? "password changed" : "password not changed");
        if (changed?.Succeeded == true)
        {
            await sessions.End(member.Id);
        }

        return changed is null ? TypedResults.Problem(Refusal, statusCode: StatusCodes.Status403Forbidden) : changed.Succeeded ? TypedResults.NoContent() : Answers.Refused(changed);
    }
}
