namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>How many new reels pieces need at least, by dual feasible functions of Fekete and Schepers (Mathematical Programming 91, 2001): where sizes
/// fit together in a length their values do too, and each function used is superadditive, so it holds for shorter remnants as well.</summary>
internal static class CuttingBound
{
    private const int Divisions = 20;

    /// <summary>The bound from all functions.</summary>
    /// <param name="sizes">Sizes, not above <paramref name="reel"/> where they fit no remnant.</param>
    /// <param name="counts">How many of each.</param>
    /// <param name="remnants">Rooms of the remnants, each not above <paramref name="reel"/>.</param>
    /// <param name="reel">Room in the longest new reel.</param>
    public static int Reels(long[] sizes, int[] counts, IReadOnlyList<(long Room, int Count)> remnants, long reel)
    {
        var best = Needed(sizes, counts, remnants, size => size, reel);
        for (var k = 1; k <= Divisions; k++)
        {
            best = Math.Max(best, Needed(sizes, counts, remnants, size => Stepped(size, k, reel), k * reel));
        }

        foreach (var least in sizes.Where(size => 2 * size <= reel))
        {
            best = Math.Max(best, Needed(sizes, counts, remnants, size => size > reel - least ? reel : size < least ? 0 : size, reel));
        }

        return best;
    }

    /// <summary>u(k): size · k where (k + 1) · size / reel is whole, else that share rounded down; in units of 1 / (k · reel).</summary>
    private static long Stepped(long size, int k, long reel) => (k + 1) * size % reel == 0 ? size * k : (k + 1) * size / reel * reel;

    private static int Needed(long[] sizes, int[] counts, IReadOnlyList<(long Room, int Count)> remnants, Func<long, long> value, long one)
    {
        var sum = 0L;
        for (var i = 0; i < sizes.Length; i++)
        {
            sum += counts[i] * value(sizes[i]);
        }

        foreach (var (room, count) in remnants)
        {
            sum -= count * value(room);
        }

        return sum <= 0 ? 0 : (int)((sum + one - 1) / one);
    }
}
