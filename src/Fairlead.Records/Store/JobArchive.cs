using System.Security.Cryptography;
using Fairlead.Model;
using Fairlead.Model.Storage;

namespace Fairlead.Records;

/// <summary>A job with its log in one zip: the folder as it is, the log as a text file, and the texts its entries name. Sign-ins stay behind.</summary>
public static class JobArchive
{
    /// <summary>The file of the log in the zip.</summary>
    public const string LogName = "log.jsonl";

    /// <summary>The folder in the zip of the texts and photographs that entries name, each under its hash.</summary>
    public const string ContentFolder = "log-content/";

    /// <summary>The zip of a job.</summary>
    /// <param name="job">The files of the folder.</param>
    /// <param name="store">Its log; null when there is none.</param>
    /// <exception cref="InvalidDataException">The log was altered: what is altered is not passed on as good.</exception>
    public static byte[] Zip(IJobFiles job, ILogStore? store)
    {
        ArgumentNullException.ThrowIfNull(job);
        var files = job.All.Select(path => KeyValuePair.Create(path, job.Read(path))).ToList();
        if (store is not null)
        {
            if (job.All.FirstOrDefault(IsLog) is { } taken)
            {
                throw new InvalidDataException($"The job has a file '{taken}', a name that is the log's: rename it.");
            }

            var log = LogFile.Write(store.Lines(0));
            Require(LogFile.Read(log));
            files.Add(KeyValuePair.Create(LogName, log));
            files.AddRange(store.Contents().Select(hash => KeyValuePair.Create(ContentFolder + hash, store.Content(hash)!)));
        }

        return JobFolder.Zip(new MemoryFiles(files), archive: true);
    }

    /// <summary>Takes an unpacked zip apart and checks its log.</summary>
    /// <exception cref="InvalidDataException">The log was altered.</exception>
    public static (IReadOnlyList<KeyValuePair<string, byte[]>> Job, ChainReport? Log, IReadOnlyList<byte[]> Contents) Open(MemoryFiles zip)
    {
        ArgumentNullException.ThrowIfNull(zip);
        if (zip.All.FirstOrDefault(f => f.Equals(FolderFiles.Log, StringComparison.OrdinalIgnoreCase) || f.StartsWith(FolderFiles.Log + "-", StringComparison.OrdinalIgnoreCase)) is { } database)
        {
            throw new InvalidDataException($"The zip holds '{database}', a database that nobody can check: the log of a job travels as {LogName}, as 'fairlead export' and 'fairlead backup' write it.");
        }

        var job = zip.All.Where(f => !IsLog(f)).Select(f => KeyValuePair.Create(f, zip.Read(f))).ToArray();
        if (!zip.All.Contains(LogName))
        {
            return (job, null, []);
        }

        var report = LogFile.Read(zip.Read(LogName));
        Require(report);
        var contents = zip.All.Where(f => f.StartsWith(ContentFolder, StringComparison.Ordinal)).Select(f => (Name: f, Bytes: zip.Read(f))).ToArray();
        if (contents.FirstOrDefault(c => c.Name != ContentFolder + Hash(c.Bytes)) is { Name: { } altered })
        {
            throw new InvalidDataException($"'{altered}' was altered: its contents do not have the hash that is its name.");
        }

        var kept = contents.Select(c => c.Name[ContentFolder.Length..]).ToHashSet(StringComparer.Ordinal);
        return report.Entries.FirstOrDefault(e => e.Kind == "revised" && !kept.Contains(e.Payload.Text("sha256"))) is { } missing
            ? throw new InvalidDataException($"The text of {missing.Subject} in entry {missing.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)} is missing.")
            : (job, report, [.. contents.Select(c => c.Bytes)]);
    }

    /// <summary>The bytes of a log's database file.</summary>
    public static byte[] Database(ChainReport log, IEnumerable<byte[]> contents)
    {
        ArgumentNullException.ThrowIfNull(log);
        var folder = Directory.CreateTempSubdirectory("fairlead-log-");
        try
        {
            var file = Path.Combine(folder.FullName, FolderFiles.Log);
            using (var store = SqliteLogStore.Open(file))
            {
                store.Fill(log.Entries, contents);
            }

            return File.ReadAllBytes(file);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The files of the folder that an unpacked zip stands for, the database of its log among them.</summary>
    /// <exception cref="InvalidDataException">The log was altered.</exception>
    public static MemoryFiles Folder(MemoryFiles zip)
    {
        var (job, log, contents) = Open(zip);
        return new MemoryFiles(log is null ? job : [.. job, KeyValuePair.Create(FolderFiles.Log, Database(log, contents))]);
    }

    private static bool IsLog(string path) => path == LogName || path.StartsWith(ContentFolder, StringComparison.Ordinal);

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static void Require(ChainReport report)
    {
        if (report.Fault is { } fault)
        {
            throw new InvalidDataException($"The log was altered: entry {fault.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)}: {fault.What}.");
        }
    }
}
