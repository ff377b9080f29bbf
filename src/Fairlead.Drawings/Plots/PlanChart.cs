using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>A row of a plan: one task.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Note">Who does it.</param>
/// <param name="Pieces">When, each from and to.</param>
/// <param name="Holding">Whether it is on the chain that holds the finish.</param>
/// <param name="Actual">Whether it is done.</param>
public sealed record PlanRow(string Name, string Note, Sequence<(DateTime From, DateTime To)> Pieces, bool Holding = false, bool Actual = false);

/// <summary>What a plan chart shows.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Rows">The tasks, from top to bottom.</param>
/// <param name="Promised">The day promised; null when none was.</param>
/// <param name="Width">Width, mm.</param>
public sealed record PlanView(string Title, Sequence<PlanRow> Rows, DateOnly? Promised = null, double Width = 400);

/// <summary>A plan in time: a row for each task, a column for each day, what holds the finish filled, a line at the end of the promised day.</summary>
public static class PlanChart
{
    private const double Pitch = 3.4;
    private const double Text = 2.2;
    private const double Names = 46;
    private const double Notes = 26;
    private const double Top = 12;

    /// <summary>Draws the chart.</summary>
    /// <exception cref="ArgumentException">There is no row to show.</exception>
    public static Picture Draw(PlanView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Rows.Count == 0)
        {
            throw new ArgumentException($"Plan '{view.Title}' has no row.", nameof(view));
        }

        var (first, last) = (view.Rows.Min(r => r.Pieces[0].From).Date, view.Rows.Max(r => r.Pieces[^1].To).Date.AddDays(1));
        var end = view.Promised is { } day && day.AddDays(1).ToDateTime(TimeOnly.MinValue) is var promised && promised > last && promised < last.AddDays(21) ? promised : last;
        var (left, height) = (Names, Top + (Pitch * view.Rows.Count) + 4);
        var scale = (view.Width - Names - Notes) / (end - first).TotalDays;
        double X(DateTime at) => left + ((at - first).TotalDays * scale);
        var shapes = new List<Shape>();
        shapes.AddRange(Days(first, end, X, height));
        for (var i = 0; i < view.Rows.Count; i++)
        {
            shapes.AddRange(Row(view.Rows[i], Top + (Pitch * i), X));
        }

        if (view.Promised is { } kept && kept.AddDays(1).ToDateTime(TimeOnly.MinValue) is var line && line <= end)
        {
            shapes.Add(new Line(new(X(line), Top - 1), new(X(line), height - 3), Style.Limit));
            shapes.Add(new Text(new(X(line) - 1, 4), string.Create(CultureInfo.InvariantCulture, $"promised {kept:yyyy-MM-dd}"), 2.6, Ink.Accent, Anchor.End));
        }

        return new Picture(view.Width, height, view.Title, Description(view), shapes.ToSequence());
    }

    private static IEnumerable<Shape> Days(DateTime first, DateTime end, Func<DateTime, double> x, double height)
    {
        for (var day = first; day <= end; day = day.AddDays(1))
        {
            yield return new Line(new(x(day), Top - 1), new(x(day), height - 3), Style.Grid);
            if (day < end && (day.DayOfWeek == DayOfWeek.Monday || day == first))
            {
                yield return new Text(new(x(day) + 0.4, Top - 2.4), day.ToString("ddd MM-dd", CultureInfo.InvariantCulture), Text, Ink.Quiet);
            }
        }
    }

    private static IEnumerable<Shape> Row(PlanRow row, double top, Func<DateTime, double> x)
    {
        var line = top + Pitch - 1;
        yield return new Text(new(1, line), row.Name, Text, row.Actual ? Ink.Quiet : Ink.Line, Bold: row.Holding);
        foreach (var (from, to) in row.Pieces)
        {
            var style = row.Holding ? new Style(Ink.Accent, 0.2, Dash.Solid, Ink.Accent) : row.Actual ? new Style(Ink.Quiet, 0.2, Dash.Solid, Ink.Tint) : new Style(Ink.Line, 0.2, Dash.Solid, Ink.Line);
            yield return new Rect(new(x(from), top + 0.7), Math.Max(0.3, x(to) - x(from)), Pitch - 1.4, style);
        }

        yield return new Text(new(x(row.Pieces[^1].To) + 0.8, line), row.Note, Text, Ink.Quiet);
    }

    private static string Description(PlanView view) => string.Join(" ", view.Rows.Select(r =>
        string.Create(CultureInfo.InvariantCulture, $"{r.Name}{(r.Note.Length > 0 ? ", " + r.Note : "")}: {r.Pieces[0].From:yyyy-MM-dd HH:mm} to {r.Pieces[^1].To:yyyy-MM-dd HH:mm}.")));
}
