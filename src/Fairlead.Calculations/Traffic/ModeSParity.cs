namespace Fairlead.Calculations.Traffic;

/// <summary>The 24-bit parity of Mode S: division by x²⁴ + x²³ + ... + x¹² + x¹⁰ + x³ + 1 (hexadecimal 1FFF409).</summary>
/// <remarks>Check value: the data 8D4840D6202CC371C32CE0 have parity 576098.</remarks>
public static class ModeSParity
{
    private const uint Generator = 0xFFF409;

    /// <summary>The remainder of a whole frame, parity field included: 0 for an undisturbed squitter, else what was overlaid on its parity.</summary>
    public static int Remainder(ReadOnlySpan<byte> frame)
    {
        var field = (frame[^3] << 16) | (frame[^2] << 8) | frame[^1];
        return Parity(frame[..^3]) ^ field;
    }

    /// <summary>The parity of the data of a frame.</summary>
    public static int Parity(ReadOnlySpan<byte> data)
    {
        uint remainder = 0;
        foreach (var octet in data)
        {
            remainder ^= (uint)octet << 16;
            for (var i = 0; i < 8; i++)
            {
                remainder = (remainder & 0x800000) != 0 ? ((remainder << 1) & 0xFFFFFF) ^ Generator : remainder << 1;
            }
        }

        return (int)remainder;
    }
}
