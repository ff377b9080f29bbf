using Fairlead.Model;

namespace Fairlead.Drawings.Views;

/// <summary>The outline of the fuselage from its stated cross-sections; nothing where none is stated.</summary>
internal static class Outline
{
    private static readonly Style Skin = new(Ink.Quiet, 0.35);

    public static void Paint(Canvas canvas, Aircraft aircraft, Projection projection)
    {
        var sections = aircraft.Sections.OrderBy(s => s.Fs.Si).ToArray();
        if (sections.Length < 2)
        {
            return;
        }

        if (projection.Aspect == Aspect.Front)
        {
            var widest = sections.MaxBy(s => s.HalfWidth.Si)!;
            canvas.Add(new Polygon([.. Section(widest, projection)], Skin));
            return;
        }

        var there = sections.Select(s => Edge(s, projection, upper: true));
        var back = sections.Reverse().Select(s => Edge(s, projection, upper: false));
        canvas.Add(new Polygon([.. there, .. back], Skin));
        var (nose, tail) = (sections[0].Fs.In("mm"), sections[^1].Fs.In("mm"));
        if (projection.Aspect == Aspect.Plan)
        {
            canvas.Add(new Line(projection.Of(nose - 100, 0, 0), projection.Of(tail + 100, 0, 0), new Style(Ink.Quiet, 0.12, Dash.Dashed)));
        }
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
