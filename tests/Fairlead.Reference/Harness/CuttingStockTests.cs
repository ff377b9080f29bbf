using CsCheck;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Tests.Reference.Harness;

/// <summary>Cutting plans against GLPK, known optima, and the laws any plan keeps.</summary>
public sealed class CuttingStockTests
{
    private static readonly Gen<(long[] Pieces, Stock[] Stock, CuttingOptions Options)> Problems =
        from pieces in Gen.Long[1, 60].Array[0, 9]
        from remnants in Gen.Select(Gen.Long[5, 70], Gen.Int[0, 2]).Array[0, 3]
        from reels in Gen.Select(Gen.Long[40, 100], Gen.Int[0, 4]).Array[0, 2]
        from kerf in Gen.Long[0, 3]
        from usable in Gen.Long[0, 30]
        select (
            pieces,
            remnants.Select((r, i) => new Stock($"remnant {i}", r.Item1, r.Item2, IsNew: false)).Concat(reels.Select((r, i) => new Stock($"reel {i}", r.Item1, r.Item2 == 4 ? null : r.Item2, IsNew: true))).ToArray(),
            new CuttingOptions(kerf, usable == 0 ? null : usable));

    [Fact]
    public void Every_piece_is_cut_once_and_within_its_stock() => Problems.Sample(
        problem =>
        {
            var (pieces, stock, options) = problem;
            foreach (var limit in new[] { 0, 50, options.StepLimit })
            {
                var plan = CuttingStock.Solve(pieces, stock, options with { StepLimit = limit });
                Assert.Equal(Enumerable.Range(0, pieces.Length), plan.Lengths.SelectMany(l => l.Pieces).Concat(plan.TooLong).Concat(plan.NotPlaced).Order());
                Assert.All(plan.TooLong, piece => Assert.DoesNotContain(stock, one => one.Length >= pieces[piece] && one.Count != 0));
                Assert.All(stock, one => Assert.True(plan.Lengths.Count(l => l.Stock == one) <= (one.Count ?? int.MaxValue) * stock.Count(other => other == one)));
                foreach (var length in plan.Lengths)
                {
                    var cut = length.Pieces.Sum(piece => pieces[piece]);
                    Assert.True(cut + (options.Kerf * (length.Pieces.Count - 1)) <= length.Stock.Length);
                    Assert.Equal(Math.Max(0, length.Stock.Length - cut - (options.Kerf * length.Pieces.Count)), length.Left);
                }

                Assert.Equal(plan.Lengths.Count(l => l.Stock.IsNew), plan.NewReels);
                Assert.Equal(plan.Lengths.Where(l => options.Usable is null || l.Left < options.Usable).Sum(l => l.Left), plan.Scrap);
                Assert.True(plan.NewReelsBound <= plan.NewReels && plan.ScrapBound <= plan.Scrap);
            }
        },
        iter: 300);

