namespace Fairlead.Model.Storage;

/// <summary>Writes whole files or nothing: to a temporary file beside the target, which is then renamed.</summary>
public static class SafeWrite
{
    /// <summary>Writes a file; a file of that name is replaced only when the new one is complete.</summary>
    public static void Bytes(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        var temporary = full + ".writing";
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, full, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    /// <summary>Fills a new folder or nothing.</summary>
    /// <exception cref="IOException">The folder exists and is not empty.</exception>
    public static void Folder(string directory, IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var full = Path.GetFullPath(directory).TrimEnd(Path.DirectorySeparatorChar);
        if (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any())
        {
            throw new IOException($"The folder '{directory}' is not empty; nothing was written.");
        }

        var temporary = full + ".writing";
        try
        {
            foreach (var (name, bytes) in files)
            {
                Bytes(Path.Combine(temporary, name), bytes);
            }

            if (Directory.Exists(full))
            {
                Directory.Delete(full);
            }

            Directory.Move(temporary, full);
        }
        finally
        {
            if (Directory.Exists(temporary))
            {
                Directory.Delete(temporary, recursive: true);
            }
        }
    }
}
