using System.Globalization;
using Fairlead.Model;

namespace Fairlead.Drawings.Views;

/// <summary>The side from which the aircraft is seen.</summary>
public enum Aspect
{
    /// <summary>From the left, nose to the left.</summary>
    Side,

    /// <summary>From above, nose to the left.</summary>
    Plan,

    /// <summary>From the front: the right wing is at the left.</summary>
    Front,
}

/// <summary>Where a place of the aircraft lies on a sheet.</summary>
/// <param name="Aspect">The side it is seen from.</param>
/// <param name="Scale">Millimetres of the aircraft for one of the sheet.</param>
/// <param name="Origin">Where the axes meet on the sheet.</param>
internal sealed record Projection(Aspect Aspect, double Scale, Point Origin)
{
    /// <summary>The point of a place.</summary>
    public Point Of(Place place) => Of(place.Fs.In("mm"), place.Bl.In("mm"), place.Wl.In("mm"));

    /// <summary>The point of stations in mm.</summary>
    public Point Of(double fs, double bl, double wl)
    {
        var (x, y) = Flat(Aspect, fs, bl, wl);
        return Origin.Moved(x / Scale, y / Scale);
    }

    /// <summary>Width and height of a box on the sheet.</summary>
    public (double Width, double Height) Sides(Size size) => Aspect switch
    {
        Aspect.Side => (size.Length.In("mm") / Scale, size.Height.In("mm") / Scale),
        Aspect.Plan => (size.Length.In("mm") / Scale, size.Width.In("mm") / Scale),
        _ => (size.Width.In("mm") / Scale, size.Height.In("mm") / Scale),
    };

    /// <summary>Stations in mm as they lie to the right and downwards in a view.</summary>
    public static (double X, double Y) Flat(Aspect aspect, double fs, double bl, double wl) => aspect switch
    {
        Aspect.Side => (fs, -wl),
        Aspect.Plan => (fs, -bl),
        _ => (-bl, -wl),
    };
}

/// <summary>Rulers of stations along the edges of a view, and a light grid.</summary>
internal static class Rulers
{
    private const double Size = Lettering.Small;

    /// <summary>Draws the rulers below and at the left of a box.</summary>
    public static void Paint(Canvas canvas, Projection projection, Box box, string unit)
    {
        var (across, down) = projection.Aspect switch { Aspect.Side => ("FS", "WL"), Aspect.Plan => ("FS", "BL"), _ => ("BL", "WL") };
        var one = Length.Of(1, unit).In("mm") / projection.Scale;
        var turned = projection.Aspect == Aspect.Front ? -1 : 1;
        foreach (var (value, at) in Ticks(box.Left, box.Right, projection.Origin.X, one * turned))
        {
            canvas.Line(at, box.Top, at, box.Bottom, Style.Grid);
            canvas.Line(at, box.Bottom, at, box.Bottom + 1.5, Style.Thin);
            canvas.Write(at, box.Bottom + 4, value, Size, Ink.Quiet, Anchor.Middle);
        }

        foreach (var (value, at) in Ticks(box.Top, box.Bottom, projection.Origin.Y, -one))
        {
            canvas.Line(box.Left, at, box.Right, at, Style.Grid);
            canvas.Line(box.Left - 1.5, at, box.Left, at, Style.Thin);
            canvas.Write(box.Left - 2, at + 0.8, value, Size, Ink.Quiet, Anchor.End);
        }

        canvas.Rect(box.Left, box.Top, box.Right - box.Left, box.Bottom - box.Top, Style.Thin);
        canvas.Write(box.Right, box.Bottom + 7.5, $"{across}, {unit}", Size, Ink.Quiet, Anchor.End);
        canvas.Write(box.Left, box.Top - 1.2, $"{down}, {unit}", Size, Ink.Quiet, Anchor.End);
    }

    private static IEnumerable<(string Value, double At)> Ticks(double from, double to, double origin, double one)
    {
        var step = new[] { 0.05, 0.1, 0.2, 0.5, 1.0, 2, 5, 10, 20, 25, 50, 100, 200, 500 }.FirstOrDefault(s => s * Math.Abs(one) >= 11, 1000);
        var (a, b) = ((from - origin) / one / step, (to - origin) / one / step);
        for (var i = Math.Ceiling(Math.Min(a, b)); i <= Math.Max(a, b); i++)
        {
            yield return ((i * step == 0 ? 0 : Math.Round(i * step, 6)).ToString(CultureInfo.InvariantCulture).Replace('-', '−'), origin + (i * step * one));
        }
    }
}
