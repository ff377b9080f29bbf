using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Planning.Cards;

/// <summary>Wires to cut, ways to run them and contacts to insert.</summary>
internal sealed class WireFigures(Assessment assessment)
{
    private readonly Job job = assessment.Job;
    private readonly Dictionary<string, string> marks = assessment.Marks.Where(m => m.Carrier != MarkCarrier.Jacket).ToDictionary(m => m.Id, m => m.Text, StringComparer.Ordinal);

    // Where each circuit's piece is cut from.
    private readonly Dictionary<string, string> reels = assessment.Cuts.Where(c => c.Plan is not null)
        .SelectMany(c => c.Plan!.Lengths.SelectMany(l => l.Pieces.SelectMany(p => c.Pieces[p].Circuits.Select(id => (id, l.Stock.Name)))))
        .GroupBy(x => x.id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Name, StringComparer.Ordinal);

    private readonly Dictionary<string, WireEnd> ends = Ends.Of(assessment).ToDictionary(e => e.Name, StringComparer.Ordinal);

    public IEnumerable<CardTable> Cuts(JobTask task)
    {
        var bundle = task.Id["CUT-".Length..];
        foreach (var part in assessment.Circuits.Where(c => c.Circuit.Bundle == bundle).GroupBy(c => c.Part, StringComparer.Ordinal))
        {
            yield return new CardTable(part.Key, ["Mark", "Circuit", "Cable", "Cut, in", "Cut, mm", "From", "Cut by"],
                part.Select(c => Row(Mark(c), c.Circuit.Id, c.Circuit.Cable, c.Cut is { } cut ? NumberFormat.Text(Math.Ceiling(cut.In("in") * 10) / 10) : "not known", c.Cut is { } mm ? NumberFormat.Text(Math.Ceiling(mm.In("mm"))) : "", reels.GetValueOrDefault(c.Circuit.Id, ""), "")).ToSequence())
            {
                Note = "Circuits of one cable are one piece, as long as the longest of them.",
            };
        }
    }

    public IEnumerable<CardTable> Runs(JobTask task)
    {
        var circuits = assessment.Circuits.Where(c => task.Id.StartsWith($"RUN-{c.Circuit.Bundle}-", StringComparison.Ordinal)).ToArray();
        var segments = circuits.SelectMany(c => c.Way?.Segments ?? []).Distinct(StringComparer.Ordinal).Select(s => job.Aircraft.Segments?.Find(s)).OfType<RacewaySegment>()
            .Where(s => Ways.WorkedIn(job.Aircraft, s) == task.Zone).ToArray();
        yield return new CardTable("Way", ["Segment", "From", "To", "Clamps", "Panels", "Wires", "Done"],
            segments.Select(s => Row(s.Id, s.From, s.To, NumberFormat.Text(s.Clamps), string.Join(' ', s.Panels), NumberFormat.Text(circuits.Count(c => c.Way?.Segments.Contains(s.Id) == true)), "")).ToSequence());
        yield return new CardTable("Wires through this zone", ["Mark", "Wire", "Signal", "From", "To"],
            circuits.Where(c => c.Way is { } way && segments.Any(s => way.Segments.Contains(s.Id))).Select(c => Row(Mark(c), c.Part, c.Circuit.Signal, c.Circuit.From.ToString(), c.Circuit.To.ToString())).ToSequence());
    }

    public IEnumerable<CardTable> Contacts(JobTask task)
    {
        if (!ends.TryGetValue(task.Id["TERM-".Length..], out var end))
        {
            yield break;
        }

        var rows = end.Circuits.SelectMany(c => Here(c, end)).ToArray();
        var coax = rows.Where(r => job.Parts.Coax?.Find(r.Circuit.Part) is not null).ToArray();
        var points = rows.Except(coax).Where(r => r.Here.IsPoint).ToArray();
        var plain = rows.Except(coax).Except(points).ToArray();
        foreach (var table in Terminals(points, end))
        {
            yield return table;
        }

        if (plain.Length > 0)
        {
            yield return new CardTable("Contacts", ["Cavity", "Mark", "Wire", "Signal", "Contact", "Crimp tool", "Positioner", "Insertion", "Seated"],
                plain.Select(r => Row(r.Here.Contact, Mark(r.Circuit), r.Circuit.Part, r.Circuit.Circuit.Signal, r.Contact?.Id ?? "", r.Contact?.Tool ?? "", r.Contact?.Positioner ?? "", r.Contact?.Insertion ?? "", "")).ToSequence())
            {
                Note = Shields(plain.Select(r => r.Circuit), end),
            };
            yield return new CardTable("Crimp samples", ["Wire", "Contact", "Tool", "Positioner", "Pull", "By"],
                plain.GroupBy(r => (r.Circuit.Part, r.Contact?.Id, r.Contact?.Tool, r.Contact?.Positioner)).Select(g => Row(g.Key.Part, g.Key.Id ?? "", g.Key.Tool ?? "", g.Key.Positioner ?? "", "", "")).ToSequence());
        }

        if (coax.Length > 0)
        {
            yield return new CardTable("Coaxial lines", ["Connector", "Mark", "Cable", "Length, in", "Crimp tool", "Die", "Coupling torque"],
                coax.Select(r => Row(r.Here.ToString(), Mark(r.Circuit), r.Circuit.Part, r.Circuit.Length is { } length ? NumberFormat.Text(Math.Round(length.In("in"), 1)) : "not known", r.Contact?.Tool ?? "", r.Contact?.Positioner ?? "", MetalFigures.Coupling(Half(r.Here)))).ToSequence())
            {
                Note = "Surplus is cut off, never coiled; a matched set is cut as a set.",
            };
        }
    }

