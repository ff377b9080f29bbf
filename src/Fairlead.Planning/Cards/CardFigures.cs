using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Cards;

/// <summary>The figures of each card, taken from the assessed job.</summary>
internal sealed class CardFigures
{
    private readonly Assessment assessment;
    private readonly Job job;
    private readonly MetalFigures metal;
    private readonly GroundFigures grounds;
    private readonly ExtraFigures extra;
    private readonly WireFigures wires;

    public CardFigures(Assessment assessment, Sequence<JobTask> tasks)
    {
        (this.assessment, job, metal) = (assessment, assessment.Job, new MetalFigures(assessment.Job));
        (grounds, extra, wires) = (new GroundFigures(assessment, tasks), new ExtraFigures(job, metal), new WireFigures(assessment));
    }

    public IEnumerable<CardTable> Of(JobTask task) => task.Card is { } card ? TestFigures.Of(card) : task.Kind switch
    {
        TaskKind.Open or TaskKind.Close => Panel(task),
        TaskKind.Tag or TaskKind.Remove => Removed(task),
        TaskKind.Mount when task.Id.StartsWith("GROUND-", StringComparison.Ordinal) => grounds.Of(task.Id["GROUND-".Length..]),
        TaskKind.Extra => extra.Of(task),
        TaskKind.Drill or TaskKind.Rivet or TaskKind.Mount => metal.Of(task),
        TaskKind.Seal => metal.Sealant(task),
        TaskKind.Cut => wires.Cuts(task),
        TaskKind.RunWire => wires.Runs(task),
        TaskKind.Terminate => wires.Contacts(task),
        TaskKind.Connect => Serials(task),
        TaskKind.Battery => Breakers(task),
        TaskKind.Protect or TaskKind.Paint => [Finish(task)],
        TaskKind.Controls or TaskKind.ZoneControls => [Controls()],
        TaskKind.Record when task.Id == "KIT" => Short(task),
        TaskKind.Record when task.Id == "APPROVAL" => [new CardTable("Data followed", ["Document", "Revision", "Found"], job.Order.Approval.Data.Select(d => Row(d.Document, d.Revision, "")).ToSequence())],
        _ => [],
    };

    private static Sequence<string> Row(params string[] cells) => cells.ToSequence();

    // One line and one signature for each panel, with its bag.
    private CardTable[] Panel(JobTask task)
    {
        if (job.Aircraft.Panels?.Find(task.Panels[0]) is not { } panel)
        {
            return [];
        }

        var open = task.Kind == TaskKind.Open;
        return
        [
            new CardTable("Bag", ["Bag", "Fasteners", "Kind", open ? "Counted out" : "Counted in", open ? "Lengths, holes" : "Spare or lost", "By"], [Row(panel.Id, NumberFormat.Text(panel.Fasteners), panel.Fastener, "", "", "")])
            {
                Note = $"Lengths: {(panel.Lengths.Length > 0 ? panel.Lengths : open ? "not stated; write on the bag which hole had which" : "not stated; those that stand on the bag")}. "
                    + (open ? panel.Controls ? "Flight controls lie behind it: they are checked after it is closed, by two." : "" : "As many go back as came out. A number that differs is a defect."),
            },
        ];
    }

    private CardTable[] Removed(JobTask task)
    {
        if (job.Change.Remove?.Find(task.Source[(task.Source.LastIndexOf('/') + 1)..]) is not { } removal)
        {
            return [];
        }

        var (item, antenna) = (job.Aircraft.Equipment?.Find(removal.Item), job.Aircraft.Antennas?.Find(removal.Item));
        var mass = item is { } i ? $"{i.Mass.As("kg")}" : "";
        return task.Kind == TaskKind.Tag ? [new CardTable("Labelled", ["Wire or cable", "Connector and contact", "Goes to", "By"], [Row(removal.Item, "", "", ""), Row("", "", "", ""), Row("", "", "", ""), Row("", "", "", ""), Row("", "", "", ""), Row("", "", "", "")])]
            : [new CardTable("Comes out", ["Item", "Name", "Mass on record", "Part number", "Serial number", "Weighed", "Condition"], [Row(removal.Item, item?.Name ?? antenna?.Name ?? "", mass, "", "", "", ""), .. removal.Wire.Si > 0 ? [Row("wires", "dead wires", $"{removal.Wire.As("kg")}", "", "", "", "")] : Array.Empty<Sequence<string>>()])];
    }

