using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Reference.Traffic;

/// <summary>Time to closest approach, thresholds, scenario and reply delay. Formulae and TCAS II thresholds read in NASA's WellClear library (5912c270); encounters computed by hand from them.</summary>
public sealed class ClosureTests
{
    // Head-on, crossing, offset, overtake, 3-4-5, and two by closing speed alone. Range nmi, bearing, own kt, other kt, track; τ, tcpa s, miss nmi; DMOD, modified τ.
    [Theory]
    [InlineData(0, 4, 120, 120, 180, 60.0, 60.0, 0, 0.20, 59.8500)]
    [InlineData(0, 4, 120, 120, 180, 60.0, 60.0, 0, 0.48, 59.1360)]
    [InlineData(0, 4, 120, 120, 180, 60.0, 60.0, 0, 0.55, 58.8656)]
    [InlineData(2, 2, 120, 120, 270, 60.0, 60.0, 0, 0.20, 59.7000)]
    [InlineData(2, 2, 120, 120, 270, 60.0, 60.0, 0, 0.48, 58.2720)]
    [InlineData(2, 2, 120, 120, 270, 60.0, 60.0, 0, 0.55, 57.7313)]
    [InlineData(0.5, 5, 150, 150, 180, 60.6, 60.0, 0.5, 0.20, 60.5040)]
    [InlineData(0.5, 5, 150, 150, 180, 60.6, 60.0, 0.5, 0.55, 59.8740)]
    [InlineData(0.5, 5, 150, 150, 180, 60.6, 60.0, 0.5, 0.75, 59.2500)]
    [InlineData(0, 1, 160, 100, 0, 60.0, 60.0, 0, 0.20, 57.6)]
    [InlineData(0, 1, 160, 100, 0, 60.0, 60.0, 0, 0.48, 46.176)]
    [InlineData(0, 1, 160, 100, 0, 60.0, 60.0, 0, 0.55, 41.85)]
    [InlineData(3, 4, 100, 75, 270, 144.0, 144.0, 0, 0.20, 143.7696)]
    [InlineData(3, 4, 100, 75, 270, 144.0, 144.0, 0, 0.55, 142.2576)]
    [InlineData(3, 4, 100, 75, 270, 144.0, 144.0, 0, 1.0, 138.24)]
    [InlineData(0, 5, 600, 0, 0, 30.0, 30.0, 0, 0.75, 29.325)]
    [InlineData(0, 5, 600, 0, 0, 30.0, 30.0, 0, 1.0, 28.8)]
    [InlineData(0, 5, 600, 0, 0, 30.0, 30.0, 0, 1.1, 28.548)]
    [InlineData(0, 10, 600, 600, 180, 30.0, 30.0, 0, 0.75, 29.83125)]
    [InlineData(0, 10, 600, 600, 180, 30.0, 30.0, 0, 1.1, 29.637)]
    public void Times_of_an_encounter(double right, double ahead, double own, double other, double track, double tau, double closest, double miss, double dmod, double modified)
    {
        var e = Encounter.Of(
            Length.Of(Math.Sqrt((right * right) + (ahead * ahead)), "nmi"), new(Math.Atan2(right, ahead)), default, Speed.Of(own, "kt"), Speed.Of(other, "kt"), Angle.Of(track, "°"), default);
        Assert.Equal(tau, e.Tau, 1e-6);
        Assert.Equal(closest, e.TimeToClosest, 1e-6);
        Assert.Equal(miss, e.MissDistance / 1852, 1e-6);
        Assert.Equal(modified, e.ModifiedTau(dmod * 1852), 6e-5);
    }

