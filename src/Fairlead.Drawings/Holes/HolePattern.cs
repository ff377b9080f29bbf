using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Drawings.Holes;

/// <summary>One hole pattern: holes at a standard scale, their distances from the reference corner along both axes, and the line that the nearest edge must not cross.</summary>
internal static class HolePattern
{
    private const double Size = Lettering.Small;
    private static readonly Style Leader = new(Ink.Quiet, 0.12);
    private static readonly double[] Scales = [1, 2, 2.5, 5, 10, 20, 50, 100];

    public static void Paint(Canvas canvas, Pattern pattern, Job job, double x, double y, double width, double height)
    {
        canvas.Rect(x, y, width, height, Style.Thin);
        canvas.Write(x + 3, y + 5, pattern.Name, 3.4, bold: true);
        canvas.Fit(x + 18, y + 5, pattern.What, Size, width - 21, Ink.Quiet);
        var notes = Notes(pattern, job);
        for (var i = 0; i < notes.Count; i++)
        {
            canvas.Fit(x + 3, y + height - 2.5 - ((notes.Count - 1 - i) * 3.9), notes[i], Size, width - 6);
        }

        var edge = pattern.Fixing?.EdgeDistance?.In("mm") ?? 0;
        var extent = Extent(pattern, edge);
        var room = (Width: width - 30, Height: height - 24 - (notes.Count * 3.9));
        var scale = Scales.FirstOrDefault(s => extent.Width / s <= room.Width && extent.Height / s <= room.Height, Scales[^1]);
        canvas.Write(x + width - 3, y + 9.5, "scale 1:" + NumberFormat.Text(scale), Size, Ink.Quiet, Anchor.End);
        canvas.Write(x + 3, y + 9.5, Axes(pattern.Stands), Size, Ink.Quiet);

        // x to the right, y upwards as the axes of the face go.
        var (left, bottom) = (x + 18 + ((room.Width - (extent.Width / scale)) / 2), y + 13 + room.Height - ((room.Height - (extent.Height / scale)) / 2));
        Point At(double mx, double my) => new(left + ((mx - extent.X) / scale), bottom - ((my - extent.Y) / scale));
        if (pattern.Face is { } face)
        {
            Box(canvas, At(0, face.Y), At(face.X, 0), new Style(Width: 0.35));
        }

        if (pattern.Plate is { } plate)
        {
            canvas.Circle(At(0, 0).X, At(0, 0).Y, plate.CutOut.In("mm") / 2 / scale, new Style(Width: 0.35));
        }

        Drill(canvas, pattern, edge, scale, At);
        Ordinates(canvas, pattern, At, bottom + 2, left - 2);
    }

    private static void Drill(Canvas canvas, Pattern pattern, double edge, double scale, Func<double, double, Point> at)
    {
        if (edge > 0)
        {
            var (low, high) = (at(Least(pattern, h => h.X) - edge, Least(pattern, h => h.Y) - edge), at(Most(pattern, h => h.X) + edge, Most(pattern, h => h.Y) + edge));
            Box(canvas, new(low.X, high.Y), new(high.X, low.Y), Style.Limit with { Width = 0.2 });
        }

        foreach (var hole in pattern.Holes)
        {
            var p = at(hole.X.In("mm"), hole.Y.In("mm"));
            var radius = Math.Max(0.5, hole.Diameter.In("mm") / 2 / scale);
            canvas.Circle(p.X, p.Y, radius, new Style(Width: 0.35));
            canvas.Line(p.X - radius - 1.2, p.Y, p.X + radius + 1.2, p.Y, Style.Thin);
            canvas.Line(p.X, p.Y - radius - 1.2, p.X, p.Y + radius + 1.2, Style.Thin);
        }
    }

    // Distances from the reference corner: each value once, below for x and at the left for y.
    private static void Ordinates(Canvas canvas, Pattern pattern, Func<double, double, Point> at, double foot, double side)
    {
        var lowest = at(0, Least(pattern, h => h.Y)).Y;
        var leftmost = at(Least(pattern, h => h.X), 0).X;
        double last = double.NegativeInfinity;
        foreach (var value in Values(pattern, h => h.X))
        {
            var px = at(value, 0).X;
            var label = Millimetres(value);
            var half = TextMeasure.Width(label, Size) / 2;
            var centre = Math.Max(px, last + half + 0.8);
            canvas.Path(Leader, new(px, lowest + 2.5), new(px, foot - 1.5), new(centre, foot));
            canvas.Write(centre, foot + 3, label, Size, anchor: Anchor.Middle);
            last = centre + half;
        }

        last = double.PositiveInfinity;
        foreach (var value in Values(pattern, h => h.Y))
        {
            var py = at(0, value).Y;
            var line = Math.Min(py + 0.8, last - 2.9);
            canvas.Path(Leader, new(leftmost - 2.5, py), new(side + 1.5, py), new(side, line - 0.8));
            canvas.Write(side - 0.8, line, Millimetres(value), Size, anchor: Anchor.End);
            last = line;
        }
    }

