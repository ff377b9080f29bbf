using System.Globalization;
using System.Text.Json;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <summary>The entries of this tablet on their way to the log. Each is on the tablet's storage before it is acknowledged, and leaves it only when the
/// server has answered that the log has it, or when the person takes it back.</summary>
public sealed partial class Outbox(TabletStore tablet, TabletFacts facts, Server server, Link link, Sealer sealer, TimeProvider clock) : IDisposable
{
    private const int KeyDigits = 12;
    private const string Name = "outbox";
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly Dictionary<string, string> halted = new(StringComparer.Ordinal);

    /// <summary>What is on its way, and what was withdrawn, in the order it was entered.</summary>
    public IReadOnlyList<PendingEntry> All { get; private set; } = [];

    /// <summary>Entries that the log has taken since the page was opened.</summary>
    public long Taken { get; private set; }

    /// <summary>Why nothing is sent now; empty when something is, or nothing waits.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>Raised when anything of this has changed.</summary>
    public event Action? Changed;

    /// <summary>What waits of a job about a subject.</summary>
    public IEnumerable<PendingEntry> Of(string job, string subject) => All.Where(e => e.Waits && e.Job == job && e.Subject == subject);

    /// <summary>Why nothing of a job is sent; empty when it is.</summary>
    public string Halted(string job) => halted.GetValueOrDefault(job, "");

    /// <summary>Enters something: it is kept here first and then sent, when the server answers.</summary>
    /// <param name="entry">The entry, still without key and note.</param>
    /// <param name="secret">PIN or password of a signature; empty for none.</param>
    /// <param name="photograph">Bytes of a photograph, in base64; empty for none.</param>
    public async Task<Fate> Enter(PendingEntry entry, string secret = "", string photograph = "")
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(secret);
        ArgumentNullException.ThrowIfNull(photograph);
        PendingEntry made;
        try
        {
            made = await Made(entry, secret) with { HasPhotograph = photograph.Length > 0 };
            await tablet.Change([new(TabletStore.Outbox, made.Key, Text(made)), .. photograph.Length > 0 ? new[] { new TabletChange(TabletStore.Photographs, made.Key, photograph) } : []]);
        }
        catch (TabletStoreException e)
        {
            return new Fate(FateKind.Refused, e.Message + " The entry was not taken, and nothing of it is kept.");
        }
        catch (SealException e)
        {
            return new Fate(FateKind.Refused, e.Message);
        }

        try
        {
            return await Follow(made);
        }
        catch (TabletStoreException e)
        {
            return new Fate(FateKind.Waits, e.Message + " The entry is kept on this tablet all the same: do not enter it again, and look under Waiting.");
        }
    }

    /// <summary>Looks at what is kept, and sends what can be sent.</summary>
    public async Task Look()
    {
        await turn.WaitAsync();
        var before = Sight;
        try
        {
            // What another page of this tablet is sending this one does not send too.
            await using var mine = await tablet.Turn(Name, wait: false);
            await Load();
            await facts.KeepClock();
            Trouble = "";
            foreach (var job in All.Where(e => e.Waits && mine is not null).GroupBy(e => e.Job).ToArray())
            {
                await Send(job.Key, [.. job]);
            }

            await Load();
        }
        catch (TabletStoreException e)
        {
            Trouble = e.Message;
        }
        catch (JsonException e)
        {
            Trouble = "What is kept on this tablet cannot be read: perhaps these pages are of an earlier version. Load them again. " + e.Message;
        }
        finally
        {
            turn.Release();
            if (Sight != before)
            {
                Changed?.Invoke();
            }
        }
    }

    /// <summary>Everything of a job that is kept here, with photographs, as a file to save.</summary>
    /// <exception cref="TabletStoreException">The storage fails.</exception>
    public async Task<string> File(string job)
    {
        var lines = new List<object>();
        foreach (var entry in All.Where(e => e.Job == job))
        {
            lines.Add(new { entry, photograph = entry.HasPhotograph ? await tablet.Get(TabletStore.Photographs, entry.Key) : null });
        }

        return JsonSerializer.Serialize(new { job, tablet = await facts.Name(), saved = clock.GetUtcNow(), seen = await facts.Mark(job), entries = lines }, Server.Json);
    }

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    // All that can be seen of this, to tell whether it has changed: it is looked at every few seconds.
    private string Sight => string.Join('|', [Trouble, Taken.ToString(CultureInfo.InvariantCulture), .. halted.Select(h => h.Key + h.Value), .. All.Select(Text)]);

    private async Task<PendingEntry> Made(PendingEntry entry, string secret)
    {
        // To the millisecond, as it is written and read again.
        var now = DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());
        var note = new TabletNote(await tablet.NewId(), await facts.Name(), now, now) { Ahead = await facts.Ahead() };
        note = secret.Length > 0 ? await sealer.Seal(entry.Job, entry.Who, entry.Kind, entry.Subject, entry.Payload, note, secret) : note;
        var number = (await tablet.Keys(TabletStore.Outbox)).Select(k => long.Parse(k.AsSpan(0, KeyDigits), NumberStyles.None, CultureInfo.InvariantCulture)).DefaultIfEmpty(0).Max() + 1;
        return entry with { Key = $"{number.ToString("D" + KeyDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)}-{note.Id}", Note = note, Refused = [] };
    }

    // What is refused while the person stands before it is theirs to mend at once; only what was acknowledged stays here.
    private async Task<Fate> Follow(PendingEntry made)
    {
        if (link.Away)
        {
            await Load();
            Changed?.Invoke();
            return new Fate(FateKind.Waits);
        }

        await Look();
        var left = All.FirstOrDefault(e => e.Key == made.Key);
        if (left is { Refused.Count: > 0 })
        {
            await Drop(left);
            await Load();
            Changed?.Invoke();
            return new Fate(FateKind.Refused, string.Join(" ", left.Refused));
        }

        return new Fate(left is null ? FateKind.Taken : FateKind.Waits);
    }

    private async Task Load() => All = [.. (await tablet.All(TabletStore.Outbox)).Select(t => JsonSerializer.Deserialize<PendingEntry>(t, Server.Json)!)];

    private Task Drop(PendingEntry entry) => tablet.Change(new TabletChange(TabletStore.Outbox, entry.Key, null), new TabletChange(TabletStore.Photographs, entry.Key, null));

    private static string Text(PendingEntry entry) => JsonSerializer.Serialize(entry, Server.Json);
}
