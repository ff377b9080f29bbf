using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>What needs a person, most serious first, and what somebody has accepted.</summary>
internal static class FindingList
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        yield return new Heading(1, "Findings and concessions");
        if (assessment.Findings.Length == 0)
        {
            yield return new Paragraph("There is no finding: every rule that was applied is met.");
        }
        else
        {
            yield return new Table(
                [new("Severity"), new("About"), new("Finding"), new("Remedy")],
                assessment.Findings.Select(Line).ToSequence());
        }

        var concessions = assessment.Job.Change.Concessions ?? Catalog<Concession>.Empty;
        if (concessions.Count == 0)
        {
            yield return new Paragraph("There is no concession.");
            yield break;
        }

        yield return new Table(
            [new("Concession"), new("Accepts"), new("By"), new("Reason"), new("Until")],
            concessions.Select(c => (Sequence<Cell>)[new Cell(c.Id, Strong: true), new Cell(c.Rule, c.Subject), c.By, c.Reason, Until(c, options)]).ToSequence(),
            "Concessions");
    }

    private static Sequence<Cell> Line(Finding f) =>
    [
        new Cell(VerdictMark.Word(f.Severity), f.Accepted is null ? "" : $"accepted by {f.Accepted.By}", f.Severity, f.Severity == Verdict.Fails),
        new Cell(f.Subject, f.Rule),
        new Cell(f.Message, string.Join('\n', new[] { f.Figures, f.Source.ToString() }.Where(s => s.Length > 0))),
        f.Remedy,
    ];

    private static Cell Until(Concession concession, PackOptions options) => concession.Until is not { } until ? "no\u00a0end"
        : until < DateOnly.FromDateTime(options.Date.UtcDateTime) ? new Cell(Figures.Day(until), "over before the date of this pack", Strong: true)
        : Figures.Day(until);
}
