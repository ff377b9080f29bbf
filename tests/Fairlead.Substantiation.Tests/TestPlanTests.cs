using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;
using TestResult = Fairlead.Substantiation.Tests.TestResult;

namespace Fairlead.Tests.Substantiation;

public sealed class TestPlanTests
{
    private static readonly Assessment Assessment = new Assessor().Assess(JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!);
    private static readonly TestPlan Plan = TestPlan.Of(Assessment);

    [Fact]
    public void Cards_stand_in_the_safe_order_with_unique_ids_and_a_source_for_every_line()
    {
        // What is tested as found comes first; then nothing is powered before its wiring is proved, nothing plugged in before its power is.
        Assert.Equal("TEST-T1", Plan.Cards.TakeWhile(c => c.Stage == WorkStage.Before).Single().Id);
        Assert.Equal(Plan.Cards.Skip(1).Select(c => c.Kind).Order(), Plan.Cards.Skip(1).Select(c => c.Kind));
        Assert.Equal(Plan.Cards.Length, Plan.Cards.Select(c => c.Id).Distinct().Count());
        Assert.All(Plan.Cards, c => Assert.Equal(c.Lines.Count, c.Lines.Select(l => l.Id).Distinct().Count()));
        Assert.All(Plan.Cards.SelectMany(c => c.Lines), l => Assert.NotEmpty(l.Source.Document));
        Assert.Equal(Enum.GetValues<TestKind>(), Plan.Cards.Skip(1).Select(c => c.Kind).Distinct());
    }

    // The joint is measured bolted up, before sealant covers it, and again when the sealant is cured: each on a card of its own, to one limit.
    [Fact]
    public void What_is_sealed_is_measured_twice_and_what_is_not_once()
    {
        var again = Plan.Cards.Where(c => c.Again).ToArray();
        Assert.Equal(Assessment.Job.Change.Antennas!.Where(a => a.Sealant is not null).Select(a => "REBOND-" + a.Id), again.Select(c => c.Id));
        Assert.All(again, c => Assert.Equal(Plan.Find("BOND-" + c.Subject)!.Lines[0].Limits, Assert.Single(c.Lines).Limits));
        Assert.DoesNotContain(Plan.Cards, c => c.Id == "REBOND-XPD1");
    }

    // The demonstration looks at its suppression pulses by a test of its own; without it the three boxes on the line are looked at.
    [Fact]
    public void Suppression_pulses_are_looked_at_at_every_box_on_the_line_unless_a_test_of_the_job_does()
    {
        Assert.Null(Plan.Find("SUPPRESSION"));
        var bare = Assessment.Job with { Change = Assessment.Job.Change with { Tests = Catalog<ExtraTest>.Empty } };
        var card = TestPlan.Of(new Assessor().Assess(bare)).Find("SUPPRESSION")!;
        Assert.True(card.Radiates);
        Assert.Equal(["DME1 P1-12", "TS1 P1-24", "XPD1 P1-19"], card.Lines.Select(l => l.From).Order());
    }

    [Fact]
    public void What_is_shed_is_seen_to_go_off()
    {
        var change = Assessment.Job.Change;
        var feed = change.Power![0];
        Assert.DoesNotContain(Plan.Cards.SelectMany(c => c.Lines), l => l.Id.StartsWith("shed ", StringComparison.Ordinal));
        var shed = Assessment.Job with { Change = change with { Power = change.Power.With(feed with { ShedAt = Duration.Of(5, "min") }) } };
        var line = Assert.Single(TestPlan.Of(new Assessor().Assess(shed)).Cards.SelectMany(c => c.Lines), l => l.Id == "shed " + feed.Id);
        Assert.Equal((feed.Breaker, $"{feed.Item} {feed.Input}"), (line.From, line.To));
    }

