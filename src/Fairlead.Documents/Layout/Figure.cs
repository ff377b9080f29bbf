using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A picture in its true size, or as wide as the column when it is wider, with a caption.</summary>
/// <param name="Picture">The picture.</param>
/// <param name="Caption">The caption; the picture's title unless given.</param>
public sealed record Figure(Picture Picture, string? Caption = null) : Block
{
    // A heading and a caption share the page with the tallest picture.
    private const double Tallest = PageFormat.Bottom - PageFormat.Top - 34;

    internal override double Beginning => (Picture.Height * Scale) + 10;

    private double Scale => Math.Min(1, Math.Min(PageFormat.ColumnWidth / Picture.Width, Tallest / Picture.Height));

    internal override void Lay(Flow flow)
    {
        var caption = TextWrap.Lines(Caption ?? Picture.Title, TypeSize.Small, bold: false, flow.Width);
        var line = TypeSize.Small * Typesetting.Leading;
        var scale = Math.Min(Scale, flow.Width / Picture.Width);
        flow.Need((Picture.Height * scale) + (caption.Count * line) + 1);
        foreach (var shape in Picture.Shapes)
        {
            flow.Add(Placement.Of(shape, PageFormat.Left, flow.Y, scale));
        }

        flow.Advance((Picture.Height * scale) + 1);
        foreach (var words in caption)
        {
            flow.Write(PageFormat.Left, 0, words, TypeSize.Small, Ink.Quiet);
            flow.Advance(line);
        }

        flow.Skip(3);
    }
}

/// <summary>Moves and scales shapes onto a page.</summary>
internal static class Placement
{
    public static Shape Of(Shape shape, double left, double top, double scale)
    {
        Point P(Point p) => new(left + (p.X * scale), top + (p.Y * scale));
        Style S(Style s) => s with { Width = s.Width * scale };
        return shape switch
        {
            Line x => new Line(P(x.From), P(x.To), S(x.Style)),
            Polyline x => new Polyline(x.Points.Select(P).ToSequence(), S(x.Style)),
            Polygon x => new Polygon(x.Points.Select(P).ToSequence(), S(x.Style)),
            Rect x => new Rect(P(x.Corner), x.Width * scale, x.Height * scale, S(x.Style)),
            Circle x => new Circle(P(x.Centre), x.Radius * scale, S(x.Style)),
            Photograph x => x with { Corner = P(x.Corner), Width = x.Width * scale, Height = x.Height * scale },
            Text x => x with { At = P(x.At), Size = x.Size * scale },
            _ => throw new ArgumentException($"A picture holds a {shape.GetType().Name}, which cannot be drawn.", nameof(shape)),
        };
    }
}
