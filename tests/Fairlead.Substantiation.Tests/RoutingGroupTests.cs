using CsCheck;
using Fairlead.Bench;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

public sealed class RoutingGroupTests
{
    private const int Points = 5;
    private static readonly Gen<((int, int, double, double)[] Segments, (int, int)[] Ends)> Crowd = Gen.Select(
        Gen.Select(Gen.Int[0, Points - 1], Gen.Int[0, Points - 1], Gen.Int[5, 40], Gen.Int[1, 3]).Array[5, 8],
        Gen.Select(Gen.Int[0, Points - 1], Gen.Int[0, Points - 1]).Array[2, 5],
        (s, e) => (s.Where(x => x.Item1 != x.Item2).Select(x => (x.Item1, x.Item2, (double)x.Item3, Capacity(x.Item4))).ToArray(), e));

    [Fact]
    public void Crowds_that_have_nothing_to_do_with_each_other_are_arranged_as_if_each_were_alone() => Gen.Select(Crowd, Crowd).Sample(
        (one, other) =>
        {
            var both = new Assessor().Assess(Job([.. one.Segments, .. other.Segments.Select(s => (s.Item1 + Points, s.Item2 + Points, s.Item3, s.Item4))], [.. one.Ends, .. other.Ends.Select(e => (e.Item1 + Points, e.Item2 + Points))], 2 * Points));
            var (a, b) = (new Assessor().Assess(Job(one.Segments, one.Ends, Points)), new Assessor().Assess(Job(other.Segments, other.Ends, Points)));
            Assert.Equal(a.Circuits.Concat(b.Circuits).Select(c => c.Way?.Length), both.Circuits.Select(c => c.Way?.Length));
            Assert.Equal(a.Routing.Bound.Si + b.Routing.Bound.Si, both.Routing.Bound.Si, 1e-12);
            Assert.Equal(a.Routing.Steps + b.Routing.Steps, both.Routing.Steps);
            Assert.Equal(a.Routing.Proved && b.Routing.Proved, both.Routing.Proved);
        },
        iter: 60);

    // Each round but the last gives some circuit a thicker wire than any before, so n circuits and k wires take n (k − 1) + 1 rounds at most.
    [Fact]
    public void Ways_and_wire_sizes_settle_within_the_rounds_that_are_proved() => Gen.Select(Gen.Double[0.1, 0.6], Gen.Int[2, 9], Gen.Int[1, 30]).Sample(
        (inches, every, amperes) =>
        {
            var job = GeneratedJob.Of(40);
            job = job with
            {
                Aircraft = job.Aircraft with { Segments = new(job.Aircraft.Segments!.Select((s, i) => s with { Capacity = Length.Of(i % every == 1 ? inches : 15, "in") })) },
                Change = job.Change with { Circuits = new(job.Change.Circuits!.Select((c, i) => c with { Wire = "auto", Current = i % 3 == 0 ? Current.Of(amperes, "A") : c.Current })) },
            };
            var assessment = new Assessor().Assess(job);
            var wires = job.Parts.Wires!.Count(w => w.Family == job.Change.Wiring.Family);
            Assert.InRange(assessment.Routing.Rounds, 0, (job.Change.Circuits!.Count * (wires - 1)) + 1);
            Assert.True(assessment.Routing.Bound.Si <= assessment.Routing.Mass.Si * (1 + 1e-12));
        },
        iter: 25);

    private static Job Job((int, int, double, double)[] segments, (int, int)[] ends, int points) =>
        RoutingJob.Of(points, segments, [.. ends.Select((e, i) => RoutingJob.Wire($"C{i}", e.Item1, e.Item2))]);

    private static double Capacity(int wires) => new Length(BundleDiameter.Of(new([new(GeneratedJob.Of(40).Parts.Wires!["W20"].Diameter, wires)])).Si * 1.0001).In("in");
}
