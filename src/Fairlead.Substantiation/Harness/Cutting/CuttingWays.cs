namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>One way to fill a length: how many pieces of each size, and the room left.</summary>
internal sealed record CuttingWay(int[] Taken, long Room);

/// <summary>The ways to fill a length that holds the longest piece left.</summary>
/// <param name="problem">The problem.</param>
/// <param name="counts">Pieces left of each size.</param>
/// <param name="longest">Number of the longest size left.</param>
/// <param name="fullOnly">Whether only ways that no piece left would still fit are wanted: room for a piece is then never worth leaving.</param>
/// <param name="limit">Most partial ways looked at.</param>
/// <param name="stop">Stops the work.</param>
internal sealed class CuttingWays(CuttingProblem problem, int[] counts, int longest, bool fullOnly, int limit, CancellationToken stop)
{
    private const int StepsBetween = 4096;

    private readonly List<CuttingWay> ways = [];
    private readonly int[] taken = new int[counts.Length];
    private readonly ReachableSums?[] sums = new ReachableSums?[counts.Length + 1];
    private long slack;
    private int looked;

    /// <summary>Makes the ways that leave no more room than the slack, fullest first, of these the ones with long pieces first.</summary>
    /// <param name="capacity">Room in the length.</param>
    /// <param name="most">Most room left that is worth a trial.</param>
    public (IReadOnlyList<CuttingWay> Fullest, int Looked) Of(long capacity, long most)
    {
        slack = most;
        taken[longest] = 1;
        var rest = new long[counts.Length + 1];
        sums[counts.Length] = ReachableSums.None(capacity);
        for (var i = counts.Length - 1; i >= longest; i--)
        {
            stop.ThrowIfCancellationRequested();
            rest[i] = rest[i + 1] + ((counts[i] - taken[i]) * problem.Sizes[i]);
            sums[i] = sums[i + 1]?.With(problem.Sizes[i], counts[i] - taken[i]);
        }

        Add(longest, capacity - problem.Sizes[longest], long.MaxValue, rest);

        // The sort is stable: ways were made with long pieces first.
        return ([.. ways.OrderBy(way => way.Room)], looked);
    }

    private void Add(int size, long room, long shortestLeft, long[] rest)
    {
        var least = sums[size]?.LeastRoom(room) ?? room - rest[size];
        if (looked++ >= limit || least > slack || (fullOnly && least >= shortestLeft))
        {
            return;
        }

        if (looked % StepsBetween == 0)
        {
            stop.ThrowIfCancellationRequested();
        }

        if (size == counts.Length)
        {
            ways.Add(new CuttingWay([.. taken], room));
            return;
        }

        var first = taken[size];
        var most = (int)Math.Min(counts[size] - first, room / problem.Sizes[size]);
        for (var more = most; more >= 0; more--)
        {
            taken[size] = first + more;
            var left = first + more < counts[size] ? problem.Sizes[size] : shortestLeft;
            Add(size + 1, room - (more * problem.Sizes[size]), left, rest);
        }

        taken[size] = first;
    }
}
