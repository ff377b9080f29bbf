using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Cards;

/// <summary>Hole, hardware, torque, bond and finish of a ground stud that goes in.</summary>
internal sealed class GroundFigures(Assessment assessment, Sequence<JobTask> tasks)
{
    private readonly Job job = assessment.Job;

    public IEnumerable<CardTable> Of(string id)
    {
        var stud = job.Parts.Consumables.Each().FirstOrDefault(p => p.Use == ConsumableUse.Stud);
        var wires = assessment.Circuits.Sum(c => (c.Circuit.From.Item == id ? 1 : 0) + (c.Circuit.To.Item == id ? 1 : 0));
        var terminals = NumberFormat.Text(wires + (job.Change.Grounds?.Find(id)?.Terminals ?? 0));
        yield return new CardTable("Stud", ["Stud", "Part", "Name", "Thread", "Drill", "Terminals on it", "Torque of its nuts", "Torqued to"],
            [[id, stud?.Id ?? MetalFigures.NotStated, stud?.Name ?? "", MetalFigures.Said(stud?.Thread), MetalFigures.Said(stud?.Drill), terminals, MetalFigures.Tightened(stud?.Torque), ""]])
        {
            Note = $"Long enough for {terminals} terminals with their washers and nuts; no more than four belong on one stud (FAA AC 43.13-1B, 11-174 b).",
        };
        yield return new CardTable("Bare metal under it", ["Finish found", "Bared, across", "Treated with", "Bared at", "Finish restored with", "Restored at", "By"], [["", "", "", "", "", "", ""]])
        {
            Note = "Paint, primer and anodising come off where washer or terminal lies, no further; what is bared is treated, and its edge finished within 24 h, after the bond is measured (common practice).",
        };
        foreach (var line in tasks.FirstOrDefault(t => t.Id == "BOND-" + id)?.Card?.Lines ?? [])
        {
            yield return new CardTable("Bond", ["From", "To", "Limit", "Measured under"], [[line.From, line.To, line.Limits, "BOND-" + id]]) { Note = $"Limit by {line.Source}." };
        }
    }
}
