using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary>Brings a job out of a zip into a new folder, and its log to where logs are kept: whole or not at all.</summary>
internal static class Unpacking
{
    /// <returns>The log of the zip, if it has one.</returns>
    public static ChainReport? Run(Terminal terminal, string zipFile, string directory)
    {
        if (!File.Exists(zipFile))
        {
            throw new BadInputException($"There is no file '{zipFile}'.");
        }

        NewFolder.Require(directory);
        var zip = JobFolder.Read(zipFile, archive: true);
        var (job, log, contents) = JobArchive.Open(zip);
        if (log is null || string.IsNullOrEmpty(terminal.LogDatabase))
        {
            SafeWrite.Folder(directory, Pairs(JobArchive.Folder(zip)));
        }
        else
        {
            IntoDatabase(terminal.LogDatabase, new MemoryFiles(job), log, contents, directory);
        }

        terminal.Out.WriteLine($"wrote {directory}");
        _ = terminal.Work("reading it back", () => ReadBack(terminal, directory, job, log));
        return log;
    }

    // A database that has the log already, and perhaps more of it, keeps what it has; another log under that number is never mixed with this one.
    private static void IntoDatabase(string database, MemoryFiles job, ChainReport log, IReadOnlyList<byte[]> contents, string directory)
    {
        var read = JobReader.Read(job);
        var number = read.Job?.Order.Number ?? throw new BadInputException(["The job has problems in its text, so nobody can tell under which number the database keeps its log. Nothing was written.", .. Output.ProblemText.Lines(directory, read.Problems)]);
        using var store = PostgresLogStore.Open(database, number);
        var present = store.Lines(0).Take(log.Entries.Count).ToArray();
        if (present.Length > 0 && !present.SequenceEqual(log.Entries.Select(e => e.Line())))
        {
            throw new BadInputException($"The database has another log of work order {number}, or less of this one. Nothing was written.");
        }

        SafeWrite.Folder(directory, Pairs(job));
        if (present.Length > 0)
        {
            return;
        }

        try
        {
            store.Fill(log.Entries, contents);
        }
        catch
        {
            Directory.Delete(directory, recursive: true);
            throw;
        }
    }

    private static bool ReadBack(Terminal terminal, string directory, IReadOnlyList<KeyValuePair<string, byte[]>> job, ChainReport? log)
    {
        var written = new FolderFiles(directory);
        using var store = log is null ? null : LogPlace.FindIn(terminal, directory);
        var same = job.All(f => written.Read(f.Key).AsSpan().SequenceEqual(f.Value))
            && (log is null || (store?.Lines(0) ?? []).Take(log.Entries.Count).SequenceEqual(log.Entries.Select(e => e.Line())));
        return same ? same : throw new InvalidDataException($"'{directory}' does not read back as the zip says: the medium is bad.");
    }

    private static IEnumerable<KeyValuePair<string, byte[]>> Pairs(MemoryFiles files) => files.All.Select(f => KeyValuePair.Create(f, files.Read(f)));
}
