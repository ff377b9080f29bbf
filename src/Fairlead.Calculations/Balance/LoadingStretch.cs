namespace Fairlead.Calculations.Balance;

/// <summary>Where a stretch comes closest to a limit.</summary>
internal readonly record struct Approach(LoadingStretch Stretch, BoundaryEdge Edge, double Mass, double Margin);

/// <summary>The legal loadings while the fuel is on one stretch of the burn path, with both boundaries of the polygon they fill.</summary>
internal sealed class LoadingStretch(BurnStretch fuel, LoadingSpace space)
{
    public LoadingSpace Space { get; } = space;

    public LoadingBoundary Forward { get; } = LoadingBoundary.Of(space, Side.Forward);

    public LoadingBoundary Aft { get; } = LoadingBoundary.Of(space, Side.Aft);

    public double GreatestMass => Forward.GreatestMass;

    /// <summary>The greatest mass with the fuel at the lower end.</summary>
    public double GreatestMassAtLeastFuel => LoadingBoundary.Of(Space.WithoutFuel(), Side.Aft).GreatestMass;

    public LoadingPolygon Polygon => new(new(fuel.From), new(fuel.To), Forward.Corners(), Aft.Corners());

    public Approach Closest(Side side, EnvelopeLimits limits) => (side == Side.Forward ? Forward : Aft).Edges
        .Select(edge => (edge, at: ClosestApproach.Of(edge, side, limits))).Select(x => new Approach(this, x.edge, x.at.Mass, x.at.Margin)).MinBy(a => a.Margin);

    /// <summary>Both ends of the heaviest loadings.</summary>
    public IEnumerable<Approach> Heaviest(EnvelopeLimits limits)
    {
        foreach (var boundary in (LoadingBoundary[])[Forward, Aft])
        {
            var last = boundary.Edges[^1];
            var end = last with { Mass = last.EndMass, Moment = last.MomentAt(last.EndMass), Before = last.LoadAt(last.EndMass), Length = 0 };
            yield return new(this, end, end.Mass, Math.Min(ClosestApproach.Of(end, Side.Forward, limits).Margin, ClosestApproach.Of(end, Side.Aft, limits).Margin));
        }
    }

    public LoadingCase Case(WorstLoadingInput input, Approach approach)
    {
        var load = approach.Edge.LoadAt(approach.Mass);
        var onBoard = fuel.From + load[^1];
        return new(
            new(approach.Mass), new(approach.Edge.FsAt(approach.Mass)), new(approach.Margin), new(onBoard),
            input.Stations.Select((s, i) => new LoadedMass(s.Name, s.Min + new Mass(load[i]))).ToSequence(),
            new BurnPath(input.Tanks).Contents(onBoard));
    }
}
