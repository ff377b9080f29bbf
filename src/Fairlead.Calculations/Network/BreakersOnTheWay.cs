using System.Collections.Immutable;

namespace Fairlead.Calculations.Network;

/// <summary>The breakers through which a short is fed, found by walking from it against the current.</summary>
internal static class BreakersOnTheWay
{
    /// <summary>The breakers, nearest first. A nearest breaker has no other between itself and the short.</summary>
    public static ImmutableArray<(NetworkBreaker Breaker, bool Nearest, Current Current)> Of(Sequence<NetworkBranch> branches, Sequence<NetworkBreaker> protectors, ShortState state)
    {
        var breakers = new Dictionary<string, NetworkBreaker>(StringComparer.Ordinal);
        foreach (var breaker in protectors)
        {
            breakers.TryAdd(breaker.Branch, breaker);
        }

        // Current flows along each edge towards its second node, so the way to the sources leads from there to the first.
        var feeding = branches.Select(b => (Branch: b, Current: state.Through(b))).Where(x => Math.Abs(x.Current.Si) > 1e-9 * state.Current.Si)
            .Select(x => (x.Branch, Current: new Current(Math.Abs(x.Current.Si)), Up: x.Current.Si > 0 ? x.Branch.From : x.Branch.To, Down: x.Current.Si > 0 ? x.Branch.To : x.Branch.From))
            .ToLookup(x => x.Down, StringComparer.Ordinal);
        var found = ImmutableArray.CreateBuilder<(NetworkBreaker, bool, Current)>();
        var seen = new HashSet<(string, bool)>();
        var met = new HashSet<string>(StringComparer.Ordinal);
        var open = new Queue<(string Node, bool Behind)>([(state.Node, false)]);
        while (open.TryDequeue(out var at))
        {
            foreach (var edge in seen.Add(at) ? feeding[at.Node] : [])
            {
                var breaker = breakers.GetValueOrDefault(edge.Branch.Name);
                if (breaker is not null && met.Add(breaker.Branch))
                {
                    found.Add((breaker, !at.Behind, edge.Current));
                }

                open.Enqueue((edge.Up, at.Behind || breaker is not null));
            }
        }

        return found.ToImmutable();
    }
}
