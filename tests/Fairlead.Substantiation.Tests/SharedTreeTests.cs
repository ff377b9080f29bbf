using CsCheck;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Routing;

namespace Fairlead.Tests.Substantiation;

public sealed class SharedTreeTests
{
    // A trunk of 100 in with three branches of 10 in: three wires through it take 330 in, one tree 130 in (by hand).
    private static readonly (int, int, double, double)[] Trunk = [(0, 1, 100, 0), (1, 2, 10, 0), (1, 3, 10, 0), (1, 4, 10, 0)];

    [Fact]
    public void A_net_drawn_as_a_star_is_held_against_the_tree_that_parts_where_its_ways_part()
    {
        var tree = Assert.Single(SharedTrees.Of(new Assessor().Assess(Star(Trunk, [2, 3, 4]))));
        Assert.Equal(330, tree.Drawn.In("in"), 1e-9);
        Assert.Equal(130, tree.Tree.In("in"), 1e-9);
        Assert.Equal((tree.Tree, true), (tree.Bound, tree.Proved));
        Assert.Equal(["N1"], tree.Branches);
        Assert.Equal(["S0", "S1", "S2", "S3"], tree.Segments);
        Assert.Equal(200.0 / 330, tree.Saving.Si, 1e-9);
    }

    [Fact]
    public void Circuits_from_one_stud_are_one_net_only_where_the_job_allows_them_to_be_drawn_anew()
    {
        var job = RoutingJob.Of(5, Trunk, RoutingJob.Wire("C1", 0, 2), RoutingJob.Wire("C2", 0, 3), RoutingJob.Wire("C3", 0, 4));
        Assert.Empty(SharedTrees.Of(new Assessor().Assess(job)));
        var allowed = job with { Change = job.Change with { Wiring = job.Change.Wiring with { Redraw = ["GS0"] } } };
        Assert.Equal(130, Assert.Single(SharedTrees.Of(new Assessor().Assess(allowed))).Tree.In("in"), 1e-9);
    }

    [Fact]
    public void A_joint_without_a_point_is_no_end_and_the_tree_keeps_out_of_what_a_circuit_avoids()
    {
        var job = Star([.. Trunk, (2, 3, 1, 0)], [2, 3, 4]);
        job = job with { Change = job.Change with { Joints = new([new Joint("TB1", JointKind.Terminal)]), Circuits = job.Change.Circuits!.With(job.Change.Circuits["C2"] with { Avoid = ["S4"] }) } };
        var tree = Assert.Single(SharedTrees.Of(new Assessor().Assess(job)));
        Assert.Equal(["N2", "N3", "N4"], tree.Ends);
        Assert.Equal(30, tree.Tree.In("in"), 1e-9);
    }

    // Second method: every set of segments is tried.
    [Fact]
    public void On_small_raceways_no_set_of_segments_joins_the_ends_with_less() => Gen.Select(
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[1, 40]).Array[3, 5], Gen.Int[1, 5].Array[2, 4]).Sample(
        (more, ends) =>
        {
            (int From, int To, double Inches, double Capacity)[] real =
                [.. Enumerable.Range(0, 5).Select(n => (n, n + 1, 25.0, 0.0)), .. more.Where(s => s.Item1 != s.Item2).Select(s => (s.Item1, s.Item2, (double)s.Item3, 0.0))];
            var trees = SharedTrees.Of(new Assessor().Assess(Star(real, ends)));
            int[] joined = [0, .. ends.Distinct()];
            Assert.Equal(joined.Length > 2, trees.Length == 1);
            foreach (var tree in trees)
            {
                Assert.True(tree.Proved);
                Assert.Equal(Least(real, joined), tree.Tree.In("in"), 1e-9);
                Assert.True(tree.Tree.Si <= tree.Drawn.Si * (1 + 1e-12));
            }
        },
        iter: 100);

    // A terminal at the first point with a circuit to the stud of each end.
    private static Job Star((int, int, double, double)[] segments, int[] ends)
    {
        var job = RoutingJob.Of(6, segments, [.. ends.Select((e, i) => RoutingJob.Wire($"C{i + 1}", e, e) with { From = new Endpoint("TB1") })]);
        return job with { Change = job.Change with { Joints = new([new Joint("TB1", JointKind.Terminal, RoutingJob.Node(0))]) } };
    }

    private static double Least((int From, int To, double Inches, double Capacity)[] segments, int[] ends) => Enumerable.Range(0, 1 << segments.Length)
        .Select(set => Enumerable.Range(0, segments.Length).Where(s => (set & (1 << s)) != 0).Select(s => segments[s]).ToArray())
        .Where(set => Joins(set, ends)).Min(set => set.Sum(s => s.Inches));

    private static bool Joins((int From, int To, double Inches, double Capacity)[] segments, int[] ends)
    {
        var (reached, before) = (new HashSet<int> { ends[0] }, 0);
        while (reached.Count > before)
        {
            before = reached.Count;
            reached.UnionWith([.. segments.Where(s => reached.Contains(s.From) || reached.Contains(s.To)).SelectMany(s => new[] { s.From, s.To })]);
        }

        return ends.All(reached.Contains);
    }
}
