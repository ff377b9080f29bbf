using Fairlead.Calculations;
using Fairlead.Documents.Tables;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Documents;

/// <summary>The cutting plan: which piece from which reel or remnant.</summary>
internal static class CuttingSection
{
    public static IEnumerable<Block> Of(Assessment assessment)
    {
        yield return PageBreak.Soft;
        yield return new Heading(1, "Cutting plan");
        if (assessment.Cuts.IsEmpty)
        {
            yield return new Paragraph("There is nothing to cut.");
            yield break;
        }

        yield return new Paragraph("Lengths are cut lengths in millimetres, rounded up, in the order of cutting. As few new reels as can be are cut into, and then as little as can be is left over as scrap. Nothing is spliced unless the change allows it.", Voice.Remark);
        foreach (var plan in assessment.Cuts)
        {
            yield return new Heading(2, $"{plan.Part}: {Figures.Count(plan.Pieces.Count, "piece", "pieces")}, {Figures.With(plan.Used, "m", 1)}", Brief: plan.Part);
            yield return new Paragraph(CutWords.Of(plan));
            if (plan.Plan is { Lengths.Count: > 0 } cut)
            {
                yield return new Table([new("From"), new("Pieces"), new("Left, mm", Right: true)], cut.Lengths.Select(l => Row(plan, l)).ToSequence());
            }
        }
    }

    private static Sequence<Cell> Row(CutPlan plan, CutLength l) =>
    [
        new Cell(l.Stock.Name, l.Stock.IsNew ? "" : "remnant", Strong: true), string.Join(", ", l.Pieces.Select(i => $"{plan.Pieces[i].Name} {NumberFormat.Text(plan.Pieces[i].Millimetres)}")), NumberFormat.Text(l.Left),
    ];
}
