using System.Text.RegularExpressions;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Server.Jobs;

/// <summary>A job as it stands in the list.</summary>
/// <param name="Name">Its name: that of its folder.</param>
/// <param name="Number">Number of the work order; empty while it cannot be read.</param>
/// <param name="Title">What changes, in one line.</param>
/// <param name="Aircraft">Registration.</param>
/// <param name="Problems">How many problems its text has.</param>
public sealed record JobLine(string Name, string Number, string Title, string Aircraft, int Problems);

/// <summary>The jobs of the server, each in a folder of its own that is the same as one of the command line.</summary>
/// <param name="options">Where they are.</param>
/// <param name="clock">The clock.</param>
public sealed partial class JobStore(ServerOptions options, TimeProvider clock)
{
    private readonly Remembered<Reading> readings = new(clock);

    /// <summary>All jobs, by name.</summary>
    public IReadOnlyList<JobLine> All() => Directory.Exists(options.Jobs)
        ? [.. Directory.EnumerateDirectories(options.Jobs).Where(d => File.Exists(Path.Combine(d, JobReader.Root))).Order(StringComparer.Ordinal).Select(Line)] : [];

    /// <summary>The folder of a job; null when there is none of that name.</summary>
    public string? Find(string name) =>
        Name().IsMatch(name) && Path.Combine(options.Jobs, name) is var directory && File.Exists(Path.Combine(directory, JobReader.Root)) ? directory : null;

    /// <summary>Why a job cannot have a name; null when it can.</summary>
    public string? Refusal(string name) =>
        !Name().IsMatch(name) ? "A job's name has up to 60 small letters, digits and hyphens, begins with a letter or digit, and is not the name of a device (con, nul, com1)."
        : Directory.Exists(Path.Combine(options.Jobs, name)) ? $"There is a job '{name}' already." : null;

    /// <summary>Adds a job.</summary>
    /// <exception cref="ArgumentException">It cannot have that name.</exception>
    public void Add(string name, IJobFiles files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (Refusal(name) is { } refusal)
        {
            throw new ArgumentException(refusal, nameof(name));
        }

        Directory.CreateDirectory(options.Jobs);
        SafeWrite.Folder(Path.Combine(options.Jobs, name), files.All.Select(f => KeyValuePair.Create(f, files.Read(f))));
    }

    /// <summary>A job with its log as one zip.</summary>
    /// <exception cref="InvalidDataException">The log was altered.</exception>
    public static byte[] Archive(string directory)
    {
        using var log = File.Exists(Path.Combine(directory, FolderFiles.Log)) ? OpenLog(directory) : null;
        return JobArchive.Zip(new FolderFiles(directory), log);
    }

    /// <summary>The log of a job.</summary>
    public static ILogStore OpenLog(string directory) => SqliteLogStore.Open(Path.Combine(directory, FolderFiles.Log));

    /// <summary>Reads the job of a folder. Read again, it costs what changed since.</summary>
    public LoadResult Read(string directory)
    {
        var reading = readings.Of(directory, known => known ?? new Reading());
        lock (reading.One)
        {
            return JobReader.Read(new FolderFiles(directory), reading.Memory);
        }
    }

    /// <summary>How many jobs are kept in memory.</summary>
    internal int Held => readings.All.Count;

    private JobLine Line(string directory)
    {
        var read = Read(directory);
        return new JobLine(Path.GetFileName(directory), read.Job?.Order.Number ?? "", read.Job?.Change.Title ?? "", read.Job?.Aircraft.Registration ?? "", read.Problems.Length);
    }

    // One reads a job at a time; the next costs what changed since.
    private sealed class Reading
    {
        public Lock One { get; } = new();

        public ReadMemory Memory { get; } = new();
    }

    // Some systems take these words for devices, also as the name of a folder.
    [GeneratedRegex(@"^(?!(?:con|prn|aux|nul|com[0-9]|lpt[0-9])\z)[a-z0-9][a-z0-9-]{0,59}\z", RegexOptions.CultureInvariant, 200)]
    private static partial Regex Name();
}
