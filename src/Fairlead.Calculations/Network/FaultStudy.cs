namespace Fairlead.Calculations.Network;

/// <summary>A short: its current, and the voltages and currents while it lasts.</summary>
public sealed class ShortState
{
    private readonly FaultStudy study;
    private readonly double[] influence;

    internal ShortState(FaultStudy study, string node, double[] influence, Current current) =>
        (this.study, Node, this.influence, Current) = (study, node, influence, current);

    /// <summary>The node shorted.</summary>
    public string Node { get; }

    /// <summary>Current through the short.</summary>
    public Current Current { get; }

    /// <summary>Voltage of a node while the short lasts; null where it is dead.</summary>
    public Voltage? At(string node) => study.Network.Number(node) is >= 0 and var i
        ? new Voltage(study.Volts[i] - (influence[i] * Current.Si)) : node == NetworkNodes.Reference ? Voltage.Zero : null;

    /// <summary>Current through a resistance while the short lasts.</summary>
    public Current Through(NetworkBranch branch)
    {
        ArgumentNullException.ThrowIfNull(branch);
        return At(branch.From) - At(branch.To) is { } drop ? drop / branch.Resistance : Current.Zero;
    }

    /// <summary>Current a source gives while the short lasts.</summary>
    public Current From(NetworkSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return At(source.Node) - At(source.Return) is { } across ? (source.Voltage - across) / source.Resistance : Current.Zero;
    }
}

/// <summary>Every single short of a network. The loads count as the resistances they are before the short, so that one factorisation serves
/// all shorts: each is a change of rank one, and costs one solution.</summary>
public sealed class FaultStudy
{
    private readonly SparseLdl factor;

    private FaultStudy(DcNetwork network, SparseLdl factor) =>
        (Network, this.factor, Volts) = (network, factor, factor.Solve(NetworkSolver.Injected(network)));

    /// <summary>The network.</summary>
    public DcNetwork Network { get; }

    internal double[] Volts { get; }

    /// <summary>The study of a solved network; null when its resistances differ too much to be factored.</summary>
    public static FaultStudy? Of(NetworkSolution before)
    {
        ArgumentNullException.ThrowIfNull(before);
        var rows = NetworkSolver.Conductances(before.Network);
        foreach (var load in before.Network.Loads)
        {
            if (before.Across(load) is { Si: > 0 } across && before.Into(load) is { Si: > 0 } current)
            {
                NetworkSolver.Add(before.Network, rows, load.Node, load.Return, current.Si / across.Si);
            }
        }

        return SparseLdl.Factor(rows) is { } factor ? new FaultStudy(before.Network, factor) : null;
    }

    /// <summary>A short from a node to the reference; null where the node is dead.</summary>
    /// <param name="node">The node.</param>
    /// <param name="fault">Resistance of the short itself.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is negative.</exception>
    public ShortState? Short(string node, Resistance fault)
    {
        if (fault.Si < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(fault), fault.Si, "The resistance of a short is zero or more ohms.");
        }

        if (Network.Number(node) is not (>= 0 and var i))
        {
            return null;
        }

        var one = new double[Network.Unknowns];
        one[i] = 1;
        var influence = factor.Solve(one);
        return new ShortState(this, node, influence, new Current(Volts[i] / (influence[i] + fault.Si)));
    }
}
