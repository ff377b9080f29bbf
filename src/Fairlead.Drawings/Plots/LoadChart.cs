using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>The load of one operating condition, before and after the change.</summary>
/// <param name="Condition">The operating condition.</param>
/// <param name="Before">Load before.</param>
/// <param name="After">Load after.</param>
/// <param name="Capacity">What the source may give in that condition; null where no limit applies.</param>
public sealed record ConditionLoad(string Condition, Current Before, Current After, Current? Capacity);

/// <summary>What a load chart shows.</summary>
/// <param name="Title">Its title, naming the source or bus.</param>
/// <param name="Conditions">The conditions, in the order of a flight.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
public sealed record LoadView(string Title, Sequence<ConditionLoad> Conditions, double Width = 170, double Height = 85);

/// <summary>Bars of load before (open) and after (filled) by operating condition, against the capacity line.</summary>
public static class LoadChart
{
    private const double LabelText = 2.6;
    private const double NumberText = 2.4;

    /// <summary>Draws the chart. A load above its capacity is drawn in the accent and the word "over" stands above its number.</summary>
    /// <exception cref="ArgumentException">There is no condition to show.</exception>
    public static Picture Draw(LoadView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Conditions.Count == 0)
        {
            throw new ArgumentException($"Load chart '{view.Title}' has no operating condition.", nameof(view));
        }

        var up = Scale.Covering(view.Conditions.SelectMany(c => new[] { c.Before.In("A"), c.After.In("A"), c.Capacity?.In("A") ?? 0 }).Select(x => x * 1.05), 6, fromZero: true);
        var frame = new PlotFrame(new(14, 14), view.Width - 18, view.Height - 27, Scale.Covering([0, 1], 1), up);
        var shapes = new List<Shape>();
        shapes.AddRange(Legend(view.Width));
        shapes.AddRange(frame.VerticalAxis("Load, A"));
        var slot = (frame.Right - frame.Left) / view.Conditions.Count;
        for (var i = 0; i < view.Conditions.Count; i++)
        {
            shapes.AddRange(Group(frame, view.Conditions[i], frame.Left + (i * slot), slot));
        }

        shapes.Add(new Line(new(frame.Left, frame.Bottom), new(frame.Right, frame.Bottom), Style.Usual));
        return new Picture(view.Width, view.Height, view.Title, Description(view), shapes.ToSequence());
    }

    private static IEnumerable<Shape> Group(PlotFrame frame, ConditionLoad load, double left, double slot)
    {
        var bar = Math.Min(slot * 0.34, 14);
        var middle = left + (slot / 2);
        var over = load.Capacity is { } most && load.After > most;
        yield return Bar(frame, middle - bar, bar, load.Before.In("A"), new Style(Ink.Line, 0.25, Dash.Solid, Ink.Paper));
        yield return Bar(frame, middle, bar, load.After.In("A"), over ? new Style(Ink.Accent, 0.25, Dash.Solid, Ink.Accent) : new Style(Ink.Line, 0.25, Dash.Solid, Ink.Line));
        if (load.Capacity is { } capacity)
        {
            var y = frame.Y(capacity.In("A"));
            yield return new Line(new(left + (slot * 0.06), y), new(left + (slot * 0.94), y), Style.Limit);
        }

        yield return Number(frame, load.Before, middle - (bar / 2) - 0.4, load.Capacity, Ink.Quiet);
        var after = Number(frame, load.After, middle + (bar / 2) + 0.4, load.Capacity, over ? Ink.Accent : Ink.Line);
        yield return after;
        if (over)
        {
            yield return new Text(after.At.Moved(0, -3.2), "over", LabelText, Ink.Accent, Anchor.Middle, Bold: true);
        }

        foreach (var (words, line) in Wrapped(load.Condition, slot - 2).Select((w, n) => (w, n)))
        {
            yield return new Text(new(middle, frame.Bottom + 4 + (line * 3.4)), words, LabelText, Ink.Line, Anchor.Middle);
        }
    }

    private static Rect Bar(PlotFrame frame, double left, double width, double value, Style style)
    {
        var (top, foot) = (Math.Min(frame.Y(value), frame.Y(0)), Math.Max(frame.Y(value), frame.Y(0)));
        return new Rect(new(left + 0.3, top), width - 0.6, foot - top, style);
    }

    // Above its bar, or above the capacity line where the line would strike it through.
    private static Text Number(PlotFrame frame, Current load, double x, Current? capacity, Ink ink)
    {
        var y = frame.Y(load.In("A")) - 1;
        if (capacity is { } limit && frame.Y(limit.In("A")) is var line && line < y + 0.5 && line > y - 2.6)
        {
            y = line - 1;
        }

        return new Text(new(x, y), load.In("A").ToString("0.0", CultureInfo.InvariantCulture), NumberText, ink, Anchor.Middle);
    }

    private static IEnumerable<Shape> Legend(double width)
    {
        var x = width - 76;
        yield return new Rect(new(x, 1.6), 3, 3, new Style(Ink.Line, 0.25, Dash.Solid, Ink.Paper));
        yield return new Text(new(x + 4.2, 4.2), "before", LabelText);
        yield return new Rect(new(x + 18, 1.6), 3, 3, new Style(Ink.Line, 0.25, Dash.Solid, Ink.Line));
        yield return new Text(new(x + 22.2, 4.2), "after", LabelText);
        yield return new Line(new(x + 34, 3.2), new(x + 42, 3.2), Style.Limit);
        yield return new Text(new(x + 43.2, 4.2), "available from the source", LabelText);
    }

    // Two lines at most: the rest is cut with an ellipsis.
    private static IEnumerable<string> Wrapped(string words, double width)
    {
        if (TextMeasure.Width(words, LabelText) <= width)
        {
            return [words];
        }

        var parts = words.Split(' ');
        var first = 1;
        while (first < parts.Length && TextMeasure.Width(string.Join(' ', parts[..(first + 1)]), LabelText) <= width)
        {
            first++;
        }

        string[] lines = [string.Join(' ', parts[..first]), string.Join(' ', parts[first..])];
        return lines.Where(l => l.Length > 0).Select(l => TextMeasure.Fitted(l, LabelText, width));
    }

    private static string Description(LoadView view) => string.Join(" ", view.Conditions.Select(c =>
        $"{c.Condition}: {c.Before.As("A")} before, {c.After.As("A")} after{(c.Capacity is { } limit ? $", {limit.As("A")} available" : "")}."));
}
