using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

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
        var reading = new Session(files, problems, new Binder(problems, sources));
        var job = reading.Job();
        if (job is not null)
        {
            JobChecks.Check(job, sources, problems);
        }

        return new LoadResult(problems.Any ? null : job, sources, problems.InOrder(), reading.Hash());
    }

    private sealed class Session(IJobFiles files, ProblemList problems, Binder binder)
    {
        private readonly SortedDictionary<string, byte[]> read = new(StringComparer.Ordinal);
        private long total;
        private bool unread;

        public Job? Job()
        {
            if (Node(Root) is not { } root)
            {
                return null;
            }

            var order = (WorkOrder)binder.Record(root, typeof(WorkOrder), "job");
            var names = order.Files ?? new JobFiles();
            var at = root.At;
            var aircraft = One<Aircraft>(names.Aircraft, "aircraft", at);
            var change = One<Change>(names.Change, "change", at);
            var parts = Parts(names.Parts, at);
            if (!unread)
            {
                Resolve();
            }

            return aircraft is null || change is null || parts is null || problems.Any ? null : new Job(order, aircraft, parts, change);
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

        private T? One<T>(string name, string path, Location at)
            where T : class
        {
            if (!files.All.Contains(name, StringComparer.Ordinal))
            {
                unread = true;
                problems.Add("missing-file", at, $"the job names the file '{name}' and there is none", fix: Binder.Hint(name, files.All));
                return null;
            }

            return Node(name) is { } node ? (T)binder.Record(node, typeof(T), path) : null;
        }

        private PartsCatalog? Parts(string pattern, Location at)
        {
            var glob = new Regex("^" + Regex.Escape(pattern).Replace("\\*", "[^/]*", StringComparison.Ordinal) + "$", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking);
            var names = files.All.Where(f => glob.IsMatch(f)).ToArray();
            if (names.Length == 0)
            {
                unread = true;
                problems.Add("missing-file", at, $"no file of the job is named '{pattern}', so it has no parts catalogue");
                return null;
            }

            var nodes = names.Select(Node).OfType<Node>().ToArray();
            return nodes.Length == 0 ? null : (PartsCatalog)binder.Record(Merged(nodes), typeof(PartsCatalog), "parts");
        }

        // Several parts files read as one: sections of the same name are joined, so that a duplicate id is found across files.
        private static Node Merged(Node[] nodes)
        {
            var sections = nodes.OfType<MapNode>().SelectMany(m => m.Entries).GroupBy(e => e.Key, StringComparer.Ordinal);
            var joined = sections.Select(g => g.All(e => e.Value is MapNode)
                ? new Entry(g.Key, g.First().KeyAt, new MapNode(g.First().Value.At, [.. g.SelectMany(e => ((MapNode)e.Value).Entries)]))
                : g.First(e => e.Value is not MapNode));
            return nodes.FirstOrDefault(n => n is not MapNode) ?? new MapNode(nodes[0].At, [.. joined]);
        }

        private Node? Node(string name)
        {
            var at = new Location(name, 1, 1);
            if (!files.All.Contains(name, StringComparer.Ordinal))
            {
                unread = true;
                problems.Add("missing-file", at, $"the file '{name}' is missing");
                return null;
            }

            var size = files.Size(name);
            total += size;
            if (size > Limits.FileBytes || total > Limits.TotalBytes || read.Count >= Limits.Files)
            {
                unread = true;
                problems.Add("too-large", at, "the file or the job is larger than Fairlead reads", string.Create(CultureInfo.InvariantCulture, $"{size} bytes"),
                    string.Create(CultureInfo.InvariantCulture, $"at most {Limits.FileBytes} bytes a file, {Limits.TotalBytes} bytes and {Limits.Files} files a job"));
                return null;
            }

            read[name] = files.Read(name);
            var node = YamlReader.Read(name, read[name], problems);
            unread |= node is null;
            return node;
        }

        private void Resolve()
        {
            var ids = binder.Entities.Keys.ToLookup(k => k.Type, k => k.Id);
            foreach (var use in binder.References.Where(u => !u.Ref.Kinds.Any(k => binder.Entities.ContainsKey((k, u.Id)))))
            {
                var known = use.Ref.Kinds.SelectMany(k => ids[k]).Concat(use.Ref.Or.Length > 0 ? [use.Ref.Or] : []);
                problems.Add("unknown-id", use.At, $"there is no {use.Ref.Names} '{use.Id}'", fix: Binder.Hint(use.Id, known));
            }
        }
    }
}
