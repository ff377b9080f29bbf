using System.Globalization;
using System.Text;

namespace Fairlead.Drawings;

/// <summary>Writes a picture as SVG: the same picture gives the same text, byte for byte.</summary>
public static class SvgWriter
{
    /// <summary>The typefaces asked for, best first. Digits are set to equal width.</summary>
    public const string FontFamily = "'IBM Plex Sans', 'DejaVu Sans', sans-serif";

    /// <summary>The SVG document of a picture.</summary>
    public static string Write(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{Number(picture.Width)}mm\" height=\"{Number(picture.Height)}mm\" viewBox=\"0 0 {Number(picture.Width)} {Number(picture.Height)}\" font-family=\"{FontFamily}\" style=\"font-variant-numeric:tabular-nums\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escaped(picture.Title)}</title>\n<desc>{Escaped(picture.Description)}</desc>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{Number(picture.Width)}\" height=\"{Number(picture.Height)}\" fill=\"{Colour(Ink.Paper)}\"/>\n");
        foreach (var shape in picture.Shapes)
        {
            svg.Append(Element(shape)).Append('\n');
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static string Element(Shape shape) => shape switch
    {
        Line x => $"<line x1=\"{Number(x.From.X)}\" y1=\"{Number(x.From.Y)}\" x2=\"{Number(x.To.X)}\" y2=\"{Number(x.To.Y)}\"{Look(x.Style)}/>",
        Polyline x => $"<polyline points=\"{Points(x.Points)}\"{Look(x.Style)}/>",
        Polygon x => $"<polygon points=\"{Points(x.Points)}\"{Look(x.Style)}/>",
        Rect x => $"<rect x=\"{Number(x.Corner.X)}\" y=\"{Number(x.Corner.Y)}\" width=\"{Number(x.Width)}\" height=\"{Number(x.Height)}\"{Look(x.Style)}/>",
        Circle x => $"<circle cx=\"{Number(x.Centre.X)}\" cy=\"{Number(x.Centre.Y)}\" r=\"{Number(x.Radius)}\"{Look(x.Style)}/>",
        Photograph x => $"<image x=\"{Number(x.Corner.X)}\" y=\"{Number(x.Corner.Y)}\" width=\"{Number(x.Width)}\" height=\"{Number(x.Height)}\" preserveAspectRatio=\"none\" href=\"data:image/{(x.File is [0xFF, ..] ? "jpeg" : "png")};base64,{Convert.ToBase64String(x.File.AsSpan())}\"/>",
        Text x => Written(x),
        _ => throw new ArgumentException($"A picture holds a {shape.GetType().Name}, which cannot be drawn.", nameof(shape)),
    };

    private static string Written(Text text)
    {
        var anchor = text.Anchor switch { Anchor.Middle => " text-anchor=\"middle\"", Anchor.End => " text-anchor=\"end\"", _ => "" };
        var weight = text.Bold ? " font-weight=\"600\"" : "";
        var turn = text.Angle == 0 ? "" : $" transform=\"rotate({Number(text.Angle)} {Number(text.At.X)} {Number(text.At.Y)})\"";
        return $"<text x=\"{Number(text.At.X)}\" y=\"{Number(text.At.Y)}\" font-size=\"{Number(text.Size)}\" fill=\"{Colour(text.Ink)}\"{anchor}{weight}{turn}>{Escaped(text.Words)}</text>";
    }

    private static string Look(Style style)
    {
        var stroke = style.Stroke == Ink.None ? "" : $" stroke=\"{Colour(style.Stroke)}\" stroke-width=\"{Number(style.Width)}\" stroke-linejoin=\"round\"";
        var pattern = Palette.Pattern(style.Dash, style.Width);
        var dash = pattern.Length == 0 || style.Stroke == Ink.None ? "" : $" stroke-dasharray=\"{string.Join(' ', pattern.Select(Number))}\"";
        return $" fill=\"{(style.Fill == Ink.None ? "none" : Colour(style.Fill))}\"{stroke}{dash}";
    }

    private static string Points(IEnumerable<Point> points) => string.Join(' ', points.Select(p => $"{Number(p.X)},{Number(p.Y)}"));

    private static string Colour(Ink ink)
    {
        var c = Palette.Of(ink);
        return string.Create(CultureInfo.InvariantCulture, $"#{c.R:x2}{c.G:x2}{c.B:x2}");
    }

    // A thousandth of a millimetre is finer than any pen.
    private static string Number(double value) => double.IsFinite(value)
        ? Math.Round(value, 3) is var rounded && rounded == 0 ? "0" : rounded.ToString("0.###", CultureInfo.InvariantCulture)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A picture holds a coordinate that is not a finite number.");

    // XML 1.0 allows no control characters but tab and line ends: they and broken surrogates become the replacement character.
    private static string Escaped(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            escaped.Append(rune.Value switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '\t' or '\n' or '\r' => " ",
                < 0x20 or 0xFFFE or 0xFFFF => "\uFFFD",
                _ => rune.ToString(),
            });
        }

        return escaped.ToString();
    }
}
