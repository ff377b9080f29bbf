using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Which panels a segment would have opened for it alone, and what each is worth in wire mass.</summary>
internal static class PanelTake
{
    /// <summary>By segment, the panels not opened anyway, those that must be opened first included; their worth goes into <paramref name="cost"/>.</summary>
    public static IEnumerable<ImmutableArray<string>> Of(WiringContext context, IReadOnlyList<RacewaySegment> segments, Mass worth, Dictionary<string, double> cost)
    {
        var (panels, change) = (context.Aircraft.Panels.OrEmpty(), context.Change);
        var opened = All(
            change.Remove.OrEmpty().SelectMany(r => r.Panels).Concat(change.Fit.OrEmpty().SelectMany(f => f.Panels))
                .Concat(change.Antennas.OrEmpty().SelectMany(a => a.Panels)).Concat(change.Tasks.OrEmpty().SelectMany(t => t.Panels)), panels);
        foreach (var panel in panels.Where(p => !opened.Contains(p.Id)))
        {
            cost[panel.Id] = (panel.Open.Likely + panel.Close.Likely).In("h") * worth.Si;
        }

        return segments.Select(s => All(s.Panels, panels).Where(cost.ContainsKey).Order(StringComparer.Ordinal).ToImmutableArray());
    }

    private static HashSet<string> All(IEnumerable<string> ids, Catalog<Panel> panels)
    {
        var (found, left) = (new HashSet<string>(StringComparer.Ordinal), new Stack<string>(ids));
        while (left.TryPop(out var id))
        {
            if (found.Add(id))
            {
                foreach (var before in panels.Find(id)?.After ?? default)
                {
                    left.Push(before);
                }
            }
        }

        return found;
    }
}
