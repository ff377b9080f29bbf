using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>One stock length filled with pieces of some sizes.</summary>
internal sealed record CuttingFill(int Stock, IReadOnlyList<long> Sizes, long Room);

/// <summary>A plan in sizes.</summary>
internal sealed record CuttingSolution(IReadOnlyList<CuttingFill> Fills, int Missing, int Reels, long Scrap, long Opened)
{
    /// <summary>Fewest pieces missing, then fewest new reels, least scrap, shortest new reels.</summary>
    public bool IsBetterThan(CuttingSolution other) =>
        (Missing, Reels, Scrap, Opened).CompareTo((other.Missing, other.Reels, other.Scrap, other.Opened)) < 0;
}

/// <summary>A cutting problem in sizes: each piece with the kerf behind it, each stock longer by one kerf, since the end of the stock needs no cut.
/// Then pieces fit where their sizes add up to no more than the capacity.</summary>
internal sealed class CuttingProblem
{
    private const long MostRelaxed = 20_000_000;

    private readonly CuttingOptions options;

    private CuttingProblem(CuttingOptions options, IReadOnlyList<Stock> stock)
    {
        this.options = options;
        Stock = stock;
        Capacity = [.. stock.Select(one => one.Length + options.Kerf)];
    }

    /// <summary>The stock.</summary>
    public IReadOnlyList<Stock> Stock { get; }

    /// <summary>Room in each kind of stock.</summary>
    public long[] Capacity { get; }

    /// <summary>Sizes from the longest to the shortest, and how many pieces of each.</summary>
    public long[] Sizes { get; private init; } = [];

    /// <summary>Numbers of the pieces of each size.</summary>
    public Dictionary<long, List<int>> PiecesBySize { get; private init; } = [];

    /// <summary>Pieces that no stock is long enough for.</summary>
    public Sequence<int> TooLong { get; private init; }

    /// <summary>Sets the problem in sizes.</summary>
    public static CuttingProblem Of(IReadOnlyList<long> pieces, IReadOnlyList<Stock> stock, CuttingOptions options)
    {
        var longest = stock.Where(one => one.Count is null or > 0).Select(one => one.Length).DefaultIfEmpty(0).Max();
        var fitting = Enumerable.Range(0, pieces.Count).Where(piece => pieces[piece] <= longest).ToList();
        var bySize = fitting.GroupBy(piece => pieces[piece] + options.Kerf).ToDictionary(size => size.Key, size => size.ToList());
        return new CuttingProblem(options, stock)
        {
            PiecesBySize = bySize,
            Sizes = [.. bySize.Keys.OrderDescending()],
            TooLong = [.. Enumerable.Range(0, pieces.Count).Except(fitting)],
        };
    }

    /// <summary>Length left over in mm: room that is less than the kerf is lost in the last cut.</summary>
    public long LeftOf(CuttingFill fill) => Math.Max(0, fill.Room - options.Kerf);

    /// <summary>Length left over that is too short to keep, in mm.</summary>
    public long ScrapOf(CuttingFill fill) => ScrapOf(fill.Room);

    /// <summary>Scrap of a stock length with some room left.</summary>
    public long ScrapOf(long room) => Math.Max(0, room - options.Kerf) is var left && left >= options.Usable ? 0 : left;

    /// <summary>Most new reels that can be drawn for these pieces.</summary>
    public int MostReels => (int)Math.Min(
        PiecesBySize.Values.Sum(size => (long)size.Count), Stock.Where(one => one.IsNew).Sum(one => (long)(one.Count ?? int.MaxValue)));

    /// <summary>Whether leaving room for a piece never saves scrap: all that is left over is scrap, and no cut hides a part of it.</summary>
    public bool IsFullBest => options is { Usable: null, Kerf: 0 };

    /// <summary>Whether all plans with as many reels leave the same scrap.</summary>
    public bool IsScrapGiven => IsFullBest && Stock.All(one => one.IsNew) && Capacity.Distinct().Count() == 1;

    /// <summary>Whether all stock is new reels of one length, and small enough a problem to be relaxed.</summary>
    public bool IsUniform => Stock.Count > 0 && Stock.All(one => one.IsNew) && Capacity.Distinct().Count() == 1 && PiecesBySize.Values.Sum(p => p.Count) * Capacity[0] <= MostRelaxed;

