using System.Collections.Immutable;

namespace Fairlead.Calculations.Network;

/// <summary>How a short is fed.</summary>
/// <param name="Breakers">The breakers it is fed through, nearest first. A nearest breaker has no other between itself and the short.</param>
/// <param name="Branches">Every branch that its current comes through, and every branch that ends where it is.</param>
internal sealed record ShortFeed(ImmutableArray<(NetworkBreaker Breaker, bool Nearest, Current Current)> Breakers, ImmutableArray<NetworkBranch> Branches);

/// <summary>The breakers through which a short is fed, found by walking from it against the current.</summary>
internal sealed class BreakersOnTheWay
{
    private readonly Dictionary<string, NetworkBreaker> breakers = new(StringComparer.Ordinal);
    private readonly ILookup<string, NetworkBranch> at;

    public BreakersOnTheWay(Sequence<NetworkBranch> branches, Sequence<NetworkBreaker> protectors)
    {
        at = branches.SelectMany(b => new[] { (Node: b.From, Branch: b), (Node: b.To, Branch: b) }).ToLookup(x => x.Node, x => x.Branch, StringComparer.Ordinal);
        foreach (var breaker in protectors)
        {
            breakers.TryAdd(breaker.Branch, breaker);
        }
    }

    /// <summary>The way of a short, which is never longer than what feeds it.</summary>
    public ShortFeed To(ShortState state)
    {
        var found = ImmutableArray.CreateBuilder<(NetworkBreaker, bool, Current)>();
        var (seen, met, carrying) = (new HashSet<(string, bool)>(), new HashSet<string>(StringComparer.Ordinal), new HashSet<NetworkBranch>(at[state.Node], ReferenceEqualityComparer.Instance));
        var open = new Queue<(string Node, bool Behind)>([(state.Node, false)]);
        while (open.TryDequeue(out var point))
        {
            foreach (var branch in seen.Add(point) ? at[point.Node] : [])
            {
                // Current flows along each branch towards the short, so the way to the sources leads against it.
                var along = state.Through(branch);
                var (into, up) = branch.To == point.Node ? (along, branch.From) : (-along, branch.To);
                if (into.Si > 1e-9 * state.Current.Si)
                {
                    carrying.Add(branch);
                    var breaker = breakers.GetValueOrDefault(branch.Name);
                    if (breaker is not null && met.Add(breaker.Branch))
                    {
                        found.Add((breaker, !point.Behind, into));
                    }

                    open.Enqueue((up, point.Behind || breaker is not null));
                }
            }
        }

        return new(found.ToImmutable(), [.. carrying]);
    }
}
