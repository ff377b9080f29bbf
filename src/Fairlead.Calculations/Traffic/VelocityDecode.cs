namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="VelocityDecode"/>.</summary>
/// <param name="Frame">A squitter of 112 bits in hexadecimal, or its message of 56.</param>
public sealed record VelocityDecodeInput([In("frame", "velocity squitter (28 hexadecimal digits), or its message (14)")] string Frame);

/// <summary>Speed, direction and vertical rate from an airborne velocity squitter, type 19.</summary>
/// <remarks>
/// Subtypes 1 and 2 give the speed over ground by its parts east and north, 3 and 4 the heading and the airspeed; in 2 and 4 a step of speed is
/// 4 kt, else 1 kt. A field of zero says nothing. Vertical rate in steps of 64 ft/min, height by satellite over barometric in steps of 25 ft.
/// Check value: 8D485020994409940838175B284F: 159.2011 kt, track 182.8804°, −832 ft/min by satellite, +550 ft.
/// </remarks>
public sealed class VelocityDecode : ICalculation<VelocityDecodeInput>
{
    private const int VelocityType = 19;
    private static readonly Source Book = new("The 1090 megahertz riddle", "299a40cc", "airborne velocity");

    /// <inheritdoc/>
    public static CalculationInfo<VelocityDecodeInput> Info { get; } = new(
        "velocity-decode", "Velocity from a squitter", Discipline.Traffic,
        "Which speed, direction and vertical rate a velocity squitter reports", "frame=8D485020994409940838175B284F", Book);

    /// <inheritdoc/>
    public static Sheet Run(VelocityDecodeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var text = (input.Frame ?? "").Replace(" ", "", StringComparison.Ordinal);
        if (!text.All(char.IsAsciiHexDigit) || text.Length is not (14 or 28))
        {
            s.CannotTell($"'{input.Frame}' is not 28 hexadecimal digits (a frame), nor 14 (its message).");
            return;
        }

        var octets = Convert.FromHexString(text);
        if (text.Length == 28 && ModeSParity.Remainder(octets) != 0)
        {
            s.CannotTell("The parity of the frame leaves a remainder: it is disturbed, or no squitter.");
            return;
        }

        // Bits are counted from 1, as the documents do.
        var message = Convert.ToUInt64(Convert.ToHexString(text.Length == 28 ? octets[4..11] : octets), 16);
        int Field(int first, int bits) => (int)((message >> (56 - first - bits + 1)) & ((1UL << bits) - 1));
        var subtype = Field(6, 3);
        if (Field(1, 5) != VelocityType || subtype is < 1 or > 4)
        {
            s.CannotTell("The message is no airborne velocity: type 19, subtype 1 to 4.");
            return;
        }

        s.Step("ST", "subtype", "bits 6 to 8", subtype);
        var unit = subtype is 2 or 4 ? 4 : 1;
        if (subtype <= 2)
        {
            OverGround(s, Signed(Field(14, 1), Field(15, 10), unit), Signed(Field(25, 1), Field(26, 10), unit));
        }
        else
        {
            ThroughAir(s, Field(14, 1) == 1 ? Field(15, 10) : null, Field(25, 1) == 1, Field(26, 10), unit);
        }

        if (Signed(Field(37, 1), Field(38, 9), 64) is { } rate)
        {
            s.Step("VR", "vertical rate, + up", "(code − 1) · 64 ft/min", Speed.Of(rate, "ft/min"), "ft/min", Book);
        }

        s.Note("source", "source of the vertical rate", Field(36, 1) == 0 ? "satellite navigation" : "barometric", "bit 36");
        if (Signed(Field(49, 1), Field(50, 7), 25) is { } above)
        {
            s.Step("dh", "height by satellite over barometric altitude", "(code − 1) · 25 ft", Length.Of(above, "ft"), "ft", Book);
        }
    });

    private static void OverGround(SheetBuilder s, double? east, double? north)
    {
        if (east is not { } e || north is not { } n)
        {
            s.CannotTell("The squitter says nothing of the speed over ground.");
            return;
        }

        s.Step("Vx", "speed to the east", "± (code − 1)", Speed.Of(e, "kt"), "kt", Book);
        s.Step("Vy", "speed to the north", "± (code − 1)", Speed.Of(n, "kt"), "kt", Book);
        s.Step("V", "speed over ground", "√(Vx² + Vy²)", Speed.Of(Math.Sqrt((e * e) + (n * n)), "kt"), "kt", Book);
        if (e != 0 || n != 0)
        {
            s.Step("track", "track over ground", "atan2(Vx, Vy)", Angle.Of(((Math.Atan2(e, n) * 180 / Math.PI) + 360) % 360, "°"), "°", Book);
        }
    }

    private static void ThroughAir(SheetBuilder s, int? heading, bool isTrue, int code, int unit)
    {
        if (heading is { } turn)
        {
            s.Step("heading", "magnetic heading", "code · 360° / 1024", Angle.Of(turn * 360.0 / 1024, "°"), "°", Book);
        }

        if (Signed(0, code, unit) is { } speed)
        {
            s.Step("V", isTrue ? "true airspeed" : "indicated airspeed", "code − 1", Speed.Of(speed, "kt"), "kt", Book);
        }

        if (heading is null && code == 0)
        {
            s.CannotTell("The squitter says nothing of heading and airspeed.");
        }
    }

    private static double? Signed(int negative, int code, int unit) => code == 0 ? null : (negative == 1 ? -1 : 1) * (double)(code - 1) * unit;
}
