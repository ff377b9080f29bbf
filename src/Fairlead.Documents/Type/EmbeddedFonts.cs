using PdfSharp.Fonts;

namespace Fairlead.Documents;

/// <summary>The typefaces of our documents. They are embedded in this assembly, so a document looks the same on every machine.</summary>
internal enum Face
{
    /// <summary>IBM Plex Sans.</summary>
    Regular,

    /// <summary>IBM Plex Sans SemiBold.</summary>
    SemiBold,

    /// <summary>DejaVu Sans: for characters the first two lack.</summary>
    Wide,
}

/// <summary>Hands the embedded fonts to the PDF library; there are no others.</summary>
internal sealed class EmbeddedFonts : IFontResolver
{
    private static readonly Lock Installing = new();

    /// <summary>Makes the library use the embedded fonts. The setting is one per process.</summary>
    public static void Install()
    {
        lock (Installing)
        {
            GlobalFontSettings.FontResolver ??= new EmbeddedFonts();
        }
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        Enum.TryParse<Face>(familyName, out var face) ? new FontResolverInfo(face.ToString()) : null;

    /// <inheritdoc/>
    public byte[] GetFont(string faceName) => Enum.Parse<Face>(faceName) switch
    {
        Face.Regular => Load("IBMPlexSans-Regular.ttf"),
        Face.SemiBold => Load("IBMPlexSans-SemiBold.ttf"),
        _ => Load("DejaVuSans.ttf"),
    };

    /// <summary>The PostScript name of a font that the library names by the words of its full name.</summary>
    public static string PostScriptName(string libraryName) => libraryName switch
    {
        "IBM Plex Sans Regular" => "IBMPlexSans-Regular",
        "IBM Plex Sans Semi" => "IBMPlexSans-SemiBold",
        "DejaVu Sans" => "DejaVuSans",
        _ => throw new ArgumentException($"The PDF library embedded a font '{libraryName}', which is none of ours.", nameof(libraryName)),
    };

    private static byte[] Load(string file)
    {
        using var stream = typeof(EmbeddedFonts).Assembly.GetManifestResourceStream("Fairlead.Documents.Fonts." + file)
            ?? throw new InvalidOperationException($"The font '{file}' is not in this assembly.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
