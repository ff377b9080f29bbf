using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>The demonstration jobs: one that holds, and the same with a fault for each rule. The table beside the second says what each
/// fault is and what must be found.</summary>
public sealed class DemoTests
{
    private const string Mark = "  # fault ";
    private static readonly string Demo = Path.Combine(AppContext.BaseDirectory, "demo");
    private static readonly Lazy<Job> Twin = new(() => Load("survey-twin"));

    [Theory]
    [InlineData("survey-twin")]
    [InlineData("with-faults")]
    public void A_demonstration_job_is_read_without_problems(string name) => Assert.Empty(JobFolder.Load(Path.Combine(Demo, name)).Problems);

    [Fact]
    public void The_survey_twin_holds_but_for_an_accepted_caution()
    {
        var assessment = new Assessor().Assess(Twin.Value);
        var finding = Assert.Single(assessment.Findings);
        Assert.Equal(("record-revision", Verdict.Caution, "CON1"), (finding.Rule, finding.Severity, finding.Accepted?.Id));
        Assert.All(assessment.Circuits, c => Assert.Equal(Verdict.Holds, c.Verdict));
    }

    [Fact]
    public void What_cannot_be_told_for_the_range_of_a_method_is_not_mended_by_what_mends_a_broken_rule()
    {
        var finding = new Assessor().Assess(Load("with-faults")).Findings.Single(f => f is { Rule: "bundle-diameter", Subject: "segment/S29" });
        Assert.Equal(Verdict.CannotTell, finding.Severity);
        Assert.Contains("Correct the value", finding.Remedy);
    }

    [Fact]
    public void The_survey_twin_is_a_whole_job()
    {
        var (aircraft, change, parts) = (Twin.Value.Aircraft, Twin.Value.Change, Twin.Value.Parts);
        Assert.InRange(change.Circuits!.Count, 75, 200);
        Assert.InRange(aircraft.Panels!.Count, 20, 100);
        Assert.InRange(aircraft.Zones.Count, 6, 50);
        Assert.InRange(aircraft.Nodes!.Count, 20, 100);
        Assert.InRange(aircraft.Segments!.Count, 22, 100);
        Assert.InRange(aircraft.Loads!.Count, 25, 100);
        Assert.InRange(aircraft.Equipment!.Count, 25, 100);
        Assert.InRange(aircraft.Buses!.Count, 2, 10);
        Assert.InRange(aircraft.Conditions!.Count, 7, 20);
        Assert.InRange(parts.Connectors!.Count, 5, 50);
        Assert.InRange(change.Fit!.Sum(f => parts.Equipment![f.Part].Connectors!.Count), 15, 100);
        Assert.Contains(change.Circuits, c => c.Wire == "auto");
        Assert.Equal([10, 12, 14, 16, 18, 20, 22, 24], parts.Wires!.Select(w => w.Gauge.Number).Where(n => n >= 10).Order());
    }

    [Fact]
    public void Every_contact_that_must_be_wired_is_and_none_that_must_not_be()
    {
        var (change, parts) = (Twin.Value.Change, Twin.Value.Parts);
        var wired = change.Circuits!.SelectMany(c => new[] { c.From, c.To }).ToHashSet();
        foreach (var item in change.Fit!)
        {
            Assert.All(parts.Equipment![item.Part].Contacts!, c =>
            {
                Assert.True(Endpoint.TryRead($"{item.Id} {c.Id}", out var end));
                Assert.True(wired.Contains(end) || !c.Required, $"{end} is not wired.");
                Assert.False(wired.Contains(end) && c.Kind == SignalKind.Reserved, $"{end} is reserved.");
            });
        }
    }

