using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>A mass at a centre of gravity.</summary>
/// <param name="Arm">Station of the centre of gravity, aft positive.</param>
/// <param name="Mass">Mass.</param>
public sealed record BalancePoint(Length Arm, Mass Mass);

/// <summary>An approved envelope, as a polygon.</summary>
/// <param name="Name">Its name, for example its category.</param>
/// <param name="Corners">Its corners in order.</param>
public sealed record EnvelopeOutline(string Name, Sequence<BalancePoint> Corners);

/// <summary>What a mark on the envelope plot stands for.</summary>
public enum EnvelopeMarkKind
{
    /// <summary>The empty aircraft before the change: an open circle.</summary>
    EmptyBefore,

    /// <summary>The empty aircraft after the change: a filled circle.</summary>
    EmptyAfter,

    /// <summary>A loading: a filled square.</summary>
    Loading,

    /// <summary>A loading before the change: an open square.</summary>
    LoadingBefore,
}

/// <summary>A point to be compared with the envelope.</summary>
/// <param name="Name">Its label; empty for none.</param>
/// <param name="At">Where it lies.</param>
/// <param name="Kind">What it stands for.</param>
/// <param name="Outside">Outside the envelope where it should be inside: drawn in the accent and said in its label.</param>
public sealed record EnvelopeMark(string Name, BalancePoint At, EnvelopeMarkKind Kind, bool Outside = false);

/// <summary>How a loading moves, for example as fuel burns.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Points">Where it passes, in order.</param>
public sealed record EnvelopeTrace(string Name, Sequence<BalancePoint> Points);

/// <summary>What an envelope plot shows.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Outlines">The approved envelopes.</param>
/// <param name="Marks">The points.</param>
/// <param name="Traces">The movements.</param>
/// <param name="ArmUnit">Unit of the horizontal axis.</param>
/// <param name="MassUnit">Unit of the vertical axis.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
public sealed record EnvelopeView(
    string Title, Sequence<EnvelopeOutline> Outlines, Sequence<EnvelopeMark> Marks, Sequence<EnvelopeTrace> Traces = default,
    string ArmUnit = "in", string MassUnit = "lb", double Width = 170, double Height = 115);

/// <summary>Mass against centre of gravity: the approved envelopes with loadings on them.</summary>
public static class EnvelopePlot
{
    private const double LabelText = 2.8;

    /// <summary>Draws the plot.</summary>
    public static Picture Draw(EnvelopeView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var frame = Frame(view);
        Point At(BalancePoint p) => frame.At(p.Arm.In(view.ArmUnit), p.Mass.In(view.MassUnit));
        var labels = new LabelPlacer(new Box(frame.Left + 0.5, frame.Top + 0.5, frame.Right - 0.5, frame.Bottom - 0.5));
        var shapes = new List<Shape>();
        shapes.AddRange(frame.VerticalAxis($"Mass, {view.MassUnit}"));
        shapes.AddRange(frame.HorizontalAxis($"Centre of gravity: station, {view.ArmUnit} (aft to the right)"));

        foreach (var outline in view.Outlines)
        {
            Sequence<Point> corners = outline.Corners.Select(At).ToSequence();
            shapes.Add(new Polygon(corners, Style.Heavy));
            labels.Avoid(corners, closed: true);
        }

        foreach (var trace in view.Traces)
        {
            Sequence<Point> points = trace.Points.Select(At).ToSequence();
            shapes.Add(new Polyline(points, new Style(Ink.Quiet, 0.25, Dash.Dotted)));
            labels.Avoid(points);
        }

        foreach (var mark in view.Marks)
        {
            labels.Avoid(Box.Around(At(mark.At), 1.3));
        }

        foreach (var mark in view.Marks.Where(m => m.Name.Length > 0))
        {
            shapes.AddRange(labels.Place(At(mark.At), mark.Outside ? mark.Name + ": OUTSIDE" : mark.Name, LabelText, mark.Outside ? Ink.Accent : Ink.Line, mark.Outside));
        }

        shapes.AddRange(view.Outlines.SelectMany(o => labels.Place(At(Topmost(o)), o.Name, LabelText, Ink.Quiet)));
        shapes.AddRange(view.Marks.Select(m => Symbol(m, At(m.At))));
        return new Picture(view.Width, view.Height, view.Title, Description(view), shapes.ToSequence());
    }

    private static PlotFrame Frame(EnvelopeView view)
    {
        var points = view.Outlines.SelectMany(o => o.Corners).Concat(view.Marks.Select(m => m.At)).Concat(view.Traces.SelectMany(t => t.Points)).ToArray();
        var across = Scale.Covering(Spread(points.Select(p => p.Arm.In(view.ArmUnit))), 8);
        var up = Scale.Covering(Spread(points.Select(p => p.Mass.In(view.MassUnit))), 7);
        return new PlotFrame(new(18, 8), view.Width - 26, view.Height - 20, across, up);
    }

    // A little room around the outermost points, so that their marks and labels stay inside.
    private static double[] Spread(IEnumerable<double> values)
    {
        var all = values.DefaultIfEmpty(0).ToArray();
        var margin = 0.07 * (all.Max() - all.Min());
        return [all.Min() - margin, all.Max() + margin];
    }

    private static BalancePoint Topmost(EnvelopeOutline outline) =>
        outline.Corners.MaxBy(c => (c.Mass.Si, -c.Arm.Si)) ?? throw new ArgumentException($"Envelope '{outline.Name}' has no corners.", nameof(outline));

    private static Shape Symbol(EnvelopeMark mark, Point at)
    {
        var ink = mark.Outside ? Ink.Accent : Ink.Line;
        return mark.Kind switch
        {
            EnvelopeMarkKind.EmptyBefore => new Circle(at, 1.1, new Style(ink, 0.3, Dash.Solid, Ink.Paper)),
            EnvelopeMarkKind.EmptyAfter => new Circle(at, 1.1, new Style(ink, 0.3, Dash.Solid, ink)),
            EnvelopeMarkKind.LoadingBefore => new Rect(at.Moved(-1.2, -1.2), 2.4, 2.4, new Style(ink, 0.25, Dash.Solid, Ink.Paper)),
            _ => new Rect(at.Moved(-0.9, -0.9), 1.8, 1.8, new Style(ink, 0.3, Dash.Solid, ink)),
        };
    }

    private static string Description(EnvelopeView view) => string.Join(" ", view.Marks.Where(m => m.Name.Length > 0).Select(m =>
        $"{m.Name}: {m.At.Mass.As(view.MassUnit)} at station {m.At.Arm.As(view.ArmUnit)}{(m.Outside ? ", outside the envelope" : "")}."));
}
