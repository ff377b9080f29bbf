using Fairlead.Calculations;

namespace Fairlead.Cli.Output;

/// <summary>A sheet with its full working, as text: what an engineer needs to check it by hand.</summary>
internal static class SheetText
{
    /// <summary>The reminder under everything that concludes.</summary>
    public const string Advice = "Fairlead advises and approves nothing: the approved data, the aircraft's own manuals, your authority and licensed staff decide.";

    public static void Write(Terminal terminal, Sheet sheet, string? title = null)
    {
        terminal.Out.WriteLine($"{title ?? sheet.Title}: {terminal.Word(sheet.Verdict)}");
        Given(terminal, sheet);
        foreach (var table in sheet.Tables)
        {
            Section(terminal, char.ToUpperInvariant(table.Title[0]) + table.Title[1..]);
            Wrapping.Table(terminal.Out, table.Columns, [.. table.Rows.Select(r => r.Select(v => v.ToString()).ToArray())], 2);
        }

        Working(terminal, sheet);
        Checks(terminal, sheet);
        Bullets(terminal, "Cannot tell because", sheet.CannotTell);
        Bullets(terminal, "Cautions", sheet.Cautions);
        Bullets(terminal, "Sources", sheet.Sources.Select(s => s.ToString()));
        Section(terminal, "Verdict: " + terminal.Word(sheet.Verdict));
        terminal.Print(Advice);
    }

    private static void Given(Terminal terminal, Sheet sheet)
    {
        if (sheet.Given.Length > 0)
        {
            Section(terminal, "Given");
            Wrapping.Columns(terminal.Out, [.. sheet.Given.Select(g => (string[])[g.Symbol, "= " + g.Value, $"{g.Meaning} ({g.Origin})"])], terminal.Width, 2);
        }
    }

    private static void Working(Terminal terminal, Sheet sheet)
    {
        if (sheet.Steps.Length == 0)
        {
            return;
        }

        Section(terminal, "Working");
        foreach (var step in sheet.Steps)
        {
            terminal.Print($"{step.Symbol}, {step.Meaning}", 2);
            var substituted = sheet.Substituted(step);
            string[] lines = [step.Formula, .. substituted == step.Formula ? (string[])[] : [substituted], step.Value.ToString()];
            foreach (var line in lines)
            {
                terminal.Print("= " + line, 6);
            }

            if (step.Source is { } source)
            {
                terminal.Print("by " + source, 6);
            }
        }
    }

    private static void Checks(Terminal terminal, Sheet sheet)
    {
        if (sheet.Checks.Length > 0)
        {
            Section(terminal, "Checks");
        }

        foreach (var check in sheet.Checks)
        {
            terminal.Out.WriteLine($"  {check.Name}: {terminal.Word(check.Verdict)}");
            terminal.Print($"found {check.Demand}, limit {(check.Sense == Sense.AtMost ? "at most" : "at least")} {check.Limit}, margin {check.MarginText}", 6);
            terminal.Print("rule: " + check.Rule, 6);
            terminal.Print("source: " + check.Source, 6);
        }
    }

    private static void Bullets(Terminal terminal, string title, IEnumerable<string> lines)
    {
        var all = lines.ToArray();
        if (all.Length > 0)
        {
            Section(terminal, title);
            Wrapping.Columns(terminal.Out, [.. all.Select(l => (string[])["-", l])], terminal.Width, 2);
        }
    }

    private static void Section(Terminal terminal, string title)
    {
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(title);
    }
}
