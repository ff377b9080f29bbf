using Fairlead.Calculations;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Documents;

/// <summary>The job cards and test cards, in the order of the work, with the register of panels before them.</summary>
internal static class CardSection
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        var cards = JobCards.Of(assessment);
        yield return new PageBreak();
        yield return new Heading(1, "Job cards and test cards");
        yield return new Paragraph($"{Figures.Count(cards.Count, "card", "cards")}; opening and closing stand in the register of panels, the others follow in an order in which the work can be done; the tests in the order in which it is safe to test. A number is written wherever a unit stands, never a tick. {TestPlan.Advice}");
        yield return new Paragraph(JobCard.Advice, Voice.Caution);
        if (PanelRegister.Of(assessment) is { Rows.Count: > 0 } register)
        {
            yield return new Heading(2, "Panels and furnishings");
            yield return new Table(register.Columns.Select(c => new Column(c, Least: 8)).ToSequence(), register.Rows.Select(r => r.Select(c => new Cell(c)).ToSequence()).ToSequence());
            yield return new Paragraph(register.Note, Voice.Remark);
        }

        yield return new Heading(2, "Cards");
        foreach (var page in CardPages.Of(assessment.Job, options.JobHash, cards.Where(c => c.Task.Kind is not (TaskKind.Open or TaskKind.Close)).ToSequence(), CardFormat.Pack, level: 3, inDocument: true))
        {
            yield return page;
        }
    }
}
