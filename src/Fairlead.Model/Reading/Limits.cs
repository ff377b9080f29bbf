namespace Fairlead.Model;

/// <summary>What a job may hold at most. The limits are far above any real job; they keep a broken or hostile file from exhausting the machine.</summary>
public static class Limits
{
    /// <summary>Bytes in one file: 4 MiB, about 40,000 circuits.</summary>
    public const int FileBytes = 4 * 1024 * 1024;

    /// <summary>Files in a job folder.</summary>
    public const int Files = 5000;

    /// <summary>Bytes in all files together: 64 MiB.</summary>
    public const long TotalBytes = 64L * 1024 * 1024;

    /// <summary>Bytes in a job with its log and what the log keeps, photographs too: 1 GiB.</summary>
    public const long ArchiveBytes = 1024L * 1024 * 1024;

    /// <summary>Files in a job with what its log keeps.</summary>
    public const int ArchiveFiles = 25_000;

    /// <summary>Levels of nesting.</summary>
    public const int Depth = 32;

    /// <summary>Characters in one value.</summary>
    public const int TextLength = 10_000;

    /// <summary>Problems reported; past that only their number is.</summary>
    public const int Problems = 200;
}
