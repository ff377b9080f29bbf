using System.Globalization;

namespace Fairlead.Calculations;

/// <summary>An American wire gauge size, 40 to 0000. The default value is size 0.</summary>
/// <param name="Number">The gauge number; 00, 000 and 0000 are −1, −2 and −3 (ASTM B258: n = 1 − m for m zeros).</param>
public readonly record struct Gauge(int Number) : IComparable<Gauge>
{
    /// <summary>What a good value looks like.</summary>
    public const string Expected = "a wire gauge from 40 to 0000, for example '22' or '00'";

    /// <summary>Reads <c>22</c>, <c>AWG 22</c>, <c>00</c>, <c>2/0</c>.</summary>
    public static bool TryRead(string? text, out Gauge gauge)
    {
        var size = (text ?? "").Trim();
        size = size.StartsWith("AWG", StringComparison.OrdinalIgnoreCase) ? size[3..].Trim() : size;
        gauge = default;
        if (size.Length is >= 1 and <= 4 && size.All(c => c == '0'))
        {
            gauge = new Gauge(1 - size.Length);
            return true;
        }

        if (size.Length == 3 && size.EndsWith("/0", StringComparison.Ordinal) && size[0] is >= '1' and <= '4')
        {
            gauge = new Gauge(1 - (size[0] - '0'));
            return true;
        }

        var read = int.TryParse(size, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 40;
        gauge = new Gauge(number);
        return read;
    }

    /// <summary>The gauge of a text.</summary>
    /// <exception cref="FormatException">The text is not a gauge.</exception>
    public static Gauge Read(string text) => TryRead(text, out var gauge) ? gauge : throw new FormatException($"'{text}' is not {Expected}.");

    /// <summary>Thinner wires come first: 24 before 22 before 0 before 00.</summary>
    public int CompareTo(Gauge other) => other.Number.CompareTo(Number);

    /// <summary>Thinner than.</summary>
    public static bool operator <(Gauge a, Gauge b) => a.CompareTo(b) < 0;

    /// <summary>Thicker than.</summary>
    public static bool operator >(Gauge a, Gauge b) => a.CompareTo(b) > 0;

    /// <summary>At most as thick as.</summary>
    public static bool operator <=(Gauge a, Gauge b) => a.CompareTo(b) <= 0;

    /// <summary>At least as thick as.</summary>
    public static bool operator >=(Gauge a, Gauge b) => a.CompareTo(b) >= 0;

    /// <inheritdoc/>
    public override string ToString() => Number > 0 ? Number.ToString(CultureInfo.InvariantCulture) : new string('0', 1 - Number);
}
