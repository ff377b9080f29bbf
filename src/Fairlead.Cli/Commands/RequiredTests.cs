using Fairlead.Calculations;
using Fairlead.Records;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Cli.Commands;

/// <summary>The test cards as the log and the release gate know them.</summary>
internal static class RequiredTests
{
    /// <summary>Unit of a card's result where the card has several lines.</summary>
    public const string Lines = "lines";

    /// <summary>One test for each card: with one line its value and limits; with more, how many lines hold, all being due.</summary>
    public static Sequence<RequiredTest> Of(TestPlan plan) => plan.Cards.Select(Of).ToSequence();

    private static RequiredTest Of(TestCard card) => card.Lines is [var line] && (line.IsNumber || card.Id == card.Subject)
        ? new RequiredTest(card.Id, line.IsNumber ? $"{card.Title}, {line.Limits}" : $"{card.Title}; expected: {line.Expected}", line.Unit, line.Least, line.Most, line.Source.ToString())
        : new RequiredTest(card.Id, $"{card.Title}, all of its {NumberFormat.Text(card.Lines.Count)} {Noun(card.Lines.Count)} hold", Lines, card.Lines.Count, card.Lines.Count);

    private static string Noun(int count) => count == 1 ? "line" : "lines";
}
