using System.Globalization;
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
    /// <param name="files">The files.</param>
    /// <param name="archive">Whether they are a job with its log, which may hold more.</param>
    /// <exception cref="InvalidDataException">The files are too many, too large, or have names that some system does not allow.</exception>
    public static byte[] Zip(IJobFiles files, bool archive = false)
    {
        ArgumentNullException.ThrowIfNull(files);
        JobPath.RequireFolder(files.All, archive ? Limits.ArchiveFiles : Limits.Files);
        using var buffer = new MemoryStream();
        using (var zip = new ZipArchive(buffer, ZipArchiveMode.Create, leaveOpen: true))
        {
            long total = 0;
            foreach (var name in files.All)
            {
                RequireTotal(total += files.Size(name), Most(archive));
                var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                entry.LastWriteTime = Epoch;
                using var stream = entry.Open();
                stream.Write(files.Read(name));
            }
        }

        return buffer.ToArray();
    }

    /// <summary>Writes a job folder as one zip file.</summary>
    /// <exception cref="InvalidDataException">The files are too many, too large, or have names that some system does not allow.</exception>
    public static void Export(string directory, string zipFile) => SafeWrite.Bytes(zipFile, Zip(new FolderFiles(directory)));

    /// <summary>Unpacks a zip file into a new folder, whole or not at all.</summary>
    /// <exception cref="InvalidDataException">The zip is damaged, too large, or names a file that cannot stand in the folder.</exception>
    /// <exception cref="IOException">The folder exists and is not empty.</exception>
    public static void Import(string zipFile, string directory)
    {
        using var stream = File.OpenRead(zipFile);
        SafeWrite.Folder(directory, Unzip(stream, archive: false));
    }

    /// <summary>Reads a zip file that holds a job.</summary>
    /// <param name="zipFile">The file.</param>
    /// <param name="archive">Whether it may hold as much as a job with its log.</param>
    /// <exception cref="InvalidDataException">The zip is damaged, too large, or names a file that cannot stand in a folder.</exception>
    public static MemoryFiles Read(string zipFile, bool archive = false)
    {
        using var stream = File.OpenRead(zipFile);
        try
        {
            return Read(stream, archive);
        }
        catch (InvalidDataException e)
        {
            throw new InvalidDataException($"'{zipFile}' cannot be read as a job. {e.Message}", e);
        }
    }

    /// <summary>Reads a zip that holds a job.</summary>
    /// <param name="zip">The bytes.</param>
    /// <param name="archive">Whether it may hold as much as a job with its log.</param>
    /// <param name="most">Most bytes that it may unpack to, where that is less than a job may hold.</param>
    /// <exception cref="InvalidDataException">The zip is damaged, too large, or names a file that cannot stand in a folder.</exception>
    public static MemoryFiles Read(Stream zip, bool archive = false, long most = long.MaxValue) => new(Unzip(zip, archive, most));

    private static List<KeyValuePair<string, byte[]>> Unzip(Stream stream, bool archive, long most = long.MaxValue)
    {
        most = Math.Min(most, Most(archive));
        using var zip = Opened(stream);
        var entries = zip.Entries.Where(e => !e.FullName.EndsWith('/')).ToArray();
        JobPath.RequireFolder(entries.Select(e => e.FullName), archive ? Limits.ArchiveFiles : Limits.Files);
        long total = 0;
        var files = new List<KeyValuePair<string, byte[]>>(entries.Length);
        foreach (var entry in entries)
        {
            files.Add(KeyValuePair.Create(entry.FullName, Contents(entry, ref total, most)));
        }

        return files;
    }

    // The list of a zip's files stands at its end, and is what a copy that was cut off lacks.
    private static ZipArchive Opened(Stream stream)
    {
        try
        {
            var zip = new ZipArchive(stream, ZipArchiveMode.Read);
            _ = zip.Entries;
            return zip;
        }
        catch (InvalidDataException e)
        {
            throw new InvalidDataException("It is cut off or damaged, or no zip file.", e);
        }
    }

    // The size in a zip's directory may lie, so bytes are counted as they come out.
    private static byte[] Contents(ZipArchiveEntry entry, ref long total, long most)
    {
        using var content = new MemoryStream();
        using var stream = entry.Open();
        var buffer = new byte[81920];
        for (int n; (n = stream.Read(buffer)) > 0;)
        {
            RequireTotal(total += n, most);
            content.Write(buffer, 0, n);
        }

        return Crc32.Of(content.GetBuffer().AsSpan(0, (int)content.Length)) == entry.Crc32 ? content.ToArray()
            : throw new InvalidDataException($"The zip is damaged: the contents of '{entry.FullName}' do not match their checksum.");
    }

    private static long Most(bool archive) => archive ? Limits.ArchiveBytes : Limits.TotalBytes;

    private static void RequireTotal(long bytes, long most)
    {
        if (bytes > most)
        {
            throw new InvalidDataException($"The files hold more than {most.ToString(CultureInfo.InvariantCulture)} bytes together.");
        }
    }
}
