using System.Net;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Model.Editing;
using Fairlead.Workbench;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <summary>The job that is open: every page reads it, every edit goes through it, and all are told when it has changed.</summary>
public sealed class OpenJob(Server server)
{
    private readonly List<JobEdit[]> unkept = [];
    private const string Gone = "none";
    private string desk = "";

    /// <summary>The job's name; empty while none is open.</summary>
    public string Name { get; private set; } = "";

    /// <summary>How it stands; null until it was read.</summary>
    public DeskView? View { get; private set; }

    /// <summary>Whether an answer is awaited.</summary>
    public bool Busy { get; private set; }

    /// <summary>Why the last thing asked could not be done; empty when it could.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>The subject whose working is shown; empty when none is.</summary>
    public string Shown { get; private set; } = "";

    /// <summary>Who works at this page; empty until they said so.</summary>
    public string Who { get; private set; } = "";

    /// <summary>Raised when anything of this has changed.</summary>
    public event Action? Changed;

    /// <summary>Opens a job, unless it is open already.</summary>
    public async Task Open(string name)
    {
        if (name == Name && View is not null)
        {
            return;
        }

        (Name, View, Shown) = (name, null, "");
        unkept.Clear();
        await Try(Reopen);
    }

    /// <summary>Makes some edits as one step.</summary>
    public async Task<bool> Edit(params JobEdit[] edits)
    {
        var done = await Try(async () => View = await Ask<DeskView>("edits", edits));
        if (done)
        {
            unkept.Add(edits);
        }

        return done;
    }

    /// <summary>Takes the last edit back.</summary>
    public Task<bool> Undo() => Try(async () => View = await Ask<DeskView>("undo", Array.Empty<string>()));

    /// <summary>Makes the edit again that was taken back.</summary>
    public Task<bool> Redo() => Try(async () => View = await Ask<DeskView>("redo", Array.Empty<string>()));

    /// <summary>Keeps the edits as a revision; throws when somebody else changed the same files.</summary>
    public async Task Keep(string who, string why, IReadOnlyDictionary<string, string>? over = null)
    {
        View = await Ask<DeskView>("keep", new { who, why, over });
        unkept.Clear();
        Changed?.Invoke();
    }

    /// <summary>Reads the job again as it stands, and makes the edits not yet kept there again.</summary>
    public Task<bool> Reload() => Try(Reopen);

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

    /// <summary>Asks something of the desk. When the server has cleared it away, another is opened and the edits not yet kept are made there again.</summary>
    public async Task<T> Ask<T>(string route, object? body = null)
    {
        try
        {
            return await Send<T>(route, body);
        }
        catch (ServerException e) when (e.Status == HttpStatusCode.Gone)
        {
            await Reopen();
            return await Send<T>(route, body);
        }
    }

    private Task<T> Send<T>(string route, object? body) =>
        body is null ? server.Get<T>($"api/desks/{desk}/{route}", $"api/jobs/{Name}/desk/{route}") : server.Post<T>($"api/desks/{desk}/{route}", body);

    private async Task Reopen()
    {
        try
        {
            desk = (await server.Post<OpenedDesk>($"api/jobs/{Name}/desk")).Desk;
        }
        catch (ServerException e) when (e.Away)
        {
            // The server is asked under a name that it clears away, so that another desk is opened when it is back.
            desk = Gone;
        }

        View = await server.Get<DeskView>($"api/desks/{desk}", $"api/jobs/{Name}/desk/view");
        foreach (var edits in unkept)
        {
            View = await server.Post<DeskView>($"api/desks/{desk}/edits", edits);
        }
    }

    private async Task<bool> Try(Func<Task> work)
    {
        (Busy, Trouble) = (true, "");
        Changed?.Invoke();
        try
        {
            await work();
            return true;
        }
        catch (ServerException e)
        {
            Trouble = e.Message;
            return false;
        }
        finally
        {
            Busy = false;
            Changed?.Invoke();
        }
    }

    private sealed record OpenedDesk(string Desk);
}
