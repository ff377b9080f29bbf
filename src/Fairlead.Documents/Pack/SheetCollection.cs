using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>Every sheet with its working, in groups by what they are about.</summary>
internal static class SheetCollection
{
    public static IEnumerable<Block> Of(Assessment assessment)
    {
        yield return new PageBreak();
        yield return new Heading(1, "Sheets with working");
        yield return new Paragraph("Each formula is followed by the same formula with its numbers and by its value, so that it can be checked by hand. Margins are positive where something is left.");
        foreach (var group in assessment.Sheets.GroupBy(s => Group(s.Subject), StringComparer.Ordinal))
        {
            yield return new Heading(2, group.Key);
            foreach (var block in group.SelectMany(s => SheetBlocks.Of(s.Sheet, 3, $"{s.Sheet.Title}: {s.Subject}")))
            {
                yield return block;
            }
        }
    }

    // "circuit/C12/drop" belongs to circuit C12.
    private static string Group(string subject) => subject.Split('/') switch
    {
        [var kind, var id, ..] => $"{Capital(kind)} {id}",
        _ => Capital(subject),
    };

    private static string Capital(string word) => word.Length == 0 ? word : char.ToUpperInvariant(word[0]) + word[1..];
}
