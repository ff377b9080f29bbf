using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>A contact that a circuit ends on, with what its part says of it.</summary>
/// <param name="End">The contact.</param>
/// <param name="Use">What the part says; null when it says nothing.</param>
/// <param name="Path">Where the first circuit that ends on it stands in the files.</param>
internal sealed record Wired(Endpoint End, ContactUse? Use, string Path);

/// <summary>Contacts that circuits and joints make one.</summary>
/// <param name="Contacts">The contacts.</param>
/// <param name="Circuits">The circuits.</param>
/// <param name="Grounded">Whether a ground stud is on it.</param>
/// <param name="Fed">Whether a breaker is on it.</param>
internal sealed record Net(ImmutableArray<Wired> Contacts, ImmutableArray<CircuitResult> Circuits, bool Grounded, bool Fed)
{
    /// <summary>What findings about it are named after: its first contact.</summary>
    public string Subject => Contacts.IsEmpty ? $"net/{Circuits[0].Circuit.Id}" : $"net/{Contacts[0].End}";

    /// <summary>Where it stands in the files.</summary>
    public string Path => $"change/circuits/{Circuits[0].Circuit.Id}";

    /// <summary>The contacts of some kinds.</summary>
    public IEnumerable<Wired> Of(params SignalKind[] kinds) => Contacts.Where(c => c.Use is { } use && kinds.Contains(use.Kind));

    /// <summary>The nets of a job, in the order of their first circuits.</summary>
    public static ImmutableArray<Net> All(Job job, IReadOnlyList<CircuitResult> circuits)
    {
        var stops = Stops(job);
        var parts = Parts(job);
        var groups = new Groups();
        foreach (var circuit in circuits)
        {
            // Grounds and breakers are shared by many nets and join none.
            var ends = new[] { circuit.Circuit.From, circuit.Circuit.To }.Where(e => !stops.ContainsKey(e.Item)).Select(e => e.ToString()).ToArray();
            groups.Join([$"circuit {circuit.Circuit.Id}", .. ends]);
        }

        return [.. circuits.GroupBy(c => groups.Of($"circuit {c.Circuit.Id}"), StringComparer.Ordinal).Select(g => Make([.. g], stops, parts))];
    }

    private static Net Make(ImmutableArray<CircuitResult> circuits, Dictionary<string, bool> stops, Dictionary<string, EquipmentPart?> parts)
    {
        var ends = circuits.SelectMany(c => new[] { (End: c.Circuit.From, c.Circuit), (End: c.Circuit.To, c.Circuit) }).ToArray();
        return new Net(
            [.. ends.Where(e => !e.End.IsPoint).DistinctBy(e => e.End).Select(e => new Wired(e.End, parts.GetValueOrDefault(e.End.Item)?.Contacts?.Find(e.End.Pin), $"change/circuits/{e.Circuit.Id}"))],
            circuits,
            ends.Any(e => e.End.IsPoint && stops.TryGetValue(e.End.Item, out var breaker) && !breaker),
            ends.Any(e => e.End.IsPoint && stops.TryGetValue(e.End.Item, out var breaker) && breaker));
    }

    // Grounds are false, breakers true.
    private static Dictionary<string, bool> Stops(Job job)
    {
        var stops = new Dictionary<string, bool>(StringComparer.Ordinal);
        foreach (var id in job.Aircraft.Grounds.OrEmpty().Concat(job.Change.Grounds.OrEmpty()).Select(g => g.Id))
        {
            stops.TryAdd(id, false);
        }

        foreach (var id in job.Aircraft.Breakers.OrEmpty().Concat(job.Change.Breakers.OrEmpty()).Select(b => b.Id))
        {
            stops.TryAdd(id, true);
        }

        return stops;
    }

    private static Dictionary<string, EquipmentPart?> Parts(Job job)
    {
        var parts = new Dictionary<string, EquipmentPart?>(StringComparer.Ordinal);
        foreach (var (id, part) in job.Change.Fit.OrEmpty().Select(f => (f.Id, (string?)f.Part)).Concat(job.Aircraft.Equipment.OrEmpty().Select(i => (i.Id, i.Part))))
        {
            parts.TryAdd(id, job.Parts.Equipment?.Find(part));
        }

        return parts;
    }

    // Disjoint sets by name, with path halving.
    private sealed class Groups
    {
        private readonly Dictionary<string, string> parent = new(StringComparer.Ordinal);

        public string Of(string name)
        {
            parent.TryAdd(name, name);
            while (parent[name] != name)
            {
                name = parent[name] = parent[parent[name]];
            }

            return name;
        }

        public void Join(ReadOnlySpan<string> names)
        {
            foreach (var name in names)
            {
                parent[Of(name)] = Of(names[0]);
            }
        }
    }
}