    private CardTable[] Serials(JobTask task)
    {
        if (job.Change.Fit?.Find(task.Id["CONNECT-".Length..]) is not { } item)
        {
            return [];
        }

        var part = job.Parts.Equipment?.Find(item.Part);
        return
        [
            new CardTable("Goes in", ["Item", "Part number", "Software", "Part number found", "Serial number", "Modification"], [Row(item.Id, item.Part, part?.Software ?? "", "", "", "")]),
            new CardTable("Mated, one line each", ["Connector", "Mates with", "Keying", "Coupling torque", "Torqued to", "Mated by"], (part?.Connectors).Each().Select(c => Row($"{item.Id} {c.Id}", c.Part, Keying(c.Part), Coupling(c.Part), "", "")).ToSequence()),
        ];
    }

    private string Keying(string part) => job.Parts.Connectors?.Find(part)?.Keying is { Length: > 0 } keying ? keying : "none stated";

    private string Coupling(string part) => MetalFigures.Coupling(job.Parts.Connectors?.Find(part));

    // Those that circuits of the change end on: the old ones are pulled when the battery goes off, the new ones are there when it comes on.
    private CardTable[] Breakers(JobTask task)
    {
        var ends = assessment.Circuits.SelectMany(c => new[] { c.Circuit.From.Item, c.Circuit.To.Item }).ToHashSet(StringComparer.Ordinal);
        var there = task.Id == "BATTERY-OFF" ? job.Aircraft.Breakers.Each() : job.Aircraft.Breakers.Each().Concat(job.Change.Breakers.Each());
        var rows = there.Where(b => ends.Contains(b.Id)).Select(b => Row(b.Id, b.Name, b.Bus, "", "", "")).ToSequence();
        return rows.Count == 0 ? [] : [new CardTable("Breakers of the circuits of the change", ["Breaker", "Label", "Bus", "Pulled", "Collar and tag", "By"], rows) { Note = "Beside these the breakers of what comes out, and any that hands or tools can reach." }];
    }

    private static CardTable Finish(JobTask task) => new("Record", ["Material", "Batch", "Shelf life ends", "Applied at", "Dry at", "By"],
        [Row(task.Kind == TaskKind.Protect ? "conversion coating" : "primer", "", "", "", "", ""), Row(task.Kind == TaskKind.Protect ? "primer" : "top coat", "", "", "", "", "")])
    {
        Note = $"Nothing touches it before {NumberFormat.Text(task.Kind == TaskKind.Protect ? Cure.Primer : Cure.Paint)} h, longer when it is cold: its data decide (common practice).",
    };

    // The sense that every aircraft has; what differs on this one its manual says.
    private static CardTable Controls() => new(
        "Full, free and in the correct sense", ["Moved", "Expected", "Full", "Free", "Sense", "Second person"],
        [
            Row("Wheel or stick left", "left aileron up, right aileron down", "", "", "", ""), Row("Wheel or stick right", "right aileron up, left aileron down", "", "", "", ""),
            Row("Wheel or stick back", "elevator trailing edge up", "", "", "", ""), Row("Wheel or stick forward", "elevator trailing edge down", "", "", "", ""),
            Row("Left pedal", "rudder trailing edge left", "", "", "", ""), Row("Right pedal", "rudder trailing edge right", "", "", "", ""),
            Row("Trims, each way", "as marked, surfaces and indicators agree", "", "", "", ""), Row("Flaps and other cables there", "as the aircraft's manual says", "", "", "", ""),
        ]) { Note = "Common to aeroplanes with a tail; for others, and for what is linked, the aircraft's own manual says what moves which way." };

    private CardTable[] Short(JobTask task) => task.Against.Length == 0 ? [] :
        [new CardTable("Short", ["Part", "Name", "Needed", "On hand", "Arrived"], assessment.Kit.Lines.Where(l => l.State == Substantiation.Kit.KitState.Short).Select(l => Row(l.Part, l.Name, NumberFormat.Text(Math.Round(l.Need, 2)) + " " + l.Unit, l.OnHand is { } hand ? NumberFormat.Text(Math.Round(hand, 2)) : "", "")).ToSequence())];
}
