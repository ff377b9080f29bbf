using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Drawings.Harness;

/// <summary>Form boards: each harness as a whole at a scale, with the grid of its tiles, and the tiles at true size.</summary>
internal static class FormBoard
{
    private const double Margin = 40;
    private static readonly double[] Scales = [2, 2.5, 5, 7.5, 10, 12.5, 15, 17.5, 20, 25, 30, 40, 50, 75, 100, 200];

    /// <summary>The sheets with the whole of each harness, and the grid of its tiles on a paper.</summary>
    public static IReadOnlyList<Draft> Wholes(IReadOnlyList<FlatHarness> harnesses, TilePaper paper) => [.. harnesses.Select(h => Whole(h, paper))];

    private static Draft Whole(FlatHarness harness, TilePaper paper)
    {
        var canvas = new Canvas();
        var grid = TileGrid.Of(harness, paper);
        var (width, height) = (DrawingFrame.Right - DrawingFrame.Left, DrawingFrame.Bottom - DrawingFrame.Top - 10);
        var (left, top, right, bottom) = grid.Bounds;
        var scale = Scales.FirstOrDefault(s => ((right - left) / s) + Margin <= width, Scales[^1]);

        // Lanes are drawn further apart than they are, so that they can be told apart and labelled.
        var stretch = Math.Min(0.7, (height - 50) / (bottom - top));
        var origin = new Point(((DrawingFrame.Left + DrawingFrame.Right) / 2) - ((left + right) / 2 / scale), DrawingFrame.Top + 4 + (height / 2) - ((top + bottom) / 2 * stretch));
        Point At(Point p) => origin.Moved(p.X / scale, p.Y * stretch);
        var labels = new LabelPlacer(new Box(DrawingFrame.Left, DrawingFrame.Top, DrawingFrame.Right, DrawingFrame.Bottom - 6), reach: 60);
        foreach (var tile in grid.Used)
        {
            var corner = At(new(tile.Window.Left, tile.Window.Top));
            var end = At(new(Math.Min(right, tile.Window.Right), Math.Min(bottom, tile.Window.Bottom)));
            canvas.Rect(corner.X, corner.Y, end.X - corner.X, end.Y - corner.Y, new Style(Ink.Tint, 0.25));
            if (TextMeasure.Width(tile.Name, Lettering.Small) < (paper.ShownWidth - TileGrid.Overlap) / scale)
            {
                canvas.Write(corner.X + 1, corner.Y + 2.8, tile.Name, Lettering.Small, Ink.Quiet);
                labels.Avoid(new Box(corner.X, corner.Y, corner.X + 1.5 + TextMeasure.Width(tile.Name, Lettering.Small), corner.Y + 3.2));
            }
        }

        List<Label> names = [];
        foreach (var branch in harness.Branches)
        {
            Point[] line = [.. branch.Free.Select(At)];
            canvas.Add(new Polyline([.. line], new Style(branch.Kind == BranchKind.Lead ? Ink.Quiet : Ink.Line, Weight(branch.Wires))));
            labels.Avoid(line);
            var named = At(branch.Kind == BranchKind.Lead ? branch.Line[^1] : branch.Along(branch.Length / 2).At);
            names.Add(new Label(Box.Around(named, 0.8), Label(branch), Lettering.Small, branch.Kind == BranchKind.Lead ? Ink.Quiet : Ink.Line));
        }

        foreach (var (name, point) in Knots(harness))
        {
            var at = At(point);
            canvas.Circle(at.X, at.Y, 0.8, new Style(Ink.None, 0, Dash.Solid, Ink.Accent));
            labels.Avoid(Box.Around(at, 0.8));
            names.Add(new Label(Box.Around(at, 0.8), name, Lettering.Small, Ink.Accent, Bold: true));
        }

        canvas.Add(labels.Place(names.OrderByDescending(n => n.Bold), out var leftOut));
        var missing = leftOut.Count == 0 ? "" : $" {NumberFormat.Text(leftOut.Count)} names found no room here: see the tiles.";
        canvas.Write(
            DrawingFrame.Left, DrawingFrame.Bottom, "Lengths along the way, as in the raceways; slack is added when cutting. Leads are terminations and loops. Lanes are drawn apart; "
            + $"the grid shows the {paper.Name} tiles at true size.{missing}", Lettering.Small, Ink.Quiet);
        return new Draft(
            $"formboard-{harness.Bundle}", $"Form board of bundle {harness.Bundle}", string.Join("; ", harness.Branches.Select(Label)), $"1:{NumberFormat.Text(scale)} along", canvas);
    }

    /// <summary>The points where branches part, with their places on the board.</summary>
    public static IEnumerable<(string Name, Point At)> Knots(FlatHarness harness) => harness.Branches.Select(b => (b.From, b.Line[0]))
        .Concat(harness.Branches.Where(b => b.Kind == BranchKind.Segment).Select(b => (b.To, b.Line[^1]))).Distinct();

    /// <summary>What is written at a branch.</summary>
    public static string Label(FlatBranch branch)
    {
        var length = Math.Round(branch.Length).ToString(CultureInfo.InvariantCulture) + " mm";
        var wires = branch.Wires == 1 ? "1 wire" : $"{NumberFormat.Text(branch.Wires)} wires";
        return branch.Kind switch
        {
            BranchKind.Lead => $"{branch.Name}, {length}",
            BranchKind.Opened => $"{branch.Name} {length}, meets {branch.To}, {wires}",
            _ => $"{branch.Name} {length}, {wires}",
        };
    }

    /// <summary>A thick bundle looks thick.</summary>
    public static double Weight(int wires) => Math.Min(1.4, 0.25 + (0.12 * Math.Sqrt(wires)));
}
