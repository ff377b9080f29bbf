using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Bench;

/// <summary>Reads single-mode instances of the project scheduling library of Kolisch and Sprecher (European Journal of Operational Research 96, 1996).</summary>
internal static class Psplib
{
    /// <summary>Reads one file.</summary>
    public static Problem Read(string text)
    {
        string[] lines = [.. text.ReplaceLineEndings("\n").Split('\n')];
        var horizon = Numbers(lines.First(l => l.StartsWith("horizon", StringComparison.Ordinal)).Split(':')[1])[0];
        var after = Rows(lines, "PRECEDENCE", 2).SelectMany(r => r.Skip(3).Select(to => (From: r[0], To: to))).ToLookup(x => x.To, x => x.From);
        var capacities = Rows(lines, "RESOURCEAVAILABILITIES", 2).First();
        var tasks = Rows(lines, "REQUESTS/DURATIONS", 3).Select(r => new Work(
            Name(r[0]), r[2], after[r[0]].Select(f => new Predecessor(Name(f))).ToSequence(), default,
            r.Skip(3).Select((amount, k) => new Demand(Kind(k), amount)).Where(d => d.Amount > 0).ToSequence()));
        return new(horizon, tasks.ToSequence(), default, capacities.Select((c, k) => new Resource(Kind(k), c)).ToSequence());
    }

    private static string Name(int job) => job.ToString(CultureInfo.InvariantCulture);

    private static string Kind(int index) => $"R{Name(index + 1)}";

    // The rows of numbers of a section, up to the line of stars that ends it.
    private static IEnumerable<int[]> Rows(string[] lines, string section, int header) =>
        lines.SkipWhile(l => !l.StartsWith(section, StringComparison.Ordinal)).Skip(header).TakeWhile(l => !l.StartsWith('*')).Where(l => !l.StartsWith('-')).Select(Numbers).Where(r => r.Length > 0);

    private static int[] Numbers(string line) => [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
}
