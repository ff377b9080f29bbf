namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>Looks for a plan with a given number of reels of one length: the pattern that the relaxed problem uses most is cut, and what is left is relaxed again. Where
/// what is left needs too many reels the pattern used next most is tried, first where the fewest such turns lead (limited discrepancy search: Harvey and Ginsberg, IJCAI 1995).</summary>
internal sealed class CuttingDive(long[] sizes, long capacity, List<int[]> pool, CancellationToken cancellation)
{
    private const int MostTurns = 4;

    private readonly List<int[]> cut = [];
    private long work;

    /// <summary>The patterns, or null where none was found within the work.</summary>
    /// <param name="counts">Pieces of each size.</param>
    /// <param name="reels">How many reels may be cut.</param>
    /// <param name="limit">Most work.</param>
    public IReadOnlyList<int[]>? Find(int[] counts, int reels, long limit)
    {
        work = limit;
        for (var turns = 0; turns <= MostTurns && work > 0; turns++)
        {
            cut.Clear();
            if (Cut(counts, reels, turns))
            {
                return cut;
            }
        }

        return null;
    }

    private bool Cut(int[] counts, int reels, int turns)
    {
        cancellation.ThrowIfCancellationRequested();
        int[] left = [.. Enumerable.Range(0, counts.Length).Where(i => counts[i] > 0)];
        if (left.Length == 0)
        {
            return true;
        }

        List<int[]> known = [.. pool.Where(p => Enumerable.Range(0, counts.Length).All(i => p[i] <= counts[i])).Select(p => left.Select(i => p[i]).ToArray())];
        var before = known.Count;
        var relaxed = CuttingColumns.Solve([.. left.Select(i => sizes[i])], [.. left.Select(i => counts[i])], capacity, known, ref work, cancellation);
        pool.AddRange(known.Skip(before).Select(p => Whole(p, left, counts.Length)));
        if (relaxed is null || Math.Ceiling(relaxed.Reels - 1e-6) > reels)
        {
            return false;
        }

        var turn = 0;
        foreach (var (pattern, amount) in relaxed.Used.Take(turns + 1).ToArray())
        {
            var whole = Whole(pattern, left, counts.Length);
            var times = Math.Max(1, (int)Math.Floor(amount + 1e-6));
            var mark = cut.Count;
            cut.AddRange(Enumerable.Repeat(whole, times));
            if (Cut([.. counts.Zip(whole).Select(x => Math.Max(0, x.First - (times * x.Second)))], reels - times, turns - turn++))
            {
                return true;
            }

            cut.RemoveRange(mark, cut.Count - mark);
        }

        return false;
    }

    private static int[] Whole(int[] pattern, int[] left, int length)
    {
        var whole = new int[length];
        for (var i = 0; i < left.Length; i++)
        {
            whole[left[i]] = pattern[i];
        }

        return whole;
    }
}
