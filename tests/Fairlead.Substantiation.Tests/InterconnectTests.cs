using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>Interconnect rules beside those the demonstration jobs show: that they follow joints, stop at grounds, and see both ends alike.</summary>
public sealed class InterconnectTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;
    private static readonly Job Faulty = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "with-faults")).Job!;

    [Fact]
    public void Swapping_the_ends_of_every_circuit_changes_no_rule()
    {
        static Job Swapped(Job job) => job with { Change = job.Change with { Circuits = new(job.Change.Circuits!.Select(c => c with { From = c.To, To = c.From, Shield = c.Shield switch { ShieldEnds.From => ShieldEnds.To, ShieldEnds.To => ShieldEnds.From, var other => other } })) } };
        static IEnumerable<string> Broken(Job job) => new Assessor().Assess(job).Findings.Select(f => f.Rule).Order(StringComparer.Ordinal);
        Assert.Equal(Broken(Twin), Broken(Swapped(Twin)));
        Assert.Equal(Broken(Faulty), Broken(Swapped(Faulty)));
    }

    [Fact]
    public void A_signal_through_a_joint_is_one_net()
    {
        var circuits = Twin.Change.Circuits!;
        var first = circuits["C308"];
        var job = Twin with
        {
            Change = Twin.Change with
            {
                Joints = new([.. Twin.Change.Joints!, new Joint("SP9", JointKind.Splice, Twin.Change.Joints![0].Node)]),
                Circuits = new([.. circuits.Without("C308"), first with { Id = "C308A", To = new Endpoint("SP9") }, first with { Id = "C308B", From = new Endpoint("SP9") }]),
            },
        };
        Assert.DoesNotContain(new Assessor().Assess(job).Findings, f => f.Rule is "driver-none" or "pin-open");
        var without = job with { Change = job.Change with { Circuits = job.Change.Circuits!.Without("C308A") } };
        Assert.Contains(new Assessor().Assess(without).Findings, f => f.Rule == "driver-none");
    }

    [Fact]
    public void A_ground_joins_no_signals()
    {
        // Power returns of different boxes meet at one stud; that makes no net of them.
        Assert.DoesNotContain(new Assessor().Assess(Twin).Findings, f => f.Rule == "signal-kinds");
        var circuit = Twin.Change.Circuits!["C308"];
        var grounded = Twin with { Change = Twin.Change with { Circuits = Twin.Change.Circuits.With(circuit with { From = new Endpoint("CB12") }) } };
        Assert.DoesNotContain(new Assessor().Assess(grounded).Findings, f => f.Rule == "signal-kinds");
        var shorted = Twin with { Change = Twin.Change with { Circuits = Twin.Change.Circuits.With(Twin.Change.Circuits["C105"] with { From = new Endpoint("G1") }) } };
        Assert.Contains(new Assessor().Assess(shorted).Findings, f => f.Rule == "signal-kinds");
    }

    [Fact]
    public void A_shared_bus_may_be_accepted()
    {
        var accepted = Faulty with { Change = Faulty.Change with { Concessions = new([new Concession("CX", "redundant-bus", "redundant/position", "Inspector One (invented)", "One essential bus on this aircraft")]) } };
        var finding = Assert.Single(new Assessor().Assess(accepted).Findings, f => f.Rule == "redundant-bus");
        Assert.Equal("CX", finding.Accepted?.Id);
    }

    // ARINC 429 (read in summaries): one talker and up to 20 listeners.
    [Theory]
    [InlineData(1, 20, Verdict.Holds)]
    [InlineData(1, 21, Verdict.Fails)]
    [InlineData(2, 3, Verdict.Fails)]
    [InlineData(0, 3, Verdict.Fails)]
    public void A_data_bus_has_one_talker_and_up_to_twenty_listeners(int drivers, int receivers, Verdict expected) =>
        Assert.Equal(expected, Fairlead.Calculations.Wiring.BusLoading.Run(new(Fairlead.Calculations.Wiring.BusStandard.Arinc429, drivers, receivers)).Verdict);
}
