using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Fairlead.Model.Storage;

namespace Fairlead.Model.Reading;

/// <summary>What reading a job gave.</summary>
/// <param name="Job">The job; null when there is any problem.</param>
/// <param name="Sources">Where each part stands.</param>
/// <param name="Problems">What is wrong, in the order of the files.</param>
/// <param name="Hash">SHA-256 over names and contents of the files read, in hexadecimal: it identifies the description.</param>
public sealed record LoadResult(Job? Job, SourceMap Sources, ImmutableArray<Problem> Problems, string Hash);

/// <summary>Reads a whole job and finds all that is wrong with its text in one go.</summary>
public static class JobReader
{
    /// <summary>The file with which a job begins.</summary>
    public const string Root = "job.yaml";

    /// <summary>Reads a job.</summary>
    public static LoadResult Read(IJobFiles files) => Read(files, new ReadMemory(once: true));

    /// <summary>Reads a job that was read before, at the cost of what changed since. It gives what reading it afresh gives; every record whose
    /// text is the same is the same object as before.</summary>
    public static LoadResult Read(IJobFiles files, ReadMemory memory)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(memory);
        var problems = new ProblemList();
        var binder = new Binder(problems);
        var reading = new Session(files, memory, problems, binder);
        var job = reading.Job();
        memory.Keep(files.All);
        return new LoadResult(problems.Any ? null : job, reading.Sources, problems.InOrder(), reading.Hash());
    }

    private sealed class Session(IJobFiles files, ReadMemory memory, ProblemList problems, Binder binder)
    {
        private readonly SortedDictionary<string, byte[]> read = new(StringComparer.Ordinal);
        private long total;

        public SourceMap Sources => field ??= new SourceMap(binder.Facts);

        public Job? Job()
        {
            if (files.All.Count > Limits.Files)
            {
                problems.Add("too-many-files", new Location(Root, 1, 1), "the folder holds more files than a job may", expected: string.Create(CultureInfo.InvariantCulture, $"at most {Limits.Files} files"),
                    fix: "take the files that are not of this job out of the folder");
                return null;
            }

            var order = One<WorkOrder>(Root, "job");
            if (order is null)
            {
                return null;
            }

            var names = order.Files ?? new JobFiles();
            var aircraft = One<Aircraft>(names.Aircraft, "aircraft");
            var change = One<Change>(names.Change, "change");
            var parts = Parts(names.Parts);
            var stock = names.Stock is null ? null : One<Stock>(names.Stock, "stock");
            Resolve();
            if (aircraft is null || change is null || parts is null)
            {
                return null;
            }

            var job = memory.Same(new Job(order, aircraft, parts, change, stock));
            if (!ReferenceEquals(job, memory.Sound))
            {
                JobChecks.Check(job, Sources, problems, binder, memory.Sound);
                memory.Keep(job, isSound: !problems.Any);
            }

            return job;
        }

        public string Hash()
        {
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            foreach (var (name, bytes) in read)
            {
                hash.AppendData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{name}\n{bytes.Length}\n")));
                hash.AppendData(bytes);
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        }

        private T? One<T>(string name, string path)
            where T : class
        {
            if (File(name, path) is { } file)
            {
                return (T)binder.File(file, typeof(T), path);
            }

            binder.Skip(RecordShape.Of(typeof(T)));
            return null;
        }

        private PartsCatalog? Parts(string pattern)
        {
            var names = files.All.Where(f => JobPath.Matches(f, pattern)).ToArray();
            var pieces = names.Select(name => File(name, "parts")).OfType<Piece>().ToArray();
            if (names.Length == 0)
            {
                problems.Add("missing-file", Named("parts"), $"no file of the job is named '{pattern}', so it has no parts catalogue", fix: ProblemList.Hint(pattern, files.All));
            }

            if (names.Length == 0 || pieces.Length < names.Length)
            {
                binder.Skip(RecordShape.Of(typeof(PartsCatalog)));
            }

            return pieces.Length == 0 ? null : memory.Same(PartsCatalog.Join([.. pieces.Select(p => (PartsCatalog)binder.File(p, typeof(PartsCatalog), "parts", shared: pieces.Length > 1))]));
        }

        // Where the job names a file; the file's own beginning when nothing names it.
        private Location Named(string key) => new SourceMap(binder.Facts).Find("job/files/" + key) ?? new Location(Root, 1, 1);

        private Piece? File(string name, string key)
        {
            if (!files.All.Contains(name, StringComparer.Ordinal))
            {
                problems.Add("missing-file", Named(key), name == Root ? $"the job has no file '{Root}'" : $"the job names the file '{name}' and there is none", fix: problems.Near(name, files.All));
                return null;
            }

            var at = new Location(name, 1, 1);
            try
            {
                var size = files.Size(name);
                total += size;
                if (size > Limits.FileBytes || total > Limits.TotalBytes)
                {
                    problems.Add("too-large", at, "the file or the job is larger than Fairlead reads", string.Create(CultureInfo.InvariantCulture, $"{size} bytes"),
                        string.Create(CultureInfo.InvariantCulture, $"at most {Limits.FileBytes} bytes a file and {Limits.TotalBytes} bytes a job"));
                    return null;
                }

                read[name] = files.Read(name);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                problems.Add("unreadable", at, "the file cannot be read", exception.Message);
                return null;
            }

            return memory.Reader(name).Read(read[name], problems);
        }

        private void Resolve()
        {
            var ids = binder.Facts.Ids();
            ILookup<Type, string>? byType = null;
            binder.Facts.Uses((use, down) =>
            {
                foreach (var kind in use.Ref.Kinds)
                {
                    if (ids.Contains((kind, use.Id)) || binder.Unread.Contains(kind))
                    {
                        return;
                    }
                }

                byType ??= ids.ToLookup(k => k.Type, k => k.Id);
                var known = use.Ref.Kinds.SelectMany(k => byType[k]).Concat(use.Ref.Or.Length > 0 ? [use.Ref.Or] : []);
                problems.Add("unknown-id", use.At.Below(down), $"there is no {use.Ref.Names} '{use.Id}'", fix: problems.Near(use.Id, known));
            });
        }
    }
}
