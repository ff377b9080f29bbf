using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The drawings: the aircraft near the front, where one looks first, and the others in a section of their own. Tiles at true size are printed from files and are not in the pack.</summary>
internal static class DrawingSection
{
    /// <summary>The aircraft from three sides.</summary>
    public static IEnumerable<Block> Aircraft(Assessment assessment, PackOptions options)
    {
        yield return new Heading(1, "The change on the aircraft");
        yield return new Paragraph(
            "The next sheets show the aircraft from the left, from above and from the front, with their stations, and crowded parts once more enlarged: the boxes and antennas that go in and come out, the ways that new wires use, and the panels to be opened.");
        foreach (var drawing in DrawingSet.Of(assessment, options.JobHash, DrawingKind.Aircraft))
        {
            yield return new DrawingSheet(drawing.Picture);
        }
    }

    /// <summary>Wiring, connectors, form boards and holes.</summary>
    public static IEnumerable<Block> Others(Assessment assessment, PackOptions options)
    {
        Drawing[] drawings =
        [
            .. new[] { DrawingKind.Wiring, DrawingKind.Connectors, DrawingKind.FormBoard, DrawingKind.Holes }
                .SelectMany(kind => DrawingSet.Of(assessment, options.JobHash, kind)).Where(d => !d.Tile),
        ];
        yield return PageBreak.Soft;
        yield return new Heading(1, "Drawings");
        if (drawings.Length == 0)
        {
            yield return new Paragraph("There is nothing to draw.");
            yield break;
        }

        yield return new Paragraph("The sheets are A3. Form boards at true size, on tiles that are laid side by side, are written as files by 'fairlead draw'.");
        yield return new Table([new("Drawing"), new("Title")], drawings.Select(d => (Sequence<Cell>)[d.Name, d.Picture.Title]).ToSequence());
        foreach (var drawing in drawings)
        {
            yield return new DrawingSheet(drawing.Picture);
        }
    }
}
