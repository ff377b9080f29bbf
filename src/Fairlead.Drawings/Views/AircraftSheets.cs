using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Views;

/// <summary>The aircraft from the side, from above and from the front: what goes in and comes out, ways, antennas and panels at their stations.</summary>
internal static class AircraftSheets
{
    private const double RulerRoom = 16;
    private const double Air = 150;
    private static readonly double[] Scales = [2, 2.5, 5, 7.5, 8, 10, 12, 15, 16, 20, 25, 30, 40, 50, 60, 75, 100, 150, 200];

    public static IReadOnlyList<Draft> Of(Assessment assessment) => [.. Enum.GetValues<Aspect>().Select(a => Sheet(assessment, a))];

    private static Draft Sheet(Assessment assessment, Aspect aspect)
    {
        var job = assessment.Job;
        var canvas = new Canvas();
        var box = new Box(DrawingFrame.Left + 10, DrawingFrame.Top + 4, DrawingFrame.Right, DrawingFrame.Bottom - RulerRoom);
        var points = Extent(job).Select(p => Projection.Flat(aspect, p.Fs, p.Bl, p.Wl)).ToArray();
        var (left, right) = (points.Min(p => p.X) - Air, points.Max(p => p.X) + Air);
        var (top, bottom) = (points.Min(p => p.Y) - Air, points.Max(p => p.Y) + Air);
        var scale = Scales.FirstOrDefault(s => (right - left) / s <= box.Right - box.Left && (bottom - top) / s <= box.Bottom - box.Top, Scales[^1]);
        var projection = new Projection(
            aspect, scale, new(((box.Left + box.Right) / 2) - ((left + right) / 2 / scale), ((box.Top + box.Bottom) / 2) - ((top + bottom) / 2 / scale)));
        Rulers.Paint(canvas, projection, box, "in");
        Outline.Paint(canvas, job.Aircraft, projection);
        var painter = new ViewPainter(assessment, canvas, projection, box);
        painter.Paint();
        Key(canvas, painter.Missing);
        var (name, title) = aspect switch { Aspect.Side => ("side", "from the left"), Aspect.Plan => ("plan", "from above"), _ => ("front", "from the front") };
        return new Draft(
            $"aircraft-{name}", $"{job.Aircraft.Type} {title}: items, antennas, ways and panels", $"{job.Aircraft.Registration} {title}. {Words(job)}", "1:" + NumberFormat.Text(scale), canvas);
    }

    // Everything that has a place, so that the scale takes it in.
    private static IEnumerable<(double Fs, double Bl, double Wl)> Extent(Job job) =>
        job.Change.Fit.OrEmpty().Select(i => i.Place).Concat(job.Change.Antennas.OrEmpty().Select(a => a.Place)).Concat(job.Aircraft.Antennas.OrEmpty().Select(a => a.Place))
            .Concat(job.Aircraft.Nodes.OrEmpty().Select(n => n.Place)).Select(p => (p.Fs.In("mm"), p.Bl.In("mm"), p.Wl.In("mm")))
            .Concat(job.Aircraft.Sections.SelectMany(s => new[] { (s.Fs.In("mm"), s.HalfWidth.In("mm"), s.Top.In("mm")), (s.Fs.In("mm"), -s.HalfWidth.In("mm"), s.Bottom.In("mm")) }))
            .DefaultIfEmpty((0, 0, 0));

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
