namespace Fairlead.Client.Shell;

/// <summary>Where things are found.</summary>
internal static class Links
{
    /// <summary>The page on which the value under a model path is edited.</summary>
    public static string Input(string job, string path) => path.Length == 0 ? $"job/{job}" : $"job/{job}/edit/{path}";

    /// <summary>Whether a text is a model path, so that it can be opened.</summary>
    public static bool IsPath(string text) => text.Split('/') is { Length: > 1 } words && words[0] is "job" or "aircraft" or "parts" or "change" or "stock" && !text.Contains(' ', StringComparison.Ordinal);
}
