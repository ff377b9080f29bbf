using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Cards;

/// <summary>What a task that the job itself names takes, with the figures of those parts, what they go into, and the data it is done by.</summary>
internal sealed class ExtraFigures(Job job, MetalFigures metal)
{
    public IEnumerable<CardTable> Of(JobTask task)
    {
        var takes = job.Change.Tasks?.Find(task.Id["EXTRA-".Length..])?.Takes ?? [];
        if (takes.Count > 0)
        {
            yield return new CardTable("Takes", ["Part", "Name", "Quantity", "Batch", "Taken"], takes.Select(t => (Sequence<string>)[t.Part, Name(t.Part), Quantity(t), "", ""]).ToSequence());
        }

        foreach (var table in takes.SelectMany(Figures).Concat(metal.Sealant(task)))
        {
            yield return table;
        }

        var structures = takes.Any(t => IsFixing(t.Part)) ? job.Aircraft.Structures.Each().Where(s => s.Zone == task.Zone).ToArray() : [];
        if (structures.Length > 0)
        {
            yield return new CardTable($"Structure of zone {task.Zone}", ["Structure", "Name", "Material", "Thickness"], structures.Select(s => (Sequence<string>)[s.Id, s.Name, s.Material, MetalFigures.Both(s.Thickness)]).ToSequence());
        }

        yield return new CardTable("Data followed", ["Document", "Revision", "Paragraph"], job.Order.Approval.Data.Select(d => (Sequence<string>)[d.Document, d.Revision, ""]).ToSequence())
        {
            Note = "The job names this task itself: places, pitch and limits are those of its data.",
        };
    }

    private bool IsFixing(string part) => job.Parts.Rivets?.Find(part) is not null || job.Parts.Fasteners?.Find(part) is not null || job.Parts.AnchorNuts?.Find(part) is not null;

    private IEnumerable<CardTable> Figures(Take take)
    {
        if (job.Parts.Rivets?.Find(take.Part) is { } rivet)
        {
            yield return MetalFigures.RivetTable("Rivets", rivet, NumberFormat.Text(take.Quantity), "by the data");
        }

        if (job.Parts.Fasteners?.Find(take.Part) is { } screw)
        {
            yield return new CardTable("Fasteners", ["Screw", "Count", "Diameter", "Length", "Grip", "Drill", "Countersink", "Torqued to"],
                [[screw.Id, NumberFormat.Text(take.Quantity), MetalFigures.Both(screw.Diameter), Said(screw.Length), Said(screw.Grip), MetalFigures.Said(screw.Drill), MetalFigures.Said(screw.Countersink), ""]]);
        }

        if (job.Parts.AnchorNuts?.Find(take.Part) is { } nut)
        {
            yield return new CardTable("Anchor nuts", ["Nut", "Count", "Thread", "Rivets", "Apart", "Torque, greatest"],
                [[nut.Id, NumberFormat.Text(take.Quantity), MetalFigures.Both(nut.Thread), MetalFigures.Said(nut.Rivet), Said(nut.RivetSpacing), MetalFigures.Tightened(nut.Torque)]]);
        }
    }

    private static string Said(Length? length) => length is { } known ? MetalFigures.Both(known) : MetalFigures.NotStated;

    private string Quantity(Take take) => $"{NumberFormat.Text(take.Quantity)} {job.Parts.Consumables?.Find(take.Part)?.Unit ?? (job.Parts.Sealants?.Find(take.Part) is null ? "each" : "pack")}";

    private string Name(string part) => job.Parts.Consumables?.Find(part)?.Name ?? job.Parts.Rivets?.Find(part)?.Name ?? job.Parts.Fasteners?.Find(part)?.Name
        ?? job.Parts.AnchorNuts?.Find(part)?.Name ?? job.Parts.Clamps?.Find(part)?.Name ?? job.Parts.Sealants?.Find(part)?.Name ?? "";
}
