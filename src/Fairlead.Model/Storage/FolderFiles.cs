namespace Fairlead.Model.Storage;

/// <summary>The files of a job in a folder. Hidden files and folders, links, files that are just being written, and the log's own files are passed over. Of a folder with more files
/// than a job may hold, only so many are listed as show that.</summary>
public sealed class FolderFiles : IJobFiles
{
    /// <summary>The file the log of the work is kept in, which is no part of the description and changes under a reader's hands.</summary>
    public const string Log = "log.db";

    private readonly string root;

    /// <summary>Lists a folder.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public FolderFiles(string directory)
    {
        root = Path.GetFullPath(directory);
        var options = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint };
        All = [.. Directory.EnumerateFiles(root, "*", options)
            .Select(f => Path.GetRelativePath(root, f).Replace(Path.DirectorySeparatorChar, '/'))
            .Where(f => f.Split('/').All(part => part[0] != '.') && !SafeWrite.IsTemporary(f) && f != Log && !f.StartsWith(Log + "-", StringComparison.Ordinal))
            .Take(Limits.Files + 1).Order(StringComparer.Ordinal)];
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> All { get; }

    /// <inheritdoc/>
    public long Size(string path) => new FileInfo(Full(path)).Length;

    // A pipe or device has no size, and reading it might never end.
    /// <inheritdoc/>
    public byte[] Read(string path) => Size(path) == 0 ? [] : File.ReadAllBytes(Full(path));

    private string Full(string path) => All.Contains(path, StringComparer.Ordinal) ? Path.Combine(root, path)
        : throw new ArgumentException($"'{path}' is not a file of this job.", nameof(path));
}
