namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>A first plan: the longest piece first, from the length begun that it fits best, else from the shortest remnant, else from a new reel.</summary>
internal static class FirstPlan
{
    /// <summary>Plans in one pass.</summary>
    public static CuttingSolution Of(CuttingProblem problem)
    {
        var fills = new List<CuttingFill>();
        var drawn = new int[problem.Stock.Count];
        var missing = 0;
        foreach (var size in problem.Sizes.SelectMany(size => problem.PiecesBySize[size].Select(_ => size)))
        {
            var begun = Enumerable.Range(0, fills.Count).Where(fill => fills[fill].Room >= size).OrderBy(fill => fills[fill].Room).Cast<int?>().FirstOrDefault();
            if (begun is { } at)
            {
                fills[at] = fills[at] with { Sizes = [.. fills[at].Sizes, size], Room = fills[at].Room - size };
            }
            else if (Draw(problem, drawn, size) is { } kind)
            {
                drawn[kind]++;
                fills.Add(new CuttingFill(kind, [size], problem.Capacity[kind] - size));
            }
            else
            {
                missing++;
            }
        }

        return problem.Solution(fills, missing);
    }

    private static int? Draw(CuttingProblem problem, int[] drawn, long size) =>
        Enumerable.Range(0, drawn.Length)
            .Where(kind => problem.Capacity[kind] >= size && (problem.Stock[kind].Count is not { } count || drawn[kind] < count))
            .OrderBy(kind => problem.Stock[kind].IsNew)
            .ThenBy(kind => problem.Stock[kind].IsNew ? -problem.Capacity[kind] : problem.Capacity[kind])
            .Cast<int?>().FirstOrDefault();
}
