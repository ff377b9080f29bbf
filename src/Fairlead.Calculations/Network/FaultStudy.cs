namespace Fairlead.Calculations.Network;

/// <summary>A short: its current, and the voltages and currents while it lasts.</summary>
public sealed class ShortState
{
    private readonly FaultStudy study;
    private readonly InverseColumn influence;

    internal ShortState(FaultStudy study, string node, InverseColumn influence, Current current) =>
        (this.study, Node, this.influence, Current) = (study, node, influence, current);

    /// <summary>The node shorted.</summary>
    public string Node { get; }

    /// <summary>Current through the short.</summary>
    public Current Current { get; }

    /// <summary>Voltage of a node while the short lasts; null where it is dead.</summary>
    public Voltage? At(string node) => study.Network.Number(node) is >= 0 and var i
        ? new Voltage(study.Volts[i] - (influence.At(i) * Current.Si)) : node == NetworkNodes.Reference ? Voltage.Zero : null;

    /// <summary>Current through a resistance while the short lasts.</summary>
    public Current Through(NetworkBranch branch)
    {
        ArgumentNullException.ThrowIfNull(branch);
        return At(branch.From) - At(branch.To) is { } drop ? drop / branch.Resistance : Current.Zero;
    }

    /// <summary>Whether a resistance carries any of the short.</summary>
    internal bool Carries(NetworkBranch branch) => Math.Abs(Through(branch).Si) > 1e-9 * Current.Si;

    /// <summary>Current a source gives while the short lasts.</summary>
    public Current From(NetworkSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return At(source.Node) - At(source.Return) is { } across ? (source.Voltage - across) / source.Resistance : Current.Zero;
    }
}

/// <summary>Every single short of a network. The loads count as the resistances they are before the short, so that one factorisation serves
/// all shorts: each is a change of rank one, and costs the way from its node to the sources.</summary>
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
        var network = before.Network;
        var loads = network.LiveLoads.Select(l => (l.From, l.To, Across: before.Across(l.Load), Into: before.Into(l.Load)))
            .Where(l => l is { Across.Si: > 0, Into.Si: > 0 }).Select(l => new Link(l.From, l.To, l.Into.Si / l.Across!.Value.Si));
        return SparseLdl.Factor(network.Pattern, network.Links.Concat(loads)) is { } factor ? new FaultStudy(network, factor) : null;
    }

    /// <summary>The study of a network without loads; null when its resistances differ too much to be factored.</summary>
    internal static FaultStudy? Of(DcNetwork network) => SparseLdl.Factor(network.Pattern, network.Links) is { } factor ? new FaultStudy(network, factor) : null;

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

        var influence = new InverseColumn(factor, i);
        return new ShortState(this, node, influence, new Current(Volts[i] / (influence.Own + fault.Si)));
    }
}
