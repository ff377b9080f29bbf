namespace Fairlead.Calculations.Traffic;

/// <summary>Writes Mode S downlink frames: fields from the first bit on, then the parity with what is overlaid on it.</summary>
/// <remarks>
/// Check values: surveillance altitude reply of 4CA7E8 at 36,000 ft is 2000171806A983; all-call reply of 484FDE, capability 5, to interrogator 22 is
/// 5D484FDEA248F5; identification KLM1023 of 4840D6 is 8D4840D6202CC371C32CE0576098.
/// </remarks>
public static class ModeSFrame
{
    private const int ShortData = 32, LongData = 88;
    private const string Characters = "?ABCDEFGHIJKLMNOPQRSTUVWXYZ????? ???????????????0123456789";

    /// <summary>All-call reply (DF 11).</summary>
    public static string AllCall(int address, int capability, int interrogator = 0) => Closed(interrogator, ShortData, (11, 5), (capability, 3), (address, 24));

    /// <summary>Surveillance reply with altitude (DF 4) or identity (DF 5): the thirteen-bit field, and the flight status.</summary>
    public static string Surveillance(int format, int address, int field13, int status) => Closed(address, ShortData, (format, 5), (status, 3), (0, 11), (field13, 13));

    /// <summary>Squitter (DF 17) with the flight identification, type code 4; null when a character cannot be sent or there are more than eight.</summary>
    public static string? Identification(int address, int capability, string flight, int category = 0)
    {
        ArgumentNullException.ThrowIfNull(flight);
        var codes = flight.PadRight(8).Select(c => c == '?' ? -1 : Characters.IndexOf(c, StringComparison.Ordinal)).ToArray();
        return codes.Length > 8 || codes.Any(c => c < 0) ? null
            : Closed(0, LongData, [(17, 5), (capability, 3), (address, 24), (4, 5), (category, 3), .. codes.Select(c => (c, 6))]);
    }

    /// <summary>Squitter (DF 17) with an airborne position: type code 9 to 18, twelve-bit altitude field, coded latitude and longitude.</summary>
    public static string Position(int address, int capability, int type, int field12, (int Latitude, int Longitude) coded, bool odd) =>
        Closed(0, LongData, (17, 5), (capability, 3), (address, 24), (type, 5), (0, 3), (field12, 12), (0, 1), (odd ? 1 : 0, 1), (coded.Latitude, 17), (coded.Longitude, 17));

    private static string Closed(int overlay, int bits, params ReadOnlySpan<(int Value, int Bits)> fields)
    {
        var data = new byte[bits / 8];
        var at = 0;
        foreach (var (value, width) in fields)
        {
            for (var i = width - 1; i >= 0; i--, at++)
            {
                data[at / 8] |= (byte)((value >> i & 1) << (7 - (at % 8)));
            }
        }

        return Convert.ToHexString(data) + (ModeSParity.Parity(data) ^ overlay).ToString("X6", System.Globalization.CultureInfo.InvariantCulture);
    }
}
