using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>Pressure altitude as code: Gillham pulses in steps of 100 ft, and the 25 ft code of Mode S.</summary>
/// <remarks>
/// Gillham: D2 D4 A1 A2 A4 B1 B2 B4 is a reflected Gray count of 500 ft from −1,000 ft; C1 C2 C4 the 100 ft within, reversed on every other count.
/// Check values: 0 ft is 0620; 30,800 ft is 1044; 38,000 ft is 0x1838 in the 25 ft code.
/// </remarks>
public static class AltitudeEncoding
{
    /// <summary>Lowest altitude with a Gillham code, in hundreds of feet.</summary>
    public const int Lowest = -12;

    /// <summary>Highest altitude with a Gillham code, in hundreds of feet.</summary>
    public const int Highest = 1267;

    private static readonly ImmutableArray<(char Letter, int Weight)> FiveHundreds = [('D', 2), ('D', 4), ('A', 1), ('A', 2), ('A', 4), ('B', 1), ('B', 2), ('B', 4)];

    // C1 C2 C4 of the five hundreds of an even count: 001, 011, 010, 110, 100.
    private static readonly ImmutableArray<int> Hundreds = [0b001, 0b011, 0b010, 0b110, 0b100];

    /// <summary>The code of an altitude in hundreds of feet, −12 to 1267.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No code reaches there.</exception>
    public static int Gillham(int hundreds)
    {
        if (hundreds is < Lowest or > Highest)
        {
            throw new ArgumentOutOfRangeException(nameof(hundreds), hundreds, string.Create(CultureInfo.InvariantCulture, $"from {Lowest} to {Highest}"));
        }

        var (count, within) = Math.DivRem(hundreds - Lowest, Hundreds.Length);
        var gray = count ^ (count >> 1);
        var code = 0;
        for (var i = 0; i < FiveHundreds.Length; i++)
        {
            code |= (gray >> (FiveHundreds.Length - 1 - i) & 1) != 0 ? ModeACode.Bit(FiveHundreds[i].Letter, FiveHundreds[i].Weight) : 0;
        }

        var c = Hundreds[count % 2 == 0 ? within : Hundreds.Length - 1 - within];
        return code | ((c & 4) != 0 ? ModeACode.Bit('C', 1) : 0) | ((c & 2) != 0 ? ModeACode.Bit('C', 2) : 0) | ((c & 1) != 0 ? ModeACode.Bit('C', 4) : 0);
    }

    /// <summary>The altitude of a code in hundreds of feet; null when no altitude has it (D1 sent, or C pulses 000, 101 or 111).</summary>
    public static int? FromGillham(int code)
    {
        var within = Hundreds.IndexOf((ModeACode.Has(code, 'C', 1) ? 4 : 0) | (ModeACode.Has(code, 'C', 2) ? 2 : 0) | (ModeACode.Has(code, 'C', 4) ? 1 : 0));
        if (within < 0 || ModeACode.Has(code, 'D', 1))
        {
            return null;
        }

        var (count, bit) = (0, 0);
        foreach (var (letter, weight) in FiveHundreds)
        {
            bit ^= ModeACode.Has(code, letter, weight) ? 1 : 0;
            count = (count << 1) | bit;
        }

        return Lowest + (count * Hundreds.Length) + (count % 2 == 0 ? within : Hundreds.Length - 1 - within);
    }

    /// <summary>The twelve-bit field of the 25 ft code (Q = 1): 25·N − 1000 ft, N from 0 to 2047; null beyond.</summary>
    public static int? Field12(double feet)
    {
        var n = Math.Round((feet + 1000) / 25, MidpointRounding.AwayFromZero);
        return n is >= 0 and <= 2047 ? (((int)n >> 4) << 5) | 0x10 | ((int)n & 0xF) : null;
    }

    /// <summary>The thirteen-bit field (M = 0) of a twelve-bit field.</summary>
    public static int Field13(int field12) => (field12 >> 6 << 7) | (field12 & 0x3F);

    /// <summary>The altitude in feet of a thirteen-bit field: the 25 ft code, or Gillham when Q = 0; null for a metric field (M = 1) or no altitude.</summary>
    public static int? FromField13(int field13)
    {
        if ((field13 & 0x40) != 0)
        {
            return null;
        }

        return (field13 & 0x10) == 0
            ? FromGillham(ModeACode.FromField(field13)) * 100
            : (25 * (((field13 >> 7) << 5) | ((field13 & 0x20) >> 1) | (field13 & 0xF))) - 1000;
    }
}
