using Fairlead.Documents;
using Fairlead.Drawings;
using UglyToad.PdfPig;

namespace Fairlead.Tests.Documents;

/// <summary>What can be said of any pages.</summary>
internal static class Pages
{
    /// <summary>No two texts overlap and all lie between the margins.</summary>
    public static void AssertClear(Composition composition)
    {
        foreach (var page in composition.Pages)
        {
            var boxes = page.Shapes.OfType<Text>().Where(t => t.Words.Trim().Length > 0).Select(t => (t.Words, Box: BoxOf(t))).ToArray();
            // A drawing has a page in its own size, with its zones outside its frame.
            var (left, top, right, bottom) = page.Width == PageFormat.Width
                ? (PageFormat.Left - 0.01, 10.0, PageFormat.Right + 0.01, PageFormat.Bottom + 10)
                : (4.99, 5.0, page.Width - 4.99, page.Height - 4);
            Assert.All(boxes, b => Assert.True(b.Box.Left >= left && b.Box.Right <= right, $"'{b.Words}' leaves the column"));
            Assert.All(boxes, b => Assert.True(b.Box.Top >= top && b.Box.Bottom <= bottom, $"'{b.Words}' leaves the page"));
            for (var i = 0; i < boxes.Length; i++)
            {
                Assert.All(boxes[(i + 1)..], b => Assert.False(boxes[i].Box.Overlaps(b.Box), $"'{boxes[i].Words}' and '{b.Words}' overlap"));
            }
        }
    }

    /// <summary>The words of a PDF in reading order, one blank between them.</summary>
    public static string Text(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join(' ', document.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    private static Box BoxOf(Text t)
    {
        var width = Typesetting.Width(t.Words, t.Size, t.Bold);
        var left = t.At.X - (t.Anchor switch { Anchor.End => width, Anchor.Middle => width / 2, _ => 0 });
        return new Box(left, t.At.Y - (t.Size * TextMeasure.CapHeight), left + width, t.At.Y);
    }

    private readonly record struct Box(double Left, double Top, double Right, double Bottom)
    {
        public bool Overlaps(Box b) => Left < b.Right && b.Left < Right && Top < b.Bottom && b.Top < Bottom;
    }
}
