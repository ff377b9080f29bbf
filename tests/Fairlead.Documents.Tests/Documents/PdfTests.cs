using System.Globalization;
using System.Xml.Linq;
using Fairlead.Documents;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;
using UglyToad.PdfPig.Tokens;

namespace Fairlead.Tests.Documents;

/// <summary>What can be checked of ISO 19005-3 without a validator: by a second PDF library and by qpdf.</summary>
public sealed class PdfTests
{
    private static readonly byte[] File = PdfWriter.Write(SampleDocument.Document);

    [Fact]
    public void The_same_document_gives_the_same_bytes() => Assert.Equal(File, PdfWriter.Write(SampleDocument.Document));

    [Fact]
    public void Another_job_gives_another_identifier()
    {
        var other = PdfWriter.Write(SampleDocument.Document with { Info = SampleDocument.Info with { JobHash = new string('0', 64) } });
        Assert.NotEqual(Metadata(File).Root!.Value, Metadata(other).Root!.Value);
    }

    [Fact]
    public void Qpdf_finds_nothing_wrong() => Assert.Contains("No syntax or stream encoding errors found", Tool.Run("qpdf", File, "--check"), StringComparison.Ordinal);

    [Fact]
    public void The_file_begins_as_pdf_1_7_with_a_line_of_four_bytes_beyond_ascii()
    {
        Assert.Equal("%PDF-1.7\n%"u8, File.AsSpan(0, 10));
        Assert.All(File[10..14], b => Assert.True(b > 127));
    }

