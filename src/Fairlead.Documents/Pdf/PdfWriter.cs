using System.Security.Cryptography;
using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Fairlead.Documents;

/// <summary>Writes a document as PDF made for keeping (PDF/A-3, level U): fonts embedded, colours defined, text extractable, metadata inside, the job attached.
/// The same document gives the same bytes. What is claimed and what was checked: docs/decisions/pdf-conformance.md.</summary>
public static class PdfWriter
{
    private const string Producer = "Fairlead with PDFsharp";

    // Shares of the work: setting the pages, painting them, and the rest is the writing.
    private const int Set = 40;
    private const int Painted = 85;

    /// <summary>The bytes of the file.</summary>
    /// <param name="document">The document.</param>
    /// <param name="progress">Told how much is done, in per cent.</param>
    /// <param name="cancellation">Stops the work between two pages.</param>
    /// <exception cref="ArgumentException">A table has a row whose cells do not match its columns, or two attachments have one name.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static byte[] Write(Document document, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(document);
        var composition = Composition.Of(document, cancellation);
        progress?.Report(Set);
        using var pdf = new PdfDocument();
        pdf.Options.NoCompression = true;
        pdf.Options.CompressContentStreams = false;
        var pages = new PdfPage[composition.Pages.Count];
        for (var i = 0; i < pages.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            pages[i] = Page(pdf, composition.Pages[i]);
            progress?.Report(Set + ((Painted - Set) * (i + 1) / pages.Length));
        }

        AddBookmarks(pdf, composition, pages);
        var id = Identifier(document);
        Archive.Prepare(pdf, document, id);
        using var stream = new MemoryStream();
        pdf.Save(stream);
        cancellation.ThrowIfCancellationRequested();
        var file = Archive.Finish(pdf, stream.ToArray(), document.Info, Producer, id);
        progress?.Report(100);
        return file;
    }

    private static PdfPage Page(PdfDocument pdf, Fairlead.Drawings.Picture picture)
    {
        var page = pdf.AddPage();
        page.Width = XUnit.FromMillimeter(picture.Width);
        page.Height = XUnit.FromMillimeter(picture.Height);
        using var graphics = XGraphics.FromPdfPage(page);
        PicturePainter.Paint(graphics, picture);
        return page;
    }

    private static void AddBookmarks(PdfDocument pdf, Composition composition, PdfPage[] pages)
    {
        var parents = new Stack<(int Level, PdfOutline Outline)>();
        foreach (var heading in composition.Headings)
        {
            while (parents.Count > 0 && parents.Peek().Level >= heading.Level)
            {
                parents.Pop();
            }

            var siblings = parents.Count == 0 ? pdf.Outlines : parents.Peek().Outline.Outlines;
            var outline = siblings.Add(heading.Text, pages[heading.Page], opened: heading.Level == 1);
            outline.PageDestinationType = PdfPageDestinationType.Xyz;
            outline.Top = XUnit.FromMillimeter(composition.Pages[heading.Page].Height - heading.Y + 4).Point;
            parents.Push((heading.Level, outline));
        }
    }

    // Which document this is: its identity and everything it says decide it.
    private static byte[] Identifier(Document document)
    {
        var info = document.Info;
        var text = string.Join('\n', info.Title, info.Subject, info.Author, info.Date.ToUniversalTime().ToString("O"), info.JobHash);
        return SHA256.HashData(Encoding.UTF8.GetBytes(text))[..16];
    }
}
