using System.Collections.Immutable;

namespace Fairlead.Calculations.Network;

/// <summary>The voltages of a solved network, and what follows from them.</summary>
public sealed class NetworkSolution
{
    private readonly double[] volts;

    internal NetworkSolution(DcNetwork network, double[] volts, int iterations, double residual) =>
        (Network, this.volts, Iterations, Residual) = (network, volts, iterations, new Current(residual));

    /// <summary>The network.</summary>
    public DcNetwork Network { get; }

    /// <summary>Newton steps taken.</summary>
    public int Iterations { get; }

    /// <summary>The greatest sum of currents at any node, which is zero but for rounding.</summary>
    public Current Residual { get; }

    /// <summary>Voltage of a node against the reference; null where no source reaches it.</summary>
    public Voltage? At(string node) => node == NetworkNodes.Reference ? Voltage.Zero : Network.Number(node) is >= 0 and var i ? new Voltage(volts[i]) : null;

    /// <summary>Voltage across a load; null where it is dead.</summary>
    public Voltage? Across(NetworkLoad load) => At((load ?? throw new ArgumentNullException(nameof(load))).Node) - At(load.Return);

    /// <summary>Current through a resistance, from its one end to the other; zero where it is dead.</summary>
    public Current Through(NetworkBranch branch)
    {
        ArgumentNullException.ThrowIfNull(branch);
        return At(branch.From) - At(branch.To) is { } drop ? drop / branch.Resistance : Current.Zero;
    }

    /// <summary>Current a source gives; negative when it is charged.</summary>
    public Current From(NetworkSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return At(source.Node) - At(source.Return) is { } across ? (source.Voltage - across) / source.Resistance : Current.Zero;
    }

    /// <summary>Current a load draws; zero where it is dead.</summary>
    public Current Into(NetworkLoad load) => Across(load) is { } across ? new(NetworkSolver.Draw(load, across.Si)) : Current.Zero;

    /// <summary>The nodes with their voltages.</summary>
    public ImmutableArray<(string Node, Voltage? Voltage)> Voltages => [.. Network.Nodes.Select(n => (n, At(n)))];
}
