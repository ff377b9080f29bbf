using System.Collections.Immutable;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>What an edit changed.</summary>
internal static class Comparison
{
    public static ChangeView Of(Standing before, Standing after, long calculations)
    {
        var was = before.Figures.ToDictionary(f => f.Name, f => f.After, StringComparer.Ordinal);
        // While the text cannot be read nothing is known of findings: none is called cured.
        var (gained, cured) = before.Assessment is null || after.Assessment is null ? ([], [])
            : (Without(after.Findings, before.Findings), Without(before.Findings, after.Findings));
        return new ChangeView([.. after.Figures.Where(f => was.TryGetValue(f.Name, out var old) && old != f.After).Select(f => new FigureChange(f.Name, was[f.Name], f.After))], gained, cured, calculations);
    }

    // Most findings are the very same objects before and after.
    private static ImmutableArray<FindingView> Without(ImmutableArray<FindingView> findings, ImmutableArray<FindingView> others)
    {
        var same = new HashSet<FindingView>(others, ReferenceEqualityComparer.Instance);
        FindingView[] rest = [.. findings.Where(f => !same.Contains(f))];
        if (rest.Length == 0)
        {
            return [];
        }

        var rules = rest.Select(f => f.Rule).ToHashSet(StringComparer.Ordinal);
        var known = others.Where(f => rules.Contains(f.Rule)).Select(f => (f.Rule, f.Subject, f.Accepted)).ToHashSet();
        return [.. rest.Where(f => !known.Contains((f.Rule, f.Subject, f.Accepted)))];
    }
}