    [Fact]
    public void Every_circuit_is_measured_through()
    {
        var measured = Plan.Cards.SelectMany(c => c.Lines).SelectMany(l => new[] { l.From, l.To }).ToHashSet();
        Assert.All(Assessment.Circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }).Where(e => !e.IsPoint), e => Assert.Contains(e.ToString(), measured));
    }

    [Fact]
    public void Continuity_is_judged_by_the_wire_cold_at_its_length_and_its_contacts()
    {
        // AC 43.13-1B table 11-9: No. 24 is at most 28.4 ohm per 1000 ft; a run of that wire and two contacts of 0.1 ohm, rounded up to 0.01 ohm.
        var circuit = Assessment.Circuits.First(c => c.Circuit.Id == "C105");
        var line = Plan.Cards.SelectMany(c => c.Lines).Single(l => l.Id == $"{circuit.Circuit.To}>{circuit.Circuit.From}");
        var ohmPerFoot = circuit.Wire!.Resistance?.In("Ω/ft") ?? 28.4e-3;
        Assert.Equal((circuit.Length!.Value.In("ft") * ohmPerFoot) + 0.2, line.Most!.Value, 0.011);
        Assert.Equal("Ω", line.Unit);
    }

    [Theory]
    [InlineData("BOND-XPD1", "bond", "1.2", "mohm", Verdict.Holds)]
    [InlineData("BOND-XPD1", "bond", "0.0012", "ohm", Verdict.Holds)]
    [InlineData("BOND-XPD1", "bond", "9", "mohm", Verdict.Fails)]
    [InlineData("BOND-XPD1", "bond", "ok", "", Verdict.CannotTell)]
    [InlineData("BOND-XPD1", "bond", "1.2", "", Verdict.CannotTell)]
    [InlineData("BOND-XPD1", "bond", "1.2", "V", Verdict.CannotTell)]
    [InlineData("BOND-XPD1", "bond", "open", "", Verdict.Fails)]
    [InlineData("REBOND-E2", "bond sealed", "1.2", "mohm", Verdict.Holds)]
    [InlineData("REBOND-E2", "bond sealed", "9", "mohm", Verdict.Fails)]
    [InlineData("REBOND-E2", "bond", "1.2", "mohm", Verdict.CannotTell)]
    [InlineData("ISO-XPD1-P1", "", ">200", "MΩ", Verdict.Holds)]
    [InlineData("ISO-XPD1-P1", "", "open", "", Verdict.CannotTell)]
    [InlineData("ISO-XPD1-P1", "", "500", "kohm", Verdict.Fails)]
    [InlineData("BOND-XPD1", "bond", "-1.2", "mohm", Verdict.CannotTell)]
    [InlineData("BOND-XPD1", "bond", "0", "mohm", Verdict.Holds)]
    [InlineData("BOND-XPD1", "bond", "1.2", "ohm", Verdict.Fails)]
    [InlineData("BOND-XPD1", "bond", "inf", "mohm", Verdict.Fails)]
    [InlineData("BOND-XPD1", "bond", "O.L", "mohm", Verdict.Fails)]
    [InlineData("BOND-XPD1", "bond", "NaN", "mohm", Verdict.CannotTell)]
    [InlineData("BOND-XPD1", "bond", "1e400", "mohm", Verdict.CannotTell)]
    [InlineData("BOND-XPD1", "bond", "1,2", "mohm", Verdict.CannotTell)]
    [InlineData("ISO-XPD1-P1", "", "-20", "Mohm", Verdict.CannotTell)]
    [InlineData("ISO-XPD1-P1", "", "∞", "Mohm", Verdict.CannotTell)]
    [InlineData("ISO-XPD1-P1", "", ">1", "Mohm", Verdict.CannotTell)]
    [InlineData("CURRENT-TS1", "current main", "0", "A", Verdict.Fails)]
    [InlineData("CURRENT-TS1", "current main", "-1", "A", Verdict.Fails)]
    [InlineData("CURRENT-TS1", "current main", "1500", "mA", Verdict.Holds)]
    [InlineData("POWER-TS1", "TS1 P1-1 in", "-28", "V", Verdict.Fails)]
    [InlineData("SET-XPD1", "SET1", "ZZ-TR40-SW-03.12", "", Verdict.Holds)]
    [InlineData("SET-XPD1", "SET1", "ZZ-TR40-SW-03.11", "", Verdict.Fails)]
    [InlineData("SET-XPD1", "SET1", "as expected", "", Verdict.CannotTell)]
    [InlineData("SYS-XPD1", "log", "as expected", "", Verdict.Holds)]
    [InlineData("RAMP-RT2", "bearing 0", "352", "deg", Verdict.Holds)]
    [InlineData("RAMP-RT2", "bearing 0", "340", "deg", Verdict.Fails)]
    public void A_result_is_judged_and_a_tick_is_no_number(string card, string line, string value, string unit, Verdict verdict)
    {
        var id = line.Length > 0 ? line : Plan.Find(card)!.Lines[0].Id;
        var judged = Judging.Judge(Plan, new TestResult(2, card, id, value, unit, "DMM1", "T1", "T2"));
        Assert.Equal(verdict, judged.Verdict);
        Assert.Equal(verdict, judged.Line is null ? verdict : Entered(judged).Verdict);
    }

    // What is counted takes no instrument, so that it is observed, and an entry of that kind names no unit.
    [Fact]
    public void What_is_counted_is_judged_alike_before_it_is_entered_and_after()
    {
        var (card, line) = Plan.Cards.SelectMany(c => c.Lines.Select(l => (Card: c, Line: l))).First(l => l.Line.Unit == ToldResult.Counted);
        foreach (var (missing, verdict) in new[] { (0, Verdict.Holds), (1, Verdict.Fails) })
        {
            var judged = Judging.Judge(Plan, new TestResult(2, card.Id, line.Id, $"{line.Least - missing}", ToldResult.Counted, "", "T1"));
            Assert.Equal(("observed", verdict, verdict), (ToldResult.Write(judged).Kind, judged.Verdict, Entered(judged).Verdict));
        }
    }

    // As the log has it: numbers as they are, texts that are empty not at all.
    private static JudgedResult Entered(JudgedResult judged)
    {
        var told = ToldResult.Write(judged).Told.ToDictionary(f => f.Name, f => f.Number?.ToString("R", CultureInfo.InvariantCulture) ?? f.Text, StringComparer.Ordinal);
        return Judging.Judge(Plan, ToldResult.Read(2, judged.Result.Card, judged.Line!, judged.Result.By, field => told.GetValueOrDefault(field, "")));
    }

    [Fact]
    public void A_line_measured_again_after_the_repair_counts_as_it_was_measured_last()
    {
        TestResult Bond(string value) => new(2, "BOND-XPD1", "bond", value, "mohm", "BM-01", "T1");
        Assert.Equal(Verdict.Holds, TestReport.Of(Plan, [Bond("9"), Bond("1.2")]).Verdict);
        Assert.Equal(Verdict.Fails, TestReport.Of(Plan, [Bond("1.2"), Bond("9")]).Verdict);
        Assert.Equal(Verdict.Holds, TestReport.Of(Plan, [Bond("1.2"), new(3, "CONT-XPD1-P1", "XPD1 P1-1+XPD1 P1-2>ADC1 P2-5", "open", By: "T1")]).Verdict);
        Assert.Equal(Verdict.CannotTell, TestReport.Of(Plan, [Bond("1.2"), Bond("1.2") with { Line = "bnd" }]).Verdict);
    }

    [Fact]
    public void A_resistance_below_nothing_says_nothing_of_the_wire()
    {
        var report = TestReport.Of(Plan, [new TestResult(2, "CONT-XPD1-P1", "XPD1 P1-5>ADC1 P2-5", "-6.2", "ohm", "DMM1", "T1")]);
        Assert.Empty(report.Signatures);
        Assert.Empty(report.Connectors);
    }

    [Fact]
    public void Nobody_outside_no_ramp_result()
    {
        Assert.Equal(Verdict.CannotTell, Judging.Judge(Plan, new TestResult(2, "RAMP-RT2", "bearing 0", "0", "deg", "SET", "T1")).Verdict);
        Assert.Equal(Verdict.CannotTell, Judging.Judge(Plan, new TestResult(2, "BOND-XPD1", "bond", "1", "mohm", "", "T1")).Verdict);
    }

    [Fact]
    public void A_swap_is_named_from_its_readings_and_after_the_repair_it_is_gone()
    {
        var pair = Plan.Harnesses.First(h => h.Connector == "XPD1 P1");
        TestResult Ohm(string line, string value) => new(2, "CONT-XPD1-P1", line, value, value == "open" ? "" : "ohm", "DMM1", "T1");
        TestResult[] swapped =
        [
            Ohm("XPD1 P1-5>ADC1 P2-5", "open"), Ohm("XPD1 P1-16>AGR1 P1-1", "open"), Ohm("XPD1 P1-5>AGR1 P1-1", "0.3"), Ohm("XPD1 P1-16>ADC1 P2-5", "0.3"),
        ];
        var report = TestReport.Of(Plan, swapped);
        var found = report.Connectors.Single(c => c.Connector == pair.Connector);
        var fault = Assert.Single(Assert.Single(found.Left).Faults);
        Assert.Equal((FaultKind.Swap, "XPD1 P1-5", "XPD1 P1-16"), (fault.Kind, fault.A, fault.B));
        Assert.Null(found.Next);
        Assert.Empty(TestReport.Of(Plan, [.. swapped, Ohm("XPD1 P1-5>ADC1 P2-5", "0.3"), Ohm("XPD1 P1-16>AGR1 P1-1", "0.3"), Ohm("XPD1 P1-5>AGR1 P1-1", "open"), Ohm("XPD1 P1-16>ADC1 P2-5", "open")]).Connectors);
    }

    [Fact]
    public void One_open_reading_leaves_suspects_and_proposes_the_next_measurement()
    {
        var found = Assert.Single(TestReport.Of(Plan, [new TestResult(2, "CONT-XPD1-P1", "XPD1 P1-5>ADC1 P2-5", "open", By: "T1")]).Connectors, c => c.Connector == "XPD1 P1");
        Assert.True(found.Left.Length > 1);
        Assert.NotNull(found.Next);
    }

    [Fact]
    public void A_poor_contact_is_neither_through_nor_open() =>
        Assert.Contains("poor crimp", Assert.Single(TestReport.Of(Plan, [new TestResult(2, "CONT-XPD1-P1", "XPD1 P1-5>ADC1 P2-5", "6.2", "ohm", "DMM1", "T1")]).Signatures));

    [Fact]
    public void A_table_of_results_reads_with_quotation_marks_and_tells_everything_that_is_wrong()
    {
        var problems = new List<string>();
        var read = ResultFile.Read("card,line,value,unit,by\r\nSET-XPD1,SET4,\"light, \"\"below\"\" 15,500 lb\",,T1\n\n", problems);
        Assert.Empty(problems);
        Assert.Equal("light, \"below\" 15,500 lb", Assert.Single(read).Value);
        Assert.Empty(ResultFile.Read("card,lime,value\nA,B\n", problems));
        Assert.Equal(3, problems.Count);
        problems.Clear();
        Assert.Empty(ResultFile.Read("", problems));
        Assert.NotEmpty(problems);
    }
}
