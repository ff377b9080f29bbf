using Fairlead.Calculations;

namespace Fairlead.Drawings.Harness;

/// <summary>One tile at true size: branches, ties, clamps, register marks to join it with its neighbours, and a scale to check the print with.</summary>
internal sealed class TilePainter
{
    private const double Left = 12;
    private const double Top = 12;
    private const double TieFromKnot = 15;
    private const double TieFromTrunk = 8;
    private const double Size = 3;
    private const double ScaleLength = 100;

    private readonly Canvas canvas = new();
    private readonly List<Label> names = [];
    private readonly LabelPlacer labels;
    private readonly FlatHarness harness;
    private readonly Tile tile;
    private readonly TilePaper paper;
    private readonly Box window;

    private TilePainter(FlatHarness harness, Tile tile, TilePaper paper)
    {
        (this.harness, this.tile, this.paper) = (harness, tile, paper);
        window = new(Left, Top, Left + paper.ShownWidth, Top + paper.ShownHeight);
        labels = new(window.Grown(-16), reach: 60);
    }

    /// <summary>The tiles of a harness.</summary>
    public static IEnumerable<Drawing> Of(FlatHarness harness, TilePaper paper, DrawingMarks marks)
    {
        var used = TileGrid.Of(harness, paper).Used;
        return used.Select((tile, i) => new TilePainter(harness, tile, paper).Paint(used, i, marks));
    }

    private Drawing Paint(IReadOnlyList<Tile> used, int index, DrawingMarks marks)
    {
        canvas.Rect(Left, Top, paper.ShownWidth, paper.ShownHeight, new Style(Ink.Quiet, 0.12));
        Register();
        Neighbours(used);
        foreach (var branch in harness.Branches)
        {
            Branch(branch);
        }

        foreach (var (name, point) in FormBoard.Knots(harness).Where(k => window.Contains(Box.Around(At(k.At), 1))))
        {
            canvas.Circle(At(point).X, At(point).Y, 1.6, new Style(Ink.None, 0, Dash.Solid, Ink.Accent));
            labels.Avoid(Box.Around(At(point), 1.6));
            names.Insert(0, new Label(Box.Around(At(point), 1.6), name, 3.4, Ink.Accent, Bold: true));
        }

        canvas.Add(labels.Place(names, out _));
        Foot(marks, $"{NumberFormat.Text(index + 1)} of {NumberFormat.Text(used.Count)}");
        var title = $"Form board of bundle {harness.Bundle}, tile {tile.Name}";
        return new Drawing(
            DrawingKind.FormBoard, $"formboard-{harness.Bundle}-{paper.Name}-{tile.Name}",
            new Picture(paper.Width, paper.Height, title, $"Tile {tile.Name} of the form board of bundle {harness.Bundle} at true size on {paper.Name}.", canvas.Shapes), Tile: true);
    }

    private Point At(Point p) => new(p.X - tile.Window.Left + Left, p.Y - tile.Window.Top + Top);

    private void Branch(FlatBranch branch)
    {
        foreach (var (from, to) in TileGrid.Inside(branch.Free, tile))
        {
            canvas.Add(new Line(At(from), At(to), new Style(branch.Kind == BranchKind.Lead ? Ink.Quiet : Ink.Line, FormBoard.Weight(branch.Wires) * 1.6)));
            labels.Avoid([At(from), At(to)]);
        }

        Marks(branch);
        if (TileGrid.Inside(branch.Line, tile).Select(p => (From: At(p.From), To: At(p.To))).Where(p => Math.Abs(p.From.X - p.To.X) > 30 || branch.Kind == BranchKind.Lead)
            .OrderByDescending(p => Math.Abs(p.From.X - p.To.X)).Select(p => ((Point From, Point To)?)p).FirstOrDefault() is { } piece)
        {
            names.Add(new Label(Box.Around(new((piece.From.X + piece.To.X) / 2, (piece.From.Y + piece.To.Y) / 2), 0.8), FormBoard.Label(branch), Size));
        }
    }

