using Fairlead.Calculations;
using System.Globalization;
using System.Text;
using PdfSharp.Pdf;

namespace Fairlead.Documents;

/// <summary>What makes a PDF fit for keeping (ISO 19005-3): colour defined by a profile, metadata that agrees with itself, attachments with a stated relationship.
/// The library claims part 1, level A whatever it wrote; its metadata is replaced by ours.</summary>
internal static class Archive
{
    /// <summary>Adds what the library can write itself.</summary>
    public static void Prepare(PdfDocument pdf, Document document, byte[] identifier)
    {
        var info = document.Info;
        pdf.Language = "en";
        pdf.ViewerPreferences.DisplayDocTitle = true;
        pdf.Internals.FirstDocumentID = Encoding.Latin1.GetString(identifier);
        pdf.Internals.SecondDocumentID = Encoding.Latin1.GetString(identifier);
        pdf.Internals.Catalog.Elements["/OutputIntents"] = new PdfArray(pdf, OutputIntent(pdf));
        AddAttachments(pdf, document.Attachments, info.Date);
    }

    /// <summary>Replaces what the library writes otherwise: metadata, information dictionary, random names, streams left open.</summary>
    public static byte[] Finish(PdfDocument pdf, byte[] written, DocumentInfo info, string producer, byte[] identifier)
    {
        var file = PdfFile.Read(written);
        var metadata = pdf.Internals.Catalog.Elements.GetReference("/Metadata")!.ObjectNumber;
        var xmp = Xmp.Packet(info, producer, identifier);
        file.Replace(metadata, [.. Ascii($"<</Type/Metadata/Subtype/XML/Length {xmp.Length}>>\nstream\n"), .. xmp, .. Ascii("\nendstream")]);
        file.Replace(pdf.Info.Reference!.ObjectNumber, Ascii(Information(info, producer)));
        file.NameSubsets(EmbeddedFonts.PostScriptName);
        file.Compress(except: metadata);
        return file.Write();
    }

    private static PdfDictionary OutputIntent(PdfDocument pdf)
    {
        // The profile sRGB2014 of the International Color Consortium travels inside the library.
        using var profile = typeof(PdfDocument).Assembly.GetManifestResourceStream("PdfSharp.Resources.sRGB2014.icc")
            ?? throw new InvalidOperationException("The PDF library of the pinned version should carry the colour profile sRGB2014.icc, and does not.");
        var bytes = new byte[profile.Length];
        profile.ReadExactly(bytes);
        var stream = Stream(pdf, bytes);
        stream.Elements.SetInteger("/N", 3);
        var intent = new PdfDictionary(pdf);
        intent.Elements.SetName("/Type", "/OutputIntent");
        intent.Elements.SetName("/S", "/GTS_PDFA1");
        intent.Elements.SetString("/OutputConditionIdentifier", "sRGB IEC61966-2.1");
        intent.Elements.SetString("/RegistryName", "http://www.color.org");
        intent.Elements.SetString("/Info", "sRGB IEC61966-2.1");
        intent.Elements.SetReference("/DestOutputProfile", stream);
        return intent;
    }

    private static void AddAttachments(PdfDocument pdf, Sequence<Attachment> attachments, DateTimeOffset date)
    {
        if (attachments.Count == 0)
        {
            return;
        }

        if (attachments.Select(a => a.Name).Distinct(StringComparer.Ordinal).Count() != attachments.Count)
        {
            throw new ArgumentException("Two attachments have one name: " + string.Join(", ", attachments.Select(a => a.Name)) + ".", nameof(attachments));
        }

        var names = new PdfArray(pdf);
        var associated = new PdfArray(pdf);
        foreach (var attachment in attachments.OrderBy(a => a.Name, StringComparer.Ordinal))
        {
            var specification = Specification(pdf, attachment, date);
            names.Elements.Add(new PdfString(attachment.Name));
            names.Elements.Add(specification.Reference!);
            associated.Elements.Add(specification.Reference!);
        }

        var files = new PdfDictionary(pdf);
        files.Elements["/Names"] = names;
        var tree = new PdfDictionary(pdf);
        tree.Elements["/EmbeddedFiles"] = files;
        pdf.Internals.Catalog.Elements["/Names"] = tree;
        pdf.Internals.Catalog.Elements["/AF"] = associated;
    }

    private static PdfDictionary Specification(PdfDocument pdf, Attachment attachment, DateTimeOffset date)
    {
        byte[] content = [.. attachment.Content];
        var stream = Stream(pdf, content);
        stream.Elements.SetName("/Type", "/EmbeddedFile");
        stream.Elements.SetName("/Subtype", "/" + attachment.MediaType);
        var parameters = new PdfDictionary(pdf);
        parameters.Elements.SetInteger("/Size", content.Length);
        parameters.Elements.SetString("/ModDate", Date(date));
        stream.Elements["/Params"] = parameters;
        var held = new PdfDictionary(pdf);
        held.Elements.SetReference("/F", stream);
        held.Elements.SetReference("/UF", stream);
        var specification = new PdfDictionary(pdf);
        specification.Elements.SetName("/Type", "/Filespec");
        specification.Elements.SetString("/F", attachment.Name);
        specification.Elements["/UF"] = new PdfString(attachment.Name, PdfStringEncoding.Unicode);
        specification.Elements["/Desc"] = new PdfString(attachment.Description, PdfStringEncoding.Unicode);
        specification.Elements.SetName("/AFRelationship", "/" + attachment.Relationship);
        specification.Elements["/EF"] = held;
        pdf.Internals.AddObject(specification);
        return specification;
    }

    private static PdfDictionary Stream(PdfDocument pdf, byte[] bytes)
    {
        var stream = new PdfDictionary(pdf);
        stream.CreateStream(bytes);
        pdf.Internals.AddObject(stream);
        return stream;
    }

    private static string Information(DocumentInfo info, string producer) =>
        $"<</Title {Hex(info.Title)}/Subject {Hex(info.Subject)}/Author {Hex(info.Author)}/Creator {Hex("Fairlead")}/Producer {Hex(producer)}/CreationDate({Date(info.Date)})/ModDate({Date(info.Date)})>>";

    // Any text as a hexadecimal string in UTF-16.
    private static string Hex(string text) => "<FEFF" + Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text)) + ">";

    private static string Date(DateTimeOffset date) => date.ToUniversalTime().ToString("'D:'yyyyMMddHHmmss'Z'", CultureInfo.InvariantCulture);

    private static byte[] Ascii(string text) => Encoding.ASCII.GetBytes(text);
}
