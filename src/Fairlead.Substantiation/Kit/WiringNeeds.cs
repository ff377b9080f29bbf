using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Substantiation.Kit;

/// <summary>What the circuits need: wire, contacts, plugs, terminals, shield terminations.</summary>
internal static class WiringNeeds
{
    public static void Add(Job job, IReadOnlyList<CircuitResult> circuits, ImmutableArray<CutPlan> cuts, KitNeeds needs)
    {
        foreach (var cut in cuts)
        {
            foreach (var piece in cut.Pieces)
            {
                needs.Add(KitKind.Wire, cut.Part, NameOf(job, cut.Part), piece.Millimetres / 1000.0, string.Join('+', piece.Circuits), "sum of the cut lengths", "m");
            }

            foreach (var id in cut.Unknown)
            {
                needs.Add(KitKind.Wire, "", $"length of {cut.Part}", 0, id, "the circuit has no length", "m");
            }
        }

        foreach (var c in circuits)
        {
            if (c.Part.Length == 0)
            {
                needs.Add(KitKind.Wire, "", "wire of a circuit", 0, c.Circuit.Id, "no wire serves", "m");
            }

            End(job, c, c.Circuit.From, c.FromContact, needs);
            End(job, c, c.Circuit.To, c.ToContact, needs);
        }

        Shields(job, circuits, needs);
    }

    /// <summary>The name of a wire, cable or coax.</summary>
    public static string NameOf(Job job, string part) =>
        job.Parts.Wires?.Find(part)?.Name ?? job.Parts.Cables?.Find(part)?.Name ?? job.Parts.Coax?.Find(part)?.Name ?? part;

    private static void End(Job job, CircuitResult c, Endpoint end, ContactPart? contact, KitNeeds needs)
    {
        var id = c.Circuit.Id;
        if (contact is not null)
        {
            needs.Add(KitKind.Contact, contact.Id, $"Contact size {contact.Size}", 1, id, "one for each end of a circuit in a connector");
            return;
        }

        if (!end.IsPoint)
        {
            needs.Add(KitKind.Contact, "", "contact of a connector", 1, id, "the catalogue does not name the connector or its contact");
            return;
        }

        var antenna = job.Change.Antennas?.Find(end.Item)?.Part ?? job.Aircraft.Antennas?.Find(end.Item)?.Part;
        if (job.Change.Antennas?.Contains(end.Item) == true || job.Aircraft.Antennas?.Contains(end.Item) == true)
        {
            AntennaPlug(job, job.Parts.Antennas?.Find(antenna), id, needs);
        }
        else if (job.Change.Joints?.Find(end.Item) is not { Kind: JointKind.Splice or JointKind.Disconnect })
        {
            Sized(job, ConsumableUse.Terminal, c.Wire?.Gauge, "terminal", 1, id, "one for each end of a circuit on a breaker, stud or terminal board; stud size by the hardware there", needs);
        }
    }

    private static void AntennaPlug(Job job, AntennaPart? antenna, string id, KitNeeds needs)
    {
        var plug = job.Parts.Connectors?.Find(antenna?.Plug);
        needs.Add(KitKind.Connector, plug?.Id ?? "", plug?.Name ?? $"plug that mates with antenna {antenna?.Id ?? "without a part"}", 1, id, "one for each coaxial cable on an antenna");
        if (job.Parts.Contacts?.Find(plug?.Contact) is { } contact)
        {
            needs.Add(KitKind.Contact, contact.Id, $"Contact size {contact.Size}", 1, id, "one for each end of a circuit in a connector");
        }
    }

    /// <summary>Something that is picked by its use and the gauge of the wire.</summary>
    public static void Sized(Job job, ConsumableUse use, Gauge? gauge, string name, double count, string of, string how, KitNeeds needs)
    {
        var part = job.Parts.Consumables.OrEmpty().FirstOrDefault(p => p.Use == use && gauge is { } g && p.Takes(g));
        needs.Add(use == ConsumableUse.Shield ? KitKind.Shield : KitKind.Terminal, part?.Id ?? "", part?.Name ?? $"{name}{(gauge is { } size ? $" for AWG {size}" : "")}", count, of, how);
    }

    // The cores of one cable share a shield.
    private static void Shields(Job job, IReadOnlyList<CircuitResult> circuits, KitNeeds needs)
    {
        var ends = circuits.Where(c => c.Circuit.Shield != ShieldEnds.None && job.Parts.Cables?.Find(c.Part) is { Shielded: true })
            .DistinctBy(c => c.Circuit.Cable.Length > 0 ? (c.Circuit.Cable, "") : ("", c.Circuit.Id));
        foreach (var c in ends)
        {
            var diameter = job.Parts.Cables!.Find(c.Part)!.Diameter;
            var part = job.Parts.Consumables.OrEmpty().FirstOrDefault(p => p.Use == ConsumableUse.Shield && Around(p, diameter));
            needs.Add(KitKind.Shield, part?.Id ?? "", part?.Name ?? $"shield termination for a cable of {diameter.As("in")}", c.Circuit.Shield == ShieldEnds.Both ? 2 : 1,
                c.Circuit.Cable.Length > 0 ? c.Circuit.Cable : c.Circuit.Id, "one for each end at which a shield is grounded");
        }
    }

    /// <summary>Whether a sleeve, tie or the like goes around a diameter.</summary>
    public static bool Around(ConsumablePart part, Length diameter) => !(part.From > diameter) && !(part.To < diameter);
}
