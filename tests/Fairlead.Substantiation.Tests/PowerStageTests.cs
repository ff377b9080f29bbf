using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;
using static Fairlead.Tests.Substantiation.PowerJob;

namespace Fairlead.Tests.Substantiation;

/// <summary>The power stage against a load analysis and a battery worked by hand. The recorder draws 1.2 A recording and 0.3 A in standby.</summary>
public sealed class PowerStageTests
{
    // Cruise: lights 12, clock 6, pump 20 A for 3 of 15 min = 4, radio 4, pitot 8: 34 A before. Clock out, recorder in: 29.2 A after.
    // The generators of 60 A and 30 A carry two thirds and one third. One generator lost: 12 + 6 + 4 = 22 A before, 17.2 A after, all on the one left, whichever it is.
    [Fact]
    public void Generators_share_the_load_by_their_ratings()
    {
        var loads = new Assessor().Assess(Start).SourceLoads;
        Assert.Equal(["G1/cruise", "G2/cruise", "G1/one-out", "G2/one-out"], loads.Select(l => $"{l.Source.Id}/{l.Condition.Id}"));
        Assert.Equal([34 * 2 / 3.0, 34 / 3.0, 22, 22], loads.Select(l => l.Before.In("A")), Near);
        Assert.Equal([29.2 * 2 / 3, 29.2 / 3, 17.2, 17.2], loads.Select(l => l.After.In("A")), Near);
        Assert.All(loads, l => Assert.Equal(Verdict.Holds, l.Verdict));
    }

    // Over 5 min the pump counts 20 · 3/5 = 12 A, over 5 s all its 20 A: 37.2 A and 45.2 A, of which the right generator carries a third.
    [Fact]
    public void The_sheets_show_every_interval_before_and_after()
    {
        var assessment = new Assessor().Assess(Start);
        var sheet = assessment.Sheet("load/G2/cruise")!;
        Assert.Equal(45.2 / 3, sheet["D5s"].Value, 1e-9);
        Assert.Equal(37.2 / 3, sheet["D5min"].Value, 1e-9);
        Assert.Equal(29.2 / 3, sheet["Dcont"].Value, 1e-9);
        Assert.Contains(sheet.Given, g => g is { Symbol: "Irated", Origin: "source G2" });
        var change = assessment.Sheet("load/G2/cruise/change")!;
        Assert.Equal(30 - (34 / 3.0), change["Mbefore"].Value, 1e-9);
        Assert.Equal(30 - (29.2 / 3), change["Mafter"].Value, 1e-9);
    }

    [Fact]
    public void Buses_and_breakers_have_their_loads()
    {
        var assessment = new Assessor().Assess(Start);
        Assert.Equal([22, 16, 12, 13.2, 18, 12, 4, 5.2, 0, 0, 12, 12.3, 0, 0, 4.4, 4.7], assessment.BusLoads.SelectMany(b => new[] { b.Before.In("A"), b.After.In("A") }), Near);
        var breaker = Assert.Single(assessment.BreakerLoads);
        Assert.Equal(("CB2", 1.2, Verdict.Holds), (breaker.Breaker.Id, Math.Round(breaker.Load.In("A"), 9), breaker.Verdict));
    }

    [Fact]
    public void A_sound_system_has_no_power_findings() =>
        Assert.DoesNotContain(new Assessor().Assess(Start).Findings, f => f.Path.StartsWith("aircraft/", StringComparison.Ordinal) && f.Severity > Verdict.Caution);

    // 24 A·h · 0.72 = 1036.8 A·min. For 5 min as before the loss: radio 4, pitot 8, recorder 1.2 = 13.2 A. Then the recorder in standby: 12.3 A.
    // At 10 min the pitot heat is shed: 4.3 A to the end. 1036.8 − 66 − 61.5 = 909.3 A·min, 211.465 min more.
    [Fact]
    public void The_battery_lasts_as_long_as_worked_by_hand()
    {
        var battery = Assert.Single(new Assessor().Assess(Start).Batteries);
        Assert.Equal(10 + (909.3 / 4.3), battery.Endurance!.Value.In("min"), 1e-6);
        Assert.Equal([13.2, 12.3, 4.3], battery.Timeline.Select(s => s.Current.In("A")), Near);
        Assert.Equal([0, 5, 10], battery.Timeline.Select(s => s.From.In("min")), Near);
        Assert.Equal(["generators lost", "loss recognised", "shed: Pitot heat"], battery.Timeline.Select(s => s.What));
        Assert.Equal(Verdict.Holds, battery.Verdict);
    }

    // The landing of 10 min is set aside: radio 4, recorder 0.3, gear 30 A for 12 s of the 10 min = 0.6 A: 49 A·min. 860.3 A·min are left at 10 min.
    [Fact]
    public void The_landing_is_set_aside()
    {
        var battery = Assert.Single(new Assessor().Assess(Landing(24)).Batteries);
        Assert.Equal(20 + (860.3 / 4.3), battery.Endurance!.Value.In("min"), 1e-6);
        Assert.Equal([13.2, 12.3, 4.3, 4.9], battery.Timeline.Select(s => s.Current.In("A")), Near);
        Assert.Equal(battery.Endurance!.Value.In("min"), battery.Timeline[^1].To.In("min"), 1e-6);
    }

