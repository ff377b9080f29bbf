using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>Gathers the shapes of a picture, in millimetres.</summary>
internal sealed class Canvas
{
    private readonly List<Shape> shapes = [];

    public Sequence<Shape> Shapes => shapes.ToSequence();

    public void Add(Shape shape) => shapes.Add(shape);

    public void Add(IEnumerable<Shape> more) => shapes.AddRange(more);

    public void Line(double x1, double y1, double x2, double y2, Style style) => shapes.Add(new Line(new(x1, y1), new(x2, y2), style));

    public void Path(Style style, params Point[] points) => shapes.Add(new Polyline([.. points], style));

    public void Rect(double x, double y, double width, double height, Style style) => shapes.Add(new Rect(new(x, y), width, height, style));

    public void Circle(double x, double y, double radius, Style style) => shapes.Add(new Circle(new(x, y), radius, style));

    /// <summary>Text on a base line; nothing is drawn of an empty one.</summary>
    public void Write(double x, double y, string words, double size, Ink ink = Ink.Line, Anchor anchor = Anchor.Start, bool bold = false)
    {
        if (words.Length > 0)
        {
            shapes.Add(new Text(new(x, y), words, size, ink, anchor, bold));
        }
    }

    /// <summary>Text cut to a width.</summary>
    public void Fit(double x, double y, string words, double size, double width, Ink ink = Ink.Line, Anchor anchor = Anchor.Start, bool bold = false) =>
        Write(x, y, TextMeasure.Fitted(words, bold ? size * 1.06 : size, width), size, ink, anchor, bold);
}
