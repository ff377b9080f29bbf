namespace Fairlead.Model.Storage;

/// <summary>The files of a job held in memory: a job without a disk, and one that stands in a zip file.</summary>
public sealed class MemoryFiles : IJobFiles
{
    private readonly SortedDictionary<string, byte[]> files = new(StringComparer.Ordinal);

    /// <summary>Some files by path.</summary>
    /// <exception cref="ArgumentException">A path stands twice or leaves the folder.</exception>
    public MemoryFiles(IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        foreach (var (path, bytes) in files)
        {
            JobPath.Require(path);
            this.files.Add(path, bytes);
        }

        All = [.. this.files.Keys];
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> All { get; }

    /// <inheritdoc/>
    public long Size(string path) => Read(path).Length;

    /// <inheritdoc/>
    public byte[] Read(string path) => files.TryGetValue(path, out var bytes) ? bytes : throw new ArgumentException($"'{path}' is not a file of this job.", nameof(path));
}
