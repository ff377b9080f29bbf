using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>Which wire is cut from which reel or remnant: fewest new reels opened, then least scrap, then the shortest new reels; remnants before new reels.</summary>
/// <remarks>A first plan cuts the longest pieces first from the length they fit best. Bin completion (Korf, AAAI 2002) then tries the ways to fill
/// the length that the longest piece left is cut from, and stops where the bounds of Martello and Toth (Discrete Applied Mathematics 28, 1990) and of
/// dual feasible functions (Fekete and Schepers, Mathematical Programming 91, 2001) show that no better plan is left; for reels of one length also the bound and the patterns of the relaxed problem (Gilmore and Gomory, Operations Research 9, 1961). Lengths are whole mm, so sums are exact.
/// Check value: pieces 600, 600, 400, 400 from reels of 1000 take two reels without scrap (by hand: 600 + 400 twice).</remarks>
public static class CuttingStock
{
    /// <summary>Plans the cuts.</summary>
    /// <param name="pieces">Length of each piece in mm, above 0.</param>
    /// <param name="stock">The stock there is.</param>
    /// <param name="options">Kerf, what is worth keeping, and how far to go.</param>
    /// <param name="progress">Told the steps taken so far, <see cref="CuttingOptions.StepLimit"/> at most.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not above 0, or a count, the kerf or the usable length is negative.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static CuttingPlan Solve(
        IReadOnlyList<long> pieces, IReadOnlyList<Stock> stock, CuttingOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(stock);
        options ??= new CuttingOptions();
        Require(pieces, stock, options);
        var problem = CuttingProblem.Of(pieces, stock, options);
        var search = new CuttingSearch(problem, options.StepLimit, progress, cancellation);
        var best = RemnantsFirst.Of(problem, search.Run());
        return Plan(problem, best, search);
    }

    private static CuttingPlan Plan(CuttingProblem problem, CuttingSolution best, CuttingSearch search)
    {
        var waiting = problem.PiecesBySize.ToDictionary(size => size.Key, size => new Queue<int>(size.Value));
        var lengths = best.Fills.OrderBy(fill => problem.Stock[fill.Stock].IsNew).ThenBy(fill => fill.Stock)
            .Select(fill => new CutLength(
                problem.Stock[fill.Stock], [.. fill.Sizes.Select(size => waiting[size].Dequeue()).Order()], problem.LeftOf(fill)))
            .ToSequence();
        var notPlaced = waiting.Values.SelectMany(left => left).Order().ToSequence();
        var newReels = lengths.Count(length => length.Stock.IsNew);
        var scrap = best.Fills.Sum(problem.ScrapOf);
        return new CuttingPlan(
            lengths, problem.TooLong, notPlaced, newReels, Math.Min(search.ReelBound, newReels), scrap, search.IsComplete ? scrap : 0, search.IsComplete);
    }

    private static void Require(IReadOnlyList<long> pieces, IReadOnlyList<Stock> stock, CuttingOptions options)
    {
        foreach (var length in pieces)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length, nameof(pieces));
        }

        foreach (var one in stock)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(one.Length, nameof(stock));
            ArgumentOutOfRangeException.ThrowIfNegative(one.Count ?? 0, nameof(stock));
        }

        ArgumentOutOfRangeException.ThrowIfNegative(options.Kerf, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegative(options.Usable ?? 0, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegative(options.StepLimit, nameof(options));
    }
}
