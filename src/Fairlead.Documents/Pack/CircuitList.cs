using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The circuits end to end, the power feeds and the bundles.</summary>
internal static class CircuitList
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        yield return new Heading(1, "Circuits");
        if (assessment.Circuits.IsEmpty)
        {
            yield return new Paragraph("The change has no circuits.");
            yield break;
        }

        yield return new Table(
            [new("Circuit"), new("From"), new("To"), new("Wire"), new("Length", Right: true), new("Current", Right: true), new("Drop", Right: true), new("Verdict")],
            assessment.Circuits.Select(c => Line(c, options)).ToSequence());
        if (!assessment.Feeds.IsEmpty)
        {
            yield return new Heading(2, "Power feeds");
            yield return new Table(
                [new("Feed"), new("Input"), new("Breaker"), new("Current", Right: true), new("Drop", Right: true), new("At the input", Right: true)],
                assessment.Feeds.Select(f => (Sequence<Cell>)
                [
                    new Cell(f.Feed.Id, "out: " + Names(f.Feeding) + "; back: " + Names(f.Returning), Strong: true), $"{f.Feed.Item} {f.Feed.Input}", f.Feed.Breaker,
                    f.Current.As("A").ToString(), Figures.Or(f.Drop, "V"), Figures.Or(f.AtInput, "V"),
                ]).ToSequence());
        }

        if (!assessment.Bundles.IsEmpty)
        {
            yield return new Heading(2, "Bundles");
            yield return new Table(
                [new("Segment"), new("Bundle"), new("New circuits"), new("Wires", Right: true), new("Sum of currents", Right: true), new("Loading", Right: true)],
                assessment.Bundles.Select(b => (Sequence<Cell>)
                [
                    new Cell(b.Segment, Strong: true), b.Name, Names(b.Circuits), NumberFormat.Text(b.Wires), b.Current.As("A").ToString(), Figures.Or(b.Loading, "%"),
                ]).ToSequence());
        }
    }

    private static Sequence<Cell> Line(CircuitResult c, PackOptions options) =>
    [
        new Cell(c.Circuit.Id, c.Circuit.Signal, Strong: true),
        c.Circuit.From.ToString(),
        c.Circuit.To.ToString(),
        new Cell(c.Part, c.Chosen ? "chosen here" : ""),
        Figures.Or(c.Length, options.LengthUnit),
        new Cell(c.Current.As("A").ToString(), c.Allowed is { } allowed ? "of " + allowed.As("A") : ""),
        Figures.Or(c.Drop, "V"),
        new Cell(VerdictMark.Word(c.Verdict), Mark: c.Verdict, Strong: c.Verdict == Verdict.Fails),
    ];

    private static string Names(IEnumerable<string> ids) => string.Join(", ", ids) is { Length: > 0 } names ? names : "–";
}
