using Fairlead.Calculations;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Cards;

/// <summary>The lines of a test card, to be filled in.</summary>
internal static class TestFigures
{
    public static IEnumerable<CardTable> Of(TestCard card)
    {
        if (card.Radiates)
        {
            yield return new CardTable("Permit to radiate", ["Until", "Told, when", "Covered or coupled", "Watches outside"], [["", "", "", ""]]);
        }

        if (card.Tracks.Count > 0)
        {
            yield return ScenarioFigures.Of(card.Tracks);
        }

        // Most lines of a card have one source: it is said once.
        var sources = card.Lines.Select(l => l.Source.ToString()).Distinct().ToArray();
        yield return new CardTable(
            card.Instrument, ["From", "To", "Expected", "Limits", "Found", "Instrument", "By"],
            card.Lines.Select(l => (Sequence<string>)[l.From, l.To, l.IsNumber ? l.Expected : "", l.Limits, "", "", ""]).ToSequence())
        {
            Note = "Limits by " + string.Join("; ", sources) + ".",
        };
    }
}
