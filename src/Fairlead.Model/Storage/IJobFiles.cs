namespace Fairlead.Model;

/// <summary>The files of a job, wherever they are kept. Paths are relative and use '/'.</summary>
public interface IJobFiles
{
    /// <summary>The paths of all files, in ordinal order.</summary>
    IReadOnlyList<string> All { get; }

    /// <summary>The size of a file in bytes.</summary>
    long Size(string path);

    /// <summary>The contents of a file.</summary>
    byte[] Read(string path);
}
