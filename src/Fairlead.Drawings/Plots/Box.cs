namespace Fairlead.Drawings;

/// <summary>An upright box, millimetres.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public Point Centre => new((Left + Right) / 2, (Top + Bottom) / 2);

    public static Box Around(Point p, double radius) => new(p.X - radius, p.Y - radius, p.X + radius, p.Y + radius);

    public static Box Of(Point a, Point b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public bool Overlaps(Box b) => Left < b.Right && b.Left < Right && Top < b.Bottom && b.Top < Bottom;

    public bool Contains(Box b) => b.Left >= Left && b.Right <= Right && b.Top >= Top && b.Bottom <= Bottom;

    public Point Nearest(Point p) => new(Math.Clamp(p.X, Left, Right), Math.Clamp(p.Y, Top, Bottom));

    public bool Contains(Point p) => p.X >= Left && p.X <= Right && p.Y >= Top && p.Y <= Bottom;

    public bool Meets(Point a, Point b) => Clip(a, b) is not null;

    /// <summary>What is left of a segment inside the box, by Liang and Barsky's clipping; null when nothing is.</summary>
    public (Point From, Point To)? Clip(Point a, Point b)
    {
        var (enter, leave) = (0.0, 1.0);
        ReadOnlySpan<(double Direction, double Room)> sides = [(a.X - b.X, a.X - Left), (b.X - a.X, Right - a.X), (a.Y - b.Y, a.Y - Top), (b.Y - a.Y, Bottom - a.Y)];
        foreach (var (direction, room) in sides)
        {
            if (direction == 0)
            {
                if (room < 0)
                {
                    return null;
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

        return enter <= leave ? (a.Moved((b.X - a.X) * enter, (b.Y - a.Y) * enter), a.Moved((b.X - a.X) * leave, (b.Y - a.Y) * leave)) : null;
    }
}
