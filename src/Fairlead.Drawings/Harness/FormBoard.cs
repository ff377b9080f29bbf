using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Drawings.Harness;

/// <summary>Form boards: each harness as a whole at a scale, with the grid of its tiles, and the tiles at true size.</summary>
internal static class FormBoard
{
    private const double Margin = 40;
    private static readonly double[] Scales = [2, 2.5, 5, 10, 15, 20, 25, 50, 100, 200];

    /// <summary>The sheets with the whole of each harness.</summary>
    public static IReadOnlyList<Draft> Wholes(IReadOnlyList<FlatHarness> harnesses) => [.. harnesses.Select(Whole)];

    /// <summary>The tiles of all harnesses.</summary>
    public static IEnumerable<Drawing> TilesOf(IReadOnlyList<FlatHarness> harnesses, DrawingMarks marks) => harnesses.SelectMany(h => TileGrid.Of(h).Used.Select(t => TilePainter.Paint(h, t, marks)));

    private static Draft Whole(FlatHarness harness)
    {
        var canvas = new Canvas();
        var grid = TileGrid.Of(harness);
        var (width, height) = (DrawingFrame.Right - DrawingFrame.Left, DrawingFrame.Bottom - DrawingFrame.Top - 10);
        var (left, top, right, bottom) = grid.Bounds;
        var scale = Scales.FirstOrDefault(s => (right - left + (2 * Margin)) / s <= width, Scales[^1]);

        // Lanes are drawn further apart than they are, so that they can be told apart and labelled.
        var stretch = Math.Min(0.7, (height - 50) / (bottom - top));
        var origin = new Point(((DrawingFrame.Left + DrawingFrame.Right) / 2) - ((left + right) / 2 / scale), DrawingFrame.Top + 4 + (height / 2) - ((top + bottom) / 2 * stretch));
        Point At(Point p) => origin.Moved(p.X / scale, p.Y * stretch);
        foreach (var tile in grid.Used)
        {
            var corner = At(tile.Corner);
            var end = At(new(Math.Min(right, tile.Corner.X + TileGrid.Width), Math.Min(bottom, tile.Corner.Y + TileGrid.Height)));
            canvas.Rect(corner.X, corner.Y, end.X - corner.X, end.Y - corner.Y, new Style(Ink.Tint, 0.25));
            canvas.Write(corner.X + 1, corner.Y + 2.6, tile.Name, 2, Ink.Quiet);
        }

        var labels = new LabelPlacer(new Box(DrawingFrame.Left, DrawingFrame.Top, DrawingFrame.Right, DrawingFrame.Bottom - 6), reach: 60);
        foreach (var tile in grid.Used)
        {
            var corner = At(tile.Corner);
            labels.Avoid(new Box(corner.X, corner.Y, corner.X + 1.5 + TextMeasure.Width(tile.Name, 2), corner.Y + 3));
        }

        foreach (var branch in harness.Branches)
        {
            Point[] line = [.. branch.Free.Select(At)];
            canvas.Add(new Polyline([.. line], new Style(branch.Kind == BranchKind.Lead ? Ink.Quiet : Ink.Line, Weight(branch.Wires))));
            labels.Avoid(line);
        }

        foreach (var branch in harness.Branches.OrderBy(b => b.Kind))
        {
            canvas.Add(labels.Place(At(branch.Kind == BranchKind.Lead ? branch.Line[^1] : branch.Along(branch.Length / 2).At), Label(branch), 2.2, branch.Kind == BranchKind.Lead ? Ink.Quiet : Ink.Line));
        }

        foreach (var (name, point) in Knots(harness))
        {
            var at = At(point);
            canvas.Circle(at.X, at.Y, 0.8, new Style(Ink.None, 0, Dash.Solid, Ink.Accent));
            canvas.Add(labels.Place(at, name, 2.4, Ink.Accent, bold: true));
        }

        canvas.Write(DrawingFrame.Left, DrawingFrame.Bottom, "Lengths in mm along the way, as in the raceways; slack is added when cutting. Leads are termination and service loop. Lanes are drawn apart; the grid shows the tiles at true size.", 2.3, Ink.Quiet);
        return new Draft(
            $"formboard-{harness.Bundle}", $"Form board of bundle {harness.Bundle}", string.Join("; ", harness.Branches.Select(Label)), $"1:{NumberFormat.Text(scale)} along", canvas);
    }

    /// <summary>The points where branches part, with their places on the board.</summary>
    public static IEnumerable<(string Name, Point At)> Knots(FlatHarness harness) => harness.Branches.Select(b => (b.From, b.Line[0]))
        .Concat(harness.Branches.Where(b => b.Kind == BranchKind.Segment).Select(b => (b.To, b.Line[^1]))).Distinct();

    /// <summary>What is written at a branch.</summary>
    public static string Label(FlatBranch branch)
    {
        var length = Math.Round(branch.Length).ToString(CultureInfo.InvariantCulture);
        return branch.Kind switch
        {
            BranchKind.Lead => $"{branch.Name}, {length}",
            BranchKind.Opened => $"{branch.Name} {length}, meets {branch.To}, {NumberFormat.Text(branch.Wires)} w",
            _ => $"{branch.Name} {length}, {NumberFormat.Text(branch.Wires)} w",
        };
    }

    /// <summary>A thick bundle looks thick.</summary>
    public static double Weight(int wires) => Math.Min(1.4, 0.25 + (0.12 * Math.Sqrt(wires)));
}
