using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>The balance of a job, against sums done here item by item.</summary>
public sealed class BalanceStageTests
{
    private static readonly Job Start = JobReader.Read(Starter.Files()).Job!;

    [Fact]
    public void The_starter_job_proves_its_loadings()
    {
        var assessment = new Assessor().Assess(Start);
        Assert.DoesNotContain(assessment.Findings, f => f.Rule == "worst-loading");
        Assert.Equal(["most forward", "most aft", "heaviest"], assessment.LoadingAfter.Select(l => l.Name));
        Assert.All(assessment.LoadingAfter, l => Assert.True(l.Margin.Si >= 0, l.Name));
        Assert.NotNull(assessment.Sheet("balance/empty-weight"));
        Assert.NotNull(assessment.Sheet("balance/loading"));
    }

    [Fact]
    public void The_empty_weight_after_is_the_sum_of_everything_that_moved()
    {
        var a = new Assessor().Assess(Start);
        var (before, after) = (a.EmptyBefore, a.EmptyAfter!);
        var (mass, moment) = (before.Mass.Si, before.Mass.Si * before.Fs.Si);
        foreach (var removal in Start.Change.Remove!)
        {
            var item = Start.Aircraft.Equipment![removal.Item];
            (mass, moment) = (mass - item.Mass.Si - removal.Wire.Si, moment - (item.Mass.Si * item.Place.Fs.Si) - (removal.Wire.Si * (removal.WirePlace?.Fs.Si ?? 0)));
        }

        foreach (var fitted in Start.Change.Fit!)
        {
            var part = Start.Parts.Equipment![fitted.Part];
            var all = part.Mass + fitted.Mounting;
            foreach (var use in part.Connectors ?? Catalog<ConnectorUse>.Empty)
            {
                all += Start.Parts.Connectors![use.Part].Mass ?? Mass.Zero;
            }

            (mass, moment) = (mass + all.Si, moment + (all.Si * fitted.Place.Fs.Si));
        }

        foreach (var circuit in a.Circuits)
        {
            (mass, moment) = (mass + circuit.Mass.Si, moment + (circuit.Mass.Si * circuit.Centre!.Fs.Si));
            var ends = new[] { (circuit.FromContact, circuit.Way!.Nodes[0]), (circuit.ToContact, circuit.Way.Nodes[^1]) };
            foreach (var (contact, node) in ends)
            {
                var one = contact?.Mass?.Si ?? 0;
                (mass, moment) = (mass + one, moment + (one * Start.Aircraft.Nodes![node].Place.Fs.Si));
            }
        }

        foreach (var breaker in Start.Change.Breakers ?? Catalog<Breaker>.Empty)
        {
            var one = Start.Parts.Breakers![breaker.Part].Mass?.Si ?? 0;
            (mass, moment) = (mass + one, moment + (one * Start.Aircraft.Nodes![breaker.Node].Place.Fs.Si));
        }

        foreach (var antenna in Start.Change.Antennas ?? Catalog<FittedAntenna>.Empty)
        {
            var one = (Start.Parts.Antennas![antenna.Part].Mass + antenna.Doubler).Si;
            (mass, moment) = (mass + one, moment + (one * antenna.Place.Fs.Si));
        }

        Assert.NotEqual(before.Mass, after.Mass);
        Assert.Equal(mass, after.Mass.Si, 1e-9);
        Assert.Equal(moment / mass, after.Fs.Si, 1e-9);
    }

    [Fact]
    public void A_heavy_box_in_the_tail_is_found_out()
    {
        var fitted = Start.Change.Fit![0];
        var part = Start.Parts.Equipment![fitted.Part];
        var heavy = With(Start, fitted with { Place = fitted.Place with { Fs = Length.Of(330, "in") } }, part with { Mass = Mass.Of(90, "lb") });
        var finding = Assert.Single(new Assessor().Assess(heavy).Findings, f => f.Rule == "worst-loading");
        Assert.Equal(Verdict.Fails, finding.Severity);
        Assert.Equal("balance/loading", finding.Subject);
        Assert.Contains("in", finding.Figures, StringComparison.Ordinal);
    }

    // The aircraft could be loaded out of its envelope before: the change answers for it only where it makes it worse.
    [Fact]
    public void What_was_out_of_limits_before_fails_only_when_made_worse()
    {
        var aircraft = Start.Aircraft with { Stations = Start.Aircraft.Stations!.With(Start.Aircraft.Stations["BAGGAGE"] with { Max = Mass.Of(500, "lb") }) };
        var forward = Start with { Aircraft = aircraft, Change = Start.Change with { Fit = new(Start.Change.Fit!.Select(f => f with { Place = f.Place with { Fs = Length.Of(20, "in") } })) } };
        var aft = Start with { Aircraft = aircraft, Change = Start.Change with { Fit = new(Start.Change.Fit!.Select(f => f with { Place = f.Place with { Fs = Length.Of(200, "in") } })) } };
        Assert.Equal(Verdict.Caution, Assert.Single(new Assessor().Assess(forward).Findings, f => f.Rule == "worst-loading").Severity);
        Assert.Equal(Verdict.Fails, Assert.Single(new Assessor().Assess(aft).Findings, f => f.Rule == "worst-loading").Severity);
    }