    // Range of an advisory, modified (plain), at 60, 120, 300, 500 and 1200 kt: r = (k + √(k² + 4 DMOD²))/2. TAS rows from memory of DO-197A.
    [Theory]
    [InlineData(TrafficLogic.Tcas2, 500, true, new[] { .5099, .7818, 1.7190, 2.8098, 6.6801 }, new[] { .3333, .6667, 1.6667, 2.7778, 6.6667 })]
    [InlineData(TrafficLogic.Tcas2, 1500, true, new[] { .5986, .9482, 2.1344, 3.5033, 8.3464 }, new[] { .4167, .8333, 2.0833, 3.4722, 8.3333 })]
    [InlineData(TrafficLogic.Tcas2, 3000, true, new[] { .7912, 1.1931, 2.5890, 4.2212, 10.0230 }, new[] { .5, 1.0, 2.5, 4.1667, 10.0 })]
    [InlineData(TrafficLogic.Tcas2, 7000, true, new[] { 1.1541, 1.6701, 3.4943, 5.6550, 13.3754 }, new[] { .6667, 1.3333, 3.3333, 5.5556, 13.3333 })]
    [InlineData(TrafficLogic.Tcas2, 15000, true, new[] { 1.4430, 2.0000, 4.0000, 6.4061, 15.0664 }, new[] { .75, 1.5, 3.75, 6.25, 15.0 })]
    [InlineData(TrafficLogic.Tcas2, 30000, true, new[] { 1.7601, 2.3264, 4.3854, 6.9112, 16.1049 }, new[] { .8, 1.6, 4.0, 6.6667, 16.0 })]
    [InlineData(TrafficLogic.TasA, 0, true, new[] { .4270, .7221, 1.6903, 2.7921, 6.6727 }, new[] { .3333, .6667, 1.6667, 2.7778, 6.6667 })]
    [InlineData(TrafficLogic.TasB, 0, true, new[] { .8542, 1.2433, 2.6157, 4.2380, 10.0302 }, new[] { .5, 1.0, 2.5, 4.1667, 10.0 })]
    [InlineData(TrafficLogic.TasA, 0, false, new[] { .3608, .5702, 1.2812, 2.1024, 5.0080 }, new[] { .25, .5, 1.25, 2.0833, 5.0 })]
    [InlineData(TrafficLogic.TasB, 0, false, new[] { .7414, .9765, 1.8318, 2.8827, 6.7117 }, new[] { .3333, .6667, 1.6667, 2.7778, 6.6667 })]
    public void Range_of_a_traffic_advisory(TrafficLogic logic, double altitude, bool reports, double[] modified, double[] plain)
    {
        var traffic = AlertTable.Of(logic, Length.Of(altitude, "ft"), reports).Traffic;
        double[] speeds = [60, 120, 300, 500, 1200];
        for (var i = 0; i < speeds.Length; i++)
        {
            Assert.Equal(modified[i], traffic.TriggerRange(Speed.Of(speeds[i], "kt"), TimeMeasure.Modified).In("nmi"), 6e-5);
            Assert.Equal(plain[i], traffic.TriggerRange(Speed.Of(speeds[i], "kt"), TimeMeasure.Plain).In("nmi"), 6e-5);
        }
    }

    [Theory]
    [InlineData(60, .7965)]
    [InlineData(120, 1.1067)]
    [InlineData(300, 2.2196)]
    [InlineData(500, 3.5573)]
    [InlineData(1200, 8.3695)]
    public void Range_of_a_resolution_advisory_at_level_5(double knots, double range) =>
        Assert.Equal(range, AlertTable.Of(TrafficLogic.Tcas2, Length.Of(7000, "ft"), true).Resolution!.TriggerRange(Speed.Of(knots, "kt"), TimeMeasure.Modified).In("nmi"), 6e-5);

    // Level, traffic and resolution τ s, DMOD nmi, ZTHR ft, HMD ft (read); warning times confirmed by ICAO Annex 10 Vol IV table 4-2 (read).
    [Theory]
    [InlineData(999, "2", 20, 0.30, 850, null, null, null, null)]
    [InlineData(1000, "3", 25, 0.33, 850, 15.0, 0.20, 600.0, 1215.0)]
    [InlineData(2350, "4", 30, 0.48, 850, 20.0, 0.35, 600.0, 2126.0)]
    [InlineData(4999, "4", 30, 0.48, 850, 20.0, 0.35, 600.0, 2126.0)]
    [InlineData(5000, "5", 40, 0.75, 850, 25.0, 0.55, 600.0, 3342.0)] // another publication of the table has level 4 at exactly 5000 ft
    [InlineData(5001, "5", 40, 0.75, 850, 25.0, 0.55, 600.0, 3342.0)]
    [InlineData(10000, "6", 45, 1.00, 850, 30.0, 0.80, 600.0, 4861.0)]
    [InlineData(20000, "7", 48, 1.30, 850, 35.0, 1.10, 700.0, 6683.0)]
    [InlineData(42000, "8", 48, 1.30, 1200, 35.0, 1.10, 800.0, 6683.0)]
    public void Sensitivity_levels_of_tcas_2(double altitude, string level, double tau, double dmod, double zthr, double? raTau, double? raDmod, double? raZthr, double? hmd)
    {
        var (traffic, resolution, found, source) = AlertTable.Of(TrafficLogic.Tcas2, Length.Of(altitude, "ft"), true);
        Assert.Equal(level, found);
        Assert.Equal((tau, dmod, zthr), (traffic.Tau.In("s"), Math.Round(traffic.Dmod.In("nmi"), 9), Math.Round(traffic.Zthr!.Value.In("ft"), 6)));
        Assert.Equal(raTau, resolution?.Tau.In("s"));
        Assert.Equal(raDmod, resolution is null ? null : Math.Round(resolution.Dmod.In("nmi"), 9));
        Assert.Equal(raZthr, resolution is null ? null : Math.Round(resolution.Zthr!.Value.In("ft"), 6));
        Assert.Equal(hmd, resolution is null ? null : Math.Round(resolution.Hmd!.Value.In("ft"), 6));
        Assert.Equal(Basis.Read, source.Basis);
    }

