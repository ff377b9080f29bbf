using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>Collects problems, all of them, up to a stated number.</summary>
internal sealed class ProblemList
{
    private readonly List<Problem> problems = [];
    private int beyond;

    public bool Any => problems.Count > 0;

    /// <summary>Whether no more problems are kept, so that no work need go into wording them.</summary>
    public bool Full => problems.Count >= Limits.Problems;

    public int Count => problems.Count + beyond;

    /// <summary>"did you mean ...?" with the nearest known name, if there is one.</summary>
    public string Near(string typed, IEnumerable<string> known) => Full ? "" : Hint(typed, known);

    public static string Hint(string typed, IEnumerable<string> known) => Words.Nearest(typed, known) is { } near ? $"did you mean '{near}'?" : "";

    public void Add(string code, Location at, string message, string found = "", string expected = "", string fix = "")
    {
        if (!Full)
        {
            problems.Add(new Problem(code, at, Short(message, 400), Short(found, 80), Plain(expected), Plain(fix)));
        }
        else
        {
            beyond++;
        }
    }

    public ImmutableArray<Problem> InOrder()
    {
        var sorted = problems.OrderBy(p => p.Location.File, StringComparer.Ordinal).ThenBy(p => p.Location.Line).ThenBy(p => p.Location.Column).ToList();
        if (beyond > 0)
        {
            sorted.Add(new Problem("more-problems", sorted[^1].Location, string.Create(CultureInfo.InvariantCulture, $"and {beyond} more problems; mend these first")));
        }

        return [.. sorted];
    }

    private static string Short(string text, int longest) => Plain(text.Length <= longest ? text : text[..(longest - 3)] + "...");

    // Problems go to terminals: what a file holds must not steer them.
    private static string Plain(string text) => string.Concat(text.Select(c => char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format ? '\uFFFD' : c));
}
