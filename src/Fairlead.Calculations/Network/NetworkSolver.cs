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
            if (SparseLdl.Factor(Matrix(network, volts)) is not { } factor)
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

    /// <summary>Conductances between live nodes, the sources' own included.</summary>
    internal static Dictionary<int, double>[] Conductances(DcNetwork network)
    {
        var rows = new Dictionary<int, double>[network.Unknowns];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = new Dictionary<int, double> { [i] = 0 };
        }

        foreach (var branch in network.Branches)
        {
            Add(network, rows, branch.From, branch.To, 1 / branch.Resistance.Si);
        }

        foreach (var source in network.Sources)
        {
            Add(network, rows, source.Node, source.Return, 1 / source.Resistance.Si);
        }

        return rows;
    }

    /// <summary>Adds a conductance between two nodes, unless one is dead.</summary>
    internal static void Add(DcNetwork network, Dictionary<int, double>[] rows, string from, string to, double conductance)
    {
        if (from == to || !network.IsLive(from) || !network.IsLive(to))
        {
            return;
        }

        var (i, j) = (network.Number(from), network.Number(to));
        Put(i, i, conductance);
        Put(j, j, conductance);
        Put(i, j, -conductance);
        Put(j, i, -conductance);

        void Put(int row, int column, double value)
        {
            if (row >= 0 && column >= 0)
            {
                rows[row][column] = rows[row].GetValueOrDefault(column) + value;
            }
        }
    }

    /// <summary>Currents that the sources push into the nodes when all nodes are at zero.</summary>
    internal static double[] Injected(DcNetwork network)
    {
        var right = new double[network.Unknowns];
        foreach (var source in network.Sources)
        {
            Inject(network, right, source.Node, source.Return, source.Voltage.Si / source.Resistance.Si);
        }

        return right;
    }

    // Without loads every node stands at its highest: Newton then comes down to the solution of higher voltage.
    private static double[]? Start(DcNetwork network) => SparseLdl.Factor(Conductances(network))?.Solve(Injected(network));

    private static Dictionary<int, double>[] Matrix(DcNetwork network, double[] volts)
    {
        var rows = Conductances(network);
        foreach (var load in network.Loads)
        {
            var across = At(network, volts, load.Node) - At(network, volts, load.Return);
            var slope = load.Resistance is { } r ? 1 / r.Si : load.Power is { } p ? -p.Si / (across * across) : 0;
            Add(network, rows, load.Node, load.Return, slope);
        }

        return rows;
    }

    private static (double[] Residual, double Flow) Residual(DcNetwork network, double[] volts)
    {
        var right = Injected(network);
        var flow = right.Sum(Math.Abs) + 1e-12;
        foreach (var source in network.Sources)
        {
            Inject(network, right, source.Return, source.Node, (At(network, volts, source.Node) - At(network, volts, source.Return)) / source.Resistance.Si);
        }

        foreach (var branch in network.Branches)
        {
            Inject(network, right, branch.To, branch.From, (At(network, volts, branch.From) - At(network, volts, branch.To)) / branch.Resistance.Si);
        }

        foreach (var load in network.Loads)
        {
            Inject(network, right, load.Return, load.Node, Draw(load, At(network, volts, load.Node) - At(network, volts, load.Return)));
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

    private static void Inject(DcNetwork network, double[] right, string into, string outOf, double current)
    {
        if (!network.IsLive(into) || !network.IsLive(outOf))
        {
            return;
        }

        if (network.Number(into) is >= 0 and var i)
        {
            right[i] += current;
        }

        if (network.Number(outOf) is >= 0 and var j)
        {
            right[j] -= current;
        }
    }

    private static double At(DcNetwork network, double[] volts, string node) => network.Number(node) is >= 0 and var i ? volts[i] : 0;

    private static double Greatest(double[] values) => values.Length == 0 ? 0 : values.Max(Math.Abs);
}