    private long Reel => Stock.Zip(Capacity).Where(one => one.First.IsNew && one.First.Count is null or > 0).Select(one => one.Second).DefaultIfEmpty(0).Max();

    /// <summary>The solution these fills are.</summary>
    public CuttingSolution Solution(IReadOnlyList<CuttingFill> fills, int missing)
    {
        var opened = fills.Where(fill => Stock[fill.Stock].IsNew).ToList();
        return new CuttingSolution(fills, missing, opened.Count, fills.Sum(ScrapOf), opened.Sum(fill => Stock[fill.Stock].Length));
    }

    /// <summary>The solution that cuts some patterns from reels of one length; what patterns hold beyond the pieces is not cut.</summary>
    public CuttingSolution Patterns(IEnumerable<int[]> patterns)
    {
        var left = Sizes.Select(size => PiecesBySize[size].Count).ToArray();
        var (fills, kinds) = (new List<CuttingFill>(), new Queue<int>(Enumerable.Range(0, Stock.Count).SelectMany(kind => Enumerable.Repeat(kind, Stock[kind].Count ?? MostReels))));
        foreach (var pattern in patterns)
        {
            var sizes = new List<long>();
            for (var i = 0; i < left.Length; i++)
            {
                var taken = Math.Min(left[i], pattern[i]);
                left[i] -= taken;
                sizes.AddRange(Enumerable.Repeat(Sizes[i], taken));
            }

            fills.Add(new CuttingFill(kinds.Dequeue(), sizes, Capacity[0] - sizes.Sum()));
        }

        return Solution([.. fills.Where(f => f.Sizes.Count > 0)], left.Sum());
    }

    /// <summary>Fewest more new reels for the pieces left; out of reach where there are none to open.</summary>
    public int ReelBound(int[] counts, int[] drawn, bool quick = false)
    {
        var room = 0L;
        var remnants = new List<(long Room, int Count)>();
        for (var kind = 0; kind < Capacity.Length; kind++)
        {
            if (Stock[kind] is { IsNew: false, Count: null })
            {
                return 0;
            }

            if (!Stock[kind].IsNew)
            {
                remnants.Add((Capacity[kind], Stock[kind].Count!.Value - drawn[kind]));
                room += Capacity[kind] * (Stock[kind].Count!.Value - drawn[kind]);
            }
        }

        var left = -room + Needed(counts);
        return left <= 0 && quick ? 0
            : Reel == 0 ? (left > 0 ? int.MaxValue / 2 : 0)
            : quick ? (int)((left + Reel - 1) / Reel)
            : CuttingBound.Reels(Sizes, counts, remnants, Math.Max(Reel, remnants.Select(remnant => remnant.Room).DefaultIfEmpty(0).Max()));
    }

    /// <summary>How much room may be left over in all while the pieces left still fit.</summary>
    public long Slack(int[] counts, int[] drawn, int reels)
    {
        var room = reels * Reel;
        for (var kind = 0; kind < Capacity.Length; kind++)
        {
            if (!Stock[kind].IsNew)
            {
                if (Stock[kind].Count is not { } count)
                {
                    return long.MaxValue;
                }

                room += (count - drawn[kind]) * Capacity[kind];
            }
        }

        return room - Needed(counts);
    }

    /// <summary>Kinds of stock that can still be drawn for a piece, one for each length: remnants first, short ones before long.</summary>
    public IEnumerable<int> KindsFor(int size, int[] drawn, int reels) =>
        Enumerable.Range(0, Capacity.Length)
            .Where(kind => Capacity[kind] >= Sizes[size] && (Stock[kind].Count is not { } count || drawn[kind] < count) && (!Stock[kind].IsNew || reels > 0))
            .GroupBy(kind => (Stock[kind].IsNew, Capacity[kind])).OrderBy(kind => kind.Key).Select(kind => kind.First());

    private long Needed(int[] counts)
    {
        var sum = 0L;
        for (var i = 0; i < counts.Length; i++)
        {
            sum += counts[i] * Sizes[i];
        }

        return sum;
    }
}
