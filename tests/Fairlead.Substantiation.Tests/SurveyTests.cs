using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>The voltages all over a job's network.</summary>
public sealed class SurveyTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;

    // Ohm's law along one way: what flows through the essential bus feeder drops there, and nothing is lost between sources and loads.
    [Fact]
    public void Currents_of_the_demonstration_job_add_up()
    {
        var assessment = new Assessor().Assess(Twin);
        foreach (var condition in Twin.Aircraft.Conditions!)
        {
            var sheet = assessment.Sheet($"network/{condition.Id}")!;
            Assert.Equal(sheet["Ps"].Si, sheet["Pl"].Si + sheet["Pb"].Si, 1e-6 * sheet["Ps"].Si);
            var loads = sheet.Tables.Single(t => t.Title == "Loads" && t.Columns.Length == 3);
            Assert.Equal(sheet["Is"].Si, loads.Rows.Sum(r => r[2].Number!.Value.Si), 1e-6);
        }
    }

    [Fact]
    public void The_voltage_at_a_box_is_the_bus_less_its_own_way()
    {
        var assessment = new Assessor().Assess(Twin);
        var sheet = assessment.Sheet("network/cruise")!;
        double Volts(string node) => sheet.Tables.Single(t => t.Title == "Voltages").Rows.Single(r => r[0].Words == node)[1].Number!.Value.Si;
        var part = Twin.Parts.Breakers![Twin.Change.Breakers!["CB41"].Part];
        var current = 0.7;
        double Hot(string circuit) => assessment.Circuits.Single(c => c.Circuit.Id == circuit).Drop!.Value.Si / assessment.Circuits.Single(c => c.Circuit.Id == circuit).Current.Si;
        var expected = Volts("bus ESS") - (current * (part.Resistance!.Value.Si + Hot("C201") + 2e-6));
        Assert.Equal(expected, Volts("GPS1 main +"), 1e-6);
    }

    // Right behind the limiter of FD4 nothing of the feeder itself is in the way: the short there is greater than at its far end.
    [Fact]
    public void A_feeder_from_a_bus_is_shorted_right_behind_its_limiter_too()
    {
        var rows = new Assessor().Assess(Twin).Sheet("feeders/shorts")!.Tables.Single(t => t.Title == "Shorts").Rows.Where(r => r[5].Words == "feeder FD4").ToArray();
        double Short(string at) => rows.Single(r => r[0].Words == at)[1].Number!.Value.Value;
        Assert.True(Short("behind protection of FD4") > Short("bus ESS"));
    }

    [Fact]
    public void A_thin_feeder_starves_the_boxes_behind_it()
    {
        var feeders = Twin.Aircraft.Feeders!;
        var starved = Twin with { Aircraft = Twin.Aircraft with { Feeders = feeders.With(feeders["FD4"] with { Length = Length.Of(290, "ft"), Wire = "W14" }) } };
        var finding = new Assessor().Assess(starved).Findings.First(f => f.Rule == "network-voltage-low");
        Assert.Equal(Verdict.Fails, finding.Severity);
        Assert.Contains("least voltage", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_edit_that_bears_on_no_feed_solves_nothing_again()
    {
        var assessor = new Assessor();
        assessor.Assess(Twin);
        var before = assessor.Runs;
        assessor.Assess(Twin with { Change = Twin.Change with { Title = "Another title" } });
        Assert.Equal(before, assessor.Runs);
    }
}
