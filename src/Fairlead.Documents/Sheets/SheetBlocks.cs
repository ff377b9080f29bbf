using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A calculation's sheet as blocks of a document: everything an engineer needs to check it by hand.</summary>
public static class SheetBlocks
{
    private const int LongTable = 8;

    /// <summary>The blocks of a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="level">Level of its heading, 1 to 4.</param>
    /// <param name="title">Its heading; the sheet's own title unless given.</param>
    /// <param name="subject">What it is about, in a job.</param>
    /// <param name="printed">Long tables printed so far, with the subject of their sheet: a table that stands there in the same words is referred to. Null to print all.</param>
    public static IEnumerable<Block> Of(Sheet sheet, int level = 1, string? title = null, string subject = "", IDictionary<string, string>? printed = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        yield return new Heading(level, title ?? sheet.Title, subject);
        yield return new VerdictLine(sheet.Verdict, Summary(sheet));
        foreach (var why in sheet.CannotTell)
        {
            yield return new Paragraph("Cannot tell: " + why, Voice.Caution);
        }

        foreach (var caution in sheet.Cautions)
        {
            yield return new Paragraph(caution, Voice.Caution);
        }

        if (sheet.Checks.Length > 0)
        {
            yield return Checks(sheet);
        }

        if (sheet.Given.Length > 0)
        {
            yield return new Table(
                [new("Symbol"), new("Given"), new("Value", Right: true), new("From")],
                sheet.Given.Select(g => (Sequence<Cell>)[new Cell(g.Symbol, Strong: true), g.Meaning, g.Value.ToString(), g.Origin]).ToSequence(),
                "Given");
        }

        foreach (var table in sheet.Tables)
        {
            yield return Before(table, subject, printed) is { } where ? new Paragraph($"{Capital(table.Title)}: the same {NumberFormat.Text(table.Rows.Length)} lines as on sheet {where}.") : Of(table);
        }

        foreach (var block in Working(sheet).Concat(Sources(sheet)))
        {
            yield return block;
        }
    }

    private static string Summary(Sheet sheet)
    {
        var broken = sheet.Checks.Where(c => !c.Holds).Select(c => c.Name).ToArray();
        return broken.Length > 0 ? "Not met: " + string.Join("; ", broken) + "."
            : sheet.CannotTell.Length > 0 ? "No conclusion is drawn; the reason is below."
            : sheet.Checks.Length == 0 ? "This sheet computes; it checks nothing."
            : sheet.Checks.Length == 1 ? "Its check is met." : "All its checks are met.";
    }

    private static Table Checks(Sheet sheet) => new(
        [new("Check"), new("Found", Right: true), new("Limit", Right: true), new("Margin", Right: true), new("Verdict")],
        sheet.Checks.Select(c => (Sequence<Cell>)
        [
            new Cell(c.Name, c.Rule + "\n" + c.Source),
            c.Demand.ToString(),
            (c.Sense == Sense.AtMost ? "≤ " : "≥ ") + c.Limit,
            Margin(c),
            new Cell(VerdictMark.Word(c.Verdict), Mark: c.Verdict, Strong: !c.Holds),
        ]).ToSequence(),
        "Checks");

    // What is left, in the unit of the demand and with its sign.
    private static string Margin(Check check)
    {
        var number = NumberFormat.Text(check.Margin);
        var unit = check.Demand.Unit.Symbol;
        return (check.Margin > 0 ? "+" + number : number) + (unit.Length == 0 ? "" : unit is "°" ? unit : " " + unit);
    }

    // The sheet on which the same long table stands already.
    private static string? Before(SheetTable table, string subject, IDictionary<string, string>? printed)
    {
        if (printed is null || table.Rows.Length < LongTable)
        {
            return null;
        }

        var words = string.Join('\n', table.Rows.Select(r => string.Join('\t', r)).Prepend(string.Join('\t', table.Columns.Prepend(table.Title))));
        if (printed.TryGetValue(words, out var where))
        {
            return where;
        }

        printed.Add(words, subject);
        return null;
    }

    // Without the columns that no row fills. What is left of one column is a list and needs but a line.
    private static Block Of(SheetTable table)
    {
        if (table.Rows.IsEmpty)
        {
            return new Paragraph($"{Capital(table.Title)}: none.");
        }

        var filled = Enumerable.Range(0, table.Columns.Length).Where(c => table.Rows.Any(r => r[c].ToString().Length > 0)).ToArray();
        return filled.Length == 1 ? new Paragraph($"{Capital(table.Title)} ({table.Columns[filled[0]]}): {string.Join("; ", table.Rows.Select(r => r[filled[0]].ToString()))}.") : new Table(
            filled.Select(c => new Column(table.Columns[c], table.Rows.All(r => r[c].Number is not null))).ToSequence(),
            table.Rows.Select(r => filled.Select(c => new Cell(r[c].ToString())).ToSequence()).ToSequence(),
            Capital(table.Title));
    }

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    private static IEnumerable<Block> Working(Sheet sheet)
    {
        if (sheet.Steps.Length == 0)
        {
            yield break;
        }

        yield return new Label("Working");
        foreach (var step in sheet.Steps)
        {
            yield return new WorkingStep(step.Symbol, step.Meaning, step.Formula, sheet.Substituted(step), step.Value.ToString(), step.Source?.ToString() ?? "");
        }
    }

    // One line for each document, with the places in it.
    private static IEnumerable<Block> Sources(Sheet sheet)
    {
        if (sheet.Sources.Length > 0)
        {
            yield return new Paragraph(
                "Sources: " + string.Join(". ", sheet.Sources.GroupBy(s => (s.Document, s.Edition)).Select(g => Places(g.First(), g))) + ".",
                Voice.Remark);
        }
    }

    private static string Places(Source first, IEnumerable<Source> all)
    {
        var places = all.Where(s => s.Paragraph.Length > 0).Select(s => s.Paragraph + s.Mark).Distinct().ToArray();
        return places.Length == 0 ? first.ToString() : string.Join(", ", new[] { first.Document, first.Edition, string.Join("; ", places) }.Where(p => p.Length > 0));
    }
}