    [Fact]
    public void Every_page_bears_title_date_job_and_its_number()
    {
        using var pdf = PdfDocument.Open(File);
        Assert.True(pdf.NumberOfPages > 5);
        foreach (var page in pdf.GetPages())
        {
            var text = Text(page);
            Assert.Contains(SampleDocument.Info.Title, text, StringComparison.Ordinal);
            Assert.Contains("2026-03-14", text, StringComparison.Ordinal);
            Assert.Contains(SampleDocument.JobHash, text, StringComparison.Ordinal);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"page {page.Number} of {pdf.NumberOfPages}"), text, StringComparison.Ordinal);
            Assert.Equal(210, page.Width * 25.4 / 72, 2);
            Assert.Equal(297, page.Height * 25.4 / 72, 2);
        }
    }

    [Fact]
    public void The_metadata_claims_what_the_file_is_and_agrees_with_the_information_dictionary()
    {
        using var pdf = PdfDocument.Open(File);
        var xmp = Metadata(File);
        string Value(string space, string name) => xmp.Descendants(XName.Get(name, space)).Single().Value;
        Assert.Equal("3", Value("http://www.aiim.org/pdfa/ns/id/", "part"));
        Assert.Equal("U", Value("http://www.aiim.org/pdfa/ns/id/", "conformance"));
        Assert.Equal(pdf.Information.Title, Value("http://purl.org/dc/elements/1.1/", "title"));
        Assert.Equal(pdf.Information.Author, Value("http://purl.org/dc/elements/1.1/", "creator"));
        Assert.Equal(pdf.Information.Subject, Value("http://purl.org/dc/elements/1.1/", "description"));
        Assert.Equal(pdf.Information.Creator, Value("http://ns.adobe.com/xap/1.0/", "CreatorTool"));
        Assert.Equal(pdf.Information.Producer, Value("http://ns.adobe.com/pdf/1.3/", "Producer"));
        Assert.Equal("D:20260314072653Z", pdf.Information.CreationDate);
        Assert.Equal("2026-03-14T07:26:53Z", Value("http://ns.adobe.com/xap/1.0/", "CreateDate"));
        Assert.Equal("2026-03-14T07:26:53Z", Value("http://ns.adobe.com/xap/1.0/", "ModifyDate"));
    }

    [Fact]
    public void Every_font_is_embedded_and_maps_its_glyphs_to_unicode()
    {
        using var pdf = PdfDocument.Open(File);
        var fonts = Dictionaries(pdf).Where(d => Name(d, "Type") == "Font").ToArray();
        Assert.Equal(
            ["AAAAAA+IBMPlexSans-Regular", "AAAAAB+IBMPlexSans-SemiBold", "AAAAAC+DejaVuSans"],
            fonts.Where(f => Name(f, "Subtype") == "Type0").Select(f => Name(f, "BaseFont")));
        Assert.All(fonts.Where(f => Name(f, "Subtype") == "Type0"), f =>
        {
            Assert.True(f.ContainsKey(NameToken.ToUnicode));
            Assert.Equal("Identity-H", Name(f, "Encoding"));
        });
        var descendants = fonts.Where(f => Name(f, "Subtype") != "Type0").ToArray();
        Assert.Equal(3, descendants.Length);
        Assert.All(descendants, f =>
        {
            Assert.Equal("CIDFontType2", Name(f, "Subtype"));
            Assert.Equal("Identity", Name(f, "CIDToGIDMap"));
        });
        Assert.Equal(3, Dictionaries(pdf).Count(d => Name(d, "Type") == "FontDescriptor" && d.ContainsKey(NameToken.FontFile2)));
        Assert.All(pdf.GetPages().SelectMany(p => p.Letters), l => Assert.False(string.IsNullOrEmpty(l.Value) || l.Value.Contains('\0', StringComparison.Ordinal), l.ToString()));
    }

    [Fact]
    public void Colour_is_defined_by_an_rgb_profile_and_nothing_is_encrypted_or_active()
    {
        using var pdf = PdfDocument.Open(File);
        var catalog = pdf.Structure.Catalog.CatalogDictionary;
        var intent = Assert.IsType<DictionaryToken>(Assert.Single(Assert.IsType<ArrayToken>(catalog.Data["OutputIntents"]).Data));
        Assert.Equal("GTS_PDFA1", Name(intent, "S"));
        var profile = (StreamToken)pdf.Structure.GetObject(((IndirectReferenceToken)intent.Data["DestOutputProfile"]).Data).Data;
        Assert.Equal(3, ((NumericToken)profile.StreamDictionary.Data["N"]).Int);
        Assert.False(pdf.IsEncrypted);
        Assert.All(["OpenAction", "AA", "AcroForm", "OCProperties"], key => Assert.False(catalog.Data.ContainsKey(key)));
        Assert.All(Dictionaries(pdf), d => Assert.False(d.Data.ContainsKey("JS") || Name(d, "Subtype") is "Image" or "PS"));
    }

    [Fact]
    public void The_attachment_comes_out_as_it_went_in_and_says_what_it_is()
    {
        using var pdf = PdfDocument.Open(File);
        Assert.True(pdf.Advanced.TryGetEmbeddedFiles(out var files));
        var file = Assert.Single(files);
        Assert.Equal("job.zip", file.Name);
        Assert.Equal(SampleDocument.AttachedBytes, file.Bytes.ToArray());
        Assert.Equal(SampleDocument.AttachedBytes, Tool.Bytes("qpdf", File, "--show-attachment=job.zip"));
        var specification = Dictionaries(pdf).Single(d => Name(d, "Type") == "Filespec");
        Assert.Equal("Source", Name(specification, "AFRelationship"));
        Assert.True(pdf.Structure.Catalog.CatalogDictionary.Data.ContainsKey("AF"));
        var stream = Dictionaries(pdf).Single(d => Name(d, "Type") == "EmbeddedFile");
        Assert.Equal("application/zip", Name(stream, "Subtype"));
    }

    [Fact]
    public void Bookmarks_are_the_headings_and_lead_to_their_pages()
    {
        using var pdf = PdfDocument.Open(File);
        Assert.True(pdf.TryGetBookmarks(out var bookmarks));
        var found = bookmarks.GetNodes().OfType<DocumentBookmarkNode>().ToArray();
        Assert.Equal(SampleDocument.Document.Blocks.OfType<Heading>().Select(h => (h.Text, h.Level - 1)), found.Select(b => (b.Title, b.Level)));
        Assert.All(found, b => Assert.Contains(b.Title, Text(pdf.GetPage(b.PageNumber)), StringComparison.Ordinal));
    }

    [Fact]
    public void Two_attachments_of_one_name_are_refused()
    {
        var twice = SampleDocument.Document.Attachments[0];
        Assert.Contains("job.zip", Assert.Throws<ArgumentException>(() => PdfWriter.Write(SampleDocument.Document with { Attachments = [twice, twice] })).Message, StringComparison.Ordinal);
    }

    private static XDocument Metadata(byte[] file)
    {
        using var pdf = PdfDocument.Open(file);
        Assert.True(pdf.TryGetXmpMetadata(out var xmp));
        return xmp.GetXDocument();
    }

    // Words in reading order, one blank between them.
    private static string Text(UglyToad.PdfPig.Content.Page page) => string.Join(' ', page.GetWords().Select(w => w.Text));

    private static IEnumerable<DictionaryToken> Dictionaries(PdfDocument pdf) =>
        pdf.Structure.CrossReferenceTable.ObjectOffsets.Keys.OrderBy(k => k.ObjectNumber).Select(k => pdf.Structure.GetObject(k).Data)
            .Select(d => d switch { DictionaryToken x => x, StreamToken s => s.StreamDictionary, _ => null }).OfType<DictionaryToken>();

    private static string? Name(DictionaryToken dictionary, string key) => dictionary.Data.TryGetValue(key, out var value) && value is NameToken name ? name.Data : null;
}
