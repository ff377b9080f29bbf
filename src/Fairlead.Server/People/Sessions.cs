using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.EntityFrameworkCore;

namespace Fairlead.Server.People;

/// <summary>Sessions are kept here and not in the cookie, so that signing out, removing a person or changing their roles ends them at once.</summary>
/// <param name="people">People.</param>
/// <param name="clock">The clock.</param>
internal sealed class Sessions(IDbContextFactory<PeopleContext> people, TimeProvider clock) : ITicketStore
{
    private const int KeyBytes = 32;

    public async Task<string> StoreAsync(AuthenticationTicket ticket)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(KeyBytes));
        await using var context = await people.CreateDbContextAsync();
        var now = clock.GetUtcNow().ToUnixTimeSeconds();
        await context.Sessions.Where(s => s.Until < now).ExecuteDeleteAsync();
        context.Sessions.Add(new Session
        {
            Id = Id(key),
            MemberId = ticket.Principal.FindFirstValue(ClaimTypes.NameIdentifier) ?? "",
            Ticket = TicketSerializer.Default.Serialize(ticket),
            Until = ticket.Properties.ExpiresUtc?.ToUnixTimeSeconds() ?? now,
        });
        await context.SaveChangesAsync();
        return key;
    }

    public async Task RenewAsync(string key, AuthenticationTicket ticket)
    {
        await using var context = await people.CreateDbContextAsync();
        var (id, bytes) = (Id(key), TicketSerializer.Default.Serialize(ticket));
        await context.Sessions.Where(s => s.Id == id).ExecuteUpdateAsync(s => s.SetProperty(x => x.Ticket, bytes));
    }

    public async Task<AuthenticationTicket?> RetrieveAsync(string key)
    {
        await using var context = await people.CreateDbContextAsync();
        var id = Id(key);
        var session = await context.Sessions.AsNoTracking().FirstOrDefaultAsync(s => s.Id == id);
        return session is null ? null : TicketSerializer.Default.Deserialize(session.Ticket);
    }

    public async Task RemoveAsync(string key)
    {
        await using var context = await people.CreateDbContextAsync();
        var id = Id(key);
        await context.Sessions.Where(s => s.Id == id).ExecuteDeleteAsync();
    }

    /// <summary>Ends every session of a member.</summary>
    public async Task End(string member)
    {
        await using var context = await people.CreateDbContextAsync();
        await context.Sessions.Where(s => s.MemberId == member).ExecuteDeleteAsync();
    }

    private static string Id(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(key)));
}
