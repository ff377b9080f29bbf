using System.Globalization;

namespace Fairlead.Model.Storage;

/// <summary>Writes whole files or nothing: to a temporary name beside the target, which is then renamed.</summary>
public static class SafeWrite
{
    private const string Writing = ".writing";

    // Devices and pipes of the system: to put a file in their place would break them for everybody.
    private static readonly string[] Devices = ["/dev/", "/proc/"];

    /// <summary>Writes a file; a file of that name is replaced only when the new one is complete. Into a device it is written as it comes.</summary>
    public static void Bytes(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Path.GetFullPath(path);
        if (Devices.Any(d => full.StartsWith(d, StringComparison.Ordinal)))
        {
            using var device = new FileStream(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            device.Write(bytes);
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        var temporary = FreeName(full);
        try
        {
            New(temporary, bytes);
            File.Move(temporary, full, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    /// <summary>Fills a new or empty folder, or writes nothing.</summary>
    /// <exception cref="IOException">The folder exists and is not empty.</exception>
    public static void Folder(string directory, IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(directory));
        if (File.Exists(full) || (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any()))
        {
            throw new IOException($"'{directory}' is a file or a folder that is not empty; nothing was written.");
        }

        var temporary = FreeName(full);
        try
        {
            Directory.CreateDirectory(temporary);
            foreach (var (name, bytes) in files)
            {
                JobPath.Require(name);
                var file = Path.Combine(temporary, name);
                Directory.CreateDirectory(Path.GetDirectoryName(file)!);
                New(file, bytes);
            }

            Place(temporary, full);
        }
        finally
        {
            if (Directory.Exists(temporary))
            {
                Directory.Delete(temporary, recursive: true);
            }
        }
    }

    // An empty folder that is there already may be where a shell stands, so it is filled and not replaced.
    private static void Place(string temporary, string full)
    {
        if (!Directory.Exists(full))
        {
            Directory.Move(temporary, full);
            return;
        }

        foreach (var entry in Directory.EnumerateFileSystemEntries(temporary).ToArray())
        {
            Directory.Move(entry, Path.Combine(full, Path.GetFileName(entry)));
        }
    }

    private static void New(string path, ReadOnlySpan<byte> bytes)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Whether a file is one that is being written, or was when the power went: it is no part of a job.</summary>
    internal static bool IsTemporary(string path) => path.LastIndexOf(Writing, StringComparison.Ordinal) is >= 0 and var at && path.Length > at + Writing.Length && path[(at + Writing.Length)..].All(char.IsAsciiDigit);

    // A file of the temporary name may be somebody's own.
    private static string FreeName(string path)
    {
        for (var n = 1; ; n++)
        {
            var name = path + Writing + n.ToString(CultureInfo.InvariantCulture);
            if (!Path.Exists(name))
            {
                return name;
            }
        }
    }
}
