using System.Collections.Concurrent;
using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Fairlead.Documents;

/// <summary>A piece of text in one typeface.</summary>
internal readonly record struct Run(string Text, Face Face);

/// <summary>Chooses the typeface of every character and measures text. A character no typeface has becomes the replacement character, never a blank.</summary>
internal static class Typesetting
{
    /// <summary>Height of a line of text as a share of the font size.</summary>
    public const double Leading = 1.38;

    private const double MeasuringSize = 1000;
    private const double PointsPerMillimetre = 72 / 25.4;
    private static readonly ConcurrentDictionary<(Face Face, double Size), XFont> Fonts = new();
    private static readonly ConcurrentDictionary<(int Character, bool Bold), (Face Face, string Text, double Width)> Characters = new();

    static Typesetting() => EmbeddedFonts.Install();

    /// <summary>The width of a text, mm.</summary>
    public static double Width(string text, double size, bool bold)
    {
        var width = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            width += Character(rune, bold).Width;
        }

        return width * size;
    }

    /// <summary>The text in pieces of one typeface each.</summary>
    public static IEnumerable<Run> Runs(string text, bool bold)
    {
        var run = new StringBuilder();
        var face = Face.Regular;
        foreach (var rune in text.EnumerateRunes())
        {
            var (next, shown, _) = Character(rune, bold);
            if (run.Length > 0 && next != face)
            {
                yield return new Run(run.ToString(), face);
                run.Clear();
            }

            face = next;
            run.Append(shown);
        }

        if (run.Length > 0)
        {
            yield return new Run(run.ToString(), face);
        }
    }

    /// <summary>A typeface at a size in millimetres.</summary>
    public static XFont Font(Face face, double size) => Fonts.GetOrAdd((face, size), static key =>
        new XFont(key.Face.ToString(), key.Size * PointsPerMillimetre, XFontStyleEx.Regular, XPdfFontOptions.UnicodeDefault));

    private static (Face Face, string Text, double Width) Character(Rune rune, bool bold) => Characters.GetOrAdd((rune.Value, bold), static key =>
    {
        var rune = new Rune(key.Character);
        var text = Rune.IsControl(rune) || Rune.IsWhiteSpace(rune) ? " " : rune.ToString();
        var main = key.Bold ? Face.SemiBold : Face.Regular;
        var face = Has(main, text) ? main : Face.Wide;
        text = Has(face, text) ? text : "\uFFFD";
        using var measure = XGraphics.CreateMeasureContext(new XSize(MeasuringSize, MeasuringSize), XGraphicsUnit.Point, XPageDirection.Downwards);
        return (face, text, measure.MeasureString(text, Font(face, MeasuringSize / PointsPerMillimetre)).Width / MeasuringSize);
    });

    private static bool Has(Face face, string character) =>
        GlyphHelper.GlyphIndexFromCodePoint(Rune.GetRuneAt(character, 0).Value, Font(face, 10)) != 0;
}
