using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>One interval of a discharge: a steady current, with what is left in the battery at its end.</summary>
/// <param name="Name">What happens, for example which loads are shed.</param>
/// <param name="From">When it begins.</param>
/// <param name="To">When it ends.</param>
/// <param name="Current">Current drawn from the battery.</param>
/// <param name="Remaining">Charge left at its end.</param>
public sealed record DischargeInterval(string Name, Duration From, Duration To, Current Current, Charge Remaining);

/// <summary>What a shedding timeline shows.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Start">Usable charge at the beginning.</param>
/// <param name="Intervals">The intervals, in order and touching.</param>
/// <param name="Required">How long the battery must last; null when nothing requires it.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
public sealed record TimelineView(string Title, Charge Start, Sequence<DischargeInterval> Intervals, Duration? Required, double Width = 170, double Height = 105);

/// <summary>Battery discharge in time: the current in steps above, the charge that remains below, the required endurance across both.</summary>
public static class SheddingTimeline
{
    private const double LabelText = 2.6;

    /// <summary>Draws the timeline.</summary>
    /// <exception cref="ArgumentException">There is no interval to show.</exception>
    public static Picture Draw(TimelineView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Intervals.Count == 0)
        {
            throw new ArgumentException($"Timeline '{view.Title}' has no interval.", nameof(view));
        }

        var across = Scale.Covering(view.Intervals.Select(i => i.To.In("min")).Append(view.Required?.In("min") ?? 0), 8, fromZero: true);
        var half = (view.Height - 38) / 2;
        var upper = new PlotFrame(new(16, 8), view.Width - 22, half, across, Scale.Covering(view.Intervals.Select(i => i.Current.In("A") * 1.15), 4, fromZero: true));
        var lower = new PlotFrame(new(16, 8 + half + 18), view.Width - 22, half, across, Scale.Covering(view.Intervals.Select(i => i.Remaining.In("A·h")).Append(view.Start.In("A·h")), 4, fromZero: true));
        var shapes = new List<Shape>();
        shapes.AddRange(upper.VerticalAxis("Current from the battery, A"));
        shapes.AddRange(upper.HorizontalAxis(""));
        shapes.AddRange(lower.VerticalAxis("Usable charge remaining, A·h"));
        shapes.AddRange(lower.HorizontalAxis("Time after the last generator is lost, min"));
        shapes.AddRange(Steps(view, upper));
        shapes.AddRange(Remaining(view, lower));
        shapes.AddRange(RequiredLine(view, upper, lower));
        return new Picture(view.Width, view.Height, view.Title, Description(view), shapes.ToSequence());
    }

    private static IEnumerable<Shape> Steps(TimelineView view, PlotFrame frame)
    {
        var points = view.Intervals.SelectMany(i => new[] { frame.At(i.From.In("min"), i.Current.In("A")), frame.At(i.To.In("min"), i.Current.In("A")) }).ToSequence();
        var labels = Labels(view, frame, points);
        yield return new Polyline(points, Style.Heavy);
        foreach (var interval in view.Intervals)
        {
            var middle = frame.At((interval.From.In("min") + interval.To.In("min")) / 2, interval.Current.In("A"));
            foreach (var shape in labels.Place(middle, $"{interval.Name}, {Tenths(interval.Current.In("A"))} A", LabelText))
            {
                yield return shape;
            }
        }
    }

    private static IEnumerable<Shape> Remaining(TimelineView view, PlotFrame frame)
    {
        var end = view.Intervals[^1];
        Sequence<Point> points =
        [
            frame.At(view.Intervals[0].From.In("min"), view.Start.In("A·h")),
            .. view.Intervals.Select(i => frame.At(i.To.In("min"), i.Remaining.In("A·h"))),
        ];
        yield return new Polyline(points, Style.Heavy);
        yield return new Circle(points[^1], 1, new Style(Ink.Line, 0.3, Dash.Solid, Ink.Line));
        var labels = Labels(view, frame, points);
        labels.Avoid(Box.Around(points[^1], 1.2));
        foreach (var shape in labels.Place(points[^1], $"{Tenths(end.Remaining.In("A·h"))} A·h after {Tenths(end.To.In("min"))} min", LabelText))
        {
            yield return shape;
        }
    }

    // Labels keep off the curve and off the line of the required endurance.
    private static LabelPlacer Labels(TimelineView view, PlotFrame frame, Sequence<Point> curve)
    {
        var labels = new LabelPlacer(new Box(frame.Left + 0.5, frame.Top + 0.5, frame.Right - 0.5, frame.Bottom - 0.5));
        labels.Avoid(curve);
        if (view.Required is { } required)
        {
            labels.Avoid([new(frame.X(required.In("min")), frame.Top), new(frame.X(required.In("min")), frame.Bottom)]);
        }

        return labels;
    }

    private static IEnumerable<Shape> RequiredLine(TimelineView view, PlotFrame upper, PlotFrame lower)
    {
        if (view.Required is not { } required)
        {
            yield break;
        }

        var x = upper.X(required.In("min"));
        var right = x > (upper.Left + upper.Right) / 2;
        yield return new Line(new(x, upper.Top), new(x, upper.Bottom), Style.Limit);
        yield return new Line(new(x, lower.Top), new(x, lower.Bottom), Style.Limit);
        yield return new Text(new(x, upper.Top - 2), $"required {required.As("min")}", LabelText, Ink.Accent, right ? Anchor.End : Anchor.Start);
    }

    private static string Tenths(double value) => NumberFormat.Text(Math.Round(value, 1));

    private static string Description(TimelineView view) => string.Join(" ", view.Intervals.Select(i =>
        $"{i.Name}: {i.Current.As("A")} from {i.From.As("min")} to {i.To.As("min")}, {i.Remaining.As("A·h")} left."));
}
