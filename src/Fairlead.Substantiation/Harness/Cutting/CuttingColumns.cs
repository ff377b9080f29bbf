namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>The relaxed cutting problem, where patterns may be cut in parts: fewest reels of one length, by the simplex method over patterns that are made as they
/// are wanted (Gilmore and Gomory, Operations Research 9, 1961).</summary>
/// <remarks>Rows are sizes; each column is a pattern that costs one reel, or one piece more than asked for, which costs nothing. Work counts as in <see cref="CuttingOptions"/>.</remarks>
internal sealed class CuttingColumns
{
    private const double Noise = 1e-9;

    private readonly long[] sizes;
    private readonly int[] counts;
    private readonly long capacity;
    private readonly int[][] columns;
    private readonly double[] cost;
    private readonly double[,] inverse;
    private readonly double[] amount;
    private readonly CancellationToken stop;

    private CuttingColumns(long[] sizes, int[] counts, long capacity, CancellationToken stop)
    {
        (this.sizes, this.counts, this.capacity, this.stop) = (sizes, counts, capacity, stop);
        var n = sizes.Length;
        (columns, cost, inverse, amount) = (new int[n][], new double[n], new double[n, n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            columns[i] = new int[n];
            columns[i][i] = (int)Math.Max(1, Math.Min(counts[i], capacity / sizes[i]));
            (cost[i], inverse[i, i], amount[i]) = (1, 1.0 / columns[i][i], (double)counts[i] / columns[i][i]);
        }
    }

    /// <summary>Patterns in use, how often each, the fullest use first.</summary>
    public IEnumerable<(int[] Pattern, double Amount)> Used => Enumerable.Range(0, columns.Length).Where(i => cost[i] > 0 && amount[i] > Noise)
        .OrderByDescending(i => amount[i]).ThenByDescending(i => Length(columns[i])).Select(i => (columns[i], amount[i]));

    /// <summary>Reels of the relaxed problem.</summary>
    public double Reels => Enumerable.Range(0, columns.Length).Sum(i => cost[i] * amount[i]);

    /// <summary>Solves the relaxed problem.</summary>
    /// <param name="sizes">Sizes, none above the capacity.</param>
    /// <param name="counts">How many of each.</param>
    /// <param name="capacity">Room in a reel.</param>
    /// <param name="pool">Patterns known already; those made are added.</param>
    /// <param name="work">Work left; what is done is taken off.</param>
    /// <param name="stop">Stops the work.</param>
    /// <returns>The solution, or null where the work, or the digits of the numbers, did not suffice.</returns>
    public static CuttingColumns? Solve(long[] sizes, int[] counts, long capacity, List<int[]> pool, ref long work, CancellationToken stop)
    {
        var relaxed = new CuttingColumns(sizes, counts, capacity, stop);
        while (work > 0)
        {
            stop.ThrowIfCancellationRequested();
            var worth = relaxed.Worth();
            if (relaxed.Entering(worth, pool, ref work) is not { } entering)
            {
                return relaxed;
            }

            if (!relaxed.Pivot(entering.Column, entering.Cost))
            {
                return null;
            }

            work -= 1 + (sizes.Length * sizes.Length / 1000);
        }

        return null;
    }

    /// <summary>Fewest whole reels, from what the pieces are worth in the relaxed problem: that worth in whole numbers over the most that fits in a reel, so that no
    /// rounding makes the bound too great.</summary>
    public int Bound()
    {
        var worth = Worth().Select(w => (long)Math.Floor(Math.Max(0, w) * 1e9)).ToArray();
        var most = new CuttingPattern(sizes, counts, capacity, stop).Most(worth, out _);
        var all = worth.Zip(counts).Sum(x => x.First * x.Second);
        return most == 0 ? 0 : (int)((all + most - 1) / most);
    }

    private double[] Worth()
    {
        var worth = new double[sizes.Length];
        for (var row = 0; row < worth.Length; row++)
        {
            for (var i = 0; cost[row] > 0 && i < worth.Length; i++)
            {
                worth[i] += cost[row] * inverse[row, i];
            }
        }

        return worth;
    }

    // A piece worth less than nothing is better cut once too often; else a pattern worth more than the reel it costs.
    private (int[] Column, double Cost)? Entering(double[] worth, List<int[]> pool, ref long work)
    {
        var least = Enumerable.Range(0, worth.Length).MinBy(i => worth[i]);
        if (worth[least] < -Noise)
        {
            var surplus = new int[worth.Length];
            surplus[least] = -1;
            return (surplus, 0);
        }

        if (pool.Where(Fits).MaxBy(p => ValueOf(p, worth)) is { } known && ValueOf(known, worth) > 1 + (10 * Noise))
        {
            return (known, 1);
        }

        work -= Math.Max(1, counts.Sum() * capacity / 1000);
        var scaled = worth.Select(w => (long)Math.Round(Math.Max(0, w) * 1e12)).ToArray();
        if (new CuttingPattern(sizes, counts, capacity, stop).Most(scaled, out var taken) <= 1e12 * (1 + (10 * Noise)))
        {
            return null;
        }

        pool.Add(taken);
        return (taken, 1);
    }

    private static double ValueOf(int[] pattern, double[] worth)
    {
        var value = 0.0;
        for (var i = 0; i < pattern.Length; i++)
        {
            value += pattern[i] * worth[i];
        }

        return value;
    }

    private bool Fits(int[] pattern)
    {
        for (var i = 0; i < pattern.Length; i++)
        {
            if (pattern[i] > counts[i])
            {
                return false;
            }
        }

        return true;
    }

    private bool Pivot(int[] column, double price)
    {
        var n = sizes.Length;
        var step = new double[n];
        for (var row = 0; row < n; row++)
        {
            for (var i = 0; i < n; i++)
            {
                step[row] += column[i] == 0 ? 0 : inverse[row, i] * column[i];
            }
        }

        var leaves = Enumerable.Range(0, n).Where(row => step[row] > Noise).OrderBy(row => Math.Max(0, amount[row]) / step[row]).ThenByDescending(row => step[row]).Append(-1).First();
        if (leaves < 0)
        {
            return false;
        }

        var (pivot, share) = (step[leaves], Math.Max(0, amount[leaves]) / step[leaves]);
        for (var row = 0; row < n; row++)
        {
            var factor = row == leaves ? 0 : step[row] / pivot;
            amount[row] = row == leaves ? share : amount[row] - (step[row] * share);
            for (var i = 0; factor != 0 && i < n; i++)
            {
                inverse[row, i] -= factor * inverse[leaves, i];
            }
        }

        for (var i = 0; i < n; i++)
        {
            inverse[leaves, i] /= pivot;
        }

        (columns[leaves], cost[leaves]) = (column, price);
        return true;
    }

    private long Length(int[] pattern) => pattern.Zip(sizes).Sum(x => x.First * x.Second);
}
