using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>The places of what is fitted, by edits of the demonstration job that holds.</summary>
public sealed class EnvironmentStageTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;

    [Fact]
    public void Each_item_has_its_sheets_and_each_zone_and_segment_used()
    {
        var subjects = new Assessor().Assess(Twin).Sheets.Select(s => s.Subject).ToHashSet(StringComparer.Ordinal);
        Assert.All(Twin.Change.Fit!, i => Assert.Contains($"equipment/{i.Id}/qualification", subjects));
        Assert.All(Twin.Change.Fit!, i => Assert.Contains($"equipment/{i.Id}/compass", subjects));
        Assert.All(Twin.Change.Fit!.Select(i => i.Zone), z => Assert.Contains($"zone/{z}/heat", subjects));
        Assert.All(new Assessor().Assess(Twin).Bundles, b => Assert.Contains($"segment/{b.Segment}/clearance", subjects));
    }

    // 28 W and 78 W in the tail cone of the demonstration job, worked by hand: 106 / (4.6 · 6.4) = 3.60 K above 65 °C.
    [Fact]
    public void The_heat_of_a_zone_is_the_sum_of_what_goes_in() =>
        Assert.Equal(68.60, new Assessor().Assess(Twin).Sheet("zone/Z310/heat")!["T"].Value, 0.005);

    [Fact]
    public void A_missing_compass_position_is_told_once()
    {
        var finding = Assert.Single(Found(Twin with { Aircraft = Twin.Aircraft with { Compass = null } }));
        Assert.Equal(("environment-data", Verdict.CannotTell, "aircraft/compass"), (finding.Rule, finding.Severity, finding.Subject));
    }

    [Fact]
    public void Missing_clearances_are_told_once_with_their_segments()
    {
        var segments = Twin.Aircraft.Segments!;
        var bare = segments.Aggregate(segments, (all, s) => all.With(s with { FluidClearance = null, ControlClearance = null }));
        var finding = Assert.Single(Found(Twin with { Aircraft = Twin.Aircraft with { Segments = bare } }));
        Assert.Equal(("environment-data", "aircraft/clearances"), (finding.Rule, finding.Subject));
        Assert.Contains("from fluid and oxygen lines for", finding.Message, StringComparison.Ordinal);
        Assert.Contains("from moving controls for", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_zone_does_not_state_is_told_of_the_zone()
    {
        var finding = Assert.Single(Found(WithZone(Twin.Aircraft.Zones["Z310"] with { Surface = null, Environment = [] })));
        Assert.Equal(("environment-data", "zone/Z310"), (finding.Rule, finding.Subject));
        Assert.Contains("surface", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bay_whose_heat_is_not_all_known_is_not_worked_out()
    {
        var part = Twin.Parts.Equipment!["ZZ-TS70"] with { Heat = null };
        var assessment = new Assessor().Assess(Twin with { Parts = Twin.Parts with { Equipment = Twin.Parts.Equipment.With(part) } });
        Assert.Null(assessment.Sheet("zone/Z310/heat"));
        Assert.Equal("equipment/TS1", Assert.Single(assessment.Findings, f => f.Rule == "environment-data").Subject);
    }

    // Category B2 ends at 25,000 ft. Under cabin pressure the aircraft's altitude is not that of the box.
    [Theory]
    [InlineData(false, Verdict.Fails)]
    [InlineData(true, Verdict.Holds)]
    public void The_ceiling_counts_where_there_is_no_cabin_pressure(bool pressurised, Verdict expected)
    {
        var job = WithZone(Twin.Aircraft.Zones["Z110"] with { Pressurised = pressurised });
        var high = job with { Aircraft = job.Aircraft with { Ceiling = Length.Of(26_000, "ft") } };
        Assert.Equal(expected, new Assessor().Assess(high).Sheet("equipment/GPS1/qualification")!.Verdict);
    }

    private static IEnumerable<Finding> Found(Job job) => new Assessor().Assess(job).Findings.Where(f => f.Accepted is null);

    private static Job WithZone(Zone zone) => Twin with { Aircraft = Twin.Aircraft with { Zones = Twin.Aircraft.Zones.With(zone) } };
}
