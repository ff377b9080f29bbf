using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A calculation's sheet as blocks of a document: everything an engineer needs to check it by hand.</summary>
public static class SheetBlocks
{
    /// <summary>The blocks of a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="level">Level of its heading, 1 to 3.</param>
    /// <param name="title">Its heading; the sheet's own title unless given.</param>
    public static IEnumerable<Block> Of(Sheet sheet, int level = 1, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        yield return new Heading(level, title ?? sheet.Title);
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
            yield return Of(table);
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
        return (check.Margin > 0 ? "+" + number : number) + (unit.Length == 0 ? "" : unit is "%" or "°" ? unit : " " + unit);
    }

    private static Table Of(SheetTable table) => new(
        table.Columns.Select((c, i) => new Column(c, table.Rows.Length > 0 && table.Rows.All(r => r[i].Number is not null))).ToSequence(),
        table.Rows.Select(r => r.Select(v => new Cell(v.ToString())).ToSequence()).ToSequence(),
        table.Title);

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

    private static IEnumerable<Block> Sources(Sheet sheet)
    {
        if (sheet.Sources.Length > 0)
        {
            yield return new Label("Sources");
            yield return new Bullets(sheet.Sources.Select(s => s.ToString()).ToSequence());
        }
    }
}
