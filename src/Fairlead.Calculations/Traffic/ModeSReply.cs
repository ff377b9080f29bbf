using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="ModeSReply"/>.</summary>
/// <param name="Address">Aircraft address, six hexadecimal digits.</param>
/// <param name="Altitude">Pressure altitude, 29.92 in Hg.</param>
/// <param name="Squawk">Mode A code, four octal digits.</param>
/// <param name="Flight">Flight identification.</param>
/// <param name="Latitude">Latitude, + north.</param>
/// <param name="Longitude">Longitude, + east.</param>
/// <param name="Ident">Whether ident is pressed.</param>
/// <param name="Capability">Capability.</param>
/// <param name="Interrogator">Interrogator code of the all-call.</param>
/// <param name="Type">Type code of the position squitter.</param>
public sealed record ModeSReplyInput(
    [In("address", "aircraft address (six hexadecimal digits)")] string Address,
    [In("h", "pressure altitude (29.92 in Hg)", "ft", Min = -1200, Max = 126700, Default = "not shown")] Length? Altitude = null,
    [In("squawk", "Mode A code, four octal digits", Default = "not shown")] string? Squawk = null,
    [In("flight", "flight identification, up to eight letters and digits", Default = "not shown")] string? Flight = null,
    [In("lat", "latitude, + north", "°", Min = -90, Max = 90, Default = "not shown")] Angle? Latitude = null,
    [In("lon", "longitude, + east", "°", Min = -180, Max = 180, Default = "not shown")] Angle? Longitude = null,
    [In("ident", "whether ident is pressed", Default = "no")] bool Ident = false,
    [In("CA", "capability", Min = 0, Max = 7, Default = "5, airborne")] int Capability = 5,
    [In("IC", "interrogator code of the all-call", Min = 0, Max = 127, Default = "0")] int Interrogator = 0,
    [In("TC", "type code of the position squitter", Min = 9, Max = 18, Default = "11")] int Type = 11);

/// <summary>The replies and squitters that a Mode S transponder must send for what it is set to: whole frames with their parity.</summary>
/// <remarks>Check values: 4CA7E8 at 36,000 ft answers 2000171806A983; 40621D at 38,000 ft, 52.2572021484375° and 3.91937255859375°, sends 8D40621D58C382D690C8AC2863A7 (even).</remarks>
public sealed class ModeSReply : ICalculation<ModeSReplyInput>
{
    private const int IdentPulse = 5;
    private static readonly Source Book = new("The 1090 megahertz riddle", "299a40cc", "surveillance replies; identification; airborne position");
    private static readonly Source Status = new("ICAO Annex 10 Vol IV", "", "flight status 5: ident, no alert", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<ModeSReplyInput> Info { get; } = new(
        "mode-s-reply", "Mode S replies expected", Discipline.Traffic,
        "Which frames a Mode S transponder must send for its address, altitude, code, identification and position",
        "address=40621D h='38000 ft' squawk=1200 flight=X9FGS lat='52.2572021484375 deg' lon='3.91937255859375 deg'", Book);

    /// <inheritdoc/>
    public static Sheet Run(ModeSReplyInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (!int.TryParse(input.Address, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var address) || address is <= 0 or >= 0xFFFFFF)
        {
            s.CannotTell($"'{input.Address}' is no aircraft address: six hexadecimal digits, neither all zeros nor all ones.");
            return;
        }

        var rows = new List<ImmutableArray<SheetValue>> { (["all-call reply, DF 11", ModeSFrame.AllCall(address, input.Capability, input.Interrogator), "address"]) };
        rows.AddRange(Surveillance(s, input, address));
        rows.AddRange(Squitters(s, input, address));
        s.Table("Frames expected", ["what", "frame", "says"], rows);
        s.Step("n", "frames", "counted", rows.Count);
        s.Caution("Status, capability and type code follow from the installation and its state: compare the fields named, and the parity with Parity24.");
    });

    private static IEnumerable<ImmutableArray<SheetValue>> Surveillance(SheetBuilder s, ModeSReplyInput input, int address)
    {
        var status = input.Ident ? IdentPulse : 0;
        if (input.Ident)
        {
            s.Uses(Status);
        }

        if (input.Altitude is { } altitude)
        {
            yield return ["altitude reply, DF 4", ModeSFrame.Surveillance(4, address, Field13(altitude), status), Told(altitude)];
        }

        if (input.Squawk is { } text)
        {
            if (ModeACode.Read(text) is { } code)
            {
                yield return ["identity reply, DF 5", ModeSFrame.Surveillance(5, address, ModeACode.ToField(code), status), $"code {text}"];
            }
            else
            {
                s.CannotTell($"'{text}' is not four octal digits (0 to 7).");
            }
        }
    }

    private static IEnumerable<ImmutableArray<SheetValue>> Squitters(SheetBuilder s, ModeSReplyInput input, int address)
    {
        if (input.Flight is { } flight)
        {
            if (ModeSFrame.Identification(address, input.Capability, flight) is { } frame)
            {
                yield return ["identification squitter, DF 17", frame, flight];
            }
            else
            {
                s.CannotTell($"'{flight}' is no flight identification: up to eight capital letters and digits.");
            }
        }

        if (input is not { Latitude: { } latitude, Longitude: { } longitude, Altitude: { } altitude } || AltitudeEncoding.Field12(altitude.In("ft")) is not { } field)
        {
            yield break;
        }

        foreach (var odd in new[] { false, true })
        {
            var coded = Cpr.Encode(latitude.In("°"), longitude.In("°"), odd);
            yield return
            [
                $"position squitter, DF 17, {(odd ? "odd" : "even")}", ModeSFrame.Position(address, input.Capability, input.Type, field, coded, odd),
                string.Create(CultureInfo.InvariantCulture, $"coded latitude {coded.Latitude}, longitude {coded.Longitude}"),
            ];
        }
    }

    // Steps of 25 ft as far as they reach, of 100 ft above.
    private static int Field13(Length altitude) => AltitudeEncoding.Field12(altitude.In("ft")) is { } fine ? AltitudeEncoding.Field13(fine)
        : ModeACode.ToField(AltitudeEncoding.Gillham((int)Math.Round(altitude.In("ft") / 100, MidpointRounding.AwayFromZero)));

    private static string Told(Length altitude) => string.Create(CultureInfo.InvariantCulture, $"{AltitudeEncoding.FromField13(Field13(altitude))} ft");
}
