using Fairlead.Drawings;
using QRCoder;

namespace Fairlead.Documents;

/// <summary>A QR code (ISO/IEC 18004) as filled rectangles: sharp at every size.</summary>
internal static class SquareCode
{
    /// <summary>The code of a text with its quiet zone, in a square of a side. Level M: a card still reads with a seventh of it smudged.</summary>
    public static IEnumerable<Shape> Of(string text, Point corner, double side)
    {
        using var generator = new QRCodeGenerator();
        using var data = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var modules = data.ModuleMatrix;
        var size = side / modules.Count;
        for (var y = 0; y < modules.Count; y++)
        {
            // One rectangle for each run of dark modules: no hairlines between them.
            for (var x = 0; x < modules.Count; x++)
            {
                var from = x;
                while (x < modules.Count && modules[y][x])
                {
                    x++;
                }

                if (x > from)
                {
                    yield return new Rect(corner.Moved(from * size, y * size), (x - from) * size, size, Style.Filled(Ink.Line));
                }
            }
        }
    }
}
