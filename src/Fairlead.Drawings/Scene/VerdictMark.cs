using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>How a verdict looks: told apart by word and shape before colour.</summary>
public static class VerdictMark
{
    /// <summary>The word for a verdict.</summary>
    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Holds => "Holds",
        Verdict.Caution => "Caution",
        Verdict.CannotTell => "Cannot tell",
        Verdict.Fails => "Fails",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };

    /// <summary>The shape of a verdict inside a square: a ticked circle, a triangle with a bar, an open diamond, a crossed filled square.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="corner">Top left corner of the square.</param>
    /// <param name="size">Side of the square, mm.</param>
    public static Sequence<Shape> At(Verdict verdict, Point corner, double size)
    {
        Point P(double x, double y) => corner.Moved(x * size, y * size);
        var pen = new Style(Ink.Line, size * 0.09);
        var accent = new Style(Ink.Accent, size * 0.09);
        return verdict switch
        {
            Verdict.Holds => [new Circle(P(0.5, 0.5), 0.44 * size, pen), new Polyline([P(0.3, 0.52), P(0.45, 0.67), P(0.71, 0.34)], pen)],
            Verdict.Caution =>
            [
                new Polygon([P(0.5, 0.06), P(0.96, 0.92), P(0.04, 0.92)], accent with { Fill = Ink.AccentTint }),
                new Line(P(0.5, 0.38), P(0.5, 0.64), accent), new Line(P(0.5, 0.75), P(0.5, 0.81), accent),
            ],
            Verdict.CannotTell => [new Polygon([P(0.5, 0.04), P(0.96, 0.5), P(0.5, 0.96), P(0.04, 0.5)], pen), new Line(P(0.33, 0.5), P(0.67, 0.5), pen)],
            Verdict.Fails =>
            [
                new Rect(P(0.06, 0.06), 0.88 * size, 0.88 * size, Style.Filled(Ink.Accent)),
                new Line(P(0.28, 0.28), P(0.72, 0.72), new Style(Ink.Paper, size * 0.12)), new Line(P(0.72, 0.28), P(0.28, 0.72), new Style(Ink.Paper, size * 0.12)),
            ],
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };
    }
}
