using System.Text.Json;

namespace Fairlead.Client.Desk;

/// <content>What a person decides on entries that wait.</content>
public sealed partial class Outbox
{
    /// <summary>Sends an entry again that was refused; a signature is signed anew.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="secret">PIN or password of a signature; empty for none.</param>
    /// <param name="me">Who decides; null when that is not known.</param>
    public async Task<Fate> Again(PendingEntry entry, string secret, Me? me)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(secret);
        try
        {
            Require(me?.Is(entry.Who), entry, $"only {entry.Who} sends it again");
            var made = entry.Kind == "signed" ? await Made(entry, secret) with { Key = entry.Key } : entry;
            await Alter(entry, _ => made with { Refused = [] });
            await Look();
            return All.FirstOrDefault(e => e.Key == made.Key) is not { } left ? new Fate(FateKind.Taken) : left.Refused.Count > 0 ? new Fate(FateKind.Refused, string.Join(" ", left.Refused)) : new Fate(FateKind.Waits);
        }
        catch (Exception e) when (e is TabletStoreException or SealException)
        {
            return new Fate(FateKind.Refused, e.Message);
        }
    }

    /// <summary>Withdraws an entry. It stays here, without its seal, until it is deleted.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="why">Why.</param>
    /// <param name="me">Who decides; null when that is not known.</param>
    /// <exception cref="TabletStoreException">It is not theirs to withdraw, or the storage fails; nothing was changed.</exception>
    public async Task Withdraw(PendingEntry entry, string why, Me? me)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Require(me?.Withdraws(entry.Who), entry, $"only {entry.Who} or a keeper withdraws it");
        await Alter(entry, now => now with { Withdrawn = why, Note = now.Note with { Sealed = "" } });
        await Look();
    }

    /// <summary>Deletes what was withdrawn.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="me">Who decides; null when that is not known.</param>
    /// <exception cref="TabletStoreException">It is not theirs to withdraw, or the storage fails; nothing was deleted.</exception>
    public async Task Delete(PendingEntry entry, Me? me)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Require(me?.Withdraws(entry.Who), entry, $"only {entry.Who} or a keeper withdraws it");
        await Drop(entry);
        await Look();
    }

    /// <summary>Sends the entries of a job to the log the server has now, though it is another than the tablet knew.</summary>
    /// <exception cref="TabletStoreException">The storage fails.</exception>
    public async Task Accept(string job)
    {
        await facts.Forget(job);
        await Look();
    }

    // A tablet goes from hand to hand: what one person entered the next does not undo.
    private static void Require(bool? may, PendingEntry entry, string who)
    {
        if (may != true)
        {
            throw new TabletStoreException($"{entry.Who} made this entry, and {who}: sign in as one who may.", full: false);
        }
    }

    // Never while it is on its way, and only what is still here: what was withdrawn is not sent, and what the log has is not withdrawn.
    private async Task Alter(PendingEntry entry, Func<PendingEntry, PendingEntry> change)
    {
        await turn.WaitAsync();
        try
        {
            await using var mine = await tablet.Turn(Name, wait: true);
            var now = await tablet.Get(TabletStore.Outbox, entry.Key) is { } kept ? JsonSerializer.Deserialize<PendingEntry>(kept, Server.Json)! : null;
            if (now is not { Waits: true })
            {
                throw new TabletStoreException(now is null ? "It is not here any more: the log has taken it, or another page of this tablet has deleted it. Look at what the log says." : "It was withdrawn in another page of this tablet.", full: false);
            }

            await tablet.Change(new TabletChange(TabletStore.Outbox, entry.Key, Text(change(now))));
        }
        finally
        {
            turn.Release();
        }
    }
}
