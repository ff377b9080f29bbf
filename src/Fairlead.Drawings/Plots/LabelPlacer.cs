namespace Fairlead.Drawings;

/// <summary>Puts labels beside their points so that they cover neither each other nor what they must not cover.</summary>
/// <param name="within">Where labels may stand.</param>
/// <param name="reach">How far from its point a label may stand, mm.</param>
internal sealed class LabelPlacer(Box within, double reach = 23)
{
    private const double Padding = 0.7;
    private const double Descent = 0.25;
    private static readonly double[] Distances = [2.2, 3.2, 5, 8, 12, 17, 23, 30, 38, 48, 60];
    private readonly List<Box> taken = [];
    private readonly List<(Point From, Point To)> lines = [];

    public void Avoid(Box box) => taken.Add(box);

    public void Avoid(IReadOnlyList<Point> line, bool closed = false)
    {
        for (var i = 1; i < line.Count; i++)
        {
            lines.Add((line[i - 1], line[i]));
        }

        if (closed && line.Count > 2)
        {
            lines.Add((line[^1], line[0]));
        }
    }

    /// <summary>The label, and a leader when it had to go far.</summary>
    public IEnumerable<Shape> Place(Point point, string words, double size, Ink ink = Ink.Line, bool bold = false)
    {
        var width = TextMeasure.Width(words, size, bold);
        var descent = size * Descent;
        var best = Candidates(point, width, (size * TextMeasure.CapHeight) + descent).MinBy(c => Cost(c.Box))!;
        taken.Add(best.Box.Grown(Padding));
        if (best.Distance > 4)
        {
            yield return new Line(point, best.Box.Nearest(point), new Style(Ink.Quiet, 0.12));
        }

        yield return new Text(new(best.Box.Left, best.Box.Bottom - descent), words, size, ink, Anchor.Start, bold);
    }

    // Nearest first, right before left: MinBy keeps the first of equals.
    private IEnumerable<(Box Box, double Distance)> Candidates(Point p, double width, double height)
    {
        foreach (var distance in Distances.TakeWhile(d => d <= reach))
        {
            foreach (var degrees in new[] { 0, 180, -35, 35, -145, 145, -70, 70, -110, 110, -90, 90 })
            {
                var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
                var at = p.Moved(cos * distance, sin * distance);
                var left = at.X - (width * (1 - Math.Clamp(cos * 1.5, -1, 1)) / 2);
                var top = at.Y - (height * (1 - Math.Clamp(sin * 1.5, -1, 1)) / 2);
                yield return (new Box(left, top, left + width, top + height), distance);
            }
        }
    }

    private double Cost(Box box) =>
        (1000 * taken.Count(t => t.Overlaps(box))) + (500 * (within.Contains(box) ? 0 : 1)) + (100 * lines.Count(l => box.Grown(0.6).Meets(l.From, l.To)));
}

/// <summary>An upright box, millimetres.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public static Box Around(Point p, double radius) => new(p.X - radius, p.Y - radius, p.X + radius, p.Y + radius);

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public bool Overlaps(Box b) => Left < b.Right && b.Left < Right && Top < b.Bottom && b.Top < Bottom;

    public bool Contains(Box b) => b.Left >= Left && b.Right <= Right && b.Top >= Top && b.Bottom <= Bottom;

    public Point Nearest(Point p) => new(Math.Clamp(p.X, Left, Right), Math.Clamp(p.Y, Top, Bottom));

    // Liang and Barsky's clipping: what is left of the segment inside the box.
    public bool Meets(Point a, Point b)
    {
        var (enter, leave) = (0.0, 1.0);
        ReadOnlySpan<(double Direction, double Room)> sides = [(a.X - b.X, a.X - Left), (b.X - a.X, Right - a.X), (a.Y - b.Y, a.Y - Top), (b.Y - a.Y, Bottom - a.Y)];
        foreach (var (direction, room) in sides)
        {
            if (direction == 0)
            {
                if (room < 0)
                {
                    return false;
                }
            }
            else if (direction < 0)
            {
                enter = Math.Max(enter, room / direction);
            }
            else
            {
                leave = Math.Min(leave, room / direction);
            }
        }

        return enter <= leave;
    }
}
