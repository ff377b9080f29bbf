using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Model.Reading;

/// <summary>Collects problems, all of them, up to a stated number.</summary>
internal sealed class ProblemList
{
    private readonly List<Problem> problems = [];
    private int beyond;

    public bool Any => problems.Count > 0;

    public void Add(string code, Location at, string message, string found = "", string expected = "", string fix = "")
    {
        if (problems.Count < Limits.Problems)
        {
            problems.Add(new Problem(code, at, message, Short(found), expected, fix));
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

    private static string Short(string text) => text.Length <= 80 ? text : text[..77] + "...";
}
