using Fairlead.Calculations;

namespace Fairlead.Drawings.Harness;

/// <summary>One tile at true size on A3: branches, ties, clamps, register marks to join it with its neighbours, and a scale to check the print with.</summary>
internal static class TilePainter
{
    private const double Left = 12;
    private const double Top = 12;
    private const double Page = 420;
    private const double PageHeight = 297;
    private const double TieFromKnot = 15;
    private const double TieFromTrunk = 8;
    private const double Size = 3;

    public static Drawing Paint(FlatHarness harness, Tile tile, DrawingMarks marks)
    {
        var canvas = new Canvas();
        Point At(Point p) => new(p.X - tile.Corner.X + Left, p.Y - tile.Corner.Y + Top);
        var window = new Box(Left, Top, Left + TileGrid.Width, Top + TileGrid.Height);
        canvas.Rect(Left, Top, TileGrid.Width, TileGrid.Height, new Style(Ink.Quiet, 0.12));
        Register(canvas, window);
        var labels = new LabelPlacer(window.Grown(-16), reach: 60);
        foreach (var branch in harness.Branches)
        {
            foreach (var (from, to) in TileGrid.Inside(branch.Free, tile))
            {
                canvas.Add(new Line(At(from), At(to), new Style(branch.Kind == BranchKind.Lead ? Ink.Quiet : Ink.Line, FormBoard.Weight(branch.Wires) * 1.6)));
                labels.Avoid([At(from), At(to)]);
            }

            Marks(canvas, branch, window, At);
        }

        Names(canvas, harness, tile, window, labels, At);
        Foot(canvas, harness, tile, marks);
        var name = $"formboard-{harness.Bundle}-{tile.Name}";
        return new Drawing(DrawingKind.FormBoard, name, new Picture(Page, PageHeight, $"Form board of bundle {harness.Bundle}, tile {tile.Name}", $"Tile {tile.Name} of the form board of bundle {harness.Bundle} at true size.", canvas.Shapes), Tile: true);
    }

    private static void Names(Canvas canvas, FlatHarness harness, Tile tile, Box window, LabelPlacer labels, Func<Point, Point> at)
    {
        foreach (var branch in harness.Branches)
        {
            if (TileGrid.Inside(branch.Line, tile).Select(p => (From: at(p.From), To: at(p.To))).Where(p => Math.Abs(p.From.X - p.To.X) > 30 || branch.Kind == BranchKind.Lead)
                .OrderByDescending(p => Math.Abs(p.From.X - p.To.X)).Select(p => ((Point, Point)?)p).FirstOrDefault() is { } piece)
            {
                var (from, to) = piece;
                canvas.Add(labels.Place(new((from.X + to.X) / 2, (from.Y + to.Y) / 2), FormBoard.Label(branch), Size));
            }
        }

        foreach (var (name, point) in FormBoard.Knots(harness).Where(k => window.Contains(Box.Around(at(k.At), 1))))
        {
            canvas.Circle(at(point).X, at(point).Y, 1.6, new Style(Ink.None, 0, Dash.Solid, Ink.Accent));
            canvas.Add(labels.Place(at(point), name, 3.4, Ink.Accent, bold: true));
        }
    }

    // Ties stand on a branch at either side of each parting point; clamps stand evenly along the segment.
    private static void Marks(Canvas canvas, FlatBranch branch, Box window, Func<Point, Point> at)
    {
        foreach (var distance in Ties(branch))
        {
            var (p, level) = branch.Along(distance);
            if (window.Contains(Box.Around(at(p), 2)))
            {
                foreach (var side in new[] { -0.8, 0.8 })
                {
                    canvas.Line(
                        at(p).X + (level ? side : -2.2), at(p).Y + (level ? -2.2 : side), at(p).X + (level ? side : 2.2), at(p).Y + (level ? 2.2 : side), new Style(Ink.Accent, 0.35));
                }
            }
        }

        for (var i = 0; i < branch.Clamps; i++)
        {
            var (p, _) = branch.Along((i + 0.5) / branch.Clamps * branch.Length);
            if (window.Contains(Box.Around(at(p), 3)))
            {
                canvas.Rect(at(p).X - 2.5, at(p).Y - 2.5, 5, 5, new Style(Width: 0.35));
            }
        }
    }

    private static double[] Ties(FlatBranch branch)
    {
        var first = branch.Line.Count > 2 ? branch.Line[1].X - branch.Line[0].X + TieFromTrunk : TieFromKnot;
        return branch.Kind == BranchKind.Segment && branch.Length > first + (2 * TieFromKnot) ? [first, branch.Length - TieFromKnot] : [Math.Min(first, branch.Length / 2)];
    }

    private static void Register(Canvas canvas, Box window)
    {
        const double inset = TileGrid.Overlap / 2;
        foreach (var x in new[] { window.Left + inset, window.Right - inset })
        {
            foreach (var y in new[] { window.Top + inset, window.Bottom - inset })
            {
                canvas.Line(x - 5, y, x + 5, y, Style.Thin);
                canvas.Line(x, y - 5, x, y + 5, Style.Thin);
                canvas.Circle(x, y, 2.5, Style.Thin);
            }
        }
    }

    private static void Foot(Canvas canvas, FlatHarness harness, Tile tile, DrawingMarks marks)
    {
        const double y = Top + TileGrid.Height + 8;
        canvas.Write(Left, y + 1, $"Bundle {harness.Bundle}, tile {tile.Name}", 4.2, bold: true);
        canvas.Write(Left, y + 6, $"{marks.Registration}, work order {marks.Order}, revision {marks.Revision}; scale 1:1; row {tile.Name.TrimEnd("0123456789".ToCharArray())}, column {NumberFormat.Text(tile.Column + 1)}", 2.6);
        canvas.Write(Left, y + 10.5, "job SHA-256 " + marks.Hash, 2, Ink.Quiet);
        canvas.Write(Left, y + 15, "Lay neighbours so that the crosses in rings meet. Squares are clamps, spread evenly; double strokes are ties. Print without scaling and measure:", 2.3, Ink.Quiet);
        const double scale = 290;
        canvas.Line(scale, y + 6, scale + 100, y + 6, Style.Usual);
        for (var i = 0; i <= 10; i++)
        {
            canvas.Line(scale + (10 * i), y + 6, scale + (10 * i), y + (i % 5 == 0 ? 2.5 : 4.2), Style.Thin);
        }

        canvas.Write(scale, y + 9.5, "0", 2.3, anchor: Anchor.Middle);
        canvas.Write(scale + 100, y + 9.5, "100 mm", 2.3, anchor: Anchor.Middle);
    }
}
