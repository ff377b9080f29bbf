using System.Text;

namespace Fairlead.Calculations;

/// <summary>Turns names of code into the words people type, and finds the nearest of them.</summary>
public static class Words
{
    /// <summary><c>TakeOff</c> becomes <c>take-off</c>.</summary>
    public static string Kebab(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var text = new StringBuilder(name.Length + 4);
        foreach (var c in name)
        {
            if (char.IsUpper(c) && text.Length > 0)
            {
                text.Append('-');
            }

            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }

    // The distance costs the product of the lengths, and no name is as long as this.
    private const int LongestName = 100;

    /// <summary>The known name nearest to what was typed, or null when none is near (more than a third of the letters differ, or the name has over 100 letters).</summary>
    public static string? Nearest(string typed, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(known);
        var limit = Math.Max(1, (typed.Length + 2) / 3);
        return known.Select(name => (name, distance: Distance(typed, name, limit)))
            .Where(x => x.distance <= limit).OrderBy(x => x.distance).ThenBy(x => x.name, StringComparer.Ordinal)
            .Select(x => x.name).FirstOrDefault();
    }

    // Edit distance with adjacent transpositions (optimal string alignment), ignoring case.
    private static int Distance(string a, string b, int limit)
    {
        if (Math.Abs(a.Length - b.Length) > limit || Math.Max(a.Length, b.Length) > LongestName)
        {
            return int.MaxValue;
        }

        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                d[i, j] = i == 0 ? j : j == 0 ? i : Math.Min(
                    Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + (Same(a[i - 1], b[j - 1]) ? 0 : 1));
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }

    private static bool Same(char x, char y) => char.ToLowerInvariant(x) == char.ToLowerInvariant(y);
}
