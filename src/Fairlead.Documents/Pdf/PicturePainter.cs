using Fairlead.Drawings;
using PdfSharp.Drawing;

namespace Fairlead.Documents;

/// <summary>Draws a picture on a page as vectors and text.</summary>
internal static class PicturePainter
{
    private const double Points = 72 / 25.4;

    /// <summary>Draws all shapes of a picture.</summary>
    public static void Paint(XGraphics graphics, Picture picture)
    {
        foreach (var shape in picture.Shapes)
        {
            Paint(graphics, shape);
        }
    }

    private static void Paint(XGraphics graphics, Shape shape)
    {
        switch (shape)
        {
            case Line x:
                graphics.DrawLine(Pen(x.Style)!, At(x.From), At(x.To));
                break;
            case Polyline x when x.Points.Count > 1:
                graphics.DrawLines(Pen(x.Style)!, [.. x.Points.Select(At)]);
                break;
            case Polyline:
                break;
            case Polygon x:
                graphics.DrawPolygon(Pen(x.Style), Brush(x.Style), [.. x.Points.Select(At)], XFillMode.Winding);
                break;
            case Rect x:
                graphics.DrawRectangle(Pen(x.Style), Brush(x.Style), x.Corner.X * Points, x.Corner.Y * Points, x.Width * Points, x.Height * Points);
                break;
            case Circle x:
                graphics.DrawEllipse(Pen(x.Style), Brush(x.Style), (x.Centre.X - x.Radius) * Points, (x.Centre.Y - x.Radius) * Points, 2 * x.Radius * Points, 2 * x.Radius * Points);
                break;
            case Photograph x:
                using (var image = Photographs.Read(x.File))
                {
                    graphics.DrawImage(image, x.Corner.X * Points, x.Corner.Y * Points, x.Width * Points, x.Height * Points);
                }

                break;
            case Text x:
                Write(graphics, x);
                break;
            default:
                throw new ArgumentException($"A picture holds a {shape.GetType().Name}, which cannot be drawn.", nameof(shape));
        }
    }

    private static void Write(XGraphics graphics, Text text)
    {
        var width = Typesetting.Width(text.Words, text.Size, text.Bold);
        var x = text.At.X - (text.Anchor switch { Anchor.End => width, Anchor.Middle => width / 2, _ => 0 });
        var turned = text.Angle != 0 ? graphics.Save() : null;
        if (turned is not null)
        {
            graphics.RotateAtTransform(text.Angle, At(text.At));
        }

        var brush = new XSolidBrush(Colour(text.Ink));
        foreach (var run in Typesetting.Runs(text.Words, text.Bold))
        {
            graphics.DrawString(run.Text, Typesetting.Font(run.Face, text.Size), brush, x * Points, text.At.Y * Points, XStringFormats.BaseLineLeft);
            x += Typesetting.Width(run.Text, text.Size, text.Bold);
        }

        if (turned is not null)
        {
            graphics.Restore(turned);
        }
    }

    private static XPoint At(Point p) => new(p.X * Points, p.Y * Points);

    private static XColor Colour(Ink ink)
    {
        var c = Palette.Of(ink);
        return XColor.FromArgb(c.R, c.G, c.B);
    }

    private static XPen? Pen(Style style)
    {
        if (style.Stroke == Ink.None)
        {
            return null;
        }

        var pen = new XPen(Colour(style.Stroke), style.Width * Points) { LineJoin = XLineJoin.Round };
        if (Palette.Pattern(style.Dash, style.Width) is { Length: > 0 } pattern)
        {
            // The library counts dashes in line widths.
            pen.DashPattern = [.. pattern.Select(d => d / style.Width)];
        }

        return pen;
    }

    private static XSolidBrush? Brush(Style style) => style.Fill == Ink.None ? null : new XSolidBrush(Colour(style.Fill));
}
