using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>Something that may be loaded on top of the least loading (SI units).</summary>
/// <param name="Arm">Its arm.</param>
/// <param name="Most">How much of it at most.</param>
internal readonly record struct LoadItem(double Arm, double Most);

/// <summary>A limit on the sum of some items.</summary>
/// <param name="Room">What they may come to together, on top of the least loading.</param>
/// <param name="Items">Their indices.</param>
internal sealed record LoadCap(double Room, ImmutableArray<int> Items);

/// <summary>Every legal loading while the fuel is on one stretch of the burn path: amounts x ≥ 0 of items on top of the least loading, under caps of
/// which any two are nested or apart (item, groups, zero fuel, take-off). The item after the stations is the fuel above the stretch's lower end.</summary>
internal sealed class LoadingSpace
{
    /// <summary>Two masses that differ by less than this share are the same: a limit met exactly must not be broken by the order of a sum.</summary>
    public const double Rounding = 1e-12;

    private LoadingSpace(double leastMass, double leastMoment, ImmutableArray<LoadItem> items, ImmutableArray<LoadCap> caps)
    {
        LeastMass = leastMass;
        LeastMoment = leastMoment;
        Items = items;
        Caps = [.. caps.Where(c => c.Items.Length > 0).OrderBy(c => c.Items.Length)];
        CapsOf = [.. Enumerable.Range(0, items.Length).Select(i => Enumerable.Range(0, Caps.Length).Where(c => Caps[c].Items.Contains(i)).ToImmutableArray())];
    }

    /// <summary>Mass of the empty aircraft, the least loads and the fuel at the lower end.</summary>
    public double LeastMass { get; }

    /// <summary>Moment of the same.</summary>
    public double LeastMoment { get; }

    /// <summary>What may be added.</summary>
    public ImmutableArray<LoadItem> Items { get; }

    /// <summary>The caps, inner before outer.</summary>
    public ImmutableArray<LoadCap> Caps { get; }

    /// <summary>Indices of the caps over each item, inner before outer.</summary>
    public ImmutableArray<ImmutableArray<int>> CapsOf { get; }

    /// <summary>Whether the least loading itself is legal.</summary>
    public bool IsPossible => Caps.All(c => c.Room >= 0);

    /// <summary>The same with the fuel staying at the lower end of the stretch.</summary>
    public LoadingSpace WithoutFuel() => new(
        LeastMass, LeastMoment, Items.SetItem(Items.Length - 1, Items[^1] with { Most = 0 }),
        [.. Caps.Select(c => c.Items is [var only] && only == Items.Length - 1 ? c with { Room = 0 } : c)]);

    public static LoadingSpace Of(WorstLoadingInput input, BurnStretch fuel)
    {
        var stations = input.Stations;
        var leastLoads = stations.Sum(s => s.Min.Si);
        var zeroFuel = input.EmptyMass.Si + leastLoads;
        ImmutableArray<LoadItem> items = [.. stations.Select(s => new LoadItem(s.Arm.Si, s.Max.Si - s.Min.Si)), new(fuel.Arm, fuel.To - fuel.From)];
        var caps = items.Select((item, i) => new LoadCap(item.Most, [i])).Concat(input.Groups.Select(g => Group(input, g))).ToList();
        if (input.MaxZeroFuel is { } limit)
        {
            caps.Add(Cap(limit.Si, zeroFuel, [.. Enumerable.Range(0, stations.Count)]));
        }

        caps.Add(Cap(input.MaxTakeOff.Si, zeroFuel + fuel.From, [.. Enumerable.Range(0, items.Length)]));
        var moment = (input.EmptyMass * input.EmptyFs).Si + stations.Sum(s => (s.Min * s.Arm).Si) + fuel.Moment;
        return new(zeroFuel + fuel.From, moment, items, [.. caps]);
    }

    private static LoadCap Group(WorstLoadingInput input, LoadingGroupRow group)
    {
        ImmutableArray<int> members = [.. Members(input.Stations, group.Name)];
        return Cap(group.Max.Si, members.Sum(i => input.Stations[i].Min.Si), members);
    }

    private static LoadCap Cap(double limit, double least, ImmutableArray<int> items) => new(Math.Abs(limit - least) <= Rounding * limit ? 0 : limit - least, items);

    /// <summary>Indices of the stations of a group.</summary>
    public static IEnumerable<int> Members(Sequence<LoadingStationRow> stations, string group) =>
        Enumerable.Range(0, stations.Count).Where(i => GroupsOf(stations[i]).Contains(group, StringComparer.Ordinal));

    /// <summary>The groups a station names.</summary>
    public static string[] GroupsOf(LoadingStationRow station) => station.Groups.Split('+', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
