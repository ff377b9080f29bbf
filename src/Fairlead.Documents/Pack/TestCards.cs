using Fairlead.Calculations;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Documents;

/// <summary>The test cards, in the safe order, each a table to be filled in.</summary>
internal static class TestCards
{
    private const double Hand = 22;

    public static IEnumerable<Block> Of(Assessment assessment)
    {
        var plan = TestPlan.Of(assessment);
        yield return new PageBreak();
        yield return new Heading(1, "Test cards");
        yield return new Paragraph($"In the order in which it is safe to test. A number is written wherever a unit stands, never a tick. {TestPlan.Advice}");
        foreach (var kind in plan.Cards.GroupBy(c => c.Kind))
        {
            yield return new Heading(2, kind.Key.ToString());
            foreach (var words in kind.SelectMany(c => c.Cautions).Distinct(StringComparer.Ordinal))
            {
                yield return new Paragraph("Caution: " + words);
            }

            foreach (var words in kind.SelectMany(c => c.Preconditions).Distinct(StringComparer.Ordinal))
            {
                yield return new Paragraph("Before: " + words, Voice.Remark);
            }

            // Cards with one line each share a table.
            foreach (var table in kind.GroupBy(c => c.Lines.Count == 1 ? "" : c.Id, StringComparer.Ordinal))
            {
                yield return Table([.. table]);
            }
        }
    }

    private static Table Table(TestCard[] cards) => new(
        [new("Card"), new("From"), new("To"), new("Limits"), new("Found", Least: Hand), new("Instrument", Least: Hand), new("By", Least: Hand / 2)],
        cards.SelectMany(c => c.Lines.Select(l => (Sequence<Cell>)[new Cell(c.Id, Strong: true), l.From, l.To, new Cell(l.Limits, l.Source.ToString()), "", "", ""])).ToSequence(),
        cards.Length == 1 ? $"{cards[0].Title}: {cards[0].Instrument}" : "");
}
