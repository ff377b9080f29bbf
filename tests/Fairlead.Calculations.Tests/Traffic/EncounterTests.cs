using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Calculations.Traffic;

/// <summary>Laws of encounters and scenarios.</summary>
public sealed class EncounterTests
{
    private static readonly Gen<TrafficScenarioInput> Scenario =
        from range in Gen.Double[0.5, 8]
        from bearing in Gen.Double[-180, 180]
        from speed in Gen.Double[60, 600]
        from off in Gen.Double[-20, 20]
        from above in Gen.Double[-3000, 3000]
        from climb in Gen.Double[-2000, 2000]
        from logic in Gen.OneOf(TrafficLogic.TasA, TrafficLogic.TasB, TrafficLogic.Tcas2)
        select new TrafficScenarioInput(
            Length.Of(range, "nmi"), Angle.Of(bearing, "°"), Speed.Of(speed, "kt"), Angle.Of(bearing + 180 + off - (bearing > 0 ? 360 : 0), "°"),
            Length.Of(above, "ft"), Speed.Of(climb, "ft/min"), Altitude: Length.Of(6000, "ft"), Logic: logic);

    [Fact]
    public void Turning_the_whole_scenario_turns_only_the_bearing()
    {
        var inputs = from s in Scenario from turn in Gen.Double[-170, 170] select (s, turn);
        inputs.Sample(x =>
        {
            var turned = x.s with { Bearing = x.s.Bearing + Angle.Of(x.turn, "°"), Track = x.s.Track + Angle.Of(x.turn, "°") };
            Same(TrafficScenario.Advisories(x.s), TrafficScenario.Advisories(turned));
            var (here, there) = (TrafficScenario.Start(x.s).After(20), TrafficScenario.Start(turned).After(20));
            Assert.Equal(here.Range, there.Range, 1e-6);
        });
    }

    [Fact]
    public void The_mirror_image_has_the_same_advisories()
    {
        var inputs = from s in Scenario from own in Gen.Double[0, 300] select s with { Own = Speed.Of(own, "kt") };
        inputs.Sample(s => Same(TrafficScenario.Advisories(s), TrafficScenario.Advisories(s with { Bearing = -s.Bearing, Track = -s.Track })));
    }

    [Fact]
    public void Modified_time_is_never_longer_and_plain_time_never_shorter_than_to_the_closest_point() => Scenario.Sample(s =>
    {
        var e = TrafficScenario.Start(s);
        if (e.Closing)
        {
            Assert.True(e.Tau >= e.TimeToClosest - 1e-6);
            Assert.True(e.ModifiedTau(0.35 * 1852) <= e.Tau);
            Assert.Equal(e.Tau, e.ModifiedTau(0), 1e-9 * e.Tau);
        }
    });

    [Fact]
    public void An_advisory_by_plain_time_lies_within_that_by_modified_time() => Scenario.Sample(s => Assert.All(TrafficScenario.Advisories(s), a =>
    {
        Assert.True(a.LatestStart is null || a.LatestStart >= a.EarliestStart - 1e-5);
        Assert.True(a.LatestEnd is null || a.EarliestEnd is null || a.EarliestEnd <= a.LatestEnd + 1e-5);
    }));

    [Fact]
    public void Nothing_is_nearer_than_the_closest_point() => Scenario.Sample(s =>
    {
        var e = TrafficScenario.Start(s);
        for (var t = 0; t <= 120; t += 5)
        {
            Assert.True(e.After(t).Range >= e.MissDistance - 1e-6);
        }
    });

    [Fact]
    public void A_scenario_has_a_row_for_every_second_and_the_symbol_follows_the_advisory()
    {
        var sheet = TrafficScenario.Run(new(Length.Of(4, "nmi"), default, Speed.Of(300, "kt"), Angle.Of(180, "°"), Logic: TrafficLogic.TasB, Lasts: Duration.Of(60, "s")));
        var rows = sheet.Tables.Single(t => t.Title == "Expected on the display").Rows;
        Assert.Equal(61, rows.Length);
        var advisory = Assert.Single(TrafficScenario.Advisories(new(Length.Of(4, "nmi"), default, Speed.Of(300, "kt"), Angle.Of(180, "°"), Logic: TrafficLogic.TasB, Lasts: Duration.Of(60, "s"))));
        Assert.All(rows, row => Assert.Equal(row[0].Number!.Value.Value >= advisory.EarliestStart && (advisory.LatestEnd is not { } end || row[0].Number!.Value.Value < end), row[6].Words!.StartsWith("filled amber", StringComparison.Ordinal)));
        Assert.Equal(Verdict.Caution, sheet.Verdict);
    }

    [Fact]
    public void Traffic_without_altitude_has_neither_tag_nor_arrow()
    {
        var sheet = TrafficScenario.Run(new(Length.Of(4, "nmi"), default, Speed.Of(300, "kt"), Angle.Of(180, "°"), Climb: Speed.Of(900, "ft/min"), ReportsAltitude: false));
        Assert.All(sheet.Tables.Single(t => t.Title == "Expected on the display").Rows, row => Assert.Equal(("none", "none"), (row[4].Words, row[5].Words)));
    }

    [Fact]
    public void A_range_and_its_delay_are_inverse()
    {
        var inputs = from miles in Gen.Double[0, 300] from kind in Gen.OneOf(ReplyKind.ModeA, ReplyKind.ModeC, ReplyKind.ModeS) select (miles, kind);
        inputs.Sample(x =>
        {
            var there = ReplyDelay.Run(new(Length.Of(x.miles, "nmi"), Kind: x.kind));
            Assert.Equal(x.miles, ReplyDelay.Run(new(Delay: new(there["td"].Si), Kind: x.kind)).Find("Rm")?.Value ?? 0, 1e-9);
        });
    }

    [Fact]
    public void A_reply_before_its_turn_round_cannot_be_told() =>
        Assert.Equal(Verdict.CannotTell, ReplyDelay.Run(new(Delay: Duration.Of(2, "µs"))).Verdict);

    private static void Same(IReadOnlyList<AdvisoryWindow> here, IReadOnlyList<AdvisoryWindow> there)
    {
        Assert.Equal(here.Select(a => a.Advisory), there.Select(a => a.Advisory));
        foreach (var (a, b) in here.Zip(there))
        {
            Assert.Equal(a.EarliestStart, b.EarliestStart, 1e-5);
            Assert.Equal(a.LatestEnd ?? -1, b.LatestEnd ?? -1, 1e-5);
        }
    }
}
