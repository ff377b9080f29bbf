using System.Globalization;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Shell;

/// <summary>Where things are found.</summary>
internal static class Links
{
    /// <summary>The page on which the value under a model path is edited.</summary>
    public static string Input(string job, string path) => path.Length == 0 ? $"job/{job}" : $"job/{job}/edit/{path}";

    /// <summary>The page on which a card is worked through.</summary>
    public static string Card(string job, TaskView task) => task.IsTest ? $"job/{job}/tests/{task.Id}" : task.Kind == "release" ? $"job/{job}/release" : $"job/{job}/work/{task.Id}";

    /// <summary>A row of a list as people count: the first is row 1.</summary>
    public static string Row(string place) => $"row {(int.Parse(place, CultureInfo.InvariantCulture) + 1).ToString(CultureInfo.InvariantCulture)}";

    /// <summary>Whether a text is a model path, so that it can be opened.</summary>
    public static bool IsPath(string text) => text.Split('/') is { Length: > 1 } words && words[0] is "job" or "aircraft" or "parts" or "change" or "stock" && !text.Contains(' ', StringComparison.Ordinal);
}
