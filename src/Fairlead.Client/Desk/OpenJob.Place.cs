using System.Net;
using Fairlead.Client.Worker;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <content>Where its desk stands: on the server; when that does not answer, or is not to be asked, in the browser, with the same texts and the same edits.</content>
public sealed partial class OpenJob
{
    // Stamps of a desk stay below this, so that those of the next differ from them.
    private const int StampBits = 20;

    private IDeskPlace? place;
    private Task? moving;
    private long opened;

    /// <summary>Whether the desk stands in the browser.</summary>
    public bool Here => place is BrowserDesk;

    /// <summary>Whether that was chosen; otherwise the server is asked again as soon as it answers.</summary>
    public bool Chosen { get; private set; }

    /// <summary>Asks something of the desk. When the server has cleared it away, another is opened; when it does not answer, one is opened in the browser.</summary>
    /// <exception cref="ServerException">It is refused, or nobody answers.</exception>
    public async Task<T> Ask<T>(string route, object? body = null)
    {
        var at = opened;
        try
        {
            return await Desk.Ask<T>(route, body);
        }
        catch (ServerException e) when (e.Status == HttpStatusCode.Gone || (e.Away && !Here && CanBeHere(route)))
        {
            if (at == opened)
            {
                await (moving ??= Leave(route, looks: body is null, away: e.Away));
            }

            return await Desk.Ask<T>(route, body);
        }
    }

    /// <summary>Works without the server from now on, or with it again.</summary>
    public Task<bool> Choose(bool here) => Try(async () =>
    {
        await (here == Here ? Task.CompletedTask : Move(here));
        Chosen = here;
    });

    /// <summary>Goes back to the server, if it was left because it did not answer and answers now.</summary>
    public async Task Return()
    {
        if (place is ServerDesk or null || Chosen || Busy)
        {
            return;
        }

        await turn.WaitAsync();
        try
        {
            await ToServer();
        }
        catch (ServerException e)
        {
            Trouble = e.Away ? Trouble : $"The server answers again, but the desk stays here. {e.Message}";
        }
        finally
        {
            turn.Release();
        }

        Changed?.Invoke();
    }

    /// <summary>Takes over what others have kept, and makes the edits not yet kept there again. An edit that cannot be made there is named.</summary>
    public Task<bool> Reload() => Try(async () =>
    {
        var desk = await ServerDesk.Open(server, Name, "", []);
        var (from, made, lost) = (await Texts(desk), new List<JobEdit[]>(), new List<JobEdit>());
        foreach (var step in unkept.Steps)
        {
            try
            {
                await desk.Ask<DeskView>("edits", step);
                made.Add(step);
            }
            catch (ServerException e) when (e.Status == HttpStatusCode.BadRequest)
            {
                lost.AddRange(step);
            }
        }

        await Stand(desk);
        await unkept.Replace(made, from);
        if (lost.Count > 0)
        {
            throw new ServerException(HttpStatusCode.Conflict, "These edits cannot be made on what others have kept: " + string.Join("; ", lost.Select(e => $"{e.Path} {e.Words}")));
        }
    });

    private IDeskPlace Desk => place ?? throw new ServerException(HttpStatusCode.ServiceUnavailable, "No job is open.");

    // What others keep, and keeping itself, is known to the server alone.
    private static bool CanBeHere(string route) => route is not ("keep" or "others");

    private async Task Begin()
    {
        try
        {
            var desk = await ServerDesk.Open(server, Name, "", []);
            unkept.Begin(Name, await Texts(desk));
            await Stand(desk);
            Chosen = false;
        }
        catch (ServerException e) when (e.Away && place is null)
        {
            unkept.Begin(Name, await store.Get(TabletStore.Texts, Name) ?? "");
            var shown = new KeptDesk(kept, link, Name);
            await (await shown.Has("") ? Stand(shown) : Move(here: true));
        }
    }

    // Whoever only looked has nothing to take along, and sees the job as it is now.
    private Task ToServer() => place is ServerDesk ? Task.CompletedTask : place is KeptDesk && unkept.Steps.Count == 0 && Left.Length == 0 ? Begin() : Move(here: false);

    // As long as nothing was edited, what the tablet keeps of the server's answers is enough to look at; a desk in the browser takes a while to open.
    private async Task Leave(string route, bool looks, bool away)
    {
        // Those who fail meanwhile wait for the same task, so it has to be known before it ends.
        await Task.Yield();
        try
        {
            var shown = new KeptDesk(kept, link, Name);
            await (away && looks && place is ServerDesk && unkept.Steps.Count == 0 && await shown.Has("") && await shown.Has(route) ? Stand(shown) : Move(here: away || Here));
        }
        finally
        {
            moving = null;
        }
    }

    // The desk is opened with the texts that the edits were made from. So it stands as if it had never moved, and whatever others have kept meanwhile is shown as ever.
    private async Task Move(bool here)
    {
        IDeskPlace to = browser;
        if (here)
        {
            await browser.Open(unkept.From.Length > 0 ? unkept.From : throw new ServerException(HttpStatusCode.ServiceUnavailable, "The server does not answer, and this tablet does not have the job: open it once while the server answers."), unkept.Steps);
        }
        else
        {
            to = await ServerDesk.Open(server, Name, unkept.From, unkept.Steps);
        }

        await Stand(to);
    }

    private async Task Stand(IDeskPlace at)
    {
        var view = await at.Ask<DeskView>("");
        (place, opened) = (at, opened + 1);
        Take(view);
    }

    private void Take(DeskView view)
    {
        View = view with { Stamp = (opened << StampBits) + view.Stamp };
        Changed?.Invoke();
    }

    // The texts as they stand, which the tablet keeps in case the server will not answer.
    private async Task<string> Texts(IDeskPlace at)
    {
        var texts = await at.Ask("GET", "text", "");
        try
        {
            await store.Put(TabletStore.Texts, Name, texts);
        }
        catch (TabletStoreException)
        {
            // A tablet that cannot keep them works with the server alone.
        }

        return texts;
    }
}