    // 10 nmi ahead, same altitude, closing at 300 kt (computed): traffic advisory by modified and plain time.
    [Theory]
    [InlineData(TrafficLogic.TasA, 0, 99.716, 100.000)]
    [InlineData(TrafficLogic.TasB, 0, 88.612, 90.000)]
    [InlineData(TrafficLogic.Tcas2, 7000, 78.068, 80.000)]
    public void A_scenario_on_the_ramp(TrafficLogic logic, double altitude, double modified, double plain)
    {
        var advisory = TrafficScenario.Advisories(new(
            Length.Of(10, "nmi"), default, Speed.Of(300, "kt"), Angle.Of(180, "°"), Altitude: Length.Of(altitude, "ft"), Logic: logic)).First();
        Assert.Equal(modified, advisory.EarliestStart, 6e-4);
        Assert.Equal(plain, advisory.LatestStart!.Value, 6e-4);
    }

    // FAA introduction booklet, version 7.1, traffic display (read): +11 with an arrow down, -09 without an arrow. The arrow's 500 ft/min is from memory.
    [Theory]
    [InlineData(1100, -600, "+11", "down")]
    [InlineData(-900, 0, "-09", "none")]
    [InlineData(0, 500, "+00", "up")]
    [InlineData(1149, 499, "+11", "none")]
    [InlineData(1150, -500, "+12", "down")] // halves away from zero: our choice, nothing we read settles it
    public void Tag_and_arrow(double feet, double rate, string tag, string arrow)
    {
        Assert.Equal(tag, TrafficTag.Altitude(Length.Of(feet, "ft")));
        Assert.Equal(arrow, TrafficTag.Arrow(Speed.Of(rate, "ft/min")));
    }

    // The booklet (read): proximate is within 6 nmi and 1,200 ft.
    [Theory]
    [InlineData(5.9, 1200, "filled diamond (proximate)")]
    [InlineData(6.1, 0, "open diamond (other)")]
    [InlineData(1, 1201, "open diamond (other)")]
    public void Symbol_by_range_and_altitude(double miles, double feet, string symbol) =>
        Assert.Equal(symbol, TrafficTag.Symbol(Encounter.Of(Length.Of(miles, "nmi"), default, Length.Of(feet, "ft"), default, default, default, default), true));

    // Computed from 2R/c, 3.0 and 128 µs (from memory of Annex 10) and 8 and 21 µs (read).
    [Theory]
    [InlineData(0, 0, 3.0, 24.0, 11.0, 128.0)]
    [InlineData(0.5, 6.1776, 9.1776, 30.1776, 17.1776, 134.1776)]
    [InlineData(1, 12.3552, 15.3552, 36.3552, 23.3552, 140.3552)]
    [InlineData(2, 24.7104, 27.7104, 48.7104, 35.7104, 152.7104)]
    [InlineData(5, 61.7761, 64.7761, 85.7761, 72.7761, 189.7761)]
    [InlineData(10, 123.5521, 126.5521, 147.5521, 134.5521, 251.5521)]
    [InlineData(14, 172.9730, 175.9730, 196.9730, 183.9730, 300.9730)]
    [InlineData(20, 247.1043, 250.1043, 271.1043, 258.1043, 375.1043)]
    [InlineData(30, 370.6564, 373.6564, 394.6564, 381.6564, 498.6564)]
    public void Reply_delay_of_a_range(double miles, double trip, double modeC, double modeCFromP1, double modeAFromP1, double modeS)
    {
        Sheet Run(ReplyKind kind) => ReplyDelay.Run(new(Length.Of(miles, "nmi"), Kind: kind));
        Assert.Equal(trip, Run(ReplyKind.ModeC)["tr"].Value, 6e-5);
        Assert.Equal(modeC, Run(ReplyKind.ModeC)["td"].Value, 6e-5);
        Assert.Equal(modeCFromP1, Run(ReplyKind.ModeC)["t1"].Value, 6e-5);
        Assert.Equal(modeAFromP1, Run(ReplyKind.ModeA)["t1"].Value, 6e-5);
        Assert.Equal(modeS, Run(ReplyKind.ModeS)["td"].Value, 6e-5);
    }

    [Theory]
    [InlineData(ReplyKind.ModeC, 0.04047, 245.9)]
    [InlineData(ReplyKind.ModeS, 0.02023, 122.95)]
    public void Range_error_of_the_turn_round(ReplyKind kind, double miles, double feet)
    {
        var error = ReplyDelay.Run(new(Length.Of(5, "nmi"), Kind: kind))["dR"];
        Assert.Equal(miles, error.Value, 6e-6);
        Assert.Equal(feet, new Length(error.Si).In("ft"), 0.06);
    }
}
