using System.Collections.Immutable;
using PdfSharp.Drawing;

namespace Fairlead.Documents;

/// <summary>Photographs as the PDF library takes them: JPEG files, which go into the file as they are.</summary>
internal static class Photographs
{
    private static ReadOnlySpan<byte> Begins => [0xFF, 0xD8, 0xFF];

    /// <summary>Width and height in pixels; null for what cannot be printed.</summary>
    public static (int Width, int Height)? Size(ImmutableArray<byte> bytes)
    {
        if (!bytes.AsSpan().StartsWith(Begins))
        {
            return null;
        }

        try
        {
            using var image = Read(bytes);
            return image is { PixelWidth: > 0, PixelHeight: > 0 } ? (image.PixelWidth, image.PixelHeight) : null;
        }
#pragma warning disable CA1031 // Whatever is wrong with a picture that somebody sent, the papers name it and are written.
        catch (Exception)
#pragma warning restore CA1031
        {
            return null;
        }
    }

    /// <summary>The picture. Nothing is smoothed when it is shown: ISO 19005-3, 6.2.8.1 forbids it.</summary>
    public static XImage Read(ImmutableArray<byte> bytes)
    {
        byte[] copy = [.. bytes];
        var image = XImage.FromStream(new MemoryStream(copy, 0, copy.Length, writable: false, publiclyVisible: true));
        image.Interpolate = false;
        return image;
    }
}
