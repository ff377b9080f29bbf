using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Workbench.Views;

/// <summary>A sheet as it is shown: every number as text with its unit.</summary>
public sealed record SheetView(
    string Subject, string Calculation, string Title, string Verdict, ImmutableArray<GivenView> Given, ImmutableArray<TableView> Tables, ImmutableArray<StepView> Steps,
    ImmutableArray<CheckView> Checks, ImmutableArray<string> CannotTell, ImmutableArray<string> Cautions, ImmutableArray<string> Sources)
{
    /// <summary>The view of a sheet.</summary>
    /// <param name="subject">What it is about; empty for one that stands alone.</param>
    /// <param name="sheet">The sheet.</param>
    public static SheetView Of(string subject, Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return new SheetView(
            subject, sheet.Calculation, sheet.Title, VerdictWords.Of(sheet.Verdict),
            [.. sheet.Given.Select(g => new GivenView(g.Symbol, g.Meaning, g.Value.ToString(), g.Origin))],
            [.. sheet.Tables.Select(t => new TableView(t.Title, t.Columns, [.. t.Rows.Select(r => r.Select(c => c.ToString()).ToImmutableArray())]))],
            [.. sheet.Steps.Select(s => new StepView(s.Symbol, s.Meaning, s.Formula, sheet.Substituted(s), s.Value.ToString(), s.Source?.ToString() ?? ""))],
            [.. sheet.Checks.Select(c => new CheckView(c.Name, c.Demand.ToString(), c.Sense == Sense.AtMost ? "at most" : "at least", c.Limit.ToString(), c.MarginText, c.Rule, c.Source.ToString(), VerdictWords.Of(c.Verdict)))],
            sheet.CannotTell, sheet.Cautions, [.. sheet.Sources.Select(s => s.ToString())]);
    }
}

/// <summary>A given line; its origin may be a model path, which can then be opened.</summary>
public sealed record GivenView(string Symbol, string Meaning, string Value, string Origin);

/// <summary>A table.</summary>
public sealed record TableView(string Title, ImmutableArray<string> Columns, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>A step of the working.</summary>
public sealed record StepView(string Symbol, string Meaning, string Formula, string Substituted, string Value, string Source);

/// <summary>A check.</summary>
public sealed record CheckView(string Name, string Demand, string Sense, string Limit, string Margin, string Rule, string Source, string Verdict);

/// <summary>A line of the list of sheets.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Title">Its title.</param>
/// <param name="Verdict">The verdict as a word.</param>
/// <param name="Tightest">Its tightest check, in words; empty when it has none.</param>
/// <param name="Margin">The margin of that check.</param>
/// <param name="Brief">The margin, down to the next tenth of its unit, without the unit: for tables of one unit.</param>
public sealed record SheetLine(string Subject, string Title, string Verdict, string Tightest, string Margin = "", string Brief = "");

/// <summary>A picture as SVG text.</summary>
/// <param name="Name">Its name, good for a file.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Svg">The drawing.</param>
public sealed record PictureView(string Name, string Title, string Svg);

/// <summary>A page of one discipline: what was found, drawn and worked there.</summary>
public sealed record DisciplineView(string Name, string Verdict, ImmutableArray<FindingView> Findings, ImmutableArray<PictureView> Pictures, ImmutableArray<SheetLine> Sheets);

/// <summary>Verdicts as the words they have everywhere outside the code.</summary>
public static class VerdictWords
{
    /// <summary>The word of a verdict: <c>holds</c>, <c>caution</c>, <c>cannot-tell</c>, <c>fails</c>.</summary>
    public static string Of(Verdict verdict) => Words.Kebab(verdict.ToString());
}
