using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Documents.Tables;

/// <summary>The kit, the cutting plan and the print file as tables.</summary>
public static class SupplyTables
{
    /// <summary>The kit, a line each. The verdict stands in every row, so that no part of the table is read without it.</summary>
    public static DataTable Kit(KitList kit)
    {
        ArgumentNullException.ThrowIfNull(kit);
        return new(
            "Kit",
            ["Kind", "Part", "Name", "Need", "Unit", "Used", "Spare", "On hand", "Shortage", "State", "Needed on", "Order by", "For", "How", "Batches", "Remark", "Verdict of the kit"],
            kit.Lines.Select(l => (Sequence<DataCell>)
            [
                Words.Kebab(l.Kind.ToString()).Replace('-', ' '), l.PartText, l.Name, Rounded(l.Need), l.Unit, Rounded(l.Used), Rounded(l.Spare), l.OnHand is { } hand ? Rounded(hand) : "", Rounded(l.Shortage),
                State(l.State), l.NeededOn is { } on ? Figures.Day(on) : "", l.OrderBy is { } day ? Figures.Day(day) : "", string.Join("; ", l.For), l.How, string.Join("; ", l.Batches), l.Remark, kit.Verdict,
            ]).ToSequence());
    }

    /// <summary>Sleeves and labels to print, a text each with its number of copies.</summary>
    /// <param name="lines">What is printed.</param>
    /// <param name="job">Number of the job, for one more column with the text of a QR code: job, mark and what it marks, with both ends for a wire. Without it there is no such column.</param>
    public static DataTable Print(ImmutableArray<PrintLine> lines, string? job = null) => new(
        "Sleeves and labels", ["Text", "Copies", "Kind", "For", "Diameter, in", "At, in from the first end", .. job is null ? [] : (string[])["QR code"]],
        lines.Select(l => (Sequence<DataCell>)
        [
            l.Text, l.Copies, l.Kind, l.For, l.Diameter is { } d ? Math.Round(d.In("in"), 4) : "", string.Join("; ", l.Places.Select(p => Figures.Fixed(p, "in", 1))), .. job is null ? [] : (DataCell[])[$"{job}; {l.Text}; {l.For}"],
        ]).ToSequence());

    /// <summary>The cutting plan, a piece each, in the order of cutting.</summary>
    public static DataTable Cuts(ImmutableArray<CutPlan> plans) => new(
        "Cutting plan", ["Part", "From", "Piece", "For", "Length, mm", "Left on it, mm", "Note"],
        plans.SelectMany(Cuts).ToSequence());

    /// <summary>The state of a line in words.</summary>
    public static string State(KitState state) => state switch
    {
        KitState.Covered => "at hand",
        KitState.StockUnknown => "stock not told",
        KitState.NotStated => "not stated",
        KitState.Short => "short",
        _ => "calibration ends",
    };

    private static IEnumerable<Sequence<DataCell>> Cuts(CutPlan plan)
    {
        DataCell[] Piece(CutPiece p) => [p.Name, string.Join("; ", p.Circuits), p.Millimetres];
        var cut = plan.Plan?.Lengths ?? [];
        foreach (var length in cut)
        {
            foreach (var i in length.Pieces)
            {
                yield return [plan.Part, length.Stock.Name, .. Piece(plan.Pieces[i]), i == length.Pieces[^1] ? length.Left : "", length.Stock.IsNew ? "" : "remnant"];
            }
        }

        var placed = cut.SelectMany(l => l.Pieces).ToHashSet();
        foreach (var i in Enumerable.Range(0, plan.Pieces.Count).Where(i => !placed.Contains(i)))
        {
            yield return [plan.Part, "", .. Piece(plan.Pieces[i]), "", plan.Plan is null ? "stock not told" : plan.Plan.TooLong.Contains(i) ? "longer than any reel" : "stock does not suffice"];
        }

        foreach (var id in plan.Unknown)
        {
            yield return [plan.Part, "", id, id, "", "", "length not known"];
        }
    }

    private static double Rounded(double value) => Math.Round(value, 3);
}
