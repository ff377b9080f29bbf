using Fairlead.Calculations;

namespace Fairlead.Drawings.Wiring;

/// <summary>The few signs of wiring diagrams, in the basic shapes that IEC 60617 and IEEE 315 have in common: breaker, ground, antenna, joint, shield, coax, twist.</summary>
internal static class Symbols
{
    private const double Half = 1.6;

    /// <summary>A dot where wires join.</summary>
    public static Style Solid { get; } = new(Ink.None, 0, Dash.Solid, Ink.Line);

    /// <summary>How far a sign reaches from the end of its wire, with a little air.</summary>
    public static double Room(EndKind kind) => kind switch { EndKind.Breaker => 19, EndKind.Ground => 10, EndKind.Antenna => 10, _ => 3 };

    /// <summary>The sign at the end of a wire that runs on to a side (-1 left, 1 right).</summary>
    public static Sequence<Shape> Of(EndKind kind, Point at, int side) => kind switch
    {
        EndKind.Breaker => Breaker(at, side),
        EndKind.Ground => Ground(at, side),
        EndKind.Antenna => Antenna(at, side),
        _ => [new Circle(at, 0.8, Solid)],
    };

    /// <summary>Straight wires.</summary>
    public static Sequence<Shape> Straight(ReadOnlySpan<double> lines, double left, double right)
    {
        var shapes = new List<Shape>();
        foreach (var y in lines)
        {
            shapes.Add(new Line(new(left, y), new(right, y), Style.Usual));
        }

        return shapes.ToSequence();
    }

    /// <summary>Neighbouring wires that cross twice and run on in their own lines.</summary>
    public static Sequence<Shape> Twist(ReadOnlySpan<double> lines, double left, double right, double at)
    {
        const double turn = 4;
        var shapes = new List<Shape>();
        for (var i = 0; i < lines.Length; i++)
        {
            // Of an odd count the last three turn about each other as neighbours.
            var other = lines[i % 2 == 0 ? Math.Min(i + 1, lines.Length - 1) : i - 1];
            shapes.Add(new Polyline([new(left, lines[i]), new(at - turn, lines[i]), new(at, other), new(at + turn, lines[i]), new(right, lines[i])], Style.Usual));
        }

        return shapes.ToSequence();
    }

    /// <summary>The ring of a shield around wires, and the line to ground below it where it is grounded.</summary>
    public static Sequence<Shape> Shield(ReadOnlySpan<double> lines, double x, bool grounded)
    {
        var (top, bottom) = (lines[0] - 1.5, lines[^1] + 1.5);
        var ring = new Style(Width: 0.18);
        var points = new List<Point>();
        for (var i = 0; i <= 24; i++)
        {
            var (sin, cos) = Math.SinCos(i * Math.PI / 12);
            points.Add(new(x + (Half * cos), sin < 0 ? top + (Half * (1 + sin)) : bottom - (Half * (1 - sin))));
        }

        var shapes = new List<Shape> { new Polyline(points.ToSequence(), ring) };
        if (grounded)
        {
            shapes.Add(new Line(new(x + Half, bottom - Half), new(x + 4, bottom - Half), Style.Thin));
            foreach (var (step, length) in new[] { (0.0, 1.3), (0.7, 0.85), (1.4, 0.4) })
            {
                shapes.Add(new Line(new(x + 4 + step, bottom - Half - length), new(x + 4 + step, bottom - Half + length), Style.Thin));
            }
        }

        return shapes.ToSequence();
    }

    /// <summary>The sign of a coaxial line: a ring about the conductor with a tangent along it.</summary>
    public static Sequence<Shape> Coax(double x, double y) =>
        [new Circle(new(x, y), Half, new Style(Width: 0.18)), new Line(new(x - 3, y + Half), new(x + 3, y + Half), new Style(Width: 0.18))];

    private static Sequence<Shape> Breaker(Point at, int side)
    {
        Point P(double x, double y) => at.Moved(side * x, y);
        var arc = Enumerable.Range(0, 13).Select(i => Math.SinCos(i * Math.PI / 12)).Select(t => P(8 - (3.4 * t.Cos), -0.6 - (2.2 * t.Sin)));
        return
        [
            new Line(at, P(4, 0), Style.Usual), new Circle(P(4.6, 0), 0.6, Style.Usual), new Polyline(arc.ToSequence(), Style.Usual),
            new Circle(P(11.4, 0), 0.6, Style.Usual), new Line(P(12, 0), P(16, 0), Style.Usual), new Line(P(16, -3), P(16, 3), new Style(Width: 0.8)),
        ];
    }

    private static Sequence<Shape> Ground(Point at, int side)
    {
        Point P(double x, double y) => at.Moved(side * x, y);
        return [new Line(at, P(4, 0), Style.Usual), new Line(P(4, -2.4), P(4, 2.4), Style.Usual), new Line(P(5.2, -1.6), P(5.2, 1.6), Style.Usual), new Line(P(6.4, -0.8), P(6.4, 0.8), Style.Usual)];
    }

    private static Sequence<Shape> Antenna(Point at, int side)
    {
        Point P(double x, double y) => at.Moved(side * x, y);
        return [new Line(at, P(7, 0), Style.Usual), new Polyline([P(7.4, -2.4), P(4, 0), P(7.4, 2.4)], Style.Usual), new Line(P(7, 0), P(7.4, 0), Style.Usual)];
    }
}
