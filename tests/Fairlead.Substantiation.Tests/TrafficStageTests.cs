using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>Scenarios, replies, lines of several cables and measured isolation on the demonstration job, against sums done here.</summary>
public sealed class TrafficStageTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;

    // SC1 T1: 10 nmi ahead, closing at 300 kt: 5 nmi after 60 s, 88.612 s by modified and 90 s by plain time (computed by hand from the published formula).
    [Fact]
    public void A_target_is_told_second_by_second()
    {
        var sheet = new Assessor().Assess(Twin).Sheet("scenario/SC1/T1")!;
        var rows = sheet.Tables.Single(t => t.Title == "Expected on the display").Rows;
        Assert.Equal(111, rows.Length);
        Assert.Equal(5, rows[60][1].Number!.Value.Value, 1e-9);
        Assert.Equal("+00", rows[60][4].Words);
        Assert.Equal("5000 ft, code 4220", rows[60][7].Words); // table of Mode C codes, 5,000 ft
        Assert.Equal("filled diamond (proximate)", rows[88][6].Words);
        Assert.Equal("filled amber circle (traffic advisory)", rows[89][6].Words);
        var words = sheet.Tables.Single(t => t.Title == "Expected on the bus").Rows;
        Assert.Equal("0xE140041A", words[60][1].Words); // 0x61400C1A is that of intruder 3; of intruder 1 it has a bit less, so the parity turns
    }

    [Theory]
    [InlineData(-45, 180)]
    [InlineData(120, -60)]
    [InlineData(180, 240)]
    public void A_target_keeps_its_bearing_and_rate(double bearing, double closing)
    {
        var target = new SimulatedTarget("X", Length.Of(8, "nmi"), Angle.Of(bearing, "°"), Speed.Of(closing, "kt"), Duration.Of(60, "s"));
        var sheet = new Assessor().Assess(With(target)).Sheet("scenario/SC1/X")!;
        Assert.Equal(closing, sheet["V"].Value, 1e-6);
        Assert.All(sheet.Tables.Single(t => t.Title == "Expected on the display").Rows, r => Assert.Equal(bearing, r[2].Number!.Value.Value, 1e-5));
    }

    [Fact]
    public void A_target_outside_what_the_sensor_takes_in_is_a_finding()
    {
        var far = new SimulatedTarget("X", Length.Of(21, "nmi"), default, Speed.Of(100, "kt"), Duration.Of(60, "s"));
        var high = far with { Range = Length.Of(5, "nmi"), Above = Length.Of(9500, "ft"), Climb = Speed.Of(1000, "ft/min") };
        foreach (var target in new[] { far, high })
        {
            var finding = Assert.Single(new Assessor().Assess(With(target)).Findings, f => f.Rule == "traffic-scenario");
            Assert.Equal((Verdict.Fails, "scenario/SC1/X", "change/scenarios/SC1/targets/X"), (finding.Severity, finding.Subject, finding.Path));
        }
    }

    // 10,000 ft is code 6520 (ICAO table), label 203 has 1 ft a step over 131,072 ft (ARINC 429 part 1-17).
    [Fact]
    public void A_ramp_test_says_the_replies_of_every_mode()
    {
        var assessment = new Assessor().Assess(Twin);
        Assert.Equal("6520", assessment.Sheet("ramp/RT3/mode-c")!.Given.Single(g => g.Symbol == "gillham").Value.Words);
        Assert.Equal("0x0808", assessment.Sheet("ramp/RT3/mode-a")!.Given.Single(g => g.Symbol == "ID").Value.Words);
        Assert.Equal(10000, assessment.Sheet("ramp/RT3/altitude-word")!["carried"].Value);
        Assert.Equal(6, assessment.Sheet("ramp/RT3/mode-s")!["n"].Value);
        Assert.NotNull(assessment.Sheet("ramp/RT3"));
    }

    [Fact]
    public void An_emergency_code_on_the_ramp_is_warned_of()
    {
        var check = Twin.Change.Ramp!["RT3"];
        var job = Twin with { Change = Twin.Change with { Ramp = Twin.Change.Ramp.With(check with { Replies = check.Replies! with { Squawk = "7700" } }) } };
        Assert.Equal(Verdict.Caution, Assert.Single(new Assessor().Assess(job).Findings, f => f.Rule == "squawk").Severity);
    }

    // C124 in two parts: the loss of each from its own sheet, three pairs of connectors at 0.1·√1.09 dB; delays add.
    [Fact]
    public void A_line_of_two_cables_loses_and_delays_what_both_do()
    {
        var circuit = Twin.Change.Circuits!["C124"];
        var job = Twin with
        {
            Change = Twin.Change with
            {
                Joints = new([.. Twin.Change.Joints!, new Joint("D9", JointKind.Disconnect, Twin.Change.Antennas!["E1"].Node)]),
                Circuits = new([
                    .. Twin.Change.Circuits.Without("C124"), circuit with { Id = "C124A", To = new Endpoint("D9"), Length = Length.Of(2, "m") },
                    circuit with { Id = "C124B", From = new Endpoint("D9"), Wire = "RF195", Length = Length.Of(1, "m") }]),
            },
        };
        var assessment = new Assessor().Assess(job);
        double Of(string id) => assessment.Sheet($"circuit/{id}/loss")!["A"].Value;
        var series = assessment.Sheet("circuit/C124A/series")!;
        Assert.Equal(Of("C124A") + Of("C124B") + (0.3 * Math.Sqrt(1.090)), series["A"].Value, 1e-9);
        Assert.Equal(((2 / 0.82) + (1 / 0.695)) / 0.299792458, series["t"].Value, 1e-9);
        Assert.DoesNotContain(assessment.Findings, f => f.Rule is "radio-unknown" or "coax-impedance" or "coax-series");
    }

    [Fact]
    public void A_measured_isolation_goes_before_the_formula_in_its_band_only()
    {
        var sheet = new Assessor().Assess(Twin).Sheet("antenna/E5/from-E1")!;
        Assert.Equal(48, sheet["I"].Value);
        Assert.Contains("CHG-118, isolation report 2", sheet.Given.Single(g => g.Symbol == "Im").Origin);
        var other = Twin.Change.Isolations!["M1"] with { Band = new(Frequency.Of(960, "MHz"), Frequency.Of(1000, "MHz")) };
        var job = Twin with { Change = Twin.Change with { Isolations = new([other]) } };
        Assert.NotEqual(48, new Assessor().Assess(job).Sheet("antenna/E5/from-E1")!["I"].Value);
    }

    private static Job With(SimulatedTarget target) => Twin with { Change = Twin.Change with { Scenarios = new([Twin.Change.Scenarios!["SC1"] with { Targets = new([target]) }]) } };
}