    [Fact]
    public void No_plan_that_cuts_every_piece_opens_fewer_reels_or_leaves_less_scrap() => Problems.Sample(
        problem =>
        {
            var plan = CuttingStock.Solve(problem.Pieces, problem.Stock, problem.Options);
            Assert.True(plan.IsOptimal);
            var pieces = problem.Pieces.Where((_, piece) => !plan.TooLong.Contains(piece)).Take(7).ToArray();
            plan = CuttingStock.Solve(pieces, problem.Stock, problem.Options);
            var least = LeastOfAll(pieces, problem.Stock, problem.Options);
            Assert.Equal(least is null, plan.NotPlaced.Count > 0);
            if (least is { } best)
            {
                Assert.Equal(best, (plan.NewReels, plan.Scrap));
            }
        },
        iter: 150);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void The_new_reels_are_those_of_glpk(int seed)
    {
        Tools.Need("glpsol");
        var random = new Random(seed);
        var pieces = Enumerable.Range(0, 14).Select(_ => (long)random.Next(150, 520)).ToArray();
        Stock[] stock = [new("reel", 1000, null, IsNew: true), new("remnant", 700, 1, IsNew: false), new("short remnant", 430, 2, IsNew: false)];
        const long Kerf = 3;
        var plan = CuttingStock.Solve(pieces, stock, new CuttingOptions(Kerf), cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(plan.NewReels, plan.NewReelsBound);
        Assert.Equal(Assignment(pieces, [700, 430, 430], 1000, plan.NewReels + 1, Kerf), plan.NewReels);
    }

    // Reels of one length, where the relaxed problem gives the bound and leads to the plan.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_reels_of_one_length_as_many_are_opened_as_glpk_opens(int seed)
    {
        Tools.Need("glpsol");
        var random = new Random(seed);
        var pieces = Enumerable.Range(0, 13).Select(_ => (long)random.Next(200, 480)).ToArray();
        var plan = CuttingStock.Solve(pieces, [new("reel", 1000, null, IsNew: true)], new CuttingOptions(Kerf: 3), cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(plan.NewReels, plan.NewReelsBound);
        Assert.Equal(Assignment(pieces, [], 1000, plan.NewReels + 1, 3), plan.NewReels);
    }

    /// <summary>By construction: lengths made by cutting whole reels up, so no reel more and none less is needed.</summary>
    [Theory]
    [InlineData(4, 3)]
    [InlineData(8, 3)]
    [InlineData(12, 3)]
    [InlineData(20, 3)]
    [InlineData(4, 5)]
    public void Pieces_of_reels_cut_up_without_waste_fit_in_as_many_reels(int reels, int each)
    {
        for (var seed = 0; seed < 5; seed++)
        {
            var random = new Random(seed);
            var pieces = Enumerable.Range(0, reels).SelectMany(_ => CutUp(random, 1000, each)).OrderBy(_ => random.Next()).ToArray();
            var plan = CuttingStock.Solve(pieces, [new("reel", 1000, null, IsNew: true)], cancellation: TestContext.Current.CancellationToken);
            Assert.Equal(reels, plan.NewReels);
            Assert.Equal((reels, 0L, true), (plan.NewReelsBound, plan.Scrap, plan.IsOptimal));
        }
    }

    [Fact]
    public void A_remnant_that_suffices_saves_a_reel_and_a_length_worth_keeping_is_no_scrap()
    {
        Stock[] stock = [new("reel", 30_000, null, IsNew: true), new("remnant", 5000, 1, IsNew: false), new("longer remnant", 9000, 1, IsNew: false)];
        var plan = CuttingStock.Solve([4900], stock, new CuttingOptions(Usable: 1000), cancellation: TestContext.Current.CancellationToken);
        // By hand: the short remnant would leave 100 mm of scrap, the longer one 4,100 mm to keep.
        Assert.Equal(("longer remnant", 4100L, 0L), (plan.Lengths.Single().Stock.Name, plan.Lengths.Single().Left, plan.Scrap));
    }

    [Fact]
    public void A_remnant_is_used_up_before_a_reel_where_that_makes_no_scrap()
    {
        Stock[] stock = [new("reel", 30_000, null, IsNew: true), new("remnant", 5700, 1, IsNew: false)];
        var plan = CuttingStock.Solve([458, 6000, 3058], stock, new CuttingOptions(Usable: 305), cancellation: TestContext.Current.CancellationToken);
        // By hand: the reel is needed for 6,000 mm; of the remnant 5,700 - 3,058 - 458 = 2,184 mm are left to keep.
        Assert.Equal([("remnant", 2184L), ("reel", 24_000L)], plan.Lengths.Select(l => (l.Stock.Name, l.Left)));
    }

    [Fact]
    public void A_piece_longer_than_any_stock_is_told_and_lengths_that_are_none_are_refused()
    {
        Stock[] stock = [new("reel", 1000, null, IsNew: true)];
        var plan = CuttingStock.Solve([1001, 1000], stock, new CuttingOptions(Kerf: 2), cancellation: TestContext.Current.CancellationToken);
        Assert.Equal([0], plan.TooLong);
        Assert.Equal([1], plan.Lengths.Single().Pieces);
        Assert.Throws<ArgumentOutOfRangeException>(() => CuttingStock.Solve([0], stock));
        Assert.Throws<ArgumentOutOfRangeException>(() => CuttingStock.Solve([1], [new("reel", 0, null, IsNew: true)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => CuttingStock.Solve([1], stock, new CuttingOptions(Kerf: -1)));
    }

    private static IEnumerable<long> CutUp(Random random, int length, int pieces)
    {
        for (var left = pieces; left > 1; left--)
        {
            var piece = random.Next(length / left / 2, length / left * 3 / 2);
            length -= piece;
            yield return piece;
        }

        yield return length;
    }

    private static (int Reels, long Scrap)? LeastOfAll(long[] pieces, Stock[] stock, CuttingOptions options)
    {
        (int, long)? best = null;
        var lengths = stock.SelectMany(one => Enumerable.Repeat(one, Math.Min(one.Count ?? pieces.Length, pieces.Length))).ToArray();
        var used = new long[lengths.Length];
        var cuts = new int[lengths.Length];

        void Place(int piece)
        {
            if (piece == pieces.Length)
            {
                var cut = Enumerable.Range(0, lengths.Length).Where(i => cuts[i] > 0).ToArray();
                var left = cut.Select(i => Math.Max(0, lengths[i].Length - used[i] - (options.Kerf * cuts[i]))).ToArray();
                var plan = (cut.Count(i => lengths[i].IsNew), left.Where(l => options.Usable is null || l < options.Usable).Sum());
                best = best is { } b && b.CompareTo(plan) <= 0 ? b : plan;
                return;
            }

            var tried = new HashSet<Stock>();
            for (var i = 0; i < lengths.Length; i++)
            {
                if ((cuts[i] == 0 && !tried.Add(lengths[i])) || used[i] + pieces[piece] + (options.Kerf * cuts[i]) > lengths[i].Length)
                {
                    continue;
                }

                used[i] += pieces[piece];
                cuts[i]++;
                Place(piece + 1);
                cuts[i]--;
                used[i] -= pieces[piece];
            }
        }

        Place(0);
        return best;
    }

    private static double? Assignment(long[] pieces, long[] remnants, long reel, int reels, long kerf)
    {
        var program = new Glpk();
        var lengths = remnants.Select(room => (Room: room, Cost: 0)).Concat(Enumerable.Repeat((Room: reel, Cost: 1), reels)).ToArray();
        for (var i = 0; i < lengths.Length; i++)
        {
            program.Binary($"y{i}", lengths[i].Cost);
            for (var piece = 0; piece < pieces.Length; piece++)
            {
                program.Binary($"x{piece}_{i}", 0);
            }

            program.Row(pieces.Select((length, piece) => ((double)(length + kerf), $"x{piece}_{i}")).Append((-(lengths[i].Room + kerf), $"y{i}")), "<=", 0);
        }

        for (var piece = 0; piece < pieces.Length; piece++)
        {
            program.Row(Enumerable.Range(0, lengths.Length).Select(i => (1.0, $"x{piece}_{i}")), "=", 1);
        }

        // Reels are alike: they are opened in order.
        for (var i = remnants.Length + 1; i < lengths.Length; i++)
        {
            program.Row([(1, $"y{i - 1}"), (-1, $"y{i}")], ">=", 0);
        }

        return program.Least();
    }
}
