namespace Fairlead.Model.Storage;

/// <summary>The checksum of zip files (ISO/IEC 8802-3 polynomial, reflected: EDB88320). The platform's reader does not compare it.</summary>
internal static class Crc32
{
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(i => Enumerable.Range(0, 8).Aggregate((uint)i, (c, _) => (c & 1) == 0 ? c >> 1 : 0xEDB88320 ^ (c >> 1)))];

    /// <summary>The checksum of some bytes. That of the ASCII digits 1 to 9 is CBF43926.</summary>
    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var b in bytes)
        {
            crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return ~crc;
    }
}
