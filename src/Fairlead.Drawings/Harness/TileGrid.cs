using System.Globalization;

namespace Fairlead.Drawings.Harness;

/// <summary>Paper that form boards are tiled to, landscape, by ISO 216.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
public sealed record TilePaper(string Name, double Width, double Height)
{
    /// <summary>A3: fewer joints.</summary>
    public static TilePaper A3 { get; } = new("A3", 420, 297);

    /// <summary>A4: any printer.</summary>
    public static TilePaper A4 { get; } = new("A4", 297, 210);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<TilePaper> All { get; } = [A3, A4];

    // What one tile shows: the paper less its margins and foot.
    internal double ShownWidth => Width - 24;

    internal double ShownHeight => Height - 47;
}

/// <summary>A tile: its name such as 2-3 (row 2, column 3), its corner on the board and its size, mm.</summary>
internal sealed record Tile(int Row, int Column, Box Window)
{
    public string Name => NameOf(Row, Column);

    /// <summary>The name of the tile in a row and column, counted from 0.</summary>
    public static string NameOf(int row, int column) => string.Create(CultureInfo.InvariantCulture, $"{row + 1}-{column + 1}");
}

/// <summary>Divides a board into tiles that overlap, and leaves out those on which nothing lies.</summary>
/// <param name="Bounds">The board, mm.</param>
/// <param name="Used">The tiles on which something lies.</param>
internal sealed record TileGrid(Box Bounds, IReadOnlyList<Tile> Used)
{
    /// <summary>What neighbouring tiles show both.</summary>
    public const double Overlap = 20;

    public static TileGrid Of(FlatHarness harness, TilePaper paper)
    {
        var points = harness.Branches.SelectMany(b => b.Line).ToArray();
        var bounds = new Box(points.Min(p => p.X) - Overlap, points.Min(p => p.Y) - Overlap, points.Max(p => p.X) + Overlap, points.Max(p => p.Y) + Overlap);
        var (wide, high) = (paper.ShownWidth, paper.ShownHeight);
        var (columns, rows) = (Count(bounds.Right - bounds.Left, wide), Count(bounds.Bottom - bounds.Top, high));
        var tiles = Enumerable.Range(0, rows).SelectMany(r => Enumerable.Range(0, columns).Select(c =>
        {
            var (x, y) = (bounds.Left + (c * (wide - Overlap)), bounds.Top + (r * (high - Overlap)));
            return new Tile(r, c, new Box(x, y, x + wide, y + high));
        }));
        return new(bounds, [.. tiles.Where(t => harness.Branches.Any(b => Inside(b.Line, t).Any()))]);
    }

    /// <summary>The pieces of a line that lie on a tile.</summary>
    public static IEnumerable<(Point From, Point To)> Inside(IReadOnlyList<Point> line, Tile tile)
    {
        for (var i = 1; i < line.Count; i++)
        {
            var (a, b) = (line[i - 1], line[i]);
            if (a != b && tile.Window.Meets(a, b))
            {
                // Runs are level or upright, so the nearest points of the box are the ends of what lies inside.
                yield return (tile.Window.Nearest(a), tile.Window.Nearest(b));
            }
        }
    }

    private static int Count(double length, double size) => Math.Max(1, (int)Math.Ceiling((length - Overlap) / (size - Overlap)));
}
