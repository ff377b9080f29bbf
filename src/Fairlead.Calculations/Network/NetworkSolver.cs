namespace Fairlead.Calculations.Network;

/// <summary>Solves a network by nodal analysis: at every node the currents sum to zero. Loads of constant power make that nonlinear; Newton's
/// method with a halved step where a whole one does not help finds the solution of higher voltage, or none.</summary>
public static class NetworkSolver
{
    private const int MostIterations = 60;

    // Residuals against all current the sources push: reached by a good step, and accepted where rounding allows no better.
    private const double Tight = 1e-14;
    private const double Loose = 1e-11;

    /// <summary>Solves a network; null when no solution was found: the sources cannot carry the constant-power loads, or a node hangs in the air.</summary>
    public static NetworkSolution? Solve(DcNetwork network)
    {
        ArgumentNullException.ThrowIfNull(network);
        var volts = Start(network);
        for (var iteration = 1; volts is not null && iteration <= MostIterations; iteration++)
        {
            var (residual, flow) = Residual(network, volts);
            var worst = Greatest(residual);
            if (SparseLdl.Factor(network.Pattern, Matrix(network, volts)) is not { } factor)
            {
                return null;
            }

            var next = worst > Tight * flow ? Step(network, volts, factor.Solve(residual), worst) : null;
            if (next is null && worst <= Loose * flow)
            {
                // On the branch of lower voltage, where more load draws less power, the matrix is not positive definite.
                return factor.PositiveDefinite ? new NetworkSolution(network, volts, iteration, worst) : null;
            }

            volts = next;
        }

        return null;
    }

    /// <summary>Current a load draws at a voltage.</summary>
    internal static double Draw(NetworkLoad load, double volts) => load switch
    {
        { Current: { } current } => current.Si,
        { Power: { } power } => volts > 0 ? power.Si / volts : double.PositiveInfinity,
        { Resistance: { } resistance } => volts / resistance.Si,
        _ => 0,
    };

    /// <summary>Currents that the sources push into the nodes when all nodes are at zero.</summary>
    internal static double[] Injected(DcNetwork network)
    {
        var right = new double[network.Unknowns];
        foreach (var source in network.Sources.Where(s => network.IsLive(s.Node) && network.IsLive(s.Return)))
        {
            Inject(right, network.Number(source.Node), network.Number(source.Return), source.Voltage.Si / source.Resistance.Si);
        }

        return right;
    }

    // Without loads every node stands at its highest: Newton then comes down to the solution of higher voltage.
    private static double[]? Start(DcNetwork network) => SparseLdl.Factor(network.Pattern, network.Links)?.Solve(Injected(network));

    private static IEnumerable<Link> Matrix(DcNetwork network, double[] volts) =>
        network.Links.Concat(network.LiveLoads.Where(l => l.Load.Current is null).Select(l => new Link(l.From, l.To, Slope(l.Load, At(volts, l.From) - At(volts, l.To)))));

    private static double Slope(NetworkLoad load, double across) => load.Resistance is { } r ? 1 / r.Si : load.Power is { } p ? -p.Si / (across * across) : 0;

    private static (double[] Residual, double Flow) Residual(DcNetwork network, double[] volts)
    {
        var right = Injected(network);
        var flow = right.Sum(Math.Abs) + 1e-12;
        foreach (var link in network.Links)
        {
            Inject(right, link.To, link.From, (At(volts, link.From) - At(volts, link.To)) * link.Conductance);
        }

        foreach (var (load, from, to) in network.LiveLoads)
        {
            Inject(right, to, from, Draw(load, At(volts, from) - At(volts, to)));
        }

        return (right, flow);
    }

    private static double[]? Step(DcNetwork network, double[] volts, double[] step, double worst)
    {
        for (var share = 1.0; share > 1e-6; share /= 2)
        {
            var next = volts.Select((v, i) => v + (share * step[i])).ToArray();
            var now = Greatest(Residual(network, next).Residual);
            if (double.IsFinite(now) && now < worst)
            {
                return next;
            }
        }

        return null;
    }

    private static void Inject(double[] right, int into, int outOf, double current)
    {
        if (into >= 0)
        {
            right[into] += current;
        }

        if (outOf >= 0)
        {
            right[outOf] -= current;
        }
    }

    private static double At(double[] volts, int node) => node >= 0 ? volts[node] : 0;

    private static double Greatest(double[] values) => values.Length == 0 ? 0 : values.Max(Math.Abs);
}
