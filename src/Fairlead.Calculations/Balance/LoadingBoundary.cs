using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>The limit a loading is judged by.</summary>
internal enum Side
{
    Forward,
    Aft,
}

/// <summary>A straight edge of the boundary: one item goes aboard while the others stay (SI units).</summary>
/// <param name="Mass">Mass at its start.</param>
/// <param name="Moment">Moment at its start.</param>
/// <param name="Arm">Arm of the item, which is the slope of the edge.</param>
/// <param name="Item">The item; -1 when nothing can be loaded at all.</param>
/// <param name="Length">How much of it.</param>
/// <param name="Before">What is aboard of each item at its start.</param>
internal sealed record BoundaryEdge(double Mass, double Moment, double Arm, int Item, double Length, ImmutableArray<double> Before)
{
    public double EndMass => Mass + Length;

    public double MomentAt(double mass) => Moment + (Arm * (mass - Mass));

    public double FsAt(double mass) => MomentAt(mass) / mass;

    /// <summary>What is aboard of each item where the edge passes a mass.</summary>
    public ImmutableArray<double> LoadAt(double mass) => Item < 0 ? Before : Before.SetItem(Item, Before[Item] + (mass - Mass));
}

/// <summary>The most forward, or most aft, moment at each mass: the aftmost item goes aboard first, as much of it as every cap over it leaves room
/// for, then the next. Because the caps are nested or apart this greedy order is exact; <see cref="LoadingCertificate"/> proves it again
/// for each result.</summary>
internal sealed class LoadingBoundary
{
    private LoadingBoundary(Side side, LoadingSpace space, ImmutableArray<BoundaryEdge> edges, ImmutableArray<int> filledBy)
    {
        Side = side;
        Space = space;
        Edges = edges;
        FilledBy = filledBy;
    }

    public Side Side { get; }

    public LoadingSpace Space { get; }

    /// <summary>The edges from the least mass to the greatest; at least one.</summary>
    public ImmutableArray<BoundaryEdge> Edges { get; }

    /// <summary>The item that used up each cap; -1 where room is left.</summary>
    public ImmutableArray<int> FilledBy { get; }

    /// <summary>The greatest mass.</summary>
    public double GreatestMass => Edges[^1].EndMass;

    public static LoadingBoundary Of(LoadingSpace space, Side side)
    {
        var room = space.Caps.Select(c => c.Room).ToArray();
        var filledBy = Enumerable.Repeat(-1, room.Length).ToArray();
        var aboard = Enumerable.Repeat(0.0, space.Items.Length).ToImmutableArray();
        var edges = ImmutableArray.CreateBuilder<BoundaryEdge>();
        double mass = space.LeastMass, moment = space.LeastMoment;
        foreach (var item in Order(space, side))
        {
            var amount = space.CapsOf[item].Min(c => room[c]);
            foreach (var cap in space.CapsOf[item])
            {
                room[cap] = room[cap] - amount <= LoadingSpace.Rounding * space.LeastMass ? 0 : room[cap] - amount;
                filledBy[cap] = room[cap] == 0 && filledBy[cap] < 0 ? item : filledBy[cap];
            }

            if (amount > 0)
            {
                var edge = new BoundaryEdge(mass, moment, space.Items[item].Arm, item, amount, aboard);
                edges.Add(edge);
                (mass, moment, aboard) = (edge.EndMass, edge.MomentAt(edge.EndMass), edge.LoadAt(edge.EndMass));
            }
        }

        if (edges.Count == 0)
        {
            edges.Add(new(mass, moment, moment / mass, -1, 0, aboard));
        }

        return new(side, space, edges.ToImmutable(), [.. filledBy]);
    }

    /// <summary>The corners, least mass first.</summary>
    public Sequence<LoadingPoint> Corners() =>
        Edges.Select(e => new LoadingPoint(new(e.Mass), new(e.Moment)))
            .Append(new LoadingPoint(new(GreatestMass), new(Edges[^1].MomentAt(GreatestMass)))).ToSequence();

    private static IEnumerable<int> Order(LoadingSpace space, Side side) =>
        Enumerable.Range(0, space.Items.Length).OrderBy(i => side == Side.Forward ? space.Items[i].Arm : -space.Items[i].Arm);
}
