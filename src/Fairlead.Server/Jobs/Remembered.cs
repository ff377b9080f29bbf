using Fairlead.Model.Reading;

namespace Fairlead.Server.Jobs;

/// <summary>What is kept in memory of each job. It is let go when the job is gone, or when nobody has asked for it for long; asked for again, it is made anew.</summary>
/// <param name="clock">The clock.</param>
/// <param name="end">Ends what is let go; null where nothing has to be ended.</param>
internal sealed class Remembered<T>(TimeProvider clock, Action<T>? end = null)
    where T : class
{
    private static readonly TimeSpan Long = TimeSpan.FromHours(1), Pause = TimeSpan.FromMinutes(1);
    private readonly Lock one = new();
    private readonly Dictionary<string, (T Value, DateTimeOffset Used)> known = new(StringComparer.Ordinal);
    private DateTimeOffset looked = clock.GetUtcNow();

    /// <summary>All that is kept now.</summary>
    public IReadOnlyList<T> All
    {
        get
        {
            lock (one)
            {
                return [.. known.Values.Select(k => k.Value)];
            }
        }
    }

    /// <summary>What is kept of a job; null when nothing is.</summary>
    public T? Find(string folder)
    {
        lock (one)
        {
            return known.GetValueOrDefault(folder).Value;
        }
    }

    /// <summary>What is kept of a job, after what was kept before; that is made while others wait, so it has to be quick.</summary>
    /// <param name="folder">The folder of the job.</param>
    /// <param name="next">Gives what is kept from now on, of what was kept; null where nothing was.</param>
    public T Of(string folder, Func<T?, T> next)
    {
        lock (one)
        {
            var now = clock.GetUtcNow();
            var value = next(known.GetValueOrDefault(folder).Value);
            known[folder] = (value, now);
            LetGo(now);
            return value;
        }
    }

    private void LetGo(DateTimeOffset now)
    {
        if (now - looked < Pause)
        {
            return;
        }

        looked = now;
        foreach (var (folder, (value, used)) in known.ToArray())
        {
            if (now - used >= Long || !File.Exists(Path.Combine(folder, JobReader.Root)))
            {
                known.Remove(folder);
                end?.Invoke(value);
            }
        }
    }
}
