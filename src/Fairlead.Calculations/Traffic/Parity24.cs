using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="Parity24"/>.</summary>
/// <param name="Frame">A downlink frame of 56 or 112 bits in hexadecimal, or its data without the parity field.</param>
/// <param name="Address">Address the reply should carry in its parity, in hexadecimal.</param>
/// <param name="Register">Register that was asked for, whose number lies over the parity of a reply with data parity.</param>
public sealed record Parity24Input(
    [In("frame", "downlink frame (14 or 28 hexadecimal digits), or its data (8 or 22)")] string Frame,
    [In("address", "address expected (hexadecimal)", Default = "not checked")] string? Address = null,
    [In("register", "register whose number lies over the parity of a long reply (two hexadecimal digits)", Default = "none")] string? Register = null);

/// <summary>Parity of a Mode S downlink frame: whether a squitter is undisturbed, and which address or interrogator a reply carries in its parity.</summary>
/// <remarks>Check values: 8D4840D6202CC371C32CE0576098 leaves 000000; the reply 2000171806A983 leaves 4CA7E8, its address.
/// Register 44 lies over DD33AA as 9933AA.</remarks>
public sealed class Parity24 : ICalculation<Parity24Input>
{
    private static readonly Source Book = new("The 1090 megahertz riddle", "299a40cc", "error control");

    /// <inheritdoc/>
    public static CalculationInfo<Parity24Input> Info { get; } = new(
        "parity-24", "Mode S parity", Discipline.Traffic,
        "Whether a Mode S frame is undisturbed, and whose it is", "frame=8D4840D6202CC371C32CE0576098", Book);

    /// <inheritdoc/>
    public static Sheet Run(Parity24Input input) => SheetBuilder.Work(Info, input, s =>
    {
        var text = (input.Frame ?? "").Replace(" ", "", StringComparison.Ordinal);
        if (!text.All(char.IsAsciiHexDigit) || text.Length is not (8 or 14 or 22 or 28))
        {
            s.CannotTell($"'{input.Frame}' is not 14 or 28 hexadecimal digits (a frame), nor 8 or 22 (its data).");
            return;
        }

        var octets = Convert.FromHexString(text);
        var format = s.Step("DF", "downlink format", "first five bits", Math.Min(octets[0] >> 3, 24));
        if (text.Length is 8 or 22)
        {
            s.Note("parity", "parity of the data", Hex(ModeSParity.Parity(octets)), "working");
            return;
        }

        var remainder = ModeSParity.Remainder(octets);
        s.Note("remainder", "remainder of the frame", Hex(remainder), "working");
        Judge(s, input, (int)format, octets, remainder);
    });

    private static void Judge(SheetBuilder s, Parity24Input input, int format, byte[] octets, int remainder)
    {
        var over = 0;
        if (input.Register is { } register && (register.Length != 2 || format is not (20 or 21) || !int.TryParse(register, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out over)))
        {
            s.CannotTell($"'{register}' is not the number of a register, two hexadecimal digits, or the frame is no long reply to one.");
            return;
        }

        // The two digits lie over the first eight of the 24 bits.
        remainder ^= over << 16;
        var own = format is 11 or 17 or 18;
        var address = own ? (octets[1] << 16) | (octets[2] << 8) | octets[3] : remainder;
        if (format is 17 or 18)
        {
            s.Check("remainder", Measure.Number(remainder), Sense.AtMost, Measure.Number(0), "the parity of a squitter leaves no remainder", Book);
        }
        else if (format == 11)
        {
            s.Step("IC", "interrogator code", "remainder", remainder);
            s.Check("remainder", Measure.Number(remainder), Sense.AtMost, Measure.Number(127), "the remainder of an all-call reply is an interrogator code", Book);
        }
        else if (format is not (0 or 4 or 5 or 16 or 20 or 21))
        {
            s.CannotTell("What the parity of this downlink format carries is not known here.");
            return;
        }

        s.Note("aircraft", "address", Hex(address), own ? "frame" : "parity");
        if (input.Address is { } expected)
        {
            if (!int.TryParse(expected, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var wanted) || wanted is < 0 or > 0xFFFFFF)
            {
                s.CannotTell($"'{expected}' is not an address of six hexadecimal digits.");
                return;
            }

            s.Check("bits in which the address differs", Measure.Number(int.PopCount(wanted ^ address)), Sense.AtMost, Measure.Number(0), "the frame carries the address expected", Book);
        }
        else if (!own)
        {
            s.Caution("In this format the parity carries the address, so a disturbed frame shows as a wrong address and not as a fault: give the address expected.");
        }
    }

    private static string Hex(int value) => value.ToString("X6", CultureInfo.InvariantCulture);
}
