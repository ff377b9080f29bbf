using System.Net;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <content>How entries are sent.</content>
public sealed partial class Outbox
{
    private const int HashLength = 64;

    // In order; what comes after a refused entry about the same subject waits until the person has decided on that one.
    private async Task Send(string job, IReadOnlyList<PendingEntry> entries)
    {
        halted.Remove(job);
        var held = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            if (entry.Refused.Count > 0 || held.Contains(entry.Subject))
            {
                held.Add(entry.Subject);
                continue;
            }

            try
            {
                // It leaves the tablet for an entry of the log and nothing less.
                if (await server.Post<LogMark>($"api/jobs/{Uri.EscapeDataString(job)}/log", await Body(entry)) is not { Sequence: > 0, Hash.Length: HashLength } mark)
                {
                    Trouble = "What answered is not the log: everything stays on this tablet.";
                    return;
                }

                await Drop(entry);
                Taken++;
                await facts.Saw(job, mark);
            }
            catch (ServerException e) when (e.Status is HttpStatusCode.Conflict or HttpStatusCode.NotFound)
            {
                halted[job] = e.Status == HttpStatusCode.NotFound ? "This server has no job of that name." : e.Message;
                return;
            }
            catch (ServerException e) when (e.Status is HttpStatusCode.UnprocessableEntity or HttpStatusCode.BadRequest or HttpStatusCode.RequestEntityTooLarge)
            {
                await tablet.Change(new TabletChange(TabletStore.Outbox, entry.Key, Text(entry with { Refused = [e.Message] })));
                held.Add(entry.Subject);
            }
            catch (ServerException e) when (e.Status == HttpStatusCode.Forbidden)
            {
                // Another person's, who has to sign in, or a role that may be given.
                Trouble = $"{entry.Words}: {e.Message}";
                held.Add(entry.Subject);
            }
            catch (ServerException e)
            {
                Trouble = e.Away ? "" : e.Message;
                return;
            }
        }
    }

    private async Task<object> Body(PendingEntry entry) => new
    {
        entry.Who,
        entry.Kind,
        entry.Subject,
        entry.Payload,
        Tablet = entry.Note with { SentAt = clock.GetUtcNow(), Seen = await facts.Mark(entry.Job) },
        Photograph = entry.HasPhotograph ? await tablet.Get(TabletStore.Photographs, entry.Key) : null,
    };
}
