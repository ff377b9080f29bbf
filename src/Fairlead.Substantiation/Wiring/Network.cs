using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Which circuits meet where, kept up to date circuit by circuit: at points, in bundles, in cables.</summary>
internal sealed class Network(WiringContext context)
{
    private static readonly List<CircuitState> None = [];
    private static readonly List<BundleState> NoBundles = [];

    private readonly Dictionary<Endpoint, List<CircuitState>> points = [];
    private readonly Dictionary<string, List<CircuitState>> cables = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Segment, string Name), BundleState> bundles = [];
    private readonly Dictionary<string, List<BundleState>> inSegment = new(StringComparer.Ordinal);
    private readonly HashSet<Endpoint> crowded = [];

    /// <summary>The bundles in a segment.</summary>
    public IReadOnlyList<BundleState> BundlesIn(string segment) => inSegment.GetValueOrDefault(segment, NoBundles);

    /// <summary>The circuits that run in a segment.</summary>
    public IEnumerable<CircuitState> In(string segment) => BundlesIn(segment).SelectMany(b => b.Members);

    /// <summary>Contacts on which more than one circuit ends.</summary>
    public IReadOnlyCollection<Endpoint> Crowded => crowded;

    /// <summary>The circuits that end at a point.</summary>
    public IReadOnlyCollection<CircuitState> At(Endpoint point) => points.GetValueOrDefault(point, None);

    /// <summary>The circuits that share a circuit's cable; itself alone when it names none.</summary>
    public IReadOnlyCollection<CircuitState> CableOf(CircuitState state) => cables.GetValueOrDefault(state.Circuit.Cable) ?? [state];

    /// <summary>Hangs a circuit in.</summary>
    public void Add(CircuitState state)
    {
        foreach (var end in Ends(state))
        {
            Put(points, end, state);
            Judge(end);
        }

        if (state.Circuit.Cable.Length > 0)
        {
            Put(cables, state.Circuit.Cable, state);
        }

        state.Bundles = [.. (state.Way?.Segments ?? []).Distinct(StringComparer.Ordinal).Select(s => BundleIn(s, state.Circuit.Bundle))];
        foreach (var bundle in state.Bundles)
        {
            bundle.Members.Add(state);
        }
    }

    /// <summary>Takes a circuit out.</summary>
    public void Remove(CircuitState state)
    {
        foreach (var end in Ends(state))
        {
            points[end].Remove(state);
            Judge(end);
        }

        if (state.Circuit.Cable.Length > 0)
        {
            cables[state.Circuit.Cable].Remove(state);
        }

        foreach (var bundle in state.Bundles)
        {
            bundle.Members.Remove(state);
            if (bundle.Members.Count == 0)
            {
                bundles.Remove((bundle.Segment, bundle.Name));
                inSegment[bundle.Segment].Remove(bundle);
            }
        }
    }

    private static IEnumerable<Endpoint> Ends(CircuitState state) =>
        state.Circuit.From == state.Circuit.To ? [state.Circuit.From] : [state.Circuit.From, state.Circuit.To];

    private static void Put<TKey, TState>(Dictionary<TKey, List<TState>> lists, TKey key, TState state)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list))
        {
            lists.Add(key, list = []);
        }

        list.Add(state);
    }

    private BundleState BundleIn(string segment, string name)
    {
        if (!bundles.TryGetValue((segment, name), out var bundle))
        {
            bundles.Add((segment, name), bundle = new BundleState(segment, name, context));
            Put(inSegment, segment, bundle);
        }

        return bundle;
    }

    private void Judge(Endpoint end)
    {
        if (!end.IsPoint && points[end].Count > 1)
        {
            crowded.Add(end);
        }
        else
        {
            crowded.Remove(end);
        }
    }
}
