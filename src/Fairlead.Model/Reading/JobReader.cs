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
    public static LoadResult Read(IJobFiles files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var problems = new ProblemList();
        var sources = new SourceMap();
        var reading = new Session(files, sources, problems, new Binder(problems, sources));
        var job = reading.Job();

        return new LoadResult(problems.Any ? null : job, sources, problems.InOrder(), reading.Hash());
    }

    private sealed class Session(IJobFiles files, SourceMap sources, ProblemList problems, Binder binder)
    {
        private readonly SortedDictionary<string, byte[]> read = new(StringComparer.Ordinal);
        private long total;

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

            var job = new Job(order, aircraft, parts, change, stock);
            JobChecks.Check(job, sources, problems, binder);
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
            if (Node(name, path) is { } node)
            {
                return (T)binder.Record(node, typeof(T), path);
            }

            binder.Skip(RecordShape.Of(typeof(T)));
            return null;
        }

        private PartsCatalog? Parts(string pattern)
        {
            var names = files.All.Where(f => JobPath.Matches(f, pattern)).ToArray();
            var nodes = names.Select(name => Node(name, "parts")).OfType<Node>().ToArray();
            if (names.Length == 0)
            {
                problems.Add("missing-file", Named("parts"), $"no file of the job is named '{pattern}', so it has no parts catalogue", fix: ProblemList.Hint(pattern, files.All));
            }

            if (names.Length == 0 || nodes.Length < names.Length)
            {
                binder.Skip(RecordShape.Of(typeof(PartsCatalog)));
            }

            return nodes.Length == 0 ? null : PartsCatalog.Join([.. nodes.Select(n => (PartsCatalog)binder.Record(n, typeof(PartsCatalog), "parts"))]);
        }

        // Where the job names a file; the file's own beginning when nothing names it.
        private Location Named(string key) => sources.Find("job/files/" + key) ?? new Location(Root, 1, 1);

        private Node? Node(string name, string key)
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

            return YamlReader.Read(name, read[name], problems);
        }

        private void Resolve()
        {
            var ids = binder.Entities.Keys.ToLookup(k => k.Type, k => k.Id);
            foreach (var use in binder.References.Where(u => !u.Ref.Kinds.Any(k => binder.Unread.Contains(k) || binder.Entities.ContainsKey((k, u.Id)))))
            {
                var known = use.Ref.Kinds.SelectMany(k => ids[k]).Concat(use.Ref.Or.Length > 0 ? [use.Ref.Or] : []);
                problems.Add("unknown-id", use.At, $"there is no {use.Ref.Names} '{use.Id}'", fix: problems.Near(use.Id, known));
            }
        }
    }
}
