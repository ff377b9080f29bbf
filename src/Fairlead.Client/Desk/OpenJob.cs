using System.Net;
using Fairlead.Calculations;
using Fairlead.Client.Worker;
using Fairlead.Drawings;
using Fairlead.Model.Editing;
using Fairlead.Workbench;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <summary>The job that is open: every page reads it, every edit goes through it, and all are told when it has changed.</summary>
public sealed partial class OpenJob(Server server, BrowserDesk browser, Unkept unkept, TabletStore store, KeptAnswers kept, Link link) : IDisposable
{
    private readonly SemaphoreSlim turn = new(1, 1);

    /// <summary>The job's name; empty while none is open.</summary>
    public string Name { get; private set; } = "";

    /// <summary>How it stands; null until it was read.</summary>
    public DeskView? View { get; private set; }

    /// <summary>Whether an answer is awaited.</summary>
    public bool Busy { get; private set; }

    /// <summary>Why the last thing asked could not be done; empty when it could.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>Why the tablet does not write edits down; empty when it does.</summary>
    public string Unwritten => unkept.Trouble;

    /// <summary>Edits that pages which are gone did not keep: to be put back or dropped before others are made.</summary>
    public LeftEdits[] Left { get; private set; } = [];

    /// <summary>The subject whose working is shown; empty when none is.</summary>
    public string Shown { get; private set; } = "";

    /// <summary>Who works at this page; empty until they said so.</summary>
    public string Who { get; private set; } = "";

    /// <summary>Raised when anything of this has changed.</summary>
    public event Action? Changed;

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    /// <summary>Opens a job, unless it is open already.</summary>
    public async Task Open(string name)
    {
        if (name == Name && View is not null)
        {
            return;
        }

        (Name, View, Shown, Left, place) = (name, null, "", [], null);
        unkept.Begin(name, "");
        await Try(async () =>
        {
            await Begin();
            Left = await unkept.Left(name);
        });
    }

    /// <summary>Makes some edits as one step.</summary>
    public Task<bool> Edit(params JobEdit[] edits) => Try(async () =>
    {
        if (Left.Length > 0)
        {
            throw new ServerException(HttpStatusCode.Conflict, "Edits from before were not kept. Say first whether they are put back or dropped.");
        }

        var written = unkept.Announce(edits);
        try
        {
            Take(await Ask<DeskView>("edits", edits));
        }
        catch (ServerException)
        {
            await unkept.Drop();
            throw;
        }

        unkept.Made();
        await written;
    });

    /// <summary>Takes the last edit back.</summary>
    public Task<bool> Undo() => Try(async () =>
    {
        Take(await Ask<DeskView>("undo", Array.Empty<string>()));
        await (await unkept.Undo() ? Task.CompletedTask : Restate());
    });

    /// <summary>Makes the edit again that was taken back.</summary>
    public Task<bool> Redo() => Try(async () =>
    {
        Take(await Ask<DeskView>("redo", Array.Empty<string>()));
        await (await unkept.Redo() ? Task.CompletedTask : Restate());
    });

    /// <summary>Keeps the edits as a revision; throws when somebody else changed the same files, or the server does not answer.</summary>
    public async Task Keep(string who, string why, IReadOnlyDictionary<string, string>? over = null)
    {
        await turn.WaitAsync();
        try
        {
            await ToServer();
            Take(await Ask<DeskView>("keep", new { who, why, over }));
            await unkept.Replace([], await Texts(Desk));
        }
        finally
        {
            turn.Release();
        }

        Changed?.Invoke();
    }

    /// <summary>Puts edits back that a page which is gone did not keep.</summary>
    public Task<bool> PutBack(LeftEdits left) => Try(async () =>
    {
        if (unkept.Steps.Count > 0)
        {
            throw new ServerException(HttpStatusCode.Conflict, "Keep what was put back before, or take it back: the others were made from other texts.");
        }

        await unkept.Take(left);
        Left = [.. Left.Where(l => l != left)];
        await Move(here: place is not ServerDesk);
    });

    /// <summary>Drops edits that a page which is gone did not keep.</summary>
    public Task<bool> DropLeft(LeftEdits left) => Try(async () =>
    {
        await unkept.Forget(left);
        Left = [.. Left.Where(l => l != left)];
    });

    /// <summary>Says who works at this page.</summary>
    public void Is(string who)
    {
        Who = who;
        Changed?.Invoke();
    }

    /// <summary>Shows the working of a subject beside the page; empty for none.</summary>
    public void Show(string subject)
    {
        Shown = subject;
        Changed?.Invoke();
    }

    /// <summary>The fields under a path.</summary>
    public Task<FormField[]> Fields(string path) => Ask<FormField[]>($"form?path={Uri.EscapeDataString(path)}");

    /// <summary>A catalogue; null when none stands under the path.</summary>
    public async Task<FormGrid?> GridOrNone(string path)
    {
        try
        {
            return await Ask<FormGrid>($"grid?path={Uri.EscapeDataString(path)}");
        }
        catch (ServerException e) when (e.Status == HttpStatusCode.NotFound)
        {
            return null;
        }
    }

    /// <summary>The working of a subject.</summary>
    public Task<SheetView> Sheet(string subject) => Ask<SheetView>($"sheet?subject={Uri.EscapeDataString(subject)}");

    /// <summary>A discipline.</summary>
    public Task<DisciplineView> Discipline(Discipline discipline) => Ask<DisciplineView>($"discipline/{discipline}");

    /// <summary>The drawings of a kind.</summary>
    public Task<PictureView[]> Drawings(DrawingKind kind) => Ask<PictureView[]>($"drawings/{kind}");

    /// <summary>The aircraft from one side.</summary>
    public Task<MapView> Map(string aspect, MapLook look)
    {
        ArgumentNullException.ThrowIfNull(look);
        return Ask<MapView>(FormattableString.Invariant($"map/{aspect}?zoom={look.Zoom}&across={look.Across}&down={look.Down}"));
    }

    /// <summary>What is known of something on the map.</summary>
    public Task<MapAbout> About(string path) => Ask<MapAbout>($"about?path={Uri.EscapeDataString(path)}");

    // What was kept can be taken back too. Then the whole files are what differs.
    private async Task Restate()
    {
        var texts = View!.Edited.IsEmpty ? [] : await Ask<Dictionary<string, string>>("text");
        await unkept.Restate([.. View.Edited.Select(f => new JobEdit(EditKind.Replace, f, texts[f]))]);
    }

    // One thing at a time: an edit waits until the desk has moved.
    private async Task<bool> Try(Func<Task> work)
    {
        await turn.WaitAsync();
        (Busy, Trouble) = (true, "");
        Changed?.Invoke();
        try
        {
            await work();
            return true;
        }
        catch (Exception e) when (e is ServerException or TabletStoreException)
        {
            Trouble = e.Message;
            return false;
        }
        finally
        {
            Busy = false;
            turn.Release();
            Changed?.Invoke();
        }
    }
}
