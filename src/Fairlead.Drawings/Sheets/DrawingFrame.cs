using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>The A3 sheet with frame, zones and title block: job, revision, hash, scale, and which sheet of how many.</summary>
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

    // Fields of A3 by ISO 5457: eight along the long side by number, six down the short side by letter [from memory].
    private const int Across = 8;
    private const int Down = 6;
    private const double Edge = 5;
    private const double Value = 3.2;
    private static readonly Style Faint = new(Ink.Quiet, 0.12);

    /// <summary>The zone of a place on the sheet, such as B3: row B from above, column 3 from the left.</summary>
    public static string Zone(Point at)
    {
        static int Field(double from, double length, int fields) => Math.Clamp((int)Math.Floor(from / length * fields), 0, fields - 1);
        return string.Create(CultureInfo.InvariantCulture, $"{(char)('A' + Field(at.Y - Margin, Height - (2 * Margin), Down))}{Field(at.X - Margin, Width - (2 * Margin), Across) + 1}");
    }

    /// <summary>Frames and numbers the sheets of one kind.</summary>
    public static IEnumerable<Drawing> Of(DrawingKind kind, DrawingMarks marks, IReadOnlyList<Draft> drafts) => drafts.Select((draft, i) => new Drawing(
        kind, draft.Name, new Picture(Width, Height, draft.Title, draft.Description, [.. draft.Content.Shapes, .. Shapes(draft, marks, i + 1, drafts.Count)])));

    private static Sequence<Shape> Shapes(Draft draft, DrawingMarks marks, int sheet, int sheets)
    {
        const double top = Height - Margin - Block;
        var c = new Canvas();
        c.Rect(Margin, Margin, Width - (2 * Margin), Height - (2 * Margin), new Style(Width: 0.5));
        c.Line(Margin, top, Width - Margin, top, new Style(Width: 0.35));
        Zones(c);
        var x = Margin;
        foreach (var (width, caption, words) in Fields(draft, marks, string.Create(CultureInfo.InvariantCulture, $"{sheet} of {sheets}")))
        {
            if (x > Margin)
            {
                c.Line(x, top, x, top + 10, Style.Thin);
            }

            c.Write(x + 2, top + 3.6, caption, Lettering.Small, Ink.Quiet);
            c.Fit(x + 2, top + 8.2, words, Value, width - 4, bold: caption == "drawing");
            x += width;
        }

        c.Line(Margin, top + 10, Width - Margin, top + 10, Style.Thin);
        c.Write(Margin + 2, top + 14.4, "job SHA-256 " + marks.Hash, Lettering.Small, Ink.Quiet);
        c.Write(Width - Margin - 2, top + 14.4, "Drawn from the job. It defers to the approved data, the aircraft's own manuals, the local authority and licensed staff.", Lettering.Small, Ink.Quiet, Anchor.End);
        return c.Shapes;
    }

    // Numbers along the head and letters down both sides; the foot is left to the document that holds the sheet.
    private static void Zones(Canvas c)
    {
        const double wide = (Width - (2 * Margin)) / Across;
        const double high = (Height - (2 * Margin)) / Down;
        c.Path(Faint, new(Edge, Height - Margin), new(Edge, Edge), new(Width - Edge, Edge), new(Width - Edge, Height - Margin));
        for (var i = 0; i < Across; i++)
        {
            c.Line(Margin + (i * wide), Edge, Margin + (i * wide), Margin, Faint);
            c.Write(Margin + ((i + 0.5) * wide), Margin - 1.6, NumberFormat.Text(i + 1), Lettering.Small, Ink.Quiet, Anchor.Middle);
        }

        c.Line(Width - Margin, Edge, Width - Margin, Margin, Faint);
        for (var i = 0; i <= Down; i++)
        {
            foreach (var x in new[] { Edge, Width - Margin })
            {
                c.Line(x, Margin + (i * high), x + Margin - Edge, Margin + (i * high), Faint);
                c.Write(x + ((Margin - Edge) / 2), Margin + ((i + 0.5) * high) + 0.9, i == Down ? "" : ((char)('A' + i)).ToString(), Lettering.Small, Ink.Quiet, Anchor.Middle);
            }
        }
    }

    private static (double Width, string Caption, string Words)[] Fields(Draft draft, DrawingMarks marks, string sheet) =>
    [
        (190, "drawing", draft.Title), (50, "aircraft", marks.Registration), (65, "work order", marks.Order), (25, "revision", marks.Revision), (35, "scale", draft.Scale.Length == 0 ? "not to scale" : draft.Scale), (35, "sheet", sheet),
    ];
}
