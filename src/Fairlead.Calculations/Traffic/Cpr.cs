namespace Fairlead.Calculations.Traffic;

/// <summary>Compact position reporting of airborne positions: 17 bits of latitude and longitude within zones, alternately 60 and 59 zones of latitude.</summary>
/// <remarks>Check value: even (93000, 51372) and odd (74158, 50194), even latest: 52.2572021484375°, 3.91937255859375°.</remarks>
public static class Cpr
{
    /// <summary>Steps in a zone: 2¹⁷.</summary>
    public const int Steps = 131072;

    /// <summary>Zones of longitude at a latitude, 1 to 59.</summary>
    public static int LongitudeZones(double latitude)
    {
        var angle = Math.Abs(latitude);
        if (angle >= 87)
        {
            return angle > 87 ? 1 : 2;
        }

        var cosine = Math.Cos(Math.PI / 180 * angle);
        return (int)Math.Floor(2 * Math.PI / Math.Acos(1 - ((1 - Math.Cos(Math.PI / 30)) / (cosine * cosine))));
    }

    /// <summary>The coded latitude and longitude of a position in degrees.</summary>
    public static (int Latitude, int Longitude) Encode(double latitude, double longitude, bool odd)
    {
        var high = Zone(odd);
        var y = (int)Math.Floor((Steps * Modulo(latitude, high) / high) + 0.5);
        var coded = high * ((y / (double)Steps) + Math.Floor(latitude / high));
        var wide = Width(coded, odd);
        var x = (int)Math.Floor((Steps * Modulo(longitude, wide) / wide) + 0.5);
        return (y % Steps, x % Steps);
    }

    /// <summary>Position in degrees from an even and an odd frame; null when they lie in different zones of longitude or at no latitude.</summary>
    public static (double Latitude, double Longitude)? Global((int Latitude, int Longitude) even, (int Latitude, int Longitude) odd, bool oddIsLatest)
    {
        var (e, o) = (even.Latitude / (double)Steps, odd.Latitude / (double)Steps);
        var j = Math.Floor((59 * e) - (60 * o) + 0.5);
        var (latitudeE, latitudeO) = (North(Zone(false) * (Modulo(j, 60) + e)), North(Zone(true) * (Modulo(j, 59) + o)));
        if (LongitudeZones(latitudeE) != LongitudeZones(latitudeO) || Math.Abs(latitudeE) > 90 || Math.Abs(latitudeO) > 90)
        {
            return null;
        }

        var latitude = oddIsLatest ? latitudeO : latitudeE;
        var zones = LongitudeZones(latitude);
        var m = Math.Floor((even.Longitude / (double)Steps * (zones - 1)) - (odd.Longitude / (double)Steps * zones) + 0.5);
        var count = Math.Max(zones - (oddIsLatest ? 1 : 0), 1);
        var longitude = 360.0 / count * (Modulo(m, count) + ((oddIsLatest ? odd : even).Longitude / (double)Steps));
        return (latitude, East(longitude));
    }

    /// <summary>Position in degrees from one frame and a reference within half a zone (about 180 nmi) of it; null at no latitude.</summary>
    public static (double Latitude, double Longitude)? Local((int Latitude, int Longitude) frame, bool odd, double referenceLatitude, double referenceLongitude)
    {
        var latitude = Near(Zone(odd), referenceLatitude, frame.Latitude);
        return Math.Abs(latitude) > 90 ? null : (latitude, East(Near(Width(latitude, odd), referenceLongitude, frame.Longitude)));
    }

    private static double Zone(bool odd) => 360.0 / (odd ? 59 : 60);

    private static double Width(double latitude, bool odd) => 360.0 / Math.Max(LongitudeZones(latitude) - (odd ? 1 : 0), 1);

    private static double Near(double zone, double reference, int coded)
    {
        var share = coded / (double)Steps;
        return zone * (Math.Floor(reference / zone) + Math.Floor(0.5 + (Modulo(reference, zone) / zone) - share) + share);
    }

    private static double North(double latitude) => latitude >= 270 ? latitude - 360 : latitude;

    private static double East(double longitude) => Modulo(longitude + 180, 360) - 180;

    private static double Modulo(double value, double by) => value - (by * Math.Floor(value / by));
}
