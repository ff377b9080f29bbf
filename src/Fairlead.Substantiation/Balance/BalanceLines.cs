using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Model;

namespace Fairlead.Substantiation.Balance;

/// <summary>Everything the change puts into the aircraft or takes out of it, with mass and place.</summary>
/// <param name="Removed">What comes out.</param>
/// <param name="Fitted">What goes in.</param>
/// <param name="Unknown">What is left out because its mass or place cannot be told, with where it stands in the files: circuits, items and wire that come out.</param>
/// <param name="Unweighed">Small parts whose mass the catalogue does not give.</param>
internal sealed record BalanceLines(Sequence<ItemRow> Removed, Sequence<ItemRow> Fitted, ImmutableArray<(string Name, string Path)> Unknown, ImmutableArray<(string Name, string Path)> Unweighed)
{
    public static BalanceLines Of(Job job, IReadOnlyList<CircuitResult> circuits, ImmutableArray<EquipmentLine> equipment)
    {
        Sequence<ItemRow> Lines(ListAction action, IEnumerable<ItemRow?> more) => equipment.Where(e => e.Action == action && e.Mass.Si > 0)
            .Select(e => Row($"{e.Id}, {e.Name}", e.Mass, e.Place)).Concat(more.OfType<ItemRow>()).ToSequence();

        return new(
            Lines(ListAction.Removed, job.Change.Remove.OrEmpty().Select(OldWire)),
            Lines(ListAction.Fitted, [Connectors(job), Breakers(job), Wires(circuits), Contacts(job, circuits)]),
            [
                .. circuits.Where(c => c.Length is null || c.Centre is null).Select(c => (c.Circuit.Id, $"change/circuits/{c.Circuit.Id}")),
                .. equipment.Where(e => e.Action == ListAction.Removed && e.Mass.Si <= 0).Select(e => ($"{e.Id}, which comes out,", $"aircraft/equipment/{e.Id}")),
                .. job.Change.Remove.OrEmpty().Where(r => r is { Wire.Si: > 0, WirePlace: null }).Select(r => ($"the wire of {r.Id}, which has no place,", $"change/remove/{r.Id}")),
            ],
            [.. Light(job, circuits).DistinctBy(x => x.Path)]);
    }

    private static IEnumerable<(string Name, string Path)> Light(Job job, IReadOnlyList<CircuitResult> circuits) =>
    [
        .. job.Change.Fit.OrEmpty().SelectMany(f => (job.Parts.Equipment?.Find(f.Part)?.Connectors).OrEmpty()).Select(u => job.Parts.Connectors?.Find(u.Part)).OfType<ConnectorPart>()
            .Where(c => c.Mass is null).Select(c => ($"connector {c.Id}", $"parts/connectors/{c.Id}")),
        .. job.Change.Breakers.OrEmpty().Select(b => job.Parts.Breakers?.Find(b.Part)).OfType<BreakerPart>().Where(b => b.Mass is null).Select(b => ($"breaker {b.Id}", $"parts/breakers/{b.Id}")),
        .. circuits.SelectMany(c => new[] { c.FromContact, c.ToContact }).OfType<ContactPart>().Where(c => c.Mass is null).Select(c => ($"contact {c.Id}", $"parts/contacts/{c.Id}")),
    ];

    private static ItemRow? OldWire(Removal removal) =>
        removal is { Wire.Si: > 0, WirePlace: { } place } ? Row($"wire of {removal.Id}", removal.Wire, place) : null;

    private static ItemRow? Connectors(Job job) => Together("connectors", job.Change.Fit.OrEmpty().SelectMany(f =>
        (job.Parts.Equipment?.Find(f.Part)?.Connectors).OrEmpty().Select(u => (job.Parts.Connectors?.Find(u.Part)?.Mass, (Place?)f.Place))));

    private static ItemRow? Breakers(Job job) => Together("circuit breakers", job.Change.Breakers.OrEmpty().Select(b =>
        (job.Parts.Breakers?.Find(b.Part)?.Mass, job.Aircraft.Nodes?.Find(b.Node)?.Place)));

    private static ItemRow? Wires(IReadOnlyList<CircuitResult> circuits) =>
        Together("wires and cables", circuits.Select(c => ((Mass?)c.Mass, c.Centre)));

    private static ItemRow? Contacts(Job job, IReadOnlyList<CircuitResult> circuits) => Together("contacts", circuits.SelectMany(c => new[]
    {
        (c.FromContact?.Mass, End(job, c.Way?.Nodes, first: true)),
        (c.ToContact?.Mass, End(job, c.Way?.Nodes, first: false)),
    }));

    private static Place? End(Job job, ImmutableArray<string>? way, bool first) =>
        way is { IsDefaultOrEmpty: false } nodes ? job.Aircraft.Nodes?.Find(first ? nodes[0] : nodes[^1])?.Place : null;

    // One row for many small things, at the centre of them all.
    private static ItemRow? Together(string name, IEnumerable<(Mass? Mass, Place? Place)> things)
    {
        var (mass, fs, bl, wl) = (0.0, 0.0, 0.0, 0.0);
        foreach (var (thing, place) in things)
        {
            if (thing is { } m && place is { } at)
            {
                (mass, fs, bl, wl) = (mass + m.Si, fs + (m.Si * at.Fs.Si), bl + (m.Si * at.Bl.Si), wl + (m.Si * at.Wl.Si));
            }
        }

        return mass == 0 ? null : new ItemRow(name, new(mass), new(fs / mass), new Length(bl / mass), new Length(wl / mass));
    }

    private static ItemRow Row(string name, Mass mass, Place place) => new(name, mass, place.Fs, place.Bl, place.Wl);
}
