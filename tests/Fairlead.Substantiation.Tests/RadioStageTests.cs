using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>The radio rules on the demonstration job, against sums done here.</summary>
public sealed class RadioStageTests
{
    private const double SpeedOfLight = 299792458;
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;

    // C124: RF240LL at 1090 MHz between 7.8 dB/100 ft at 1000 MHz and 10.2 at 1600 MHz; two mated pairs at 0.1·√1.09 dB.
    [Fact]
    public void The_loss_of_a_line_is_that_of_cable_and_connectors()
    {
        var assessment = new Assessor().Assess(Twin);
        var feet = assessment.Circuits.Single(c => c.Circuit.Id == "C124").Length!.Value.Si / 0.3048;
        var (r1, r2) = (Math.Sqrt(1000), Math.Sqrt(1600));
        var k2 = ((r1 * 10.2) - (r2 * 7.8)) / ((r1 * 1600) - (r2 * 1000));
        var k1 = (7.8 - (k2 * 1000)) / r1;
        var loss = (((k1 * Math.Sqrt(1090)) + (k2 * 1090)) * feet / 100) + (2 * 0.1 * Math.Sqrt(1.090));
        var sheet = assessment.Sheet("circuit/C124/loss")!;
        Assert.Equal(loss, sheet.Find("A")!.Value.Si, 1e-6);
        Assert.Equal(250 * Math.Pow(10, -loss / 10), sheet.Find("Pa")!.Value.Si, 1e-6);
        Assert.Equal(feet * 0.3048 / (0.82 * SpeedOfLight), assessment.Sheet("circuit/C124/delay")!.Find("t")!.Value.Si, 1e-15);
    }

    [Fact]
    public void An_old_antenna_without_a_part_is_not_passed_over()
    {
        var antennas = Twin.Aircraft.Antennas!;
        var job = Twin with { Aircraft = Twin.Aircraft with { Antennas = antennas.With(antennas["ANT-N1"] with { Part = null }) } };
        Assert.Equal("antenna/ANT-N1", new Assessor().Assess(job).Findings.Single(f => f.Rule == "radio-unknown").Subject);
    }

    [Fact]
    public void Two_antennas_of_one_box_cannot_stand_in_one_place()
    {
        var antennas = Twin.Change.Antennas!;
        var job = Twin with { Change = Twin.Change with { Antennas = antennas.With(antennas["E2"] with { Place = antennas["E1"].Place }) } };
        Assert.Equal("antenna/E2", new Assessor().Assess(job).Findings.Single(f => f.Rule == "antenna-place").Subject);
    }

    // E1 at FS 2.35 m, WL 2.26 m; E4 at FS 3.30 m, WL 2.28 m; the transponder sends 250 W at 1090 MHz.
    [Fact]
    public void The_level_at_an_antenna_is_the_power_less_the_isolation()
    {
        var spacing = Math.Sqrt((0.95 * 0.95) + (0.02 * 0.02));
        var isolation = (20 * Math.Log10(4 * Math.PI * spacing * 1.090e9 / SpeedOfLight)) - (2 * 2.15);
        var sheet = new Assessor().Assess(Twin).Sheet("antenna/E4/from-E1")!;
        Assert.Equal(isolation, sheet.Find("I")!.Value.Si, 1e-9);
        Assert.Equal((10 * Math.Log10(250e3)) - isolation, sheet.Find("Pr")!.Value.Si, 1e-9);
    }

    [Fact]
    public void Isolation_is_the_same_either_way_for_every_pair()
    {
        // All radios of one L-band frequency, so that both ways of a pair are worked at the same one.
        var band = new Band(Frequency.Of(1060, "MHz"), Frequency.Of(1060, "MHz"));
        var job = Twin with { Parts = Twin.Parts with { Equipment = new(Twin.Parts.Equipment!.Select(p => p with { Radios = p.Radios is null ? null : new(p.Radios.Select(r => r.Transmit is null || r.Transmit.From > Frequency.Of(2, "GHz") || r.Transmit.To < Frequency.Of(900, "MHz") ? r : r with { Transmit = band })) })) } };
        var pairs = new Assessor().Assess(job).Sheets.Where(s => s.Sheet.Calculation == "antenna-isolation").ToDictionary(s => s.Subject, s => s.Sheet.Find("I")!.Value.Si);
        var names = new[] { "E1", "E2", "E4", "E5", "ANT-D1" };
        Assert.Equal(16, pairs.Count);
        foreach (var (one, other) in from a in names from b in names where pairs.ContainsKey($"antenna/{a}/from-{b}") select (a, b))
        {
            Assert.Equal(pairs[$"antenna/{one}/from-{other}"], pairs[$"antenna/{other}/from-{one}"], 1e-9);
        }
    }

    [Fact]
    public void Boxes_that_suppress_each_other_need_not_listen_meanwhile()
    {
        var open = Twin with { Change = Twin.Change with { Circuits = Twin.Change.Circuits!.Without("C122") } };
        Assert.DoesNotContain(new Assessor().Assess(Twin).Findings, f => f.Rule == "antenna-isolation");
        var found = new Assessor().Assess(open).Findings.Where(f => f.Rule == "antenna-isolation").ToArray();
        Assert.Contains(found, f => f is { Subject: "antenna/E4", Severity: Verdict.Caution });
        Assert.Contains(found, f => f is { Subject: "antenna/E1", Severity: Verdict.Caution });
    }

