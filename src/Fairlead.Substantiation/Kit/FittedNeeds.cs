using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>What the items that go in need: themselves, their connectors with plugs for empty cavities, breakers, studs, joints.</summary>
internal static class FittedNeeds
{
    public static void Add(Job job, IReadOnlyList<CircuitResult> circuits, KitNeeds needs)
    {
        var wired = circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }).Where(e => !e.IsPoint).ToHashSet();
        var used = wired.Select(e => (e.Item, e.Connector)).ToHashSet();
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            var part = job.Parts.Equipment?.Find(item.Part);
            needs.Add(KitKind.Equipment, item.Part, part?.Name ?? item.Part, 1, item.Id, "one for each item that goes in");
            foreach (var use in (part?.Connectors).OrEmpty().Where(u => used.Contains((item.Id, u.Id))))
            {
                Connector(job, item.Id, use, wired, needs);
            }
        }

        foreach (var antenna in job.Change.Antennas.OrEmpty())
        {
            needs.Add(KitKind.Antenna, antenna.Part, job.Parts.Antennas?.Find(antenna.Part)?.Name ?? antenna.Part, 1, antenna.Id, "one for each antenna that goes in");
        }

        foreach (var breaker in job.Change.Breakers.OrEmpty())
        {
            needs.Add(KitKind.Breaker, breaker.Part, job.Parts.Breakers?.Find(breaker.Part)?.Name ?? breaker.Part, 1, breaker.Id, "one for each breaker that goes in");
        }

        foreach (var stud in job.Change.Grounds.OrEmpty())
        {
            Picked(job, ConsumableUse.Stud, "ground stud with its hardware", stud.Id, "one for each stud that goes in", needs);
        }

        Joints(job, circuits, needs);
    }

    private static void Connector(Job job, string item, ConnectorUse use, HashSet<Endpoint> wired, KitNeeds needs)
    {
        var half = job.Parts.Connectors?.Find(use.Part);
        var name = $"{item} {use.Id}";
        needs.Add(KitKind.Connector, use.Part, half?.Name ?? use.Part, 1, name, "one for each connector of a fitted item that circuits end on");
        if (half is null)
        {
            return;
        }

        if (half.Backshell != "none")
        {
            needs.Add(KitKind.Backshell, half.Backshell ?? "", job.Parts.Consumables?.Find(half.Backshell)?.Name ?? $"backshell of {half.Id}", 1, name, "one for each connector");
        }

        foreach (var cavity in half.Cavities.Where(c => !wired.Contains(new Endpoint(item, use.Id, c))))
        {
            var contact = job.Parts.Contacts?.Find(half.SpecialCavities.FirstOrDefault(s => s.Cavity == cavity)?.Contact ?? half.Contact);
            if (contact?.Plug != "none")
            {
                needs.Add(KitKind.Plug, contact?.Plug ?? "", job.Parts.Consumables?.Find(contact?.Plug)?.Name ?? $"sealing plug for cavities of {half.Id}", 1, name, "one for each empty cavity");
            }
        }
    }

    private static void Joints(Job job, IReadOnlyList<CircuitResult> circuits, KitNeeds needs)
    {
        foreach (var joint in job.Change.Joints.OrEmpty())
        {
            var wires = circuits.Where(c => c.Circuit.From == new Endpoint(joint.Id) || c.Circuit.To == new Endpoint(joint.Id)).ToArray();
            if (joint.Kind == JointKind.Splice)
            {
                WiringNeeds.Sized(job, ConsumableUse.Splice, wires.Select(w => w.Wire?.Gauge).Where(g => g is not null).Max(), "splice", 1, joint.Id, "one for each splice; its size by the thickest wire in it", needs);
            }
            else
            {
                var (use, name) = joint.Kind == JointKind.Terminal ? (ConsumableUse.Board, "terminal board") : (ConsumableUse.Disconnect, "disconnect");
                Picked(job, use, name, joint.Id, "one for each joint", needs);
            }
        }
    }

    private static void Picked(Job job, ConsumableUse use, string name, string of, string how, KitNeeds needs)
    {
        var part = job.Parts.Consumables.OrEmpty().FirstOrDefault(p => p.Use == use);
        needs.Add(KitKind.Junction, part?.Id ?? "", part?.Name ?? name, 1, of, how);
    }
}
