using System.Numerics;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>Bin completion: the longest piece left is cut from some length, and the ways to fill the rest of that length are tried, fullest first.
/// First the fewest new reels are sought, from the bound up; then the least scrap with as few. Where all reels are alike, patterns of the relaxed problem come before.</summary>
internal sealed class CuttingSearch
{
    private readonly CuttingProblem problem;
    private readonly CancellationToken cancellation;
    private readonly IProgress<int>? progress;
    private readonly int stepLimit;
    private readonly int[] counts;
    private readonly int[] drawn;
    private readonly List<CuttingFill> fills = [];
    private readonly HashSet<string> failed = [];
    private CuttingSolution best;
    private int steps;
    private int stop;
    private int target;
    private bool isSettled = true;
    private bool forScrap;

    public CuttingSearch(CuttingProblem problem, int stepLimit, IProgress<int>? progress, CancellationToken cancellation)
    {
        this.problem = problem;
        this.stepLimit = stepLimit;
        this.progress = progress;
        this.cancellation = cancellation;
        counts = [.. problem.Sizes.Select(size => problem.PiecesBySize[size].Count)];
        drawn = new int[problem.Stock.Count];
        best = FirstPlan.Of(problem);
    }

    /// <summary>No plan opens fewer new reels.</summary>
    public int ReelBound { get; private set; }

    /// <summary>Whether the plan is proved best.</summary>
    public bool IsComplete { get; private set; }

    private bool Stopped => steps >= stop;

    /// <summary>Searches until the best plan is proved or the limit is met. Each number of reels gets half of the steps left, so that where
    /// the least cannot be settled a near one is still found.</summary>
    public CuttingSolution Run()
    {
        ReelBound = problem.ReelBound(counts, drawn);
        if (problem.IsUniform && best is { Missing: 0 } && best.Reels > ReelBound)
        {
            Relax();
        }

        var most = best.Missing == 0 ? best.Reels - 1 : problem.MostReels;
        for (target = ReelBound; target <= most; target++)
        {
            stop = target == most ? stepLimit : steps + ((stepLimit - steps) / 2);
            if (Cut(0))
            {
                break;
            }

            isSettled &= !Stopped;
            ReelBound = isSettled ? Math.Min(target + 1, most) : ReelBound;
            failed.Clear();
        }

        ReelBound = isSettled && best.Missing == 0 ? best.Reels : ReelBound;
        return LessScrap();
    }

    // The relaxed problem bounds the reels from below, and its patterns lead to a plan. A quarter of the work goes into it.
    private void Relax()
    {
        // Lengths in their greatest common measure: the fewer places in a reel, the less work.
        var unit = problem.Sizes.Aggregate((a, b) => (long)BigInteger.GreatestCommonDivisor(a, b));
        var (sizes, room) = (problem.Sizes.Select(size => size / unit).ToArray(), problem.Capacity[0] / unit);
        var (pool, work) = (new List<int[]>(), stepLimit / 8L);
        if (CuttingColumns.Solve(sizes, counts, room, pool, ref work, cancellation) is not { } relaxed)
        {
            return;
        }

        ReelBound = Math.Max(ReelBound, relaxed.Bound());
        if (best.Reels > ReelBound && new CuttingDive(sizes, room, pool, cancellation).Find(counts, ReelBound, stepLimit / 8) is { } patterns
            && problem.Patterns(patterns) is var found && found.IsBetterThan(best))
        {
            best = found;
        }
    }

    private CuttingSolution LessScrap()
    {
        if (best.Missing == 0 && best.Scrap > 0 && !problem.IsScrapGiven)
        {
            (forScrap, target, stop) = (true, best.Reels, stepLimit);
            Cut(0);
            isSettled &= !Stopped || best.Scrap == 0;
        }

        IsComplete = isSettled || (best.Missing == 0 && best.Reels == ReelBound && (best.Scrap == 0 || problem.IsScrapGiven));
        return best;
    }

    /// <summary>Cuts all pieces left; true ends the search.</summary>
    private bool Cut(long scrap)
    {
        var longest = Array.FindIndex(counts, count => count > 0);
        if (longest < 0)
        {
            return Record();
        }

        progress?.Report(Math.Min(steps, stepLimit));
        cancellation.ThrowIfCancellationRequested();
        var opened = fills.Count(fill => problem.Stock[fill.Stock].IsNew);
        var key = forScrap ? "" : string.Join(',', counts) + '|' + string.Join(',', drawn);
        if (Stopped || opened + problem.ReelBound(counts, drawn, quick: fills.Count > 3) > target || failed.Contains(key))
        {
            return false;
        }

        foreach (var kind in problem.KindsFor(longest, drawn, target - opened))
        {
            if (Fill(kind, longest, scrap, problem.Slack(counts, drawn, target - opened)))
            {
                return true;
            }
        }

        if (!Stopped && !forScrap)
        {
            failed.Add(key);
        }

        return false;
    }

    private bool Fill(int kind, int longest, long scrap, long slack)
    {
        var ways = new CuttingWays(problem, counts, longest, !forScrap || problem.IsFullBest, stop - steps, cancellation).Of(problem.Capacity[kind], slack);
        steps += ways.Looked;
        foreach (var way in ways.Fullest)
        {
            var after = forScrap ? scrap + problem.ScrapOf(way.Room) : 0;
            if (forScrap && after >= best.Scrap)
            {
                continue;
            }

            Apply(kind, way, 1);
            var found = Cut(after);
            Apply(kind, way, -1);
            if (found)
            {
                return true;
            }

            if (Stopped)
            {
                return false;
            }
        }

        return false;
    }

    private void Apply(int kind, CuttingWay way, int times)
    {
        drawn[kind] += times;
        for (var i = 0; i < way.Taken.Length; i++)
        {
            counts[i] -= times * way.Taken[i];
        }

        if (times > 0)
        {
            fills.Add(new CuttingFill(kind, [.. way.Taken.SelectMany((count, i) => Enumerable.Repeat(problem.Sizes[i], count))], way.Room));
        }
        else
        {
            fills.RemoveAt(fills.Count - 1);
        }
    }

    private bool Record()
    {
        var found = problem.Solution([.. fills], 0);
        if (found.IsBetterThan(best))
        {
            best = found;
        }

        return !forScrap || best.Scrap == 0;
    }
}
