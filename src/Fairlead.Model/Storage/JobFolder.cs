using System.IO.Compression;
using Fairlead.Model.Reading;

namespace Fairlead.Model.Storage;

/// <summary>A job in a folder or in one zip file.</summary>
public static class JobFolder
{
    // Zip entries carry a date; a fixed one makes the same job give the same file.
    private static readonly DateTimeOffset Epoch = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Reads the job of a folder.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public static LoadResult Load(string directory) => JobReader.Read(new FolderFiles(directory));

    /// <summary>All files of a job as one zip: the same files give the same bytes.</summary>
    public static byte[] Zip(IJobFiles files)
    {
        ArgumentNullException.ThrowIfNull(files);
        using var buffer = new MemoryStream();
        using (var zip = new ZipArchive(buffer, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var name in files.All)
            {
                var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                entry.LastWriteTime = Epoch;
                using var stream = entry.Open();
                stream.Write(files.Read(name));
            }
        }

        return buffer.ToArray();
    }

    /// <summary>Writes a job folder as one zip file.</summary>
    public static void Export(string directory, string zipFile) => SafeWrite.Bytes(zipFile, Zip(new FolderFiles(directory)));

    /// <summary>Unpacks a zip file into a new folder, whole or not at all.</summary>
    /// <exception cref="InvalidDataException">The zip is damaged, too large, or names a file outside the folder.</exception>
    /// <exception cref="IOException">The folder exists and is not empty.</exception>
    public static void Import(string zipFile, string directory)
    {
        using var stream = File.OpenRead(zipFile);
        SafeWrite.Folder(directory, Unzip(stream));
    }

    private static List<KeyValuePair<string, byte[]>> Unzip(Stream stream)
    {
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
        if (zip.Entries.Count > Limits.Files)
        {
            throw new InvalidDataException($"The zip holds more than {Limits.Files.ToString(System.Globalization.CultureInfo.InvariantCulture)} files.");
        }

        var files = new List<KeyValuePair<string, byte[]>>();
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        long total = 0;
        foreach (var entry in zip.Entries.Where(e => !e.FullName.EndsWith('/')))
        {
            var name = entry.FullName;
            if (name.Contains('\\', StringComparison.Ordinal) || name.Contains(':', StringComparison.Ordinal) || name.Split('/').Any(p => p is "" or "." or "..") || !seen.Add(name))
            {
                throw new InvalidDataException($"The zip names the file '{name}', which cannot stand in a job folder.");
            }

            files.Add(KeyValuePair.Create(name, Contents(entry, ref total)));
        }

        return files;
    }

    // The size in a zip's directory may lie, so bytes are counted as they come out.
    private static byte[] Contents(ZipArchiveEntry entry, ref long total)
    {
        using var content = new MemoryStream();
        using var stream = entry.Open();
        var buffer = new byte[81920];
        for (int n; (n = stream.Read(buffer)) > 0;)
        {
            total += n;
            if (total > Limits.TotalBytes)
            {
                throw new InvalidDataException("The zip unpacks to more than Fairlead reads.");
            }

            content.Write(buffer, 0, n);
        }

        return content.ToArray();
    }
}
