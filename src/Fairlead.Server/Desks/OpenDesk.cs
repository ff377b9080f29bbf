using Fairlead.Model;
using Fairlead.Model.Editing;
using Fairlead.Model.Storage;
using Fairlead.Workbench;

namespace Fairlead.Server.Desks;

/// <summary>A job opened by somebody: their edits, not yet kept. One request at a time works on it.</summary>
public sealed class OpenDesk : IDisposable
{
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly long given;
    private Func<OpenedJob>? open;
    private IReadOnlyList<IReadOnlyList<JobEdit>> steps;
    private long held;

    // Held here: it is shared for as long as a desk that began with it is open.
    private OpenedJob? opened;
    private Desk? desk;

    /// <summary>A desk for a job.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="job">The job.</param>
    /// <param name="directory">The folder of the job.</param>
    /// <param name="open">Gives the job as it begins.</param>
    /// <param name="steps">The edits it is opened with, step by step.</param>
    /// <param name="given">How many characters of texts it is opened with that do not stand in the folder.</param>
    public OpenDesk(string id, string job, string directory, Func<OpenedJob> open, IReadOnlyList<IReadOnlyList<JobEdit>> steps, long given = 0)
    {
        (Id, Job, Folder, this.open, this.steps, this.given) = (id, job, directory, open, steps, given);
        held = given + steps.Sum(s => s.Sum(e => (long)e.Path.Length + e.Words.Length));
    }

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

    /// <summary>How many characters it holds that the job's folder does not.</summary>
    public long Held => Interlocked.Read(ref held);

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
                    try
                    {
                        return work(desk);
                    }
                    finally
                    {
                        Interlocked.Exchange(ref held, given + desk.Held);
                    }
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
        opened ??= open!();
        From = opened.Texts.Files;
        var begun = opened.Desk(steps, stop);
        (open, steps) = (null, []);
        return begun;
    }
}

/// <summary>The desks that are open. The one unused for longest makes room, of all desks and of those of one person, who has a share of them by number and by what
/// they hold; what was edited there and not kept stays with the page that edited it.</summary>
/// <param name="clock">The clock.</param>
/// <param name="ids">Makes ids.</param>
public sealed class DeskHall(TimeProvider clock, Func<string> ids)
{
    private const int Most = 64, MostOfOne = 16;

    // Characters: a job as great as is read, edited on every line.
    private const long MostHeld = Limits.TotalBytes;
    private readonly Lock door = new();
    private readonly Dictionary<string, OpenDesk> desks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, WeakReference<OpenedJob>> opened = new(StringComparer.Ordinal);

    /// <summary>Opens a desk.</summary>
    /// <param name="job">The job.</param>
    /// <param name="directory">The folder of the job.</param>
    /// <param name="from">The texts it is opened with, by file; null for those that stand in the folder.</param>
    /// <param name="steps">The edits it is opened with, step by step.</param>
    /// <param name="owner">Who opens it.</param>
    /// <exception cref="FormatException">One of the texts is no text of a job.</exception>
    public OpenDesk Open(string job, string directory, IReadOnlyDictionary<string, string>? from, IReadOnlyList<IReadOnlyList<JobEdit>> steps, string owner)
    {
        var texts = from is null ? null : JobTexts.Of(from);
        var desk = new OpenDesk(ids(), job, directory, () => Opened(directory, texts ?? JobTexts.Of(new FolderFiles(directory))), steps, from?.Values.Sum(t => (long)t.Length) ?? 0)
        {
            Used = clock.GetUtcNow(), Owner = owner,
        };
        lock (door)
        {
            MakeRoom(desk);
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
                MakeRoom(desk);
                return desk;
            }
        }

        return null;
    }

    // Of those of the same person.
    private void MakeRoom(OpenDesk desk)
    {
        var (count, held) = (1, desk.Held);
        foreach (var other in desks.Values.Where(d => d.Owner == desk.Owner && d != desk).OrderByDescending(d => d.Used).ToArray())
        {
            (count, held) = (count + 1, held + other.Held);
            if (count > MostOfOne || held > MostHeld)
            {
                desks.Remove(other.Id);
            }
        }
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
