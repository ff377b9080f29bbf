using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>A straight stretch of the burn path (SI units).</summary>
/// <param name="From">Fuel at its lower end.</param>
/// <param name="To">Fuel at its upper end.</param>
/// <param name="Moment">Moment of the fuel at its lower end.</param>
/// <param name="Arm">Arm of the fuel burned along it.</param>
internal readonly record struct BurnStretch(double From, double To, double Moment, double Arm);

/// <summary>Where the fuel is for each amount of it: the tanks that burn last are filled first, tanks of equal order fill and empty in
/// proportion to their contents. The moment of the fuel is then a piecewise linear function of its mass.</summary>
internal sealed class BurnPath
{
    private readonly Sequence<LoadingTankRow> tanks;
    private readonly int[] fillingOrder;

    public BurnPath(Sequence<LoadingTankRow> tanks)
    {
        this.tanks = tanks;
        fillingOrder = [.. tanks.Select(t => t.BurnOrder).Distinct().OrderDescending()];
    }

    /// <summary>Fuel in all tanks when full.</summary>
    public double Full => tanks.Sum(t => t.Usable.Si);

    /// <summary>The stretches from the least fuel to full, of length zero only when there is a single one.</summary>
    public ImmutableArray<BurnStretch> Above(double least)
    {
        var stretches = ImmutableArray.CreateBuilder<BurnStretch>();
        double below = 0, moment = 0;
        foreach (var together in fillingOrder.Select(Together).Where(t => Usable(t) > 0))
        {
            var arm = together.Sum(t => t.Usable.Si * t.Arm.Si) / Usable(together);
            var from = Math.Max(below, least);
            var top = below + Usable(together);
            if (from < top)
            {
                stretches.Add(new(from, top, moment + ((from - below) * arm), arm));
            }

            moment += Usable(together) * arm;
            below = top;
        }

        return stretches.Count > 0 ? stretches.ToImmutable() : [new(below, below, moment, 0)];
    }

    /// <summary>The contents of each tank, in the order of the table, for an amount of fuel.</summary>
    public Sequence<LoadedMass> Contents(double fuel)
    {
        var shares = new Dictionary<int, double>();
        foreach (var order in fillingOrder)
        {
            var usable = Usable(Together(order));
            shares[order] = usable > 0 ? Math.Clamp(fuel / usable, 0, 1) : 0;
            fuel -= usable * shares[order];
        }

        return tanks.Select(t => new LoadedMass(t.Name, t.Usable * shares[t.BurnOrder])).ToSequence();
    }

    private LoadingTankRow[] Together(int order) => [.. tanks.Where(t => t.BurnOrder == order)];

    private static double Usable(LoadingTankRow[] together) => together.Sum(t => t.Usable.Si);
}
