using Fairlead.Calculations;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>Every source used, those that nobody has read in the document first.</summary>
internal static class SourceList
{
    public static IEnumerable<Block> Of(Assessment assessment)
    {
        yield return new PageBreak();
        yield return new Heading(1, "Sources");
        var used = Used(assessment).ToArray();
        if (used.Length == 0)
        {
            yield return new Paragraph("No source was used.");
            yield break;
        }

        yield return new Paragraph("Where a value is from memory or is common practice, the document itself decides: look it up before relying on it.", Voice.Caution);
        yield return new Table(
            [new("Document", Most: 44), new("Edition"), new("Paragraph, table", Most: 55), new("How it came to us", Least: 34), new("Used", Right: true)],
            used.Select(u => (Sequence<Cell>)
            [
                u.Source.Document, u.Source.Edition, new Cell(u.Source.Paragraph, NeedsEye(u.Source) ? "in: " + string.Join("; ", u.In) : ""),
                new Cell(Origin(u.Source.Basis), Strong: NeedsEye(u.Source)), NumberFormat.Text(u.Times),
            ]).ToSequence());
    }

    /// <summary>The sources of all sheets and findings with how many of these use them, and the titles of what they are used in.</summary>
    public static IEnumerable<(Source Source, int Times, string[] In)> Used(Assessment assessment) =>
        assessment.Sheets.SelectMany(s => s.Sheet.Sources.Select(u => (Source: u, In: s.Sheet.Title)))
            .Concat(assessment.Findings.Select(f => (f.Source, In: $"finding {f.Rule}")))
            .GroupBy(u => u.Source).Select(g => (Source: g.Key, Times: g.Count(), In: g.Select(u => u.In).Distinct(StringComparer.Ordinal).ToArray()))
            .OrderByDescending(u => NeedsEye(u.Source))
            .ThenBy(u => u.Source.Document, StringComparer.Ordinal).ThenBy(u => u.Source.Edition, StringComparer.Ordinal).ThenBy(u => u.Source.Paragraph, StringComparer.Ordinal);

    private static bool NeedsEye(Source source) => source.Basis is Basis.Memory or Basis.CommonPractice;

    private static string Origin(Basis basis) => basis switch
    {
        Basis.Read => "read",
        Basis.Memory => "from memory: confirm",
        Basis.CommonPractice => "common practice",
        Basis.Derived => "derived",
        Basis.Stated => "stated by the user",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a basis."),
    };
}
