using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Views;

/// <summary>The aircraft from the side, from above and from the front: what goes in and comes out, ways, antennas and panels at their stations.</summary>
internal static class AircraftSheets
{
    private const double RulerRoom = 16;
    private const double Air = 150;

    // Fewer places need no detail; for very many a detail shows too few of them.
    private const int CrowdLeast = 15;
    private const int CrowdMost = 500;
    private static readonly double[] Scales = [2, 2.5, 5, 7.5, 8, 10, 12, 15, 16, 20, 25, 30, 40, 50, 60, 75, 100, 150, 200];

    private static readonly Box Room = new(DrawingFrame.Left + 10, DrawingFrame.Top + 4, DrawingFrame.Right, DrawingFrame.Bottom - RulerRoom);

    /// <summary>Each side as a whole, and where much stands close together once more at twice the size or larger.</summary>
    public static IReadOnlyList<Draft> Of(Assessment assessment) => [.. Enum.GetValues<Aspect>().SelectMany(a => Sheets(assessment, a))];

    private static IEnumerable<Draft> Sheets(Assessment assessment, Aspect aspect)
    {
        var points = Extent(assessment.Job).Select(p => Projection.Flat(aspect, p.Fs, p.Bl, p.Wl)).ToArray();
        var (left, right) = (points.Min(p => p.X) - Air, points.Max(p => p.X) + Air);
        var (top, bottom) = (points.Min(p => p.Y) - Air, points.Max(p => p.Y) + Air);
        var scale = Scales.FirstOrDefault(s => (right - left) / s <= Room.Right - Room.Left && (bottom - top) / s <= Room.Bottom - Room.Top, Scales[^1]);
        yield return Sheet(assessment, aspect, scale, new((left + right) / 2, (top + bottom) / 2), detail: false);
        var larger = Scales.LastOrDefault(s => s <= scale / 2, scale);
        if (larger < scale && Crowd(assessment.Job, aspect, larger) is { } middle)
        {
            yield return Sheet(assessment, aspect, larger, middle, detail: true);
        }
    }

    // The middle of a crowd: where a detail at a scale would show most places, if they are many.
    private static Point? Crowd(Job job, Aspect aspect, double scale)
    {
        var places = Places(job).Select(p => Projection.Flat(aspect, p.Fs, p.Bl, p.Wl)).ToArray();
        if (places.Length is < CrowdLeast or > CrowdMost)
        {
            return null;
        }

        var (halfWidth, halfHeight) = ((Room.Right - Room.Left) / 2 * scale, (Room.Bottom - Room.Top) / 2 * scale);
        var shown = places.Select(m => places.Where(p => Math.Abs(p.X - m.X) < halfWidth * 0.9 && Math.Abs(p.Y - m.Y) < halfHeight * 0.9).ToArray()).MaxBy(s => s.Length)!;
        return shown.Length < CrowdLeast ? null : new((shown.Min(p => p.X) + shown.Max(p => p.X)) / 2, (shown.Min(p => p.Y) + shown.Max(p => p.Y)) / 2);
    }

    private static Draft Sheet(Assessment assessment, Aspect aspect, double scale, Point middle, bool detail)
    {
        var job = assessment.Job;
        var canvas = new Canvas();
        var projection = new Projection(aspect, scale, Room.Centre.Moved(-middle.X / scale, -middle.Y / scale));
        Rulers.Paint(canvas, projection, Room, "in");
        var painter = new ViewPainter(assessment, canvas, projection, Room);
        painter.Paint();
        Key(canvas, painter.Missing);
        var (name, title) = aspect switch { Aspect.Side => ("side", "from the left"), Aspect.Plan => ("plan", "from above"), _ => ("front", "from the front") };
        return new Draft(
            $"aircraft-{name}{(detail ? "-detail" : "")}", $"{job.Aircraft.Type} {title}{(detail ? ", detail" : "")}: items, antennas, ways and panels",
            $"{job.Aircraft.Registration} {title}{(detail ? ", enlarged" : "")}. {Words(job)}", "1:" + NumberFormat.Text(scale), canvas);
    }

    /// <summary>Everything that has a place, so that the scale takes it in; mm.</summary>
    internal static IEnumerable<(double Fs, double Bl, double Wl)> Extent(Job job) => Places(job)
            .Concat(job.Aircraft.Sections.SelectMany(s => new[] { (s.Fs.In("mm"), s.HalfWidth.In("mm"), s.Top.In("mm")), (s.Fs.In("mm"), -s.HalfWidth.In("mm"), s.Bottom.In("mm")) }))
            .DefaultIfEmpty((0, 0, 0));

    private static IEnumerable<(double Fs, double Bl, double Wl)> Places(Job job) =>
        job.Change.Fit.OrEmpty().Select(i => i.Place).Concat(job.Change.Antennas.OrEmpty().Select(a => a.Place)).Concat(job.Aircraft.Antennas.OrEmpty().Select(a => a.Place))
            .Concat(job.Aircraft.Nodes.OrEmpty().Select(n => n.Place)).Select(p => (p.Fs.In("mm"), p.Bl.In("mm"), p.Wl.In("mm")));

    private static void Key(Canvas canvas, int missing)
    {
        const double y = DrawingFrame.Bottom - 1;
        var x = DrawingFrame.Left + 10;
        void Next(string words)
        {
            canvas.Write(x + 8, y + 0.8, words, Lettering.Small, Ink.Quiet);
            x += 14 + TextMeasure.Width(words, Lettering.Small);
        }

        canvas.Rect(x, y - 1.5, 6, 3, ViewPainter.Goes);
        Next("box that goes in");
        canvas.Rect(x, y - 1.5, 6, 3, ViewPainter.Was);
        Next("fitted before");
        canvas.Add(ViewPainter.Cross(new(x + 3, y), 1.5));
        Next("comes out");
        canvas.Add(ViewPainter.Aerial(new(x + 3, y), 1.8, ViewPainter.Goes));
        Next("antenna");
        canvas.Line(x, y, x + 6, y, ViewPainter.Way(8));
        Next("way that new wires use");
        canvas.Line(x, y, x + 6, y, ViewPainter.Unused);
        Next("other way");
        canvas.Add(ViewPainter.Cover(new(x + 3, y)));
        Next("panel to be opened");
        if (missing > 0)
        {
            canvas.Write(DrawingFrame.Right, y + 0.8, $"{NumberFormat.Text(missing)} names found no room", Lettering.Small, Ink.Accent, Anchor.End);
        }
    }

    private static string Words(Job job) => string.Join("; ", job.Change.Fit.OrEmpty().Select(i => $"{i.Id} goes in at {At(i.Place)}")
        .Concat(job.Change.Antennas.OrEmpty().Select(a => $"antenna {a.Id} at {At(a.Place)}")).Concat(job.Change.Remove.OrEmpty().Select(r => $"{r.Item} comes out")));

    private static string At(Place place) => $"FS {Tenths(place.Fs)}, BL {Tenths(place.Bl)}, WL {Tenths(place.Wl)} in";

    private static string Tenths(Length length) => NumberFormat.Text(Math.Round(length.In("in"), 1));
}
