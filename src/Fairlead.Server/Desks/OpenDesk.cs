using Fairlead.Model;
using Fairlead.Model.Editing;
using Fairlead.Workbench;

namespace Fairlead.Server.Desks;

/// <summary>A job opened by somebody: their edits, not yet kept. One request at a time works on it.</summary>
public sealed class OpenDesk : IDisposable
{
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly Func<OpenedJob> open;
    private readonly IReadOnlyList<IReadOnlyList<JobEdit>> steps;

    // Held here: it is shared for as long as a desk that began with it is open.
    private OpenedJob? opened;
    private Desk? desk;

    /// <summary>A desk for a job.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="job">The job.</param>
    /// <param name="directory">The folder of the job.</param>
    /// <param name="open">Gives the job as it begins.</param>
    /// <param name="steps">The edits it is opened with, step by step.</param>
    public OpenDesk(string id, string job, string directory, Func<OpenedJob> open, IReadOnlyList<IReadOnlyList<JobEdit>> steps) => (Id, Job, Folder, this.open, this.steps) = (id, job, directory, open, steps);

    /// <summary>Its id.</summary>
    public string Id { get; }

    /// <summary>The job.</summary>
    public string Job { get; }

    /// <summary>The folder of the job.</summary>
    public string Folder { get; }

    /// <summary>Who opened it; nobody else works on it.</summary>
    public string Owner { get; init; } = "";

    /// <summary>When it was used last, by the clock of the hall.</summary>
    public DateTimeOffset Used { get; set; }

    /// <summary>The texts of the job when it was opened or last kept, by file: what an edit was made from.</summary>
    public IReadOnlyDictionary<string, string> From { get; private set; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Works on the desk when its turn comes; the job is read when the first comes.</summary>
    public async Task<T> Use<T>(Func<Desk, T> work, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        try
        {
            return await Task.Run(
                () =>
                {
                    desk ??= Open(stop);
                    return work(desk);
                },
                stop);
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Says that the edits were kept.</summary>
    public void Keep(Desk kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        kept.Keep();
        From = kept.Texts.Files;
    }

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private Desk Open(CancellationToken stop)
    {
        opened = open();
        From = opened.Texts.Files;
        return opened.Desk(steps, stop);
    }
}

/// <summary>The desks that are open. The one unused for longest makes room; what was edited there and not kept stays with the page that edited it.</summary>
/// <param name="clock">The clock.</param>
/// <param name="ids">Makes ids.</param>
public sealed class DeskHall(TimeProvider clock, Func<string> ids)
{
    private const int Most = 64;
    private readonly Lock door = new();
    private readonly Dictionary<string, OpenDesk> desks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, WeakReference<OpenedJob>> opened = new(StringComparer.Ordinal);

    /// <summary>Opens a desk.</summary>
    /// <param name="job">The job.</param>
    /// <param name="directory">The folder of the job.</param>
    /// <param name="from">The files it is opened with.</param>
    /// <param name="steps">The edits it is opened with, step by step.</param>
    /// <param name="owner">Who opens it.</param>
    public OpenDesk Open(string job, string directory, IJobFiles from, IReadOnlyList<IReadOnlyList<JobEdit>> steps, string owner)
    {
        var desk = new OpenDesk(ids(), job, directory, () => Opened(directory, JobTexts.Of(from)), steps) { Used = clock.GetUtcNow(), Owner = owner };
        lock (door)
        {
            if (desks.Count >= Most)
            {
                desks.Remove(desks.Values.MinBy(d => d.Used)!.Id);
            }

            desks.Add(desk.Id, desk);
        }

        return desk;
    }

    /// <summary>The desk of an id, for who opened it; null when it is not open any more.</summary>
    public OpenDesk? Find(string id, string owner)
    {
        lock (door)
        {
            if (desks.GetValueOrDefault(id) is { } desk && desk.Owner == owner)
            {
                desk.Used = clock.GetUtcNow();
                return desk;
            }
        }

        return null;
    }

    // Desks of one text begin with the same reading and assessment, which is kept for as long as one of them is open.
    private OpenedJob Opened(string directory, JobTexts texts)
    {
        lock (door)
        {
            if (opened.GetValueOrDefault(directory)?.TryGetTarget(out var known) != true || !known!.Has(texts))
            {
                opened[directory] = new(known = new OpenedJob(texts));
            }

            return known;
        }
    }
}
