using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>What of a mounting depends on place and rule: factors by basis and zone, wear, straps, pressure; and the sheet under its screws.</summary>
public sealed class MountingTests
{
    private static readonly Job Start = JobReader.Read(Starter.Files()).Job!;
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;

    // 14 CFR 27.561(b)(3) inside, (c) above or behind the cabin; 29.561 alike; 25.561(b)(3) makes no difference. 2.1 lb, fitting factor 1.15.
    [Theory]
    [InlineData("14 CFR 27", "amendment 27-30", CabinSide.Inside, 16, 20)]
    [InlineData("14 CFR 27", "amendment 27-30", CabinSide.AboveOrBehind, 12, 12)]
    [InlineData("14 CFR 29", "amendment 29-29", CabinSide.AboveOrBehind, 12, 12)]
    [InlineData("14 CFR 25", "amendment 25-64", CabinSide.AboveOrBehind, 9, 6)]
    public void Factors_follow_from_basis_and_zone(string rule, string edition, CabinSide side, double forward, double down)
    {
        var sheet = new Assessor().Assess(Certified(rule, edition, side)).Sheet("equipment/REC1/loads")!;
        Assert.Equal(1.15 * forward * 2.1, sheet["PF"].Value, 1e-6);
        Assert.Equal(1.15 * down * 2.1, sheet["PD"].Value, 1e-6);
    }

    [Theory]
    [InlineData("CS-25", "amendment 27", "load-factors")]
    [InlineData("CS-29", "amendment 4", "load-factors")]
    [InlineData("14 CFR 25", "none told", "differ between amendments")]
    [InlineData("14 CFR 27", "amendment 27-10", "must be stated")]
    public void Factors_that_are_not_known_must_be_stated(string rule, string edition, string words)
    {
        var finding = Assert.Single(new Assessor().Assess(Certified(rule, edition, CabinSide.Inside)).Findings, f => f.Rule == "inertia-basis");
        Assert.Equal(Verdict.CannotTell, finding.Severity);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    // 25.561(c)(2): 1.33 where attachments wear.
    [Fact]
    public void Attachments_that_wear_have_the_greater_factor() =>
        Assert.Equal(1.33, new Assessor().Assess(Fixed(f => f with { RemovedOften = true })).Sheet("equipment/REC1/loads")!["ff"].Si, 1e-12);

    // A copper strap of 6 in and .016 in² has .2545 milliohm at 20 °C; the joint may have 2.5.
    [Fact]
    public void A_strap_is_part_of_the_bonding_path() =>
        Assert.Equal(2.7545, new Assessor().Assess(Fixed(f => f with { Strap = new(Length.Of(6, "in"), Area.Of(0.016, "in²"), true) })).Sheet("equipment/REC1/bond")!["Rp"].Value, 1e-4);

    // 43.47 lbf forward on four screws: 10.8675 lbf each. Fbru 120 ksi, .164 in, .050 in: 984 lbf.
    [Fact]
    public void The_sheet_bears_the_greatest_shear_of_all_loads()
    {
        var sheet = new Assessor().Assess(Start).Sheet("equipment/REC1/bearing")!;
        var check = Assert.Single(sheet.Checks);
        Assert.Equal(10.8675, check.Demand.Value, 1e-6);
        Assert.Equal(984, check.Limit.Value, 1e-6);
    }

    [Fact]
    public void Where_no_zone_says_so_every_skin_of_a_pressurised_aircraft_counts_as_pressurised()
    {
        var pressurised = Twin with { Aircraft = Twin.Aircraft with { Pressurised = true } };
        Assert.Equal(Twin.Change.Antennas!.Count, Doublers(pressurised));
        var cabin = pressurised.Aircraft.Zones["Z230"] with { Pressurised = true };
        Assert.Equal(0, Doublers(pressurised with { Aircraft = pressurised.Aircraft with { Zones = pressurised.Aircraft.Zones.With(cabin) } }));

        static int Doublers(Job job) => new Assessor().Assess(job).Findings.Count(f => f is { Rule: "antenna-doubler", Severity: Verdict.CannotTell });
    }

    [Fact]
    public void Antennas_are_held_against_zone_and_compass()
    {
        var sheets = new Assessor().Assess(Twin).Sheets.Select(s => s.Subject).ToHashSet(StringComparer.Ordinal);
        Assert.All(Twin.Change.Antennas!, a => Assert.Contains($"antenna/{a.Id}/qualification", sheets));
        Assert.All(Twin.Change.Antennas!, a => Assert.Contains($"antenna/{a.Id}/compass", sheets));
    }

    private static Job Certified(string rule, string edition, CabinSide side)
    {
        var zone = Start.Aircraft.Zones[Start.Change.Fit!["REC1"].Zone] with { Cabin = side };
        return Start with { Aircraft = Start.Aircraft with { Certification = new(rule, edition, "transport"), LoadFactors = null, Zones = Start.Aircraft.Zones.With(zone) } };
    }

    private static Job Fixed(Func<Fixing, Fixing> edit)
    {
        var item = Start.Change.Fit!["REC1"];
        return Start with { Change = Start.Change with { Fit = Start.Change.Fit.With(item with { Fixing = edit(item.Fixing!) }) } };
    }
}
