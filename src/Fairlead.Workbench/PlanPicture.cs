using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>What of a plan is drawn: a whole plan has hundreds of tasks, and nobody looks at all of them.</summary>
/// <param name="Key">A short word for it.</param>
/// <param name="Words">It, in words.</param>
public sealed record PlanChoice(string Key, string Words);

/// <summary>The plan in time as it is drawn on a screen.</summary>
public static class PlanPicture
{
    /// <summary>What holds the finish.</summary>
    public const string Holding = "holding";

    /// <summary>The whole plan.</summary>
    public const string Whole = "whole";

    // As wide as a page: the narrower it is drawn, the larger its lettering.
    private const double Width = 200;
    private const int Week = 7;

    /// <summary>What can be looked at: what holds the finish, the work of each week, of each person, and the whole.</summary>
    public static ImmutableArray<PlanChoice> Choices(PlanSummaryView plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return
        [
            new PlanChoice(Holding, "what holds the finish"),
            .. plan.Rows.SelectMany(Weeks).Distinct().Order().Select(w => new PlanChoice(Day(w), $"week of {Day(w)}")),
            .. plan.Rows.SelectMany(r => r.People).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(p => new PlanChoice(p, $"work of {p}")),
            new PlanChoice(Whole, "the whole plan"),
        ];
    }

    /// <summary>The picture of a choice as SVG; empty when it has no task.</summary>
    public static string Draw(PlanSummaryView plan, string choice)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(choice);
        PlanRow[] rows = [.. plan.Rows.Where(r => IsOf(r, choice)).Select(r => new PlanRow(r.Task, string.Join(' ', r.People), Pieces(r, choice), r.Holding, r.Actual))];
        var promised = DateOnly.TryParseExact(plan.Promised, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && choice is Holding or Whole ? day : (DateOnly?)null;
        return rows.Length == 0 ? "" : SvgWriter.Write(PlanChart.Draw(new PlanView(plan.Title, rows.ToSequence(), promised, Width)));
    }

    private static bool IsOf(PlanRowView row, string choice) => choice switch
    {
        Holding => row.Holding,
        Whole => true,
        _ => row.People.Contains(choice) || Weeks(row).Any(w => Day(w) == choice),
    };

    // Of a week only what falls into it.
    private static Sequence<(DateTime From, DateTime To)> Pieces(PlanRowView row, string choice)
    {
        var pieces = row.Times.Chunk(2).Select(t => (From: t[0], To: t[1]));
        return (DateTime.TryParseExact(choice, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var monday)
            ? pieces.Where(p => p.To >= monday && p.From < monday.AddDays(Week)).Select(p => (From: Max(p.From, monday), To: Min(p.To, monday.AddDays(Week)))) : pieces).ToSequence();
    }

    private static IEnumerable<DateTime> Weeks(PlanRowView row) => row.Times.Chunk(2).SelectMany(t => new[] { Monday(t[0]), Monday(t[1]) }).Distinct();

    private static DateTime Monday(DateTime at) => at.Date.AddDays(-(((int)at.DayOfWeek + Week - 1) % Week));

    private static string Day(DateTime at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateTime Max(DateTime one, DateTime other) => one > other ? one : other;

    private static DateTime Min(DateTime one, DateTime other) => one < other ? one : other;
}