    [Fact]
    public void A_line_through_a_disconnect_is_one_line_with_one_more_pair_of_connectors()
    {
        var circuit = Twin.Change.Circuits!["C124"];
        var (half, whole) = (Length.Of(2, "m"), Length.Of(4, "m"));
        var straight = Twin with { Change = Twin.Change with { Circuits = Twin.Change.Circuits.With(circuit with { Length = whole }) } };
        var divided = Twin with
        {
            Change = Twin.Change with
            {
                Joints = new([.. Twin.Change.Joints!, new Joint("D9", JointKind.Disconnect, Twin.Change.Antennas!["E1"].Node)]),
                Circuits = new([.. Twin.Change.Circuits.Without("C124"), circuit with { Id = "C124B", From = circuit.To, To = new Endpoint("D9"), Length = half }, circuit with { Id = "C124A", To = new Endpoint("D9"), Length = half }]),
            },
        };
        double Loss(Job job, string id) => new Assessor().Assess(job).Sheet($"circuit/{id}/loss")!.Find("A")!.Value.Si;
        Assert.Equal(Loss(straight, "C124") + (0.1 * Math.Sqrt(1.090)), Loss(divided, "C124A"), 1e-9);
        Assert.DoesNotContain(new Assessor().Assess(divided).Findings, f => f.Rule == "radio-unknown");
    }

    // 121.150 MHz times 13 is 1574.950 MHz, in the band of the position source; 118.000 times 13 is 1534 and times 14 is past what is looked at.
    [Theory]
    [InlineData(121.150, true)]
    [InlineData(118.000, false)]
    public void A_harmonic_needs_a_test_only_where_it_falls_into_the_band(double megahertz, bool hit)
    {
        var channel = new Band(Frequency.Of(megahertz, "MHz"), Frequency.Of(megahertz, "MHz"));
        var radio = Twin.Parts.Equipment!["EX-CM1"];
        var job = Twin with
        {
            Parts = Twin.Parts with { Equipment = Twin.Parts.Equipment.With(radio with { Radios = new(radio.Radios!.Select(r => r with { Transmit = channel })) }) },
            Change = Twin.Change with { Tests = Twin.Change.Tests!.Without("T9") },
        };
        Assert.Equal(hit, new Assessor().Assess(job).Findings.Any(f => f is { Rule: "harmonics", Subject: "radio/GPS1" }));
    }

    [Fact]
    public void Two_antennas_that_were_there_before_are_not_the_changes_affair()
    {
        var near = Twin.Aircraft.Antennas!["ANT-V1"].Place with { Fs = Length.Of(5.31, "m") };
        var job = Twin with { Aircraft = Twin.Aircraft with { Antennas = Twin.Aircraft.Antennas.With(Twin.Aircraft.Antennas["ANT-V2"] with { Place = near }) } };
        Assert.Equal(Lines(new Assessor().Assess(Twin)), Lines(new Assessor().Assess(job)));
    }

    [Fact]
    public void An_antenna_of_which_nothing_is_known_is_said_once()
    {
        var box = Twin.Parts.Equipment!["ZZ-TR40"];
        var job = Twin with { Parts = Twin.Parts with { Equipment = Twin.Parts.Equipment.With(box with { Radios = null }) } };
        var found = new Assessor().Assess(job).Findings.Where(f => f.Rule == "radio-unknown").ToArray();
        Assert.Equal(["antenna/E1", "antenna/E2"], found.Select(f => f.Subject));
        Assert.All(found, f => Assert.Equal(Verdict.CannotTell, f.Severity));
        Assert.NotNull(new Assessor().Assess(job).Sheet("circuit/C124/loss"));
    }

    [Fact]
    public void An_edit_runs_only_what_it_bears_on_and_ends_as_a_fresh_check()
    {
        var assessor = new Assessor();
        assessor.Assess(Twin);
        var before = assessor.Runs;
        // What the receiver behind E4 withstands bears on what reaches it: from E1, E2 and the old L-band antenna.
        var box = Twin.Parts.Equipment!["ZZ-TS70"];
        var weaker = Twin with { Parts = Twin.Parts with { Equipment = Twin.Parts.Equipment.With(box with { Radios = box.Radios!.With(box.Radios["top"] with { Damage = 29 }) }) } };
        var again = assessor.Assess(weaker);
        Assert.Equal(3, assessor.Runs - before);
        var fresh = new Assessor().Assess(weaker);
        Assert.Equal(fresh.Findings, again.Findings);
        Assert.Equal(Lines(fresh), Lines(again));
        Assert.Equal(Lines(new Assessor().Assess(Twin)), Lines(assessor.Assess(Twin)));
        Assert.Equal(3, assessor.Runs - before);
    }

    private static string[] Lines(Assessment assessment) =>
        [.. assessment.Sheets.Where(s => s.Sheet.Discipline() == Discipline.Radio).Select(s => $"{s.Subject}: {s.Sheet.Verdict} {string.Join(' ', s.Sheet.Steps.Select(x => x.Value))}")];
}

file static class Sheets
{
    public static Discipline Discipline(this Sheet sheet) => CalculationCatalog.All.Single(e => e.Info.Name == sheet.Calculation).Info.Discipline;
}
