namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>Takes pieces over from new reels to remnants where no more scrap comes of it: of plans that are equally good, one that uses up what is begun.</summary>
internal static class RemnantsFirst
{
    /// <summary>The same plan with the longest pieces that remnants have room for taken over, the shortest remnant first.</summary>
    public static CuttingSolution Of(CuttingProblem problem, CuttingSolution plan)
    {
        var fills = plan.Fills.Select(f => new Filling(f.Stock, [.. f.Sizes], f.Room)).Concat(Untouched(problem, plan)).ToList();
        foreach (var reel in fills.Where(f => problem.Stock[f.Stock].IsNew))
        {
            foreach (var size in reel.Sizes.OrderDescending().ToArray())
            {
                if (fills.Where(f => !problem.Stock[f.Stock].IsNew && f.Room >= size && Gain(problem, reel, f, size) >= 0).MinBy(f => f.Room) is { } remnant)
                {
                    reel.Move(size, remnant);
                }
            }
        }

        return problem.Solution([.. fills.Where(f => f.Sizes.Count > 0).Select(f => new CuttingFill(f.Stock, f.Sizes, f.Room))], plan.Missing);
    }

    private static IEnumerable<Filling> Untouched(CuttingProblem problem, CuttingSolution plan) =>
        Enumerable.Range(0, problem.Stock.Count).Where(kind => problem.Stock[kind] is { IsNew: false, Count: not null })
            .SelectMany(kind => Enumerable.Range(0, problem.Stock[kind].Count!.Value - plan.Fills.Count(f => f.Stock == kind)).Select(_ => new Filling(kind, [], problem.Capacity[kind])));

    // Scrap saved by the move; a length that nothing is cut from leaves none.
    private static long Gain(CuttingProblem problem, Filling from, Filling to, long size) =>
        problem.ScrapOf(from.Room) + (to.Sizes.Count > 0 ? problem.ScrapOf(to.Room) : 0)
        - (from.Sizes.Count > 1 ? problem.ScrapOf(from.Room + size) : 0) - problem.ScrapOf(to.Room - size);

    private sealed class Filling(int stock, List<long> sizes, long room)
    {
        public int Stock { get; } = stock;

        public List<long> Sizes { get; } = sizes;

        public long Room { get; private set; } = room;

        public void Move(long size, Filling to)
        {
            Sizes.Remove(size);
            to.Sizes.Add(size);
            Room += size;
            to.Room -= size;
        }
    }
}
