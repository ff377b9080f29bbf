using Fairlead.Calculations;
using System.Globalization;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A document set on pages: each page a picture, A4 or a drawing in its own size, with the headings for the bookmarks.</summary>
/// <param name="Pages">The pages.</param>
/// <param name="Headings">The headings as they stand.</param>
internal sealed record Composition(Sequence<Picture> Pages, Sequence<PlacedHeading> Headings)
{
    /// <summary>Sets a document, again and again until the table of contents knows where every heading stands: two or three times.</summary>
    public static Composition Of(Document document, CancellationToken cancellation = default)
    {
        var flow = Lay(document, new Flow(), cancellation);
        while (!flow.Headings.SequenceEqual(flow.Contents) && document.Blocks.OfType<Contents>().Any())
        {
            flow = Lay(document, new Flow(flow), cancellation);
        }

        var pages = flow.Pages.Select((shapes, i) => flow.Sheets[i] is { } sheet
            ? sheet.Picture with { Shapes = [.. shapes, .. sheet.Edge is { } edge ? Edge(document.Info, sheet.Picture, edge, i + 1, flow.Pages.Count) : []] }
            : new Picture(PageFormat.Width, PageFormat.Height, document.Info.Title, "", [.. Frame(document.Info, i + 1, flow.Pages.Count), .. shapes]));
        return new Composition(pages.ToSequence(), flow.Headings.ToSequence());
    }

    private static Flow Lay(Document document, Flow flow, CancellationToken cancellation)
    {
        for (var i = 0; i < document.Blocks.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            flow.Company = Company(document.Blocks, i + 1);
            document.Blocks[i].Lay(flow);
        }

        flow.End();
        return flow;
    }

    // A heading below a heading brings its own company.
    private static double Company(Sequence<Block> blocks, int next)
    {
        var height = 0.0;
        for (; next < blocks.Count; next++)
        {
            height += blocks[next].Beginning;
            if (blocks[next] is not (Heading or Label or Gap))
            {
                break;
            }
        }

        return Math.Min(height, PageFormat.Bottom - PageFormat.Top - 20);
    }

    // A drawing has a title block of its own: only the place in the document is added, outside its frame.
    private static IEnumerable<Shape> Edge(DocumentInfo info, Picture sheet, double above, int page, int pages)
    {
        var (left, right) = sheet.Width == PageFormat.Width ? (PageFormat.Left, PageFormat.Right) : (10, sheet.Width - 10);
        yield return new Text(new(left, sheet.Height - above), TextMeasure.Fitted(info.Title, TypeSize.Fine, right - left - 25), TypeSize.Fine, Ink.Quiet);
        yield return new Text(new(right, sheet.Height - above), string.Create(CultureInfo.InvariantCulture, $"page {page} of {pages}"), TypeSize.Fine, Ink.Quiet, Anchor.End);
    }

    // Head and foot of every page: whose page it is, of which job, and how many there are.
    private static IEnumerable<Shape> Frame(DocumentInfo info, int page, int pages)
    {
        const double head = PageFormat.Top - 8;
        const double foot = PageFormat.Bottom + 7;
        var date = info.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        yield return new Text(new(PageFormat.Left, head), TextMeasure.Fitted(info.Title, TypeSize.Small, PageFormat.ColumnWidth - 25), TypeSize.Small, Ink.Quiet);
        yield return new Text(new(PageFormat.Right, head), date, TypeSize.Small, Ink.Quiet, Anchor.End);
        yield return new Line(new(PageFormat.Left, head + 2), new(PageFormat.Right, head + 2), Style.Thin);
        yield return new Line(new(PageFormat.Left, foot - 4), new(PageFormat.Right, foot - 4), Style.Thin);
        yield return new Text(new(PageFormat.Left, foot), TextMeasure.Fitted("Job " + info.JobHash, TypeSize.Fine, PageFormat.ColumnWidth - 30), TypeSize.Fine, Ink.Quiet);
        yield return new Text(new(PageFormat.Right, foot), string.Create(CultureInfo.InvariantCulture, $"page {page} of {pages}"), TypeSize.Small, Ink.Quiet, Anchor.End);
    }
}
