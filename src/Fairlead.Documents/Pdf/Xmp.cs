using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Fairlead.Documents;

/// <summary>The metadata of a file in XMP (ISO 16684-1), with the PDF/A identification of ISO 19005-3, 6.6.4.</summary>
internal static class Xmp
{
    private static readonly XNamespace X = "adobe:ns:meta/";
    private static readonly XNamespace Rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static readonly XNamespace Dc = "http://purl.org/dc/elements/1.1/";
    private static readonly XNamespace Basic = "http://ns.adobe.com/xap/1.0/";
    private static readonly XNamespace Media = "http://ns.adobe.com/xap/1.0/mm/";
    private static readonly XNamespace Pdf = "http://ns.adobe.com/pdf/1.3/";
    private static readonly XNamespace PdfA = "http://www.aiim.org/pdfa/ns/id/";

    /// <summary>The packet. It says the same as the information dictionary, word for word.</summary>
    public static byte[] Packet(DocumentInfo info, string producer, byte[] identifier)
    {
        var date = Date(info.Date);
        var uuid = "uuid:" + new Guid(identifier, bigEndian: true).ToString("D");
        var description = new XElement(
            Rdf + "Description",
            new XAttribute(Rdf + "about", ""), Name("dc", Dc), Name("xmp", Basic), Name("xmpMM", Media), Name("pdf", Pdf), Name("pdfaid", PdfA),
            new XElement(PdfA + "part", "3"), new XElement(PdfA + "conformance", "U"),
            new XElement(Dc + "format", "application/pdf"),
            new XElement(Dc + "title", new XElement(Rdf + "Alt", Default(info.Title))),
            new XElement(Dc + "creator", new XElement(Rdf + "Seq", new XElement(Rdf + "li", info.Author))),
            new XElement(Dc + "description", new XElement(Rdf + "Alt", Default(info.Subject))),
            new XElement(Basic + "CreatorTool", "Fairlead"), new XElement(Basic + "CreateDate", date), new XElement(Basic + "ModifyDate", date), new XElement(Basic + "MetadataDate", date),
            new XElement(Pdf + "Producer", producer),
            new XElement(Media + "DocumentID", uuid), new XElement(Media + "InstanceID", uuid));
        var meta = new XElement(X + "xmpmeta", Name("x", X), new XElement(Rdf + "RDF", Name("rdf", Rdf), description));
        return Encoding.UTF8.GetBytes(
            "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" + meta.ToString(SaveOptions.None).ReplaceLineEndings("\n") + "\n<?xpacket end=\"r\"?>");
    }

    private static XAttribute Name(string prefix, XNamespace space) => new(XNamespace.Xmlns + prefix, space.NamespaceName);

    private static XElement Default(string words) => new(Rdf + "li", new XAttribute(XNamespace.Xml + "lang", "x-default"), words);

    private static string Date(DateTimeOffset date) => date.ToUniversalTime().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
}
