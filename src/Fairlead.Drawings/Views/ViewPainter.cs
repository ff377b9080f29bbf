using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Views;

/// <summary>Draws what a view shows and puts names beside it. What the change does is drawn over what was there.</summary>
internal sealed class ViewPainter(Assessment assessment, Canvas canvas, Projection projection, Box box)
{
    private const double Size = Lettering.Small;
    private const int MostShared = 6;
    private readonly Job job = assessment.Job;
    private readonly List<Label> names = [];
    private readonly LabelPlacer labels = new(box.Grown(-1), reach: 100);

    public static Style Goes { get; } = new(Ink.Accent, 0.4, Dash.Solid, Ink.AccentTint);

    public static Style Was { get; } = new(Ink.Quiet, 0.2, Dash.Solid, Ink.Paper);

    public static Style Unused { get; } = new(Ink.Quiet, 0.15, Dash.Dashed);

    public static Style Way(int wires) => new(Ink.Line, Math.Min(1.2, 0.25 + (0.12 * Math.Sqrt(wires))));

    public static Sequence<Shape> Cross(Point at, double reach) =>
        [new Line(at.Moved(-reach, -reach), at.Moved(reach, reach), new Style(Ink.Accent, 0.4)), new Line(at.Moved(-reach, reach), at.Moved(reach, -reach), new Style(Ink.Accent, 0.4))];

    public static Sequence<Shape> Aerial(Point at, double size, Style style) => [new Polygon([at.Moved(0, size * 0.9), at.Moved(-size, -size * 0.8), at.Moved(size, -size * 0.8)], style)];

    public static Sequence<Shape> Cover(Point at) => [new Rect(at.Moved(-1.1, -1.1), 2.2, 2.2, new Style(Ink.Line, 0.2, Dash.Solid, Ink.Tint))];

    public void Paint()
    {
        foreach (var line in Outline.Of(job.Aircraft, projection, box))
        {
            canvas.Add(line);
            labels.Avoid([line.From, line.To]);
        }

        Ways();
        Panels();
        Before();
        Fitted();
        canvas.Add(labels.Place(names.OrderByDescending(n => n.Bold), out var leftOut));
        Missing = leftOut.Count;
    }

    /// <summary>How many names found no room.</summary>
    public int Missing { get; private set; }

    // A symbol that others' names keep off, and its own name.
    private void Name(Box symbol, string words, Ink ink, bool bold = false)
    {
        labels.Avoid(symbol);
        names.Add(new Label(symbol, words, bold ? Lettering.Name : Size, ink, bold));
    }

