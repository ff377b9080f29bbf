using System.Buffers.Binary;
using System.Collections.Immutable;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Fairlead.Documents;

/// <summary>Photographs as the PDF library takes them: JPEG files, which go into the file as they are, and PNG files, whose picture elements do.</summary>
internal static class Photographs
{
    // Those of a PNG are unpacked to be written. A few bytes can say that there are thousands of millions.
    private const long MostUnpacked = 12_000_000;

    private static ReadOnlySpan<byte> Jpeg => [0xFF, 0xD8, 0xFF];

    // Portable Network Graphics (Third Edition), 5.2 and 11.2.1: the signature, then the chunk with width and height.
    private static ReadOnlySpan<byte> Png => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52];

    /// <summary>Width and height in pixels; null for what cannot be printed.</summary>
    public static (int Width, int Height)? Size(ImmutableArray<byte> bytes)
    {
        if (!bytes.AsSpan().StartsWith(Jpeg) && !IsSmallPng(bytes.AsSpan()))
        {
            return null;
        }

        try
        {
            using var image = Read(bytes);
            Draw(image);
            return image is { PixelWidth: > 0, PixelHeight: > 0 } ? (image.PixelWidth, image.PixelHeight) : null;
        }
#pragma warning disable CA1031 // Whatever is wrong with a picture that somebody sent, the papers name it and are written.
        catch (Exception)
#pragma warning restore CA1031
        {
            return null;
        }
    }

    private static bool IsSmallPng(ReadOnlySpan<byte> bytes) => bytes.StartsWith(Png) && bytes.Length > Png.Length + 8
        && (ulong)BinaryPrimitives.ReadUInt32BigEndian(bytes[Png.Length..]) * BinaryPrimitives.ReadUInt32BigEndian(bytes[(Png.Length + 4)..]) <= MostUnpacked;

    // Whatever is wrong with it shows when it is drawn, here and not in the middle of the papers.
    private static void Draw(XImage image)
    {
        using var pdf = new PdfDocument();
        using var graphics = XGraphics.FromPdfPage(pdf.AddPage());
        graphics.DrawImage(image, 0, 0, 1, 1);
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
