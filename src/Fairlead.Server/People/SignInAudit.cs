using System.Diagnostics.Metrics;
using Microsoft.EntityFrameworkCore;

namespace Fairlead.Server.People;

/// <summary>Who tried to sign in, when, from where, and how it went.</summary>
internal sealed class SignInAudit
{
    /// <summary>The name of the meter of this server.</summary>
    public const string Meter = "Fairlead.Server";

    private const int Shown = 500;
    private readonly IDbContextFactory<PeopleContext> people;
    private readonly TimeProvider clock;
    private readonly Counter<long> counter;

    public SignInAudit(IDbContextFactory<PeopleContext> people, TimeProvider clock, IMeterFactory meters)
    {
        (this.people, this.clock) = (people, clock);
        counter = meters.Create(Meter).CreateCounter<long>("fairlead.sign_ins", "{sign-in}", "Sign-ins tried, by outcome.");
    }

    public async Task Note(HttpContext context, string name, string outcome)
    {
        counter.Add(1, new KeyValuePair<string, object?>("outcome", outcome));
        await using var db = await people.CreateDbContextAsync();
        db.SignIns.Add(new SignInTry { At = clock.GetUtcNow(), Name = name, From = context.Connection.RemoteIpAddress?.ToString() ?? "", Outcome = outcome });
        await db.SaveChangesAsync();
    }

    /// <summary>Notes what a keeper did to somebody's way in.</summary>
    public Task Note(HttpContext context, Member member, string outcome) => Note(context, $"{member.UserName}, by {context.User.Identity?.Name}", outcome);

    /// <summary>The last ones, newest first.</summary>
    public async Task<SignInLine[]> Last()
    {
        await using var db = await people.CreateDbContextAsync();
        return await db.SignIns.OrderByDescending(s => s.Id).Take(Shown).Select(s => new SignInLine(s.At, s.Name, s.From, s.Outcome)).ToArrayAsync();
    }
}

/// <summary>A sign-in that was tried.</summary>
/// <param name="At">When.</param>
/// <param name="Name">Who; "?" when no member has the name that was given.</param>
/// <param name="From">The address.</param>
/// <param name="Outcome">How it went.</param>
public sealed record SignInLine(DateTimeOffset At, string Name, string From, string Outcome);
