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

    /// <summary>The bytes of the file.</summary>
    /// <exception cref="ArgumentException">A table has a row whose cells do not match its columns, or two attachments have one name.</exception>
    public static byte[] Write(Document document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var composition = Composition.Of(document);
        using var pdf = new PdfDocument();
        pdf.Options.NoCompression = true;
        pdf.Options.CompressContentStreams = false;
        var pages = composition.Pages.Select(p => Page(pdf, p)).ToArray();
        AddBookmarks(pdf, composition, pages);
        var id = Identifier(document);
        Archive.Prepare(pdf, document, id);
        using var stream = new MemoryStream();
        pdf.Save(stream);
        return Archive.Finish(pdf, stream.ToArray(), document.Info, Producer, id);
    }

    private static PdfPage Page(PdfDocument pdf, Fairlead.Drawings.Picture picture)
    {
        var page = pdf.AddPage();
        page.Width = XUnit.FromMillimeter(PageFormat.Width);
        page.Height = XUnit.FromMillimeter(PageFormat.Height);
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
            outline.Top = XUnit.FromMillimeter(PageFormat.Height - heading.Y + 4).Point;
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
