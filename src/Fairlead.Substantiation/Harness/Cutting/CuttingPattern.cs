namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>The pieces that are worth most together in one reel, no more of each size than there are: a knapsack, by dynamic programming over whole lengths.</summary>
internal sealed class CuttingPattern(long[] sizes, int[] counts, long capacity, CancellationToken stop)
{
    /// <summary>The greatest worth, and what is taken for it.</summary>
    /// <param name="worth">Worth of a piece of each size, 0 or more.</param>
    /// <param name="taken">How many of each size.</param>
    public long Most(long[] worth, out int[] taken)
    {
        var pieces = Enumerable.Range(0, sizes.Length).Where(i => worth[i] > 0).SelectMany(i => Enumerable.Repeat(i, (int)Math.Min(counts[i], capacity / sizes[i]))).ToArray();
        var best = new long[capacity + 1];
        var takes = new bool[pieces.Length][];
        for (var p = 0; p < pieces.Length; p++)
        {
            stop.ThrowIfCancellationRequested();
            var (size, value, takesAt) = (sizes[pieces[p]], worth[pieces[p]], takes[p] = new bool[capacity + 1]);
            for (var room = capacity; room >= size; room--)
            {
                if (best[room - size] + value > best[room])
                {
                    (best[room], takesAt[room]) = (best[room - size] + value, true);
                }
            }
        }

        taken = new int[sizes.Length];
        for (var (p, room) = (pieces.Length - 1, capacity); p >= 0; p--)
        {
            if (takes[p][room])
            {
                taken[pieces[p]]++;
                room -= sizes[pieces[p]];
            }
        }

        return best[capacity];
    }
}
