using System.Collections.Immutable;

namespace Fairlead.Calculations.Network;

/// <summary>A network of sources, resistances and loads, with its nodes numbered. Nodes that no source reaches are dead: nothing flows there.</summary>
public sealed class DcNetwork
{
    private readonly Dictionary<string, int> index;
    private readonly Lazy<SparsePattern> pattern;

    private DcNetwork(Sequence<NetworkSource> sources, Sequence<NetworkBranch> branches, Sequence<NetworkLoad> loads)
    {
        (Sources, Branches, Loads) = (sources, branches, loads);
        var names = sources.SelectMany(s => new[] { s.Node, s.Return }).Concat(branches.SelectMany(b => new[] { b.From, b.To })).Concat(loads.SelectMany(l => new[] { l.Node, l.Return }));
        var live = Live(sources, branches);
        Nodes = [.. names.Distinct(StringComparer.Ordinal).Where(n => n != NetworkNodes.Reference)];
        Dead = [.. Nodes.Where(n => !live.Contains(n))];
        index = Nodes.Where(live.Contains).Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i, StringComparer.Ordinal);
        Links = [.. branches.Select(b => (b.From, b.To, b.Resistance)).Concat(sources.Select(s => (From: s.Node, To: s.Return, s.Resistance)))
            .Where(l => IsLive(l.From) && IsLive(l.To)).Select(l => new Link(Number(l.From), Number(l.To), 1 / l.Resistance.Si))];
        LiveLoads = [.. loads.Where(l => IsLive(l.Node) && IsLive(l.Return)).Select(l => (l, Number(l.Node), Number(l.Return)))];
        pattern = new(() => SparsePattern.Of(Unknowns, Links.Concat(LiveLoads.Select(l => new Link(l.From, l.To, 0)))));
    }

    /// <summary>The sources.</summary>
    public Sequence<NetworkSource> Sources { get; }

    /// <summary>The resistances.</summary>
    public Sequence<NetworkBranch> Branches { get; }

    /// <summary>The loads.</summary>
    public Sequence<NetworkLoad> Loads { get; }

    /// <summary>Every node but the reference.</summary>
    public ImmutableArray<string> Nodes { get; }

    /// <summary>Nodes that no source reaches.</summary>
    public ImmutableArray<string> Dead { get; }

    /// <summary>Nodes whose voltage is unknown.</summary>
    internal int Unknowns => index.Count;

    /// <summary>The conductances where current can flow: of the branches first, and of the sources.</summary>
    internal ImmutableArray<Link> Links { get; }

    /// <summary>The loads that can draw, between numbered nodes.</summary>
    internal ImmutableArray<(NetworkLoad Load, int From, int To)> LiveLoads { get; }

    /// <summary>Order and places of its factors, loads included.</summary>
    internal SparsePattern Pattern => pattern.Value;

    /// <summary>A network.</summary>
    public static DcNetwork Of(Sequence<NetworkSource> sources, Sequence<NetworkBranch> branches, Sequence<NetworkLoad> loads) => new(sources, branches, loads);

    /// <summary>The number of a live node; -1 for the reference, and for a dead one.</summary>
    internal int Number(string node) => index.GetValueOrDefault(node, -1);

    /// <summary>Whether current can flow at a node.</summary>
    internal bool IsLive(string node) => node == NetworkNodes.Reference || index.ContainsKey(node);

    // Reached from the reference through resistances and sources, where the piece so reached has a source at all.
    private static HashSet<string> Live(Sequence<NetworkSource> sources, Sequence<NetworkBranch> branches)
    {
        var ways = branches.Select(b => (b.From, b.To)).Concat(sources.Select(s => (From: s.Node, To: s.Return)))
            .SelectMany(w => new[] { w, (From: w.To, To: w.From) }).ToLookup(w => w.From, w => w.To, StringComparer.Ordinal);
        var reached = new HashSet<string>(StringComparer.Ordinal) { NetworkNodes.Reference };
        var open = new Queue<string>(reached);
        while (open.TryDequeue(out var node))
        {
            foreach (var next in ways[node].Where(reached.Add))
            {
                open.Enqueue(next);
            }
        }

        return reached;
    }
}