    private void Ways()
    {
        var wires = assessment.Circuits.Where(c => c.Way is not null).SelectMany(c => c.Way!.Segments).GroupBy(s => s, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        foreach (var segment in job.Aircraft.Segments.OrEmpty().OrderBy(s => wires.ContainsKey(s.Id)))
        {
            var (from, to) = (At(job.Aircraft.Nodes![segment.From].Place), At(job.Aircraft.Nodes[segment.To].Place));
            if (box.Clip(from, to) is { } seen)
            {
                canvas.Add(new Line(seen.From, seen.To, wires.TryGetValue(segment.Id, out var count) ? Way(count) : Unused));
                labels.Avoid([seen.From, seen.To]);
            }
        }

        // Points that fall together in this view share a name.
        foreach (var nodes in job.Aircraft.Nodes.OrEmpty().Where(n => Seen(n.Place)).GroupBy(n => Near(At(n.Place))))
        {
            var at = At(nodes.First().Place);
            canvas.Circle(at.X, at.Y, 0.7, new Style(Ink.None, 0, Dash.Solid, Ink.Line));
            Name(Box.Around(at, 0.7), string.Join(", ", nodes.Select(n => n.Id)), Ink.Line);
        }
    }

    private void Panels()
    {
        var open = job.Change.Fit.OrEmpty().SelectMany(i => i.Panels).Concat(job.Change.Antennas.OrEmpty().SelectMany(a => a.Panels)).Concat(job.Change.Remove.OrEmpty().SelectMany(r => r.Panels))
            .Concat(assessment.Circuits.Where(c => c.Way is not null).SelectMany(c => c.Way!.Segments).Distinct().SelectMany(s => job.Aircraft.Segments![s].Panels)).ToHashSet(StringComparer.Ordinal);
        foreach (var panels in job.Aircraft.Panels.OrEmpty().Where(p => p.Place is not null && Seen(p.Place) && open.Contains(p.Id)).GroupBy(p => Near(At(p.Place!))))
        {
            var at = At(panels.First().Place!);
            canvas.Add(Cover(at));
            Name(Box.Around(at, 1.1), string.Join(", ", panels.Select(p => p.Id)), Ink.Quiet);
        }
    }

    private void Before()
    {
        var removed = job.Change.Remove.OrEmpty().Select(r => r.Item).ToHashSet(StringComparer.Ordinal);
        var joined = assessment.Circuits.SelectMany(c => new[] { c.Circuit.From.Item, c.Circuit.To.Item }).ToHashSet(StringComparer.Ordinal);
        foreach (var item in job.Aircraft.Equipment.OrEmpty().Where(i => Seen(i.Place) && (removed.Contains(i.Id) || joined.Contains(i.Id))))
        {
            var at = At(item.Place);
            canvas.Rect(at.X - 1.5, at.Y - 1.5, 3, 3, Was);
            Gone(item.Id, at, removed.Contains(item.Id));
        }

        foreach (var antenna in job.Aircraft.Antennas.OrEmpty().Where(a => Seen(a.Place)))
        {
            var at = At(antenna.Place);
            canvas.Add(Aerial(at, 1.5, Was));
            Gone(antenna.Id, at, removed.Contains(antenna.Id));
        }
    }

    private void Gone(string id, Point at, bool gone)
    {
        if (gone)
        {
            canvas.Add(Cross(at, 1.8));
        }

        Name(Box.Around(at, gone ? 1.8 : 1.5), gone ? id + " out" : id, gone ? Ink.Accent : Ink.Quiet);
    }

    private void Fitted()
    {
        // Boxes that fall together in this view share a name.
        foreach (var items in job.Change.Fit.OrEmpty().Where(i => Seen(i.Place)).GroupBy(i => Near(At(i.Place))))
        {
            var extent = items.Select(Extent).Aggregate((a, b) => new Box(Math.Min(a.Left, b.Left), Math.Min(a.Top, b.Top), Math.Max(a.Right, b.Right), Math.Max(a.Bottom, b.Bottom)));
            foreach (var one in items.Select(Extent))
            {
                canvas.Rect(one.Left, one.Top, one.Right - one.Left, one.Bottom - one.Top, Goes);
            }

            var more = items.Count() > MostShared ? $" +{NumberFormat.Text(items.Count() - MostShared)}" : "";
            Name(extent, string.Join(", ", items.Take(MostShared).Select(i => i.Id)) + more, Ink.Accent, bold: true);
        }

        foreach (var antenna in job.Change.Antennas.OrEmpty().Where(a => Seen(a.Place)))
        {
            canvas.Add(Aerial(At(antenna.Place), 1.8, Goes));
            Name(Box.Around(At(antenna.Place), 1.8), antenna.Id, Ink.Accent, bold: true);
        }
    }

    private Box Extent(FittedItem item)
    {
        var at = At(item.Place);
        var (width, height) = job.Parts.Equipment?.Find(item.Part)?.Size is { } size ? projection.Sides(size) : (3.0, 3.0);
        return new Box(Math.Max(box.Left, at.X - (width / 2)), Math.Max(box.Top, at.Y - (height / 2)), Math.Min(box.Right, at.X + (width / 2)), Math.Min(box.Bottom, at.Y + (height / 2)));
    }

    private Point At(Place place) => projection.Of(place);

    // A symbol near the edge of a detail would reach out of it.
    private bool Seen(Place place) => box.Grown(-2).Contains(At(place));

    private static (double, double) Near(Point at) => (Math.Round(at.X / 2), Math.Round(at.Y / 2));
}
