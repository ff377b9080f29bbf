using CsCheck;
using Fairlead.Bench;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

public sealed class RoutingTests
{
    private static readonly double Wire20 = Base.Parts.Wires!["W20"].Diameter.Si;

    private static Job Base => GeneratedJob.Of(40);

    [Fact]
    public void Where_everything_fits_each_circuit_takes_its_shortest_way_and_that_is_the_least()
    {
        var assessment = new Assessor().Assess(Base);
        Assert.All(assessment.Circuits, c => Assert.Equal(c.Shortest, c.Way?.Length));
        Assert.Equal((assessment.Routing.Mass, true, 0), (assessment.Routing.Bound, assessment.Routing.Proved, assessment.Routing.Detours.Length));
    }

    // Second method: every choice of simple ways is tried.
    [Fact]
    public void On_small_raceways_the_ways_are_those_of_trying_every_choice() => Gen.Select(
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[5, 40], Gen.Int[1, 3]).Array[5, 7],
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4]).Array[2, 4]).Sample(
        (segments, ends) =>
        {
            (int From, int To, double Inches, double Capacity)[] real = [.. segments.Where(s => s.Item1 != s.Item2).Select(s => (s.Item1, s.Item2, (double)s.Item3, Capacity(s.Item4)))];
            (int From, int To)[] wanted = [.. ends.Where(e => e.Item1 != e.Item2 && Paths(real, e.Item1, e.Item2).Any())];
            var assessment = new Assessor().Assess(RoutingJob.Of(5, real, [.. wanted.Select((e, i) => RoutingJob.Wire($"C{i}", e.From, e.To))]));
            var least = Least(real, wanted);
            Assert.Equal(double.IsFinite(least), assessment.Findings.All(f => f.Rule != "raceway-fill"));
            Assert.True(assessment.Routing.Proved);
            if (double.IsFinite(least))
            {
                Assert.Equal(least, assessment.Circuits.Sum(c => c.Way!.Length.In("in")), 1e-6);
                Assert.Equal(assessment.Routing.Bound.Si, assessment.Routing.Mass.Si, 1e-12);
            }
        },
        iter: 300);

    [Fact]
    public void A_full_segment_that_nothing_relieves_is_named_with_what_would_free_it()
    {
        var assessment = new Assessor().Assess(RoutingJob.Of(2, [(0, 1, 20, Capacity(1))], RoutingJob.Wire("C1", 0, 1), RoutingJob.Wire("C2", 0, 1)));
        var finding = Assert.Single(assessment.Findings, f => f.Rule == "raceway-fill");
        Assert.Contains("More room in S0", finding.Remedy);
        Assert.Contains("proves", finding.Remedy);
    }

    [Fact]
    public void A_circuit_without_a_way_says_which_segments_would_give_it_one()
    {
        var barred = RoutingJob.Wire("C1", 0, 2) with { Avoid = ["S1", "S2"] };
        var finding = Assert.Single(new Assessor().Assess(RoutingJob.Of(3, [(0, 1, 10, 0), (1, 2, 10, 0), (0, 2, 90, 0)], barred)).Findings, f => f.Rule == "no-route");
        Assert.Contains("Freeing S1, which its 'avoid' names", finding.Message);
    }

    // The shortest way of one circuit lies across both ways of the pair: taking it first leaves the other none.
    [Fact]
    public void Circuits_that_back_each_other_up_take_ways_apart_even_where_the_shortest_blocks_the_other()
    {
        (int, int, double, double)[] trap = [(0, 1, 10, 0), (1, 4, 30, 0), (0, 2, 30, 0), (2, 4, 10, 0), (1, 2, 5, 0)];
        var assessment = new Assessor().Assess(RoutingJob.Of(5, trap, RoutingJob.Wire("C1", 0, 4) with { Redundant = "pair" }, RoutingJob.Wire("C2", 0, 4) with { Redundant = "pair" }));
        Assert.Empty(assessment.Circuits[0].Way!.Segments.Intersect(assessment.Circuits[1].Way!.Segments));
        Assert.Equal(80, assessment.Circuits.Sum(c => c.Way!.Length.In("in")), 1e-9);
        Assert.DoesNotContain(assessment.Findings, f => f.Rule == "redundant-way");
    }

    [Fact]
    public void A_segment_that_both_of_a_pair_need_is_named_and_the_rest_still_kept_apart()
    {
        var assessment = new Assessor().Assess(RoutingJob.Of(3, [(0, 1, 10, 0), (1, 2, 10, 0), (1, 2, 15, 0)], RoutingJob.Wire("C1", 0, 2) with { Redundant = "pair" }, RoutingJob.Wire("C2", 0, 2) with { Redundant = "pair" }));
        Assert.Equal(["S0"], assessment.Circuits[0].Way!.Segments.Intersect(assessment.Circuits[1].Way!.Segments));
        Assert.Contains("share segment S0", Assert.Single(assessment.Findings, f => f.Rule == "redundant-way").Message);
    }

    [Fact]
    public void Classes_that_stay_apart_take_different_segments_and_keep_out_of_each_others()
    {
        var job = RoutingJob.Of(2, [(0, 1, 10, 0), (0, 1, 12, 0), (0, 1, 11, 0)], RoutingJob.Wire("C1", 0, 1) with { Separation = "a" }, RoutingJob.Wire("C2", 0, 1) with { Separation = "b" }, RoutingJob.Wire("C3", 0, 1));
        job = job with { Change = job.Change with { Wiring = job.Change.Wiring with { KeepApart = [new("a", "b")] } } };
        job = job with { Aircraft = job.Aircraft with { Segments = job.Aircraft.Segments!.With(job.Aircraft.Segments["S2"] with { Separation = "b" }) } };
        var ways = new Assessor().Assess(job).Circuits.Select(c => Assert.Single(c.Way!.Segments)).ToArray();
        Assert.Equal(["S0", "S2", "S0"], ways);
    }

    [Theory]
    [InlineData(0.0001, "S0")]
    [InlineData(10, "S1")]
    public void A_panel_is_opened_for_wires_only_where_they_weigh_more_than_its_hours(double kilogram, string segment)
    {
        var job = RoutingJob.Of(2, [(0, 1, 10, 0), (0, 1, 60, 0)], RoutingJob.Wire("C1", 0, 1), RoutingJob.Wire("C2", 0, 1));
        var half = new ThreePoint(Duration.Of(20, "min"), Duration.Of(30, "min"), Duration.Of(60, "min"));
        job = job with
        {
            Aircraft = job.Aircraft with { Panels = new([new Panel("P", "Panel", PanelKind.Floor, "cabin", half, half)]), Segments = job.Aircraft.Segments!.With(job.Aircraft.Segments["S0"] with { Panels = ["P"] }) },
            Change = job.Change with { Wiring = job.Change.Wiring with { AccessHour = Mass.Of(kilogram, "kg") } },
        };
        Assert.All(new Assessor().Assess(job).Circuits, c => Assert.Equal([segment], c.Way!.Segments));
    }

    // Second method: each segment's share and each end's length on their own.
    [Fact]
    public void The_centre_of_a_wire_is_that_of_its_segments_and_of_what_lies_at_its_ends()
    {
        var job = Base;
        var defaults = job.Change.Wiring;
        foreach (var c in new Assessor().Assess(job).Circuits)
        {
            Length End(Endpoint e) => defaults.Termination + (e.IsPoint ? Length.Zero : defaults.ServiceLoop);
            var parts = c.Way!.Segments.Select((s, i) => (At: Middle(job, c.Way.Nodes[i], c.Way.Nodes[i + 1]), Metres: Straight(job, s) * (1 + defaults.Slack.Si)))
                .Append((At: Middle(job, c.Way.Nodes[0], c.Way.Nodes[0]), Metres: End(c.Circuit.From).Si)).Append((At: Middle(job, c.Way.Nodes[^1], c.Way.Nodes[^1]), Metres: End(c.Circuit.To).Si)).ToArray();
            var total = parts.Sum(p => p.Metres);
            Assert.Equal(total, c.Length!.Value.Si, 1e-9);
            Assert.Equal(parts.Sum(p => p.At.Fs.Si * p.Metres) / total, c.Centre!.Fs.Si, 1e-9);
            Assert.Equal(parts.Sum(p => p.At.Bl.Si * p.Metres) / total, c.Centre.Bl.Si, 1e-9);
            Assert.Equal(parts.Sum(p => p.At.Wl.Si * p.Metres) / total, c.Centre.Wl.Si, 1e-9);
        }
    }

    // Second method: every point is tried for both joints.
    [Fact]
    public void Joints_without_a_point_stand_where_their_wires_weigh_least() => Gen.Select(
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[5, 40]).Array[6, 10], Gen.Int[0, 5].Array[5]).Sample(
        (segments, ends) =>
        {
            (int From, int To, double Inches, double Capacity)[] real = [.. segments.Select(s => (s.Item1, s.Item2, (double)s.Item3, 0.0)), .. Enumerable.Range(0, 5).Select(n => (n, n + 1, 60.0, 0.0))];
            real = [.. real.Where(s => s.From != s.To)];
            Circuit To(string id, string joint, int end) => RoutingJob.Wire(id, end, end) with { From = new Endpoint(joint) };
            var job = RoutingJob.Of(6, real, To("C1", "TB1", ends[0]), To("C2", "TB1", ends[1]), RoutingJob.Wire("C3", 0, 0) with { From = new Endpoint("TB1"), To = new Endpoint("TB2") }, To("C4", "TB2", ends[2]), To("C5", "TB2", ends[3]), To("C6", "TB2", ends[4]));
            job = job with { Change = job.Change with { Joints = new([new Joint("TB1", JointKind.Terminal), new Joint("TB2", JointKind.Terminal)]) } };
            var far = Far(real, 6);
            var least = Enumerable.Range(0, 6).SelectMany(a => Enumerable.Range(0, 6).Select(b => far[a, ends[0]] + far[a, ends[1]] + far[a, b] + far[b, ends[2]] + far[b, ends[3]] + far[b, ends[4]])).Min();
            Assert.Equal(least, new Assessor().Assess(job).Circuits.Sum(c => c.Way!.Length.In("in")), 1e-6);
        },
        iter: 100);

    // Second method: every pair of simple ways is tried.
    [Fact]
    public void Two_that_back_each_other_up_weigh_what_the_lightest_of_all_pairs_apart_does() => Gen.Select(
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[5, 40]).Array[6, 11], Gen.Bool, Gen.Bool).Sample(
        (segments, alike, turned) =>
        {
            (int From, int To, double Inches, double Capacity)[] real = [.. segments.Where(s => s.Item1 != s.Item2).Select(s => (s.Item1, s.Item2, (double)s.Item3, 0.0))];
            var paths = Paths(real, 0, 5).ToArray();
            var (one, other) = (Wire("W20"), Wire(alike ? "W20" : "W22"));
            double Metres(int[] path) => path.Sum(s => Length.Of(real[s].Inches, "in").Si);
            var least = (from a in paths from b in paths where !a.Intersect(b).Any() select (double?)((Metres(a) * one.Mass.Si) + (Metres(b) * other.Mass.Si))).Min();
            var pair = RoutingJob.Wire("C2", turned ? 5 : 0, turned ? 0 : 5, other.Id) with { Redundant = "pair" };
            var assessment = new Assessor().Assess(RoutingJob.Of(6, real, RoutingJob.Wire("C1", 0, 5, one.Id) with { Redundant = "pair" }, pair));
            if (least is { } mass)
            {
                Assert.Equal(mass, assessment.Routing.Mass.Si, mass * 1e-9);
                Assert.Equal(mass, assessment.Routing.Bound.Si, mass * 1e-9);
                Assert.True(assessment.Routing.Proved);
            }
        },
        iter: 500);

    // The first step apart is already the lightest pair: the bound of pairs proves it, where that of shortest ways would leave a search.
    [Fact]
    public void A_lightest_pair_is_proved_without_a_search()
    {
        (int, int, double, double)[] ladder = [.. Enumerable.Range(0, 12).SelectMany(i => new[] { (i, i + 1, 10.0, 0.0), (i, i + 1, 11.0, 0.0) })];
        var routing = new Assessor().Assess(RoutingJob.Of(13, ladder, RoutingJob.Wire("C1", 0, 12) with { Redundant = "pair" }, RoutingJob.Wire("C2", 0, 12) with { Redundant = "pair" })).Routing;
        Assert.True(routing.Proved);
        Assert.InRange(routing.Steps, 1, 12);
    }

    private static WirePart Wire(string id) => Base.Parts.Wires![id];

    private static double Capacity(int wires) => new Length(BundleDiameter.Of(new([new(new Length(Wire20), wires)])).Si * 1.0001).In("in");

    private static Place Middle(Job job, string a, string b)
    {
        var (x, y) = (job.Aircraft.Nodes![a].Place, job.Aircraft.Nodes[b].Place);
        return new((x.Fs + y.Fs) / 2, (x.Bl + y.Bl) / 2, (x.Wl + y.Wl) / 2);
    }

    private static double Straight(Job job, string segment) => job.Aircraft.Nodes![job.Aircraft.Segments![segment].From].Place.To(job.Aircraft.Nodes[job.Aircraft.Segments[segment].To].Place).Si;

    private static IEnumerable<int[]> Paths((int From, int To, double Inches, double Capacity)[] segments, int from, int to, int[]? seen = null, int[]? used = null)
    {
        (seen, used) = (seen ?? [from], used ?? []);
        return from == to ? [used] : segments.Select((s, i) => (i, next: s.From == from ? s.To : s.To == from ? s.From : -1)).Where(x => x.next >= 0 && !seen.Contains(x.next))
            .SelectMany(x => Paths(segments, x.next, to, [.. seen, x.next], [.. used, x.i]));
    }

    private static double Least((int From, int To, double Inches, double Capacity)[] segments, (int From, int To)[] ends)
    {
        IEnumerable<int[][]> choices = [[]];
        choices = ends.Aggregate(choices, (all, e) => all.SelectMany(c => Paths(segments, e.From, e.To).Select(p => (int[][])[.. c, p])));
        return choices.Where(c => c.SelectMany(p => p).GroupBy(s => s).All(g => BundleDiameter.Of(new([new(new Length(Wire20), g.Count())])).In("in") <= segments[g.Key].Capacity))
            .Select(c => c.Sum(p => p.Sum(s => segments[s].Inches))).DefaultIfEmpty(double.PositiveInfinity).Min();
    }

    private static double[,] Far((int From, int To, double Inches, double Capacity)[] segments, int points)
    {
        var far = new double[points, points];
        for (var a = 0; a < points; a++)
        {
            for (var b = 0; b < points; b++)
            {
                far[a, b] = a == b ? 0 : segments.Where(s => (s.From, s.To) == (a, b) || (s.From, s.To) == (b, a)).Select(s => s.Inches).DefaultIfEmpty(1e9).Min();
            }
        }

        for (var k = 0; k < points; k++)
        {
            for (var a = 0; a < points; a++)
            {
                for (var b = 0; b < points; b++)
                {
                    far[a, b] = Math.Min(far[a, b], far[a, k] + far[k, b]);
                }
            }
        }

        return far;
    }
}
