using System.Globalization;
using System.Numerics;

namespace Fairlead.Calculations.Traffic;

/// <summary>The 32-bit word of ARINC 429. Bit 1 is sent first; here it is the least significant of the number, so that bit 32 (parity) is the most.</summary>
/// <remarks>Check value: label 203 with SDI 1, data for 21,059 ft, bit 11 and SSM 11 is 0x62921DC1.</remarks>
public static class Arinc429
{
    /// <summary>The word of a label (0 to 255, usually written in octal), SDI (0 to 3), 19 data bits (bits 11 to 29) and SSM (bits 31 and 30, 0 to 3), with odd parity.</summary>
    public static uint Word(int label, int sdi, int data, int ssm)
    {
        var word = Reversed((uint)(label & 0xFF)) | ((uint)(sdi & 3) << 8) | ((uint)(data & 0x7FFFF) << 10) | ((uint)(ssm & 3) << 29);
        return BitOperations.PopCount(word) % 2 == 0 ? word | 0x80000000 : word;
    }

    /// <summary>The label of a word.</summary>
    public static int Label(uint word) => (int)Reversed(word & 0xFF);

    /// <summary>The source/destination identifier of a word.</summary>
    public static int Sdi(uint word) => (int)(word >> 8) & 3;

    /// <summary>The 19 data bits of a word, bit 11 least.</summary>
    public static int Data(uint word) => (int)(word >> 10) & 0x7FFFF;

    /// <summary>The sign/status matrix of a word: bit 31, then bit 30.</summary>
    public static int Ssm(uint word) => (int)(word >> 29) & 3;

    /// <summary>Whether the parity of a word is odd, as it must be.</summary>
    public static bool ParityIsOdd(uint word) => BitOperations.PopCount(word) % 2 == 1;

    /// <summary>A label in octal; null when the text is not 000 to 377.</summary>
    public static int? ReadLabel(string? text) => text is { Length: >= 1 and <= 3 } && text.All(c => c is >= '0' and <= '7') && Convert.ToInt32(text, 8) is <= 255 and var label ? label : null;

    /// <summary>A word in hexadecimal; null when the text is not one.</summary>
    public static uint? ReadWord(string? text) =>
        uint.TryParse(text?.StartsWith("0x", StringComparison.OrdinalIgnoreCase) == true ? text[2..] : text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var word) ? word : null;

    /// <summary>A word in hexadecimal.</summary>
    public static string Text(uint word) => string.Create(CultureInfo.InvariantCulture, $"0x{word:X8}");

    /// <summary>The octal label's most significant digit is sent first, so the label's bits stand in the word the other way round.</summary>
    private static uint Reversed(uint octet)
    {
        var result = 0u;
        for (var i = 0; i < 8; i++)
        {
            result |= (octet >> i & 1) << (7 - i);
        }

        return result;
    }
}
