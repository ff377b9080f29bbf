using System.Security.Cryptography;
using Fairlead.Server.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Fairlead.Server.People;

/// <summary>Somebody who may sign in, as the keeper sees them.</summary>
/// <param name="Name">The name.</param>
/// <param name="Person">The person of the jobs.</param>
/// <param name="Roles">The roles.</param>
/// <param name="Locked">Whether too many wrong passwords shut the name for now.</param>
/// <param name="HasCode">Whether the code handed out was not replaced yet.</param>
public sealed record MemberLine(string Name, string Person, IReadOnlyList<string> Roles, bool Locked, bool HasCode);

/// <summary>What somebody is to be.</summary>
/// <param name="Name">The name.</param>
/// <param name="Person">The person of the jobs; empty for one who makes no entries.</param>
/// <param name="Roles">The roles.</param>
public sealed record MemberAsk(string Name, string Person, IReadOnlyList<string> Roles);

/// <summary>A code to hand out, shown once.</summary>
/// <param name="Name">Whose.</param>
/// <param name="Code">The code.</param>
/// <param name="Until">How long it can be replaced by a password.</param>
public sealed record HandedCode(string Name, string Code, DateTimeOffset Until);

/// <summary>The keeper's part: who may sign in, and as what.</summary>
internal static class PeopleEndpoints
{
    private const int CodeSigns = 16;
    private const int CodeDays = 7;

    public static void MapPeople(this IEndpointRouteBuilder routes)
    {
        var people = routes.MapGroup("/people").WithTags("people").RequireAuthorization(Policies.Keep);
        people.MapGet("", All).WithSummary("Everybody who may sign in.");
        people.MapPost("", Add).WithSummary("Adds somebody; answers with a code to hand out.");
        people.MapPut("/{name}", Change).WithSummary("Changes person and roles, and ends the sessions.");
        people.MapPost("/{name}/code", Code).WithSummary("Hands out a new code in place of the password and all passkeys, opens a shut name, and ends the sessions.");
        people.MapDelete("/{name}", Remove).WithSummary("Removes somebody. What they entered in logs stays.");
        routes.MapGet("/sign-ins", (SignInAudit audit) => audit.Last()).WithTags("people").WithSummary("The last 500 sign-ins that were tried.").RequireAuthorization(Policies.Keep);
    }

    private static async Task<MemberLine[]> All(UserManager<Member> users, TimeProvider clock)
    {
        var now = clock.GetUtcNow();
        return [.. (await users.Users.AsNoTracking().OrderBy(m => m.UserName).ToListAsync()).Select(m => new MemberLine(m.UserName ?? "", m.Person, m.RoleList, m.LockoutEnd > now, m.CodeUntil is not null))];
    }

    private static async Task<IResult> Add(MemberAsk ask, HttpContext context, UserManager<Member> users, SignInAudit audit, TimeProvider clock)
    {
        if (Unknown(ask.Roles) is { } refusal)
        {
            return Answers.Refused(refusal);
        }

        var code = NewCode();
        var member = new Member { UserName = ask.Name, Person = ask.Person.Trim(), Roles = string.Join(' ', ask.Roles), CodeUntil = clock.GetUtcNow().AddDays(CodeDays) };
        var made = await users.CreateAsync(member, code);
        if (!made.Succeeded)
        {
            return Answers.Refused(made);
        }

        await audit.Note(context, member, "added");
        return TypedResults.Ok(new HandedCode(ask.Name, code, member.CodeUntil.Value));
    }

    private static async Task<IResult> Change(string name, MemberAsk ask, HttpContext context, UserManager<Member> users, Sessions sessions, SignInAudit audit)
    {
        if (await users.FindByNameAsync(name) is not { } member)
        {
            return TypedResults.NotFound();
        }

        if ((Unknown(ask.Roles) ?? (ask.Roles.Contains(Policies.Keeper) ? null : await LastKeeper(member, users))) is { } refusal)
        {
            return Answers.Refused(refusal);
        }

        (member.UserName, member.Person, member.Roles) = (ask.Name, ask.Person.Trim(), string.Join(' ', ask.Roles));
        var changed = await users.UpdateAsync(member);
        await sessions.End(member.Id);
        await audit.Note(context, member, changed.Succeeded ? "person or roles changed" : "person or roles not changed");
        return changed.Succeeded ? TypedResults.NoContent() : Answers.Refused(changed);
    }

    private static async Task<IResult> Code(string name, HttpContext context, UserManager<Member> users, Sessions sessions, SignInAudit audit, TimeProvider clock)
    {
        if (await users.FindByNameAsync(name) is not { } member)
        {
            return TypedResults.NotFound();
        }

        var code = NewCode();
        member.PasswordHash = users.PasswordHasher.HashPassword(member, code);
        (member.CodeUntil, member.LockoutEnd, member.AccessFailedCount) = (clock.GetUtcNow().AddDays(CodeDays), null, 0);
        await users.UpdateSecurityStampAsync(member);
        foreach (var passkey in await users.GetPasskeysAsync(member))
        {
            await users.RemovePasskeyAsync(member, passkey.CredentialId);
        }

        await sessions.End(member.Id);
        await audit.Note(context, member, "new code");
        return TypedResults.Ok(new HandedCode(name, code, member.CodeUntil.Value));
    }

    private static async Task<IResult> Remove(string name, HttpContext context, UserManager<Member> users, SignInAudit audit)
    {
        if (await users.FindByNameAsync(name) is not { } member)
        {
            return TypedResults.NotFound();
        }

        if (await LastKeeper(member, users) is { } refusal)
        {
            return Answers.Refused(refusal);
        }

        await users.DeleteAsync(member);
        await audit.Note(context, member, "removed");
        return TypedResults.NoContent();
    }

    private static async Task<string?> LastKeeper(Member member, UserManager<Member> users) =>
        (await users.Users.AsNoTracking().ToListAsync()).Any(m => m.Id != member.Id && m.RoleList.Contains(Policies.Keeper)) || !member.RoleList.Contains(Policies.Keeper)
            ? null : "There is no other keeper: make one first.";

    private static string? Unknown(IReadOnlyList<string> roles) =>
        roles.FirstOrDefault(r => !Policies.Roles.Contains(r)) is { } unknown ? $"'{unknown}' is no role: {string.Join(", ", Policies.Roles)}." : roles.Count == 0 ? "Nobody is without a role." : null;

    private static string NewCode() => RandomNumberGenerator.GetString("abcdefghjkmnpqrstuvwxyz23456789", CodeSigns);
}
