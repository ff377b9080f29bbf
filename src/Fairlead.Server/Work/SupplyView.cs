using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Documents.Tables;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Work;

/// <summary>The cutting plan, the sleeves and the labels as they are shown.</summary>
internal static class SupplyView
{
    public static ImmutableArray<CutPlanView> Cuts(AssessedJob job) => [.. job.Assessment.Cuts.Select(View)];

    public static ImmutableArray<MarkView> Marks(AssessedJob job) => [.. job.Assessment.PrintLines.Select(l => new MarkView(l.Text, l.Copies, l.Kind, l.For))];

    private static CutPlanView View(CutPlan plan) => new(
        plan.Part, CutWords.Of(plan), string.Create(CultureInfo.InvariantCulture, $"{plan.Pieces.Count} pieces, {plan.Used.In("m"):0.0} m together"),
        [.. (plan.Plan?.Lengths ?? []).Select(l => new CutLengthView(l.Stock.Name, l.Left, l.Stock.IsNew, [.. l.Pieces.Select(i => Piece(plan.Pieces[i]))]))],
        plan.Unknown.Count == 0 && plan.Plan is { TooLong.Count: 0, NotPlaced.Count: 0 });

    private static CutPieceView Piece(CutPiece piece) => new(piece.Name, piece.Millimetres, string.Join(", ", piece.Circuits));
}
