using System.Collections.Immutable;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Documents;
using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

/// <summary>An invented document that uses every kind of block.</summary>
internal static class SampleDocument
{
    public const string JobHash = "3f2a0c51d6b87e94aa10c2d35b6f7788990011223344556677889900aabbccdd";

    public static byte[] AttachedBytes { get; } = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("job folder of X9-FLD\n", 400)));

    public static Sheet Sheet { get; } = ConductorTemperature.Run(new ConductorTemperatureInput(
        Temperature.Of(50, "°C"), Temperature.Of(200, "°C"), Current.Of(20, "A"), Current.Of(26, "A")));

    public static Sheet CannotTell { get; } = ConductorTemperature.Run(new ConductorTemperatureInput(
        Temperature.Of(50, "°C"), Temperature.Of(50, "°C"), Current.Of(20, "A"), Current.Of(26, "A")));

    public static DocumentInfo Info { get; } = new(
        "X9-FLD: second transponder, release pack", "Substantiation of a change to an invented aircraft", "Fairlead",
        new DateTimeOffset(2026, 3, 14, 9, 26, 53, TimeSpan.FromHours(2)), JobHash);

    public static Document Document { get; } = new(
        Info,
        [
            new Heading(1, "Contents"), new Contents(),
            new PageBreak(), new Heading(1, "Change summary"),
            new VerdictLine(Verdict.Caution, "Nothing fails; two points need a licensed person's eye before release.", Large: true),
            new Paragraph("This pack advises; it approves nothing. It defers to the approved data, the aircraft's own manuals, the local authority and licensed staff.", Voice.Caution),
            new KeyValues([new("Aircraft", "X9-FLD"), new("Work order", "WO-0147"), new("Basis", "Minor change under the invented approval basis of the sample, long enough to need a second line on the paper so that wrapping is seen")]),
            new Bullets(["Ω Δ √ ≤ ≥ · ² ³ µ ° − ★ are all printed", "A second point"]),
            new Heading(2, "Weight and balance"), new Figure(EnvelopePlot.Draw(Samples.Envelope)),
            new Heading(2, "Load analysis"), new Figure(LoadChart.Draw(Samples.Load)), new Figure(SheddingTimeline.Draw(Samples.Timeline)),
            new Heading(1, "Circuits"),
            new Table(
                [new("Identification"), new("From"), new("To"), new("Length", Right: true), new("Verdict")],
                Enumerable.Range(1, 90).Select(i => (Sequence<Cell>)[$"34-{i:000}A22", new Cell($"2341VT1P1-{i}", "transponder 2, receptacle half of the rear connector"), $"TB4-{i}", $"{i * 3.5:0.0} in", new Cell("Holds", Mark: Verdict.Holds)]).ToSequence(),
                "Run list"),
            .. SheetBlocks.Of(Sheet), .. SheetBlocks.Of(CannotTell, 2, "Spare circuit: conductor temperature"),
        ],
        [new Attachment("job.zip", "application/zip", "The job this document was made from", Relationship.Source, AttachedBytes.ToImmutableArray())]);
}
