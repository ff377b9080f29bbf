using Fairlead.Model;

namespace Fairlead.Drawings.Views;

/// <summary>The outline of the fuselage from its stated cross-sections; nothing where none is stated.</summary>
internal static class Outline
{
    private static readonly Style Skin = new(Ink.Quiet, 0.35);
    private static readonly Style Middle = new(Ink.Quiet, 0.12, Dash.Dashed);

    /// <summary>The lines of the outline, as far as they lie in a box.</summary>
    public static IEnumerable<Line> Of(Aircraft aircraft, Projection projection, Box box)
    {
        var sections = aircraft.Sections.OrderBy(s => s.Fs.Si).ToArray();
        if (sections.Length < 2)
        {
            return [];
        }

        Point[] skin = projection.Aspect == Aspect.Front
            ? [.. Section(sections.MaxBy(s => s.HalfWidth.Si)!, projection)]
            : [.. sections.Select(s => Edge(s, projection, upper: true)), .. sections.Reverse().Select(s => Edge(s, projection, upper: false))];
        var lines = skin.Zip([.. skin.Skip(1), skin[0]], (from, to) => new Line(from, to, Skin));
        if (projection.Aspect == Aspect.Plan)
        {
            lines = lines.Append(new Line(projection.Of(sections[0].Fs.In("mm") - 100, 0, 0), projection.Of(sections[^1].Fs.In("mm") + 100, 0, 0), Middle));
        }

        return lines.Select(l => box.Clip(l.From, l.To) is { } seen ? l with { From = seen.From, To = seen.To } : null).OfType<Line>();
    }

    private static Point Edge(FuselageSection s, Projection projection, bool upper) => projection.Aspect == Aspect.Side
        ? projection.Of(s.Fs.In("mm"), 0, (upper ? s.Top : s.Bottom).In("mm"))
        : projection.Of(s.Fs.In("mm"), (upper ? 1 : -1) * s.HalfWidth.In("mm"), 0);

    // A rounded box between an ellipse and a rectangle.
    private static IEnumerable<Point> Section(FuselageSection s, Projection projection)
    {
        var (middle, half) = ((s.Top.In("mm") + s.Bottom.In("mm")) / 2, (s.Top.In("mm") - s.Bottom.In("mm")) / 2);
        for (var i = 0; i < 72; i++)
        {
            var (sin, cos) = Math.SinCos(i * Math.PI / 36);
            yield return projection.Of(0, Math.Sign(cos) * Math.Sqrt(Math.Abs(cos)) * s.HalfWidth.In("mm"), middle + (Math.Sign(sin) * Math.Sqrt(Math.Abs(sin)) * half));
        }
    }
}