    [Fact]
    public void A_record_that_does_not_follow_from_its_readings_is_found_out()
    {
        WeighingRecord Record(double nose) => Start.Aircraft.Weighing with
        {
            Mass = Mass.Of(2100, "lb"), Fs = Length.Of(92, "in"),
            Points = [new("mains", Mass.Of(1610, "lb"), Length.Of(100, "in")), new("nose", Mass.Of(nose, "lb"), Length.Of(65.71, "in"))],
        };
        Job Weighed(double nose) => Start with { Aircraft = Start.Aircraft with { Weighing = Record(nose) } };
        Assert.DoesNotContain(new Assessor().Assess(Weighed(490)).Findings, f => f.Rule == "weighing-record");
        Assert.Contains(new Assessor().Assess(Weighed(460)).Findings, f => f is { Rule: "weighing-record", Severity: Verdict.Fails });
    }

    [Fact]
    public void Moving_a_box_runs_only_what_its_place_bears_on()
    {
        var assessor = new Assessor();
        assessor.Assess(Start);
        var before = assessor.Runs;
        var fitted = Start.Change.Fit![0];
        assessor.Assess(With(Start, fitted with { Place = fitted.Place with { Wl = fitted.Place.Wl + Length.Of(1, "in") } }, Start.Parts.Equipment![fitted.Part]));

        // The empty weight, and the distance from the compass.
        Assert.Equal(2, assessor.Runs - before);
    }

    private static Job With(Job job, FittedItem item, EquipmentPart part) => job with
    {
        Change = job.Change with { Fit = job.Change.Fit!.With(item) },
        Parts = job.Parts with { Equipment = job.Parts.Equipment!.With(part) },
    };

    // What has a mass but no place, or a place but no mass, may not be left out in silence.
    [Fact]
    public void Removed_wire_without_a_place_and_a_removed_item_without_a_mass_are_told()
    {
        var removal = Start.Change.Remove![0];
        Job Out(Removal edited) => Start with { Change = Start.Change with { Remove = Start.Change.Remove!.With(edited) } };
        Assert.DoesNotContain(new Assessor().Assess(Start).Findings, f => f.Rule == "balance-incomplete");
        Assert.Contains(new Assessor().Assess(Out(removal with { Wire = Mass.Of(2, "lb"), WirePlace = null })).Findings, f => f is { Rule: "balance-incomplete", Severity: Verdict.CannotTell, Path: "change/remove/R1" });
        var item = Start.Aircraft.Equipment![removal.Item];
        var weightless = Start with { Aircraft = Start.Aircraft with { Equipment = Start.Aircraft.Equipment.With(item with { Mass = Mass.Zero }) } };
        Assert.Contains(new Assessor().Assess(weightless).Findings, f => f is { Rule: "balance-incomplete", Severity: Verdict.CannotTell, Path: "aircraft/equipment/CLK1" });
    }

    [Fact]
    public void A_lateral_limit_to_one_side_only_is_told()
    {
        var envelope = Start.Aircraft.Envelope;
        var job = Start with { Aircraft = Start.Aircraft with { Envelope = envelope with { LateralLeft = Length.Of(-2, "in"), LateralRight = null } } };
        Assert.Contains(new Assessor().Assess(job).Findings, f => f is { Rule: "lateral-unknown", Severity: Verdict.CannotTell });
    }

    [Fact]
    public void A_connector_without_a_mass_is_told()
    {
        var connector = Start.Parts.Connectors!["CONN9"];
        var job = Start with { Parts = Start.Parts with { Connectors = Start.Parts.Connectors.With(connector with { Mass = null }) } };
        Assert.Contains(new Assessor().Assess(job).Findings, f => f is { Rule: "balance-incomplete", Severity: Verdict.Caution, Path: "parts/connectors/CONN9" });
    }

    // Mains 1,000 and 1,020 lb at 40 in left and right of the centre line, nose 180 lb on it: 2,200 lb at (1,020 − 1,000) · 40 / 2,200 = 0.364 in to the right.
    [Theory]
    [InlineData(0.36, true)]
    [InlineData(-0.36, false)]
    public void The_buttock_line_of_the_record_follows_from_its_readings(double bl, bool follows)
    {
        static Length In(double x) => Length.Of(x, "in");
        static Mass Lb(double x) => Mass.Of(x, "lb");
        var record = Start.Aircraft.Weighing with
        {
            Mass = Lb(2200), Fs = In(((2020 * 100) + (180 * 20)) / 2200.0), Bl = In(bl),
            Points = [new("left", Lb(1000), In(100), Bl: In(-40)), new("right", Lb(1020), In(100), Bl: In(40)), new("nose", Lb(180), In(20), Bl: In(0))],
        };
        var findings = new Assessor().Assess(Start with { Aircraft = Start.Aircraft with { Weighing = record } }).Findings;
        Assert.Equal(follows, findings.All(f => f.Rule != "weighing-record"));
    }
}
