namespace Fairlead.Calculations.Balance;

/// <summary>Mass of what is at a station or in a tank.</summary>
/// <param name="Name">Station or tank.</param>
/// <param name="Mass">Mass.</param>
public sealed record LoadedMass(string Name, Mass Mass);

/// <summary>One legal loading.</summary>
/// <param name="Mass">Mass of the loaded aircraft.</param>
/// <param name="Fs">Its centre of gravity.</param>
/// <param name="Margin">Distance to the limit it is judged by: positive inside, negative outside.</param>
/// <param name="Fuel">Fuel on board.</param>
/// <param name="Stations">Load at each station.</param>
/// <param name="Tanks">Fuel in each tank.</param>
public sealed record LoadingCase(Mass Mass, Length Fs, Length Margin, Mass Fuel, Sequence<LoadedMass> Stations, Sequence<LoadedMass> Tanks);

/// <summary>The legal loadings that come closest to leaving the envelope, or leave it farthest.</summary>
/// <param name="Forward">Least margin to the forward limit at its own mass.</param>
/// <param name="Aft">Least margin to the aft limit at its own mass.</param>
/// <param name="Heaviest">Greatest mass; of the loadings with that mass the one with the least margin to either limit.</param>
/// <param name="MostForwardCg">The most forward centre of gravity at any mass.</param>
/// <param name="MostAftCg">The most aft centre of gravity at any mass.</param>
/// <param name="LeastMass">The least mass.</param>
/// <param name="ProofGap">Greatest relative gap between a loading found and the bound proved for all; rounding only, see <see cref="Proved"/>.</param>
public sealed record WorstLoadings(
    LoadingCase Forward, LoadingCase Aft, LoadingCase Heaviest, Length MostForwardCg, Length MostAftCg, Mass LeastMass, double ProofGap)
{
    /// <summary>Whether every bound closes to 1e-9 of the aircraft's mass times the range of arms.</summary>
    public bool Proved => ProofGap <= 1e-9;
}

/// <summary>A point of the plane of mass and moment.</summary>
/// <param name="Mass">Mass.</param>
/// <param name="Moment">Moment about the datum.</param>
public readonly record struct LoadingPoint(Mass Mass, MassMoment Moment)
{
    /// <summary>Centre of gravity.</summary>
    public Length Fs => Moment / Mass;
}

/// <summary>Every mass and moment that legal loadings reach while the fuel is on one stretch of the burn path: a convex polygon.</summary>
/// <param name="FuelFrom">Least fuel of the stretch.</param>
/// <param name="FuelTo">Most fuel of the stretch.</param>
/// <param name="Forward">Its forward boundary from the least mass to the greatest.</param>
/// <param name="Aft">Its aft boundary from the least mass to the greatest.</param>
public sealed record LoadingPolygon(Mass FuelFrom, Mass FuelTo, Sequence<LoadingPoint> Forward, Sequence<LoadingPoint> Aft);