    // 4 A·h · 0.72 = 172.8 A·min; 66 + 61.5 + 49 = 176.5 A·min are wanted before there is any time left.
    [Fact]
    public void A_battery_that_cannot_complete_the_landing_fails_without_an_endurance()
    {
        var assessment = new Assessor().Assess(Landing(4));
        var battery = Assert.Single(assessment.Batteries);
        Assert.Equal((Verdict.Fails, null), (battery.Verdict, battery.Endurance));
        var finding = Assert.Single(assessment.Findings, f => f.Subject == "battery/BAT");
        Assert.Equal(("battery-endurance", "aircraft/batteries/BAT"), (finding.Rule, finding.Path));
        Assert.Contains("176.5 A·min", finding.Figures, StringComparison.Ordinal);
    }

    [Fact]
    public void Batteries_side_by_side_last_as_long_as_one_of_their_capacity()
    {
        var one = Start.Aircraft.Batteries![0];
        var two = WithBattery(WithBattery(Start, one with { Capacity = Charge.Of(16, "A·h") }), one with { Id = "BAT2", Capacity = Charge.Of(8, "A·h") });
        var expected = Assert.Single(new Assessor().Assess(Start).Batteries).Endurance!.Value.In("min");
        Assert.All(new Assessor().Assess(two).Batteries, b => Assert.Equal(expected, b.Endurance!.Value.In("min"), 1e-6));
    }

    [Fact]
    public void A_source_a_breaker_and_a_feeder_that_carry_too_much_are_found()
    {
        var heavy = WithLoad(Start, Draw(Start.Aircraft.Loads!["LIGHT"], "cruise", 90));
        heavy = heavy with { Parts = heavy.Parts with { Breakers = heavy.Parts.Breakers!.With(heavy.Parts.Breakers["BR3"] with { Rating = A(1) }) } };
        var findings = new Assessor().Assess(heavy).Findings;
        Assert.Contains(findings, f => f is { Rule: "load-analysis", Subject: "load/G2/cruise", Severity: Verdict.Fails, Path: "aircraft/sources/G2" });
        Assert.Contains(findings, f => f is { Rule: "breaker-load", Subject: "breaker/CB2", Severity: Verdict.Fails, Path: "change/breakers/CB2" });
        var tie = Start with { Aircraft = Start.Aircraft with { Feeders = Start.Aircraft.Feeders!.With(Start.Aircraft.Feeders["TIE"] with { Protection = A(13) }) } };
        var finding = Assert.Single(new Assessor().Assess(tie).Findings, f => f.Rule == "feeder-protection");
        Assert.Equal(("feeder/TIE", "aircraft/feeders/TIE"), (finding.Subject, finding.Path));
        Assert.Contains("13.2 A", finding.Figures, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_load_that_stays_on_needs_an_essential_bus()
    {
        var job = Start with { Change = Start.Change with { Breakers = new([Start.Change.Breakers![0] with { Bus = "MAIN" }]) } };
        var findings = new Assessor().Assess(job).Findings;
        Assert.Contains(findings, f => f is { Rule: "bus-not-essential", Subject: "feed/REC", Severity: Verdict.Fails });
        Assert.DoesNotContain(findings, f => f.Rule == "bus-not-supplied");
    }

    [Fact]
    public void Loads_that_nothing_feeds_are_pointed_out_and_not_passed_over()
    {
        var job = Start with { Aircraft = Start.Aircraft with { Feeders = Start.Aircraft.Feeders!.Without("TIE") } };
        var finding = Assert.Single(new Assessor().Assess(job).Findings, f => f is { Rule: "bus-not-supplied", Subject: "bus/ESS" });
        Assert.Equal(Verdict.CannotTell, finding.Severity);
        Assert.Contains("Essential bus are on in Cruise, Right generator lost, but", finding.Message, StringComparison.Ordinal);
    }

    private static EqualityComparer<double> Near { get; } = EqualityComparer<double>.Create((a, b) => Math.Abs(a - b) < 1e-9);

    private static Job Landing(double hours) =>
        WithBattery(Start, Start.Aircraft.Batteries![0] with { Capacity = Charge.Of(hours, "A·h"), Landing = "battery-landing", LandingTime = Min(10) });

    // A pump of 40 A for 6 of 15 min: 16 A on the mean of 15 min, which a protection of 30 A in the tie bears; but for 5 min it draws all its 40 A.
    [Fact]
    public void A_feeder_carries_the_greatest_mean_over_five_minutes()
    {
        Assessment With(Duration on) => new Assessor().Assess(WithLoad(
            Start with { Aircraft = Start.Aircraft with { Feeders = Start.Aircraft.Feeders!.With(Start.Aircraft.Feeders["TIE"] with { Protection = A(30) }) } },
            new ExistingLoad("FUEL", "Fuel pump", "ESS", [new("cruise", A(40), on)])));
        Assert.Contains(With(Min(6)).Findings, f => f is { Rule: "feeder-protection", Subject: "feeder/TIE" });
        Assert.DoesNotContain(With(Duration.Of(12, "s")).Findings, f => f.Rule == "feeder-protection");
    }
}
