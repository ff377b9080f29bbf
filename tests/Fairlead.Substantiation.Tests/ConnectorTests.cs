using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>Connector halves, spare contacts and connectors shared by redundant items, on the demonstration job with one thing changed at a time.</summary>
public sealed class ConnectorTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;

    [Theory]
    [InlineData("part", "connector-mate")]
    [InlineData("form", "connector-mate")]
    [InlineData("shell", "connector-mate")]
    [InlineData("insert", "connector-mate")]
    [InlineData("gender", "connector-mate")]
    [InlineData("keying", "connector-keying")]
    public void Each_thing_that_keeps_two_halves_from_mating_is_told(string what, string rule)
    {
        var own = Twin.Parts.Equipment!["ZZ-RA25"].Connectors!["P1"].Own!;
        var found = Found(WithOwn(what switch
        {
            "part" => own with { Part = "ZZ-K37P" },
            "form" => own with { Form = ConnectorForm.Plug },
            "shell" => own with { Shell = "16" },
            "insert" => own with { Insert = "14-18" },
            "gender" => own with { Gender = ContactGender.Sockets },
            _ => own with { Keying = "W" },
        }));
        Assert.Equal((rule, "connector/RA1 P1", Verdict.Fails), (found.Rule, found.Subject, found.Severity));
    }

    [Theory]
    [InlineData("1 2 3 4 5 6 7 80", "names 80, which it does not have; it leaves out 8")]
    [InlineData("1 2 3 4 5 6 7 9", "names 9 more than once; it leaves out 8")]
    [InlineData("1 2 3 4 5 6 7", "leaves out 8")]
    public void A_layout_that_does_not_place_every_cavity_once_is_found(string row, string told)
    {
        var half = Twin.Parts.Connectors!["ZZ-R15"];
        var edited = half with { Layout = [half.Layout[0] with { Cavities = row.Split(' ').ToSequence() }, half.Layout[1]] };
        var finding = Assert.Single(new Assessor().Assess(Twin with { Parts = Twin.Parts with { Connectors = Twin.Parts.Connectors!.With(edited) } }).Findings, f => f.Rule == "connector-layout");
        Assert.Equal(("connector/ZZ-R15", Verdict.Fails), (finding.Subject, finding.Severity));
        Assert.Contains(told, finding.Message);
    }

    [Fact]
    public void What_is_not_stated_is_not_compared() =>
        Assert.DoesNotContain(new Assessor().Assess(WithOwn(new ConnectorHalf(Gender: ContactGender.Pins))).Findings, f => f.Rule.StartsWith("connector-", StringComparison.Ordinal));

    [Fact]
    public void Every_connector_of_several_contacts_says_what_it_leaves_free()
    {
        var sheets = new Assessor().Assess(Twin).Sheets.Where(s => s.Sheet.Calculation == "spare-contacts").ToArray();
        Assert.Equal(["AN1 P1", "GPS1 P1", "RA1 P1", "RI1 P1", "TD1 P1", "TS1 P1", "XPD1 P1"], sheets.Select(s => s.Subject["connector/".Length..]).Order(StringComparer.Ordinal));
        var cavities = Twin.Parts.Connectors!["ZZ-R26"].Cavities.Count;
        var wired = Twin.Change.Circuits!.SelectMany(c => new[] { c.From, c.To }).Distinct().Count(e => e is { Item: "XPD1", Connector: "P1" });
        var sheet = sheets.Single(s => s.Subject == "connector/XPD1 P1").Sheet;
        Assert.Equal(cavities - wired, sheet["e"].Value);
        Assert.Equal(cavities - wired - 1, sheet["free"].Value); // pin 26 is the maker's own
        Assert.Contains("13, 22, 25", sheet.Given.Single(g => g.Symbol == "w").Origin);
    }

    // Two lines of their own through one bulkhead connector, and through two.
    [Theory]
    [InlineData("DC1", "DC1", true)]
    [InlineData("DC1", "DC2", false)]
    [InlineData("", "", false)]
    public void Redundant_items_share_no_disconnect(string first, string second, bool shared)
    {
        var (fit, circuits) = (Twin.Change.Fit!, Twin.Change.Circuits!);
        Joint Pin(string id, string connector) => new(id, JointKind.Disconnect, "N06", connector);
        var job = Twin with
        {
            Change = Twin.Change with
            {
                Fit = fit.With(fit["AN1"] with { Redundant = "warnings" }).With(fit["RI1"] with { Redundant = "warnings" }),
                Joints = new([.. Twin.Change.Joints!, Pin("DC1-1", first), Pin("DC2-1", second)]),
                Circuits = new([
                    .. circuits.Without("C415").Without("C307"),
                    circuits["C415"] with { To = new Endpoint("DC1-1") }, circuits["C415"] with { Id = "C415A", From = new Endpoint("DC1-1") },
                    circuits["C307"] with { To = new Endpoint("DC2-1") }, circuits["C307"] with { Id = "C307A", From = new Endpoint("DC2-1") }]),
            },
        };
        var found = new Assessor().Assess(job).Findings.Where(f => f.Rule == "redundant-connector").ToArray();
        Assert.Equal(shared ? ["redundant/warnings"] : [], found.Select(f => f.Subject));
        Assert.All(found, f => Assert.Contains("connector DC1", f.Message));
    }

    [Fact]
    public void A_change_of_connectors_ends_as_a_fresh_check()
    {
        var assessor = new Assessor();
        assessor.Assess(Twin);
        var before = assessor.Runs;
        var spared = Twin with { Change = Twin.Change with { Wiring = Twin.Change.Wiring with { Spares = Fraction.Of(50, "%") } } };
        Assert.Equal(new Assessor().Assess(spared).Findings, assessor.Assess(spared).Findings);
        Assert.True(assessor.Runs - before <= 7);
        assessor.Assess(Twin);
        Assert.True(assessor.Runs - before <= 7);
    }

    private static Finding Found(Job job) => Assert.Single(new Assessor().Assess(job).Findings, f => f.Rule.StartsWith("connector-", StringComparison.Ordinal));

    private static Job WithOwn(ConnectorHalf own)
    {
        var part = Twin.Parts.Equipment!["ZZ-RA25"];
        return Twin with { Parts = Twin.Parts with { Equipment = Twin.Parts.Equipment.With(part with { Connectors = part.Connectors!.With(part.Connectors["P1"] with { Own = own }) }) } };
    }
}
