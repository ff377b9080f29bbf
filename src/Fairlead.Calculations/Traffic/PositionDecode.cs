namespace Fairlead.Calculations.Traffic;

/// <summary>Which of two frames came last.</summary>
public enum LatestFrame
{
    /// <summary>The even one.</summary>
    Even,

    /// <summary>The odd one.</summary>
    Odd,
}

/// <summary>Input of <see cref="PositionDecode"/>.</summary>
/// <param name="EvenLatitude">Coded latitude of the even frame.</param>
/// <param name="EvenLongitude">Coded longitude of the even frame.</param>
/// <param name="OddLatitude">Coded latitude of the odd frame.</param>
/// <param name="OddLongitude">Coded longitude of the odd frame.</param>
/// <param name="Latest">Which came last.</param>
/// <param name="ReferenceLatitude">A latitude known to be near, + north.</param>
/// <param name="ReferenceLongitude">A longitude known to be near, + east.</param>
public sealed record PositionDecodeInput(
    [In("latE", "coded latitude of the even frame", Min = 0, Max = 131071, Default = "no even frame")] int? EvenLatitude = null,
    [In("lonE", "coded longitude of the even frame", Min = 0, Max = 131071, Default = "no even frame")] int? EvenLongitude = null,
    [In("latO", "coded latitude of the odd frame", Min = 0, Max = 131071, Default = "no odd frame")] int? OddLatitude = null,
    [In("lonO", "coded longitude of the odd frame", Min = 0, Max = 131071, Default = "no odd frame")] int? OddLongitude = null,
    [In("latest", "which came last", Default = "even")] LatestFrame Latest = LatestFrame.Even,
    [In("lat0", "a latitude known to be near, + north", "°", Min = -90, Max = 90, Default = "none")] Angle? ReferenceLatitude = null,
    [In("lon0", "a longitude known to be near, + east", "°", Min = -180, Max = 180, Default = "none")] Angle? ReferenceLongitude = null);

/// <summary>Airborne position from compact position reports: globally from an even and an odd frame, locally from one frame and a place known to be near.</summary>
/// <remarks>Check value: even (93000, 51372), odd (74158, 50194), even latest, or even alone near 52.258°, 3.918°: 52.2572021484375°, 3.91937255859375°.</remarks>
public sealed class PositionDecode : ICalculation<PositionDecodeInput>
{
    private static readonly Source Book = new("The 1090 megahertz riddle", "299a40cc", "airborne position");

    /// <inheritdoc/>
    public static CalculationInfo<PositionDecodeInput> Info { get; } = new(
        "position-decode", "Position from compact reports", Discipline.Traffic,
        "Which position a pair of frames, or one frame near a known place, reports", "latE=93000 lonE=51372 latO=74158 lonO=50194 latest=even", Book);

    /// <inheritdoc/>
    public static Sheet Run(PositionDecodeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        (int, int)? even = input is { EvenLatitude: { } latE, EvenLongitude: { } lonE } ? (latE, lonE) : null;
        (int, int)? odd = input is { OddLatitude: { } latO, OddLongitude: { } lonO } ? (latO, lonO) : null;
        (Angle Lat, Angle Lon)? near = input is { ReferenceLatitude: { } lat0, ReferenceLongitude: { } lon0 } ? (lat0, lon0) : null;
        if (even is { } e && odd is { } o)
        {
            Globally(s, input, e, o);
        }
        else if (near is null || (even is null && odd is null))
        {
            s.CannotTell("Give both frames (latE, lonE, latO, lonO), or one frame and a place known to be near (lat0, lon0).");
        }

        if (near is { } place && (even ?? odd) is not null)
        {
            var useOdd = even is null || (odd is not null && input.Latest == LatestFrame.Odd);
            Locally(s, (useOdd ? odd : even)!.Value, useOdd, place.Lat, place.Lon);
        }
    });

    private static void Globally(SheetBuilder s, PositionDecodeInput input, (int Latitude, int Longitude) even, (int Latitude, int Longitude) odd)
    {
        s.Step("j", "zone of latitude", "⌊(59 · latE − 60 · latO) / 131072 + 1/2⌋", Math.Floor((((59.0 * even.Latitude) - (60.0 * odd.Latitude)) / Cpr.Steps) + 0.5), Book);
        if (Cpr.Global(even, odd, input.Latest == LatestFrame.Odd) is not var (latitude, longitude))
        {
            s.CannotTell("The two frames lie in different zones of longitude or at no latitude: they are too far apart in time or disturbed; wait for the next pair.");
            return;
        }

        s.Step("NL", "zones of longitude there", "by latitude", Cpr.LongitudeZones(latitude), Book);
        s.Step("lat", "latitude, + north", "360°/60 or 360°/59 · (j + coded / 131072)", Angle.Of(latitude, "°"), "°", Book);
        s.Step("lon", "longitude, + east", "360°/zones · (m + coded / 131072)", Angle.Of(longitude, "°"), "°", Book);
    }

    private static void Locally(SheetBuilder s, (int Latitude, int Longitude) frame, bool odd, Angle lat0, Angle lon0)
    {
        if (Cpr.Local(frame, odd, lat0.In("°"), lon0.In("°")) is not var (latitude, longitude))
        {
            s.CannotTell("No latitude near the place given has this code.");
            return;
        }

        s.Step("latn", "latitude nearest the known place, + north", "zone of lat0 + coded / 131072", Angle.Of(latitude, "°"), "°", Book);
        s.Step("lonn", "longitude nearest the known place, + east", "zone of lon0 + coded / 131072", Angle.Of(longitude, "°"), "°", Book);
        s.Caution("Right only when the aircraft is within half a zone of the place given (about 180 nmi at the equator).");
    }
}
