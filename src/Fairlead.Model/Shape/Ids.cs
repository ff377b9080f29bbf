namespace Fairlead.Model;

/// <summary>What an id may look like. Ends of circuits are written with spaces and '-' around ids, so ids have no spaces.</summary>
internal static class Ids
{
    /// <summary>Longest id; longer ones fit no label.</summary>
    public const int Longest = 64;

    public const string Expected = "up to 64 letters, digits, '.', '_' and '-'";

    public const string Pattern = "^[A-Za-z0-9._-]{1,64}$";

    public const string EndPattern = "^[A-Za-z0-9._-]+( +[A-Za-z0-9._]+-[A-Za-z0-9._-]+)?$";

    public static bool IsValid(string id) => id.Length is > 0 and <= Longest && id.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-');
}
