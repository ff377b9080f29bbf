using System.Globalization;

namespace Fairlead.Drawings.Harness;

/// <summary>A tile: its name such as B3 (row B, third column) and its corner on the board, mm.</summary>
internal sealed record Tile(string Name, int Row, int Column, Point Corner);

/// <summary>Divides a board into A3 tiles that overlap, and leaves out those on which nothing lies.</summary>
/// <param name="Bounds">The board: left, top, right, bottom, mm.</param>
/// <param name="Used">The tiles on which something lies.</param>
internal sealed record TileGrid((double Left, double Top, double Right, double Bottom) Bounds, IReadOnlyList<Tile> Used)
{
    /// <summary>What one tile shows.</summary>
    public const double Width = 396;
    public const double Height = 250;

    /// <summary>What neighbouring tiles show both.</summary>
    public const double Overlap = 20;

    public static TileGrid Of(FlatHarness harness)
    {
        var points = harness.Branches.SelectMany(b => b.Line).ToArray();
        var bounds = (Left: points.Min(p => p.X) - Overlap, Top: points.Min(p => p.Y) - Overlap, Right: points.Max(p => p.X) + Overlap, Bottom: points.Max(p => p.Y) + Overlap);
        var columns = Count(bounds.Right - bounds.Left, Width);
        var rows = Count(bounds.Bottom - bounds.Top, Height);
        var tiles = Enumerable.Range(0, rows).SelectMany(r => Enumerable.Range(0, columns).Select(c => new Tile(
            Letters(r) + (c + 1).ToString(CultureInfo.InvariantCulture), r, c, new(bounds.Left + (c * (Width - Overlap)), bounds.Top + (r * (Height - Overlap))))));
        return new(bounds, [.. tiles.Where(t => harness.Branches.Any(b => Inside(b.Line, t).Any()))]);
    }

    /// <summary>The pieces of a line that lie on a tile.</summary>
    public static IEnumerable<(Point From, Point To)> Inside(IReadOnlyList<Point> line, Tile tile)
    {
        var box = new Box(tile.Corner.X, tile.Corner.Y, tile.Corner.X + Width, tile.Corner.Y + Height);
        for (var i = 1; i < line.Count; i++)
        {
            var (a, b) = (line[i - 1], line[i]);
            if (a != b && box.Meets(a, b))
            {
                // Runs are level or upright, so the nearest points of the box are the ends of what lies inside.
                yield return (box.Nearest(a), box.Nearest(b));
            }
        }
    }

    private static int Count(double length, double size) => Math.Max(1, (int)Math.Ceiling((length - Overlap) / (size - Overlap)));

    // Rows A to Z, then AA, AB and so on.
    private static string Letters(int row) => (row < 26 ? "" : Letters((row / 26) - 1)) + (char)('A' + (row % 26));
}
