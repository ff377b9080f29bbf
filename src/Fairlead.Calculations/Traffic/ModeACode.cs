using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>The twelve information pulses of a Mode A or Mode C reply. A code is the number whose four octal digits are A, B, C and D; a digit is 4·x4 + 2·x2 + x1.</summary>
/// <remarks>Check value: 1200 is the pulses A1 and B2, and the identity field 0x0808.</remarks>
public static class ModeACode
{
    /// <summary>Pulses in the order they are sent, with their time after the first framing pulse in µs (ICAO Annex 10 Vol IV 3.1.1.6.2: multiples of 1.45 µs).</summary>
    public static ImmutableArray<(string Name, double Microseconds)> Sent { get; } =
    [
        ("C1", 1.45), ("A1", 2.90), ("C2", 4.35), ("A2", 5.80), ("C4", 7.25), ("A4", 8.70), ("X", 10.15),
        ("B1", 11.60), ("D1", 13.05), ("B2", 14.50), ("D2", 15.95), ("B4", 17.40), ("D4", 18.85),
    ];

    private static readonly int[] Weights = [1, 2, 4];

    /// <summary>The pulses of a code, by octal digit: A1 A2 A4 B1 ... D4.</summary>
    public static ImmutableArray<string> Pulses(int code) =>
        [.. from letter in "ABCD" from weight in Weights where (code & Bit(letter, weight)) != 0 select string.Create(CultureInfo.InvariantCulture, $"{letter}{weight}")];

    /// <summary>The thirteen-bit identity or altitude field, in the order the pulses are sent; the X position is 0.</summary>
    public static int ToField(int code) => Sent.Aggregate(0, (field, pulse) => (field << 1) | ((code & Bit(pulse.Name)) != 0 ? 1 : 0));

    /// <summary>The code of a thirteen-bit field; the X position is ignored.</summary>
    public static int FromField(int field)
    {
        var code = 0;
        for (var i = 0; i < Sent.Length; i++)
        {
            code |= (field >> (Sent.Length - 1 - i) & 1) != 0 ? Bit(Sent[i].Name) : 0;
        }

        return code;
    }

    /// <summary>The four octal digits of a code.</summary>
    public static string Text(int code) => Convert.ToString(code, 8).PadLeft(4, '0');

    /// <summary>The code of four octal digits; null when the text is anything else.</summary>
    public static int? Read(string? text) => text is { Length: 4 } && text.All(c => c is >= '0' and <= '7') ? Convert.ToInt32(text, 8) : null;

    /// <summary>Whether a code has a pulse.</summary>
    internal static bool Has(int code, char letter, int weight) => (code & Bit(letter, weight)) != 0;

    /// <summary>The bit of a pulse in a code; 0 for X.</summary>
    internal static int Bit(char letter, int weight) => weight << (3 * ('D' - letter));

    private static int Bit(string name) => name == "X" ? 0 : Bit(name[0], name[1] - '0');
}
