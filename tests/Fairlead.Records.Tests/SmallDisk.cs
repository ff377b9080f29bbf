using System.Diagnostics;
using System.Globalization;

namespace Fairlead.Tests.Records;

/// <summary>A file system in memory of so many megabytes, which the database server may write to. Only root can make one.</summary>
internal sealed class SmallDisk : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-disk-");

    public SmallDisk(int megabytes)
    {
        Run("mount", "-t", "tmpfs", "-o", Size(megabytes), "tmpfs", Folder);
        Run("chown", "postgres", Folder);
    }

    /// <summary>Where it is.</summary>
    public string Folder => folder.FullName;

    /// <summary>Makes it larger, with all that is on it.</summary>
    public void Grow(int megabytes) => Run("mount", "-o", "remount," + Size(megabytes), Folder);

    public void Dispose()
    {
        // Lazily: the server may still hold files on it.
        Run("umount", "-l", Folder);
        folder.Delete();
    }

    private static string Size(int megabytes) => string.Create(CultureInfo.InvariantCulture, $"size={megabytes}m");

    private static void Run(string program, params string[] arguments)
    {
        using var process = Process.Start(program, arguments);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
