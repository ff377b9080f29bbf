namespace Fairlead.Server.Hosting;

/// <summary>Files and folders that only the account of the server may read. On Windows they have the rights of the folder they are in.</summary>
internal static class PrivateFiles
{
    /// <summary>Makes a folder, unless it is there.</summary>
    public static string Folder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return Directory.CreateDirectory(path).FullName;
        }

        return Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute).FullName;
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