    // What is crimped on at a stud, breaker, board or splice, as the kit picks it by the gauge of the wire.
    private IEnumerable<CardTable> Terminals((CircuitResult Circuit, Endpoint Here, ContactPart? Contact)[] points, WireEnd end)
    {
        if (points.Length == 0)
        {
            yield break;
        }

        var joint = job.Change.Joints?.Find(end.Item)?.Kind;
        var use = joint switch { JointKind.Splice => ConsumableUse.Splice, JointKind.Disconnect => ConsumableUse.Disconnect, _ => ConsumableUse.Terminal };
        var crimped = points.Select(p => (p.Circuit, Part: job.Parts.Consumables.Each().FirstOrDefault(c => c.Use == use && p.Circuit.Wire?.Gauge is { } g && c.Takes(g)))).ToArray();
        var stud = job.Change.Grounds?.Find(end.Item) is null ? null : job.Parts.Consumables.Each().FirstOrDefault(c => c.Use == ConsumableUse.Stud)?.Torque;
        var torque = use == ConsumableUse.Terminal ? MetalFigures.Tightened(stud) : "none";
        yield return new CardTable($"{(use == ConsumableUse.Terminal ? "Terminals" : "Joints")} at {end.Item}", ["Mark", "Wire", "Signal", "Crimped on", "Crimp tool", "Die", "Torque of its nut", "Seated"],
            crimped.Select(e => Row(Mark(e.Circuit), e.Circuit.Part, e.Circuit.Circuit.Signal, e.Part is { } part ? $"{part.Id}, {part.Name}" : MetalFigures.NotStated, MetalFigures.Said(e.Part?.Tool), MetalFigures.Said(e.Part?.Die), torque, "")).ToSequence())
        {
            Note = Shields(crimped.Select(e => e.Circuit), end),
        };
        yield return new CardTable("Crimp samples", ["Wire", "Crimped on", "Tool", "Die", "Pull", "By"],
            crimped.GroupBy(e => (Wire: e.Circuit.Part, e.Part)).Select(g => Row(g.Key.Wire, g.Key.Part?.Id ?? MetalFigures.NotStated, MetalFigures.Said(g.Key.Part?.Tool), MetalFigures.Said(g.Key.Part?.Die), "", "")).ToSequence());
    }

    // A strap from one contact to another of the same connector ends here twice.
    private static IEnumerable<(CircuitResult Circuit, Endpoint Here, ContactPart? Contact)> Here(CircuitResult c, WireEnd end)
    {
        if (Named(c.Circuit.From) == end.Name)
        {
            yield return (c, c.Circuit.From, c.FromContact);
        }

        if (Named(c.Circuit.To) == end.Name)
        {
            yield return (c, c.Circuit.To, c.ToContact);
        }
    }

    private static string Named(Endpoint end) => end.IsPoint ? end.Item : $"{end.Item}-{end.Connector}";

    private static string Shields(IEnumerable<CircuitResult> circuits, WireEnd end)
    {
        var grounded = circuits.Where(c => c.Circuit.Shield == ShieldEnds.Both || (c.Circuit.Shield == ShieldEnds.From && Named(c.Circuit.From) == end.Name) || (c.Circuit.Shield == ShieldEnds.To && Named(c.Circuit.To) == end.Name));
        var names = grounded.Select(c => c.Circuit.Cable.Length > 0 ? c.Circuit.Cable : c.Circuit.Id).Distinct(StringComparer.Ordinal).ToArray();
        return names.Length == 0 ? "No shield is grounded here." : $"Shields grounded here: {string.Join(", ", names)}. Pigtails as short as can be.";
    }

    private static Sequence<string> Row(params string[] cells) => cells.ToSequence();

    // The harness half at an end, of an item or of an antenna; null where the parts do not say.
    private ConnectorPart? Half(Endpoint end)
    {
        var part = job.Change.Fit?.Find(end.Item)?.Part ?? job.Aircraft.Equipment?.Find(end.Item)?.Part;
        return job.Parts.Connectors?.Find(job.Parts.Equipment?.Find(part)?.Connectors?.Find(end.Connector)?.Part);
    }

    private string Mark(CircuitResult circuit) => marks.GetValueOrDefault(circuit.Circuit.Id, circuit.Circuit.Id);
}
