using System.Text;
using QRCoder;

namespace Fairlead.Tests.Browser;

/// <summary>A film of one picture that the browser takes for its camera: the square code of a card, grey in grey.</summary>
internal static class FakeCamera
{
    private const int Width = 640, Height = 480, Module = 10;
    private const byte Paper = 225, Ink = 40, Colourless = 128;

    /// <summary>Writes the film as raw YUV4MPEG2.</summary>
    public static void Write(string file, string text)
    {
        using var generator = new QRCodeGenerator();
        using var code = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var (modules, picture) = (code.ModuleMatrix, new byte[Width * Height]);
        Array.Fill(picture, Paper);
        var (left, top) = ((Width - (modules.Count * Module)) / 2, (Height - (modules.Count * Module)) / 2);
        for (var y = 0; y < modules.Count * Module; y++)
        {
            for (var x = 0; x < modules.Count * Module; x++)
            {
                picture[((top + y) * Width) + left + x] = modules[y / Module][x / Module] ? Ink : Paper;
            }
        }

        var colour = new byte[Width * Height / 2];
        Array.Fill(colour, Colourless);
        File.WriteAllBytes(file, [.. Encoding.ASCII.GetBytes($"YUV4MPEG2 W{Width} H{Height} F10:1 Ip A1:1 C420jpeg\nFRAME\n"), .. picture, .. colour]);
    }
}