    private static List<string> Notes(Pattern pattern, Job job)
    {
        List<string> notes = [$"In {pattern.Structure?.Name ?? "structure that is not stated"}{(pattern.Structure is { } s ? $", {s.Material} {s.Thickness.As("in")}" : "")}"];
        var diameters = pattern.Holes.GroupBy(h => h.Diameter).Select(g => $"{NumberFormat.Text(g.Count())} × Ø {Millimetres(g.Key.In("mm"))}");
        notes.Add($"Holes {string.Join(", ", diameters)} mm; distances in mm from {(pattern.Face is null ? "the centre" : "the reference corner")}");
        if (pattern.Fixing is { } fixing)
        {
            var nut = fixing.AnchorNut is { } n ? $" in anchor nuts {n}" : "";
            notes.Add($"{NumberFormat.Text(fixing.Count)} × {job.Parts.Fasteners?.Find(fixing.Fastener)?.Name ?? fixing.Fastener}{nut}");
            notes.Add(fixing.EdgeDistance is { } edge ? $"Edge distance {edge.As("in")} ({Millimetres(edge.In("mm"))} mm), {Times(edge, pattern)}no edge inside the dashed line" : "The edge distance is not stated.");
        }

        if (pattern.Plate is { } plate)
        {
            notes.Add($"Cut-out {plate.CutOut.As("in")} across the load, its form by the maker; doubler {plate.Thickness.As("in")} thick, {plate.Width.As("in")} wide across the load");
            notes.Add($"Rivets {plate.Rivet}: {NumberFormat.Text(plate.Rivets)} each side along the load, pitch {plate.Pitch.As("in")}, edge distance {plate.EdgeDistance.As("in")}");
            notes.Add("The job states pitch, edge distance and number of the rivets, not the place of each: their rows are as the approved data have them.");
        }

        return notes;
    }

    // Edge distance as engineers speak of it, in diameters of the largest hole.
    private static string Times(Length edge, Pattern pattern) => $"{(edge.Si / pattern.Holes.Max(h => h.Diameter.Si)).ToString("0.0", CultureInfo.InvariantCulture)} × the hole: ";

    private static (double X, double Y, double Width, double Height) Extent(Pattern pattern, double edge)
    {
        var cut = pattern.Plate is { } plate ? plate.CutOut.In("mm") / 2 : 0;
        var left = Math.Min(Math.Min(pattern.Face is null ? -cut : 0, -cut), Least(pattern, h => h.X) - edge);
        var low = Math.Min(Math.Min(pattern.Face is null ? -cut : 0, -cut), Least(pattern, h => h.Y) - edge);
        var right = Math.Max(pattern.Face?.X ?? cut, Most(pattern, h => h.X) + edge);
        var high = Math.Max(pattern.Face?.Y ?? cut, Most(pattern, h => h.Y) + edge);
        return (left, low, right - left, high - low);
    }

    private static void Box(Canvas canvas, Point corner, Point opposite, Style style) => canvas.Rect(corner.X, corner.Y, opposite.X - corner.X, opposite.Y - corner.Y, style);

    private static double Least(Pattern pattern, Func<MountingHole, Length> of) => pattern.Holes.Min(h => of(h).In("mm"));

    private static double Most(Pattern pattern, Func<MountingHole, Length> of) => pattern.Holes.Max(h => of(h).In("mm"));

    private static IEnumerable<double> Values(Pattern pattern, Func<MountingHole, Length> of) => pattern.Holes.Select(h => Math.Round(of(h).In("mm"), 2)).Append(0).Distinct().Order();

    private static string Axes(Direction stands) => stands switch
    {
        Direction.Up or Direction.Down => "right: BL right; up: FS aft",
        Direction.Forward or Direction.Aft => "right: BL right; up: WL up",
        _ => "right: FS aft; up: WL up",
    };

    private static string Millimetres(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture).Replace('-', '−');
}
