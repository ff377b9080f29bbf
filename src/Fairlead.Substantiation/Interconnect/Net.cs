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

    /// <summary>The net of some circuits.</summary>
    public static Net Make(ImmutableArray<CircuitResult> circuits, Terminals terminals)
    {
        var ends = circuits.SelectMany(c => new[] { (End: c.Circuit.From, c.Circuit), (End: c.Circuit.To, c.Circuit) }).ToArray();
        return new Net(
            [.. ends.Where(e => !e.End.IsPoint).DistinctBy(e => e.End).Select(e => new Wired(e.End, terminals.UseOf(e.End), $"change/circuits/{e.Circuit.Id}"))],
            circuits, ends.Any(e => terminals.IsGround(e.End)), ends.Any(e => terminals.IsBreaker(e.End)));
    }
}
