using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Documents;

/// <summary>The circuits end to end, the power feeds and the bundles.</summary>
internal static class CircuitList
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        yield return PageBreak.Soft;
        yield return new Heading(1, "Circuits");
        if (assessment.Circuits.IsEmpty)
        {
            yield return new Paragraph("The change has no circuits.");
            yield break;
        }

        yield return new Paragraph("A wire marked 'chosen' is the smallest that serves; the others are named by the change. Drops and temperatures are those of hot conductors in the tightest bundle passed.", Voice.Remark);
        yield return Circuits(assessment, options);
        if (!assessment.Feeds.IsEmpty)
        {
            yield return new Heading(2, "Power feeds");
            yield return new Table(
                [new("Feed"), new("Input"), new("Breaker"), new("Out"), new("Back"), new("Current", Right: true), new("Drop", Right: true), new("At the input", Right: true)],
                assessment.Feeds.Select(f => (Sequence<Cell>)
                [
                    new Cell(f.Feed.Id, Strong: true), $"{f.Feed.Item} {f.Feed.Input}", f.Feed.Breaker, Names(f.Feeding), Names(f.Returning),
                    Figures.With(f.Current, "A", 2), Figures.With(f.Drop, "V", 2), Figures.With(f.AtInput, "V", 2),
                ]).ToSequence());
        }

        if (!assessment.Bundles.IsEmpty)
        {
            yield return new Heading(2, "Bundles");
            yield return new Table(
                [new("Segment"), new("Bundle"), new("New circuits"), new("Wires", Right: true), new("Sum of currents", Right: true), new("Loading", Right: true)],
                assessment.Bundles.Select(b => (Sequence<Cell>)
                [
                    new Cell(b.Segment, Strong: true), b.Name, Names(b.Circuits), NumberFormat.Text(b.Wires), Figures.With(b.Current, "A", 2), Figures.With(b.Loading, "%", 0),
                ]).ToSequence());
        }
    }

    private static Table Circuits(Assessment assessment, PackOptions options)
    {
        var fed = new Dictionary<string, PowerFeed>(StringComparer.Ordinal);
        foreach (var (feed, circuit) in assessment.Feeds.SelectMany(f => f.Feeding.Concat(f.Returning).Select(c => (f.Feed, c))))
        {
            fed.TryAdd(circuit, feed);
        }

        var marks = assessment.Marks.Where(m => m.Carrier != MarkCarrier.Jacket).ToDictionary(m => m.Id, m => m.Text, StringComparer.Ordinal);
        return new Table(
            [
                new("Circuit", Most: 24), new("From"), new("To"), new("Mark"), new("Wire"), new($"Length, {options.LengthUnit}", Right: true), new("Fed by"),
                new("Current, A", Right: true), new("Drop, V", Right: true), new("Hot, °C", Right: true), new("Verdict"),
            ],
            assessment.Circuits.Select(c => Line(c, marks[c.Circuit.Id], fed.GetValueOrDefault(c.Circuit.Id), options)).ToSequence());
    }

    private static Sequence<Cell> Line(CircuitResult c, string mark, PowerFeed? feed, PackOptions options) =>
    [
        new Cell(c.Circuit.Id, c.Circuit.Signal, Strong: true),
        c.Circuit.From.ToString(),
        c.Circuit.To.ToString(),
        mark,
        new Cell(c.Part.Length == 0 ? "–" : c.Part, string.Join('\n', new[] { c.Wire is { } wire ? $"AWG {wire.Gauge}" : "", c.Chosen ? "chosen" : "" }.Where(n => n.Length > 0))),
        Figures.Fixed(c.Length, options.LengthUnit, 1),
        feed is null ? "–" : new Cell(feed.Breaker, feed.Id),
        new Cell(Figures.Fixed(c.Current, "A", 2), c.Allowed is { } allowed ? $"of {Figures.Fixed(allowed, "A", 2)}" : ""),
        Figures.Fixed(c.Drop, "V", 3),
        Figures.Fixed(c.Temperature, "°C", 0),
        new Cell(VerdictMark.Word(c.Verdict), Mark: c.Verdict, Strong: c.Verdict == Verdict.Fails),
    ];

    private static string Names(IEnumerable<string> ids) => string.Join(", ", ids) is { Length: > 0 } names ? names : "–";
}
