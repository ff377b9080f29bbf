using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>The A3 sheet with frame and title block: job, revision, hash, scale, and which sheet of how many.</summary>
internal static class DrawingFrame
{
    public const double Width = 420;
    public const double Height = 297;
    public const double Margin = 10;

    /// <summary>Height of the title block along the foot.</summary>
    public const double Block = 17;

    /// <summary>The room for what is drawn.</summary>
    public const double Left = Margin + 4;
    public const double Right = Width - Margin - 4;
    public const double Top = Margin + 4;
    public const double Bottom = Height - Margin - Block - 4;

    private const double Small = 2;
    private const double Value = 3;

    /// <summary>Frames and numbers the sheets of one kind.</summary>
    public static IEnumerable<Drawing> Of(DrawingKind kind, DrawingMarks marks, IReadOnlyList<Draft> drafts) => drafts.Select((draft, i) => new Drawing(
        kind, draft.Name, new Picture(Width, Height, draft.Title, draft.Description, [.. draft.Content.Shapes, .. Shapes(draft, marks, i + 1, drafts.Count)])));

    private static Sequence<Shape> Shapes(Draft draft, DrawingMarks marks, int sheet, int sheets)
    {
        const double top = Height - Margin - Block;
        var c = new Canvas();
        c.Rect(Margin, Margin, Width - (2 * Margin), Height - (2 * Margin), new Style(Width: 0.5));
        c.Line(Margin, top, Width - Margin, top, new Style(Width: 0.35));
        var x = Margin;
        foreach (var (width, caption, words) in Fields(draft, marks, string.Create(CultureInfo.InvariantCulture, $"{sheet} of {sheets}")))
        {
            if (x > Margin)
            {
                c.Line(x, top, x, top + 10, Style.Thin);
            }

            c.Write(x + 2, top + 3.4, caption, Small, Ink.Quiet);
            c.Fit(x + 2, top + 8, words, Value, width - 4, bold: caption == "drawing");
            x += width;
        }

        c.Line(Margin, top + 10, Width - Margin, top + 10, Style.Thin);
        c.Write(Margin + 2, top + 14.4, "job SHA-256 " + marks.Hash, Small, Ink.Quiet);
        c.Write(Width - Margin - 2, top + 14.4, "Drawn from the job. It defers to the approved data, the aircraft's own manuals, the local authority and licensed staff.", Small, Ink.Quiet, Anchor.End);
        return c.Shapes;
    }

    private static (double Width, string Caption, string Words)[] Fields(Draft draft, DrawingMarks marks, string sheet) =>
    [
        (190, "drawing", draft.Title), (50, "aircraft", marks.Registration), (65, "work order", marks.Order), (30, "revision", marks.Revision), (30, "scale", draft.Scale.Length == 0 ? "none" : draft.Scale), (35, "sheet", sheet),
    ];
}
