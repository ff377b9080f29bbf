using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="AltitudeCode"/>.</summary>
/// <param name="Altitude">Pressure altitude, 29.92 in Hg.</param>
/// <param name="Code">Gillham code as four octal digits, ABCD.</param>
/// <param name="Field">Thirteen-bit altitude field of a Mode S reply, in hexadecimal.</param>
public sealed record AltitudeCodeInput(
    [In("h", "pressure altitude (29.92 in Hg)", "ft", Min = -1200, Max = 126700, Default = "by code or field")] Length? Altitude = null,
    [In("code", "Gillham code, four octal digits ABCD", Default = "by altitude or field")] string? Code = null,
    [In("field", "thirteen-bit altitude field (hexadecimal)", Default = "by altitude or code")] string? Field = null);

/// <summary>Pressure altitude as reported: Gillham pulses and Mode S fields, and back. With both an altitude and a code it checks that they correspond.</summary>
/// <remarks>
/// An altitude is coded to the nearest 100 ft (the encoder turns over 50 ft either side). Check values: 10,000 ft is 6520; 0x1718 is 36,000 ft.
/// </remarks>
public sealed class AltitudeCode : ICalculation<AltitudeCodeInput>
{
    private static readonly Source Table = new("ICAO table of Mode C codes", "1962 (abstract)", "−1,000 to 126,750 ft in 100 ft steps");
    private static readonly Source Book = new("The 1090 megahertz riddle", "299a40cc", "altitude codes");
    private static readonly Source Correspondence = new("14 CFR 91.217", "", "(a)(2): within 125 ft");

    /// <inheritdoc/>
    public static CalculationInfo<AltitudeCodeInput> Info { get; } = new(
        "altitude-code", "Altitude code", Discipline.Traffic,
        "Which pulses and bits report an altitude, and whether a code corresponds to the altimeter", "h='10000 ft' code=6520", Table, Book);

    /// <inheritdoc/>
    public static Sheet Run(AltitudeCodeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input is { Altitude: null, Code: null, Field: null } or { Code: not null, Field: not null })
        {
            s.CannotTell("Give an altitude, a code or a field; not a code and a field together.");
            return;
        }

        var reported = Reported(s, input);
        if (s.Stopped)
        {
            return;
        }

        if (input.Altitude is { } altitude)
        {
            Show(s, altitude);
        }

        if (reported is { } feet)
        {
            var told = s.Step("hr", "altitude reported", "by code or field", Length.Of(feet, "ft"), "ft", Book);
            if (input.Altitude is { } given)
            {
                var difference = s.Step("dh", "difference from the altimeter", "|hr − h|", new Length(Math.Abs((told - given).Si)), "ft");
                s.Check("correspondence", difference.As("ft"), Sense.AtMost, Length.Of(125, "ft").As("ft"), "the altitude reported lies within 125 ft of the altimeter at 29.92 in Hg", Correspondence);
            }
        }
    });

    private static double? Reported(SheetBuilder s, AltitudeCodeInput input)
    {
        if (input.Code is { } text)
        {
            var hundreds = ModeACode.Read(text) is { } code ? AltitudeEncoding.FromGillham(code) : null;
            if (hundreds is null)
            {
                s.CannotTell($"'{text}' is the code of no altitude: four octal digits without D1, whose C pulses are 001, 011, 010, 110 or 100.");
            }

            return hundreds * 100.0;
        }

        if (input.Field is { } hex)
        {
            var feet = Squawk.TryField(hex, out var field) ? AltitudeEncoding.FromField13(field) : null;
            if (feet is null)
            {
                s.CannotTell($"'{hex}' is no altitude in feet: a thirteen-bit field in hexadecimal with M = 0 is read.");
            }

            return feet;
        }

        return null;
    }

    private static void Show(SheetBuilder s, Length altitude)
    {
        var feet = altitude.In("ft");
        var hundreds = (int)Math.Round(feet / 100, MidpointRounding.AwayFromZero);
        var code = AltitudeEncoding.Gillham(hundreds);
        s.Step("h100", "altitude coded by pulses", "h to the nearest 100 ft", Length.Of(100 * hundreds, "ft"), "ft", Table);
        s.Note("gillham", "Gillham code (ABCD)", ModeACode.Text(code), "working");
        s.Note("pulses", "pulses", string.Join(' ', ModeACode.Pulses(code)), "working");
        s.Note("AC100", "thirteen-bit field, 100 ft", Hex(ModeACode.ToField(code)), "working");
        if (AltitudeEncoding.Field12(feet) is { } field)
        {
            s.Note("AC25", "thirteen-bit field, 25 ft", Hex(AltitudeEncoding.Field13(field)), "working");
            s.Note("AC12", "twelve-bit field, 25 ft", string.Create(CultureInfo.InvariantCulture, $"0x{field:X3}"), "working");
        }
    }

    private static string Hex(int field) => string.Create(CultureInfo.InvariantCulture, $"0x{field:X4}");
}
