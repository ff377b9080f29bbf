using Fairlead.Calculations;

namespace Fairlead.Cli.Commands;

/// <summary>Hints for a name that does not exist.</summary>
internal static class Nearest
{
    private const int Most = 5;

    /// <summary>A hint with the nearest name and those that share a word with what was typed; otherwise where to look.</summary>
    public static string Hint(string typed, IEnumerable<string> known, string otherwise)
    {
        var all = known.ToArray();
        var words = typed.Split(['-', '/', ' '], StringSplitOptions.RemoveEmptyEntries).Where(w => w.Length > 2).ToArray();
        var near = all.Where(name => name == Words.Nearest(typed, all))
            .Concat(all.Where(name => words.Any(w => name.Contains(w, StringComparison.OrdinalIgnoreCase))))
            .Distinct().Take(Most).Select(name => $"'{name}'").ToArray();
        return near.Length > 0 ? $" Did you mean {string.Join(" or ", near)}?" : " " + otherwise;
    }
}
