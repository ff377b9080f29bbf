namespace Fairlead.Server.Hosting;

/// <summary>Files and folders that only the account of the server may read. On Windows they have the rights of the folder they are in.</summary>
internal static class PrivateFiles
{
    private const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>Makes a folder, unless it is there.</summary>
    public static string Folder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return Directory.CreateDirectory(path).FullName;
        }

        return Directory.CreateDirectory(path, Owner).FullName;
    }

    /// <summary>Shuts a file or folder to others, who may read it after a backup was copied back.</summary>
    public static void Shut(string path)
    {
        if (OperatingSystem.IsWindows() || !Path.Exists(path) || (File.GetUnixFileMode(path) & ~Owner) == UnixFileMode.None)
        {
            return;
        }

        try
        {
            File.SetUnixFileMode(path, File.GetUnixFileMode(path) & Owner);
        }
        catch (UnauthorizedAccessException)
        {
            // It is another account's, which gave this one the right to use it.
        }
    }

    /// <summary>Makes an empty file, unless it is there.</summary>
    public static void Touch(string path)
    {
        if (!File.Exists(path))
        {
            Write(path, []);
        }
    }

    /// <summary>Writes a new file.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using var stream = new FileStream(path, options);
        stream.Write(bytes);
    }
}