    [Fact]
    public void The_job_with_faults_has_exactly_the_findings_of_its_table()
    {
        var findings = new Assessor().Assess(Load("with-faults")).Findings;
        var planned = Rules.Plan().Select(r => r.Id).ToHashSet();
        var expected = Table().Where(row => !planned.Contains(row.Rule)).Select(row => $"{row.Rule} of {row.Subject}").Append("record-revision of balance/revision").Order(StringComparer.Ordinal);
        Assert.Equal(expected, findings.Select(f => $"{f.Rule} of {f.Subject}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Where_the_table_ends_the_size_cannot_be_told_and_does_not_fail()
    {
        var sizes = new Assessor().Assess(Load("with-faults")).Findings.Where(f => f.Rule == "wire-size").ToDictionary(f => f.Subject, f => f.Severity);
        Assert.Equal(Verdict.CannotTell, sizes["circuit/C601"]);
        Assert.Equal(Verdict.Fails, sizes["circuit/C602"]);
    }

    [Fact]
    public void The_job_with_faults_differs_from_the_other_in_marked_lines_only()
    {
        var marks = new HashSet<string>(StringComparer.Ordinal);
        foreach (var file in new FolderFiles(Path.Combine(Demo, "survey-twin")).All)
        {
            var rest = new Queue<string>(File.ReadAllLines(Path.Combine(Demo, "survey-twin", file)));
            var replaced = 0;
            foreach (var line in File.ReadAllLines(Path.Combine(Demo, "with-faults", file)))
            {
                if (line.Contains(Mark, StringComparison.Ordinal) || line.EndsWith("  # not as in survey-twin", StringComparison.Ordinal))
                {
                    marks.UnionWith(line.Split(Mark).Skip(1));
                    replaced++;
                    continue;
                }

                for (; replaced > 0 && rest.TryPeek(out var old) && old != line; replaced--)
                {
                    rest.Dequeue();
                }

                Assert.Equal(rest.Dequeue(), line);
                replaced = 0;
            }

            Assert.InRange(rest.Count, 0, replaced);
        }

        Assert.Equal(Table().Select(r => r.Fault).Distinct().Order(StringComparer.Ordinal), marks.Order(StringComparer.Ordinal));
    }

    // What no job can have beside the other faults, each by an edit of the job that holds.
    [Theory]
    [InlineData("wire-unknown", "circuit/C403")]
    [InlineData("power-input-unknown", "feed/TS1")]
    [InlineData("weighing", "balance/weighing")]
    [InlineData("empty-weight-change", "balance/empty-weight")]
    [InlineData("loading-unknown", "balance/loading-before")]
    [InlineData("suppression-alone", "net/XPD1 P1-19")]
    [InlineData("inertia-basis", "structure/basis")]
    [InlineData("inertia-loads", "equipment/XPD1")]
    [InlineData("manoeuvre-factor", "structure/factor")]
    public void A_rule_that_the_job_with_faults_cannot_show_is_reported_after_an_edit(string rule, string subject)
    {
        var findings = new Assessor().Assess(Edited(rule)).Findings;
        Assert.Contains((rule, subject), findings.Select(f => (f.Rule, f.Subject)));
    }

    private static Job Edited(string rule)
    {
        var job = Twin.Value;
        var (aircraft, change) = (job.Aircraft, job.Change);
        return rule switch
        {
            "wire-unknown" => job with { Change = change with { Circuits = change.Circuits!.With(change.Circuits["C403"] with { Wire = "W99" }) } },
            "power-input-unknown" => job with { Change = change with { Power = change.Power!.With(change.Power["TS1"] with { Input = "second" }) } },
            "weighing" => job with { Aircraft = aircraft with { Weighing = aircraft.Weighing with { Points = [.. aircraft.Weighing.Points.Take(1)] } } },
            "empty-weight-change" => job with { Change = change with { Remove = change.Remove!.With(change.Remove["OUT1"] with { Wire = Mass.Of(3000, "kg") }) } },
            "loading-unknown" => job with { Aircraft = aircraft with { Stations = null, StationGroups = null } },
            "suppression-alone" => job with { Change = change with { Circuits = change.Circuits!.Without("C121").Without("C122") } },
            "inertia-basis" => job with { Aircraft = aircraft with { Certification = aircraft.Certification with { Edition = "not told" } } },
            "inertia-loads" => job with { Aircraft = aircraft with { Certification = aircraft.Certification with { Category = "" }, LoadFactors = null } },
            "manoeuvre-factor" => job with { Aircraft = aircraft with { LoadFactors = null, Envelope = aircraft.Envelope with { MaxTakeOff = Mass.Of(9000, "kg") } } },
            _ => throw new ArgumentException($"No edit for '{rule}'.", nameof(rule)),
        };
    }

    private static Job Load(string name) => JobFolder.Load(Path.Combine(Demo, name)).Job!;

    private static IEnumerable<(string Fault, string Rule, string Subject)> Table() =>
        File.ReadAllLines(Path.Combine(Demo, "with-faults", "expected.md"))
            .Where(l => l.StartsWith("| F", StringComparison.Ordinal) && !l.StartsWith("| Fault", StringComparison.Ordinal))
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries)).Select(c => (c[1], c[4], c[5]));
}