    // Ties stand on a branch at either side of each parting point; clamps stand evenly along the segment.
    private void Marks(FlatBranch branch)
    {
        foreach (var distance in Ties(branch))
        {
            var (p, level) = branch.Along(distance);
            if (Shown(p, 2.2) is { } at)
            {
                foreach (var side in new[] { -0.8, 0.8 })
                {
                    canvas.Line(at.X + (level ? side : -2.2), at.Y + (level ? -2.2 : side), at.X + (level ? side : 2.2), at.Y + (level ? 2.2 : side), new Style(Ink.Accent, 0.35));
                }
            }
        }

        for (var i = 0; i < branch.Clamps; i++)
        {
            if (Shown(branch.Along((i + 0.5) / branch.Clamps * branch.Length).At, 2.5) is { } at)
            {
                canvas.Rect(at.X - 2.5, at.Y - 2.5, 5, 5, new Style(Width: 0.35));
            }
        }
    }

    // The place of a mark that lies on this tile; labels keep off it.
    private Point? Shown(Point p, double reach)
    {
        var mark = Box.Around(At(p), reach);
        if (!window.Contains(mark.Grown(0.5)))
        {
            return null;
        }

        labels.Avoid(mark);
        return At(p);
    }

    private static double[] Ties(FlatBranch branch)
    {
        var first = branch.Line.Count > 2 ? branch.Line[1].X - branch.Line[0].X + TieFromTrunk : TieFromKnot;
        return branch.Kind == BranchKind.Segment && branch.Length > first + (2 * TieFromKnot) ? [first, branch.Length - TieFromKnot] : [Math.Min(first, branch.Length / 2)];
    }

    private void Register()
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

    // Along each edge the tile that is laid there.
    private void Neighbours(IReadOnlyList<Tile> used)
    {
        var middle = window.Centre.X;
        foreach (var (down, right, x, y, anchor) in new[]
        {
            (0, -1, window.Left + 1, window.Top + 3.5, Anchor.Start), (0, 1, window.Right - 1, window.Top + 3.5, Anchor.End),
            (-1, 0, middle, window.Top + 3.5, Anchor.Middle), (1, 0, middle, window.Bottom - 1.5, Anchor.Middle),
        })
        {
            if (used.Any(t => t.Row == tile.Row + down && t.Column == tile.Column + right))
            {
                canvas.Write(x, y, "tile " + Tile.NameOf(tile.Row + down, tile.Column + right), Size, Ink.Accent, anchor);
            }
        }
    }

    private void Foot(DrawingMarks marks, string count)
    {
        var y = window.Bottom + 8;
        canvas.Write(Left, y, $"Bundle {harness.Bundle}, tile {tile.Name}", 4.2, bold: true);
        canvas.Write(Left + 60, y, $"row {NumberFormat.Text(tile.Row + 1)}, column {NumberFormat.Text(tile.Column + 1)}; sheet {count}", Lettering.Small);
        canvas.Write(Left, y + 5, $"{marks.Registration}, work order {marks.Order}, revision {marks.Revision}; scale 1:1 on {paper.Name}", Lettering.Small);
        canvas.Write(Left, y + 9.5, "job SHA-256 " + marks.Hash, Lettering.Small, Ink.Quiet);
        canvas.Write(Left, y + 14, "Print without scaling, measure the scale, lay neighbours so that the crosses in rings meet. Lengths in mm.", Lettering.Small, Ink.Quiet);
        canvas.Write(Left, y + 18.5, "Squares are clamps, spread evenly; double strokes are ties. It defers to the approved data and licensed staff.", Lettering.Small, Ink.Quiet);
        var scale = window.Right - ScaleLength - 8;
        canvas.Line(scale, y + 5, scale + ScaleLength, y + 5, Style.Usual);
        for (var i = 0; i <= 10; i++)
        {
            canvas.Line(scale + (10 * i), y + 5, scale + (10 * i), y + (i % 5 == 0 ? 1.5 : 3.2), Style.Thin);
        }

        canvas.Write(scale, y + 8.5, "0", Lettering.Small, anchor: Anchor.Middle);
        canvas.Write(scale + ScaleLength, y + 8.5, "100 mm", Lettering.Small, anchor: Anchor.Middle);
    }
}
