using CsCheck;
using Fairlead.Bench;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

public sealed class IncrementTests
{
    private static readonly Job Start = GeneratedJob.Of(400);

    [Fact]
    public void The_generated_job_has_wires_for_every_circuit_and_nothing_fails()
    {
        var assessment = new Assessor().Assess(Start);
        Assert.Equal(400, assessment.Circuits.Length);
        Assert.All(assessment.Circuits, c => Assert.NotNull(c.Wire));
        Assert.DoesNotContain(assessment.Findings, f => f.Severity > Verdict.Caution);
    }

    [Fact]
    public void Assessing_the_same_job_again_runs_nothing()
    {
        var assessor = new Assessor();
        assessor.Assess(Start);
        var before = assessor.Runs;
        assessor.Assess(Start);
        assessor.Assess(Start with { Change = Start.Change with { Title = "Another title" } });
        assessor.Assess(GeneratedJob.Of(400));
        Assert.Equal(before, assessor.Runs);
    }

    [Fact]
    public void Editing_one_circuit_runs_a_few_calculations_only()
    {
        var assessor = new Assessor();
        assessor.Assess(Start);
        var before = assessor.Runs;
        var circuit = Start.Change.Circuits!["S3_7"];
        assessor.Assess(With(Start, circuit with { Current = Current.Of(1.5, "A") }));
        Assert.InRange(assessor.Runs - before, 1, 200);
    }

    [Fact]
    public void After_any_edits_the_result_is_that_of_a_fresh_assessment() =>
        Gen.Select(Gen.Int[0, 7], Gen.Int[0, 399], Gen.Int[0, 47]).Array[1, 6].Sample(edits =>
        {
            var (job, assessor) = (Start, new Assessor());
            assessor.Assess(job);
            foreach (var (kind, which, number) in edits)
            {
                job = Edited(job, kind, which, number);
                AssertSame(new Assessor().Assess(job), assessor.Assess(job));
            }
        }, iter: 24);

    // Some segments have little room, so that many circuits must go round: the way of each is then a matter of all.
    [Fact]
    public void After_any_edits_of_a_crowded_job_the_result_is_that_of_a_fresh_assessment() =>
        Gen.Select(Gen.Int[0, 7], Gen.Int[0, 199], Gen.Int[0, 47]).Array[1, 4].Sample(edits =>
        {
            var (job, assessor) = (Crowded, new Assessor());
            Assert.NotEmpty(assessor.Assess(job).Routing.Detours);
            foreach (var (kind, which, number) in edits)
            {
                job = Edited(job, kind, which, number);
                var (fresh, kept) = (new Assessor().Assess(job), assessor.Assess(job));
                AssertSame(fresh, kept);
                Assert.Equal(fresh.Circuits.Select(Ways), kept.Circuits.Select(Ways));
                Assert.Equal((fresh.Routing.Mass, fresh.Routing.Bound), (kept.Routing.Mass, kept.Routing.Bound));
            }
        }, iter: 6);

    private static readonly Job Crowded = Start200 with { Aircraft = Start200.Aircraft with { Segments = new(Start200.Aircraft.Segments!.Select((s, i) => s with { Capacity = Length.Of(i % 7 == 1 ? 0.3 : 15, "in") })) } };

    private static Job Start200 => GeneratedJob.Of(200);

    private static string Ways(CircuitResult c) => c.Way is null ? "" : string.Join(' ', c.Way.Segments);

    private static Job Edited(Job job, int kind, int which, int number)
    {
        var circuits = job.Change.Circuits!;
        var circuit = circuits[which % circuits.Count];
        return kind switch
        {
            0 => With(job, circuit with { Current = Current.Of(number / 10.0, "A") }),
            1 => With(job, circuit with { Wire = number % 2 == 0 ? "W20" : "auto" }),
            2 => With(job, circuit with { Bundle = $"S{number % 20}" }),
            3 => job with { Change = job.Change with { Circuits = circuits.Without(circuit.Id) } },
            4 => With(job, circuit with { Id = $"X{number}", From = new Endpoint($"GS{number}") }),
            5 => With(job, circuit with { Length = Length.Of(10 + number, "ft") }),
            6 => job with { Aircraft = job.Aircraft with { Segments = job.Aircraft.Segments!.With(job.Aircraft.Segments[number] with { Hottest = Temperature.Of(50 + number, "°C") }) } },
            _ => With(job, circuit with { From = new Endpoint($"CB{number % 20}"), Cable = number % 3 == 0 ? "K1" : "" }),
        };
    }

    private static Job With(Job job, Circuit circuit) => job with { Change = job.Change with { Circuits = job.Change.Circuits!.With(circuit) } };

    private static void AssertSame(Assessment fresh, Assessment kept)
    {
        Assert.Equal(fresh.Marks, kept.Marks);
        Assert.Equal(fresh.Findings, kept.Findings);
        Assert.Equal(fresh.Kit.Lines.AsEnumerable(), kept.Kit.Lines);
        Assert.Equal(fresh.Cuts.AsEnumerable(), kept.Cuts);
        Assert.Equal(fresh.Circuits.Select(Text), kept.Circuits.Select(Text));
        Assert.Equal(fresh.Feeds.Select(f => f.ToString()), kept.Feeds.Select(f => f.ToString()));
        Assert.Equal(fresh.Bundles.Select(b => (b.Segment, b.Name, b.Wires, b.Current, b.Loading, string.Join(' ', b.Circuits))), kept.Bundles.Select(b => (b.Segment, b.Name, b.Wires, b.Current, b.Loading, string.Join(' ', b.Circuits))));
    }

    private static string Text(CircuitResult r) => (r with { Way = null }).ToString();
}
