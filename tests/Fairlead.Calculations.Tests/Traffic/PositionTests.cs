using CsCheck;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Calculations.Traffic;

/// <summary>Compact position reports over the globe.</summary>
public sealed class PositionTests
{
    private static readonly Gen<(double Lat, double Lon)> Place = from lat in Gen.Double[-86.9, 86.9] from lon in Gen.Double[-180, 179.9999] select (lat, lon);

    // Half a step of a zone of latitude, 6.1/131072/2 degrees, with a margin for the zone of longitude chosen from the coded latitude.
    private const double Fine = 6.2 / Cpr.Steps / 2;

    [Fact]
    public void A_pair_gives_the_position_it_came_from() => Place.Sample(p =>
    {
        var (even, odd) = (Cpr.Encode(p.Lat, p.Lon, false), Cpr.Encode(p.Lat, p.Lon, true));
        foreach (var oddIsLatest in new[] { false, true })
        {
            // Beside a transition latitude the two frames may round into different zones: then nothing is claimed.
            if (Cpr.Global(even, odd, oddIsLatest) is { } found)
            {
                Same(p, found);
            }
            else
            {
                Assert.NotEqual(Cpr.LongitudeZones(p.Lat - 1e-4), Cpr.LongitudeZones(p.Lat + 1e-4));
            }
        }
    });

    [Fact]
    public void One_frame_near_a_known_place_gives_the_position_it_came_from()
    {
        var inputs = from p in Place from dLat in Gen.Double[-2.5, 2.5] from share in Gen.Double[-0.45, 0.45] from odd in Gen.Bool select (p, dLat, share, odd);
        inputs.Sample(x =>
        {
            var frame = Cpr.Encode(x.p.Lat, x.p.Lon, x.odd);
            var width = 360.0 / Math.Max(Cpr.LongitudeZones(x.p.Lat) - (x.odd ? 1 : 0), 1);
            if (Cpr.LongitudeZones(x.p.Lat - 1e-4) == Cpr.LongitudeZones(x.p.Lat + 1e-4))
            {
                Same(x.p, Cpr.Local(frame, x.odd, Math.Clamp(x.p.Lat + x.dLat, -90, 90), x.p.Lon + (x.share * width))!.Value);
            }
        });
    }

    [Fact]
    public void A_grid_over_the_globe_comes_back()
    {
        for (var lat = -86.0; lat <= 86; lat += 2.15)
        {
            for (var lon = -180.0; lon < 180; lon += 7.3)
            {
                var found = Cpr.Global(Cpr.Encode(lat, lon, false), Cpr.Encode(lat, lon, true), false);
                Assert.NotNull(found);
                Same((lat, lon), found.Value);
            }
        }
    }

    [Fact]
    public void North_and_south_have_the_same_zones() => Gen.Double[0, 90].Sample(lat => Assert.Equal(Cpr.LongitudeZones(lat), Cpr.LongitudeZones(-lat)));

    [Fact]
    public void Frames_of_different_zones_of_longitude_give_no_position() =>
        Assert.Null(Cpr.Global(Cpr.Encode(10.4695, 5, false), Cpr.Encode(10.4715, 5, true), false));

    private static void Same((double Lat, double Lon) expected, (double Latitude, double Longitude) found)
    {
        Assert.Equal(expected.Lat, found.Latitude, Fine);
        var zones = Math.Max(Cpr.LongitudeZones(expected.Lat) - 1, 1);
        var apart = Math.Abs(expected.Lon - found.Longitude);
        Assert.True(Math.Min(apart, 360 - apart) <= 360.0 / zones / Cpr.Steps, $"{expected}: {found}");
    }
}
