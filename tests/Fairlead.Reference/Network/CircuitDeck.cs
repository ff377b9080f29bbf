using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;

namespace Fairlead.Tests.Reference.Network;

/// <summary>Generated networks, and networks as decks for ngspice, a general circuit simulator.</summary>
internal static class CircuitDeck
{
    /// <summary>A tree of buses and boxes with a few cross-ties and return paths of their own.</summary>
    public static DcNetwork Generated(Random random, int count)
    {
        double Between(double low, double high) => low + (random.NextDouble() * (high - low));
        var branches = new List<NetworkBranch>();
        var loads = new List<NetworkLoad>();
        for (var i = 1; i < count; i++)
        {
            branches.Add(new($"w{i}", $"n{random.Next(i)}", $"n{i}", Ohm(Between(0.002, 0.08))));
            branches.Add(new($"r{i}", $"g{i}", "0", Ohm(Between(0.001, 0.02))));
            loads.Add(random.Next(3) switch
            {
                0 => new($"l{i}", $"n{i}", Current.Of(Scaled(0.1, 4), "A"), Return: $"g{i}"),
                1 => new($"l{i}", $"n{i}", Power: Wattage.Of(Scaled(2, 60), "W"), Return: $"g{i}"),
                _ => new($"l{i}", $"n{i}", Resistance: Ohm(Between(8, 200) * Math.Max(1, count / 30.0)), Return: $"g{i}"),
            });
        }

        // So that a great network carries what its sources give.
        double Scaled(double low, double high) => Between(low, high) / Math.Max(1, count / 30.0);
        for (var t = 0; t < 2; t++)
        {
            branches.Add(new($"t{t}", $"n{random.Next(count)}", $"n{random.Next(count)}", Ohm(Between(0.005, 0.05))));
        }

        return DcNetwork.Of(
            [new("G", "n0", Voltage.Of(28.5, "V"), Ohm(Between(0.002, 0.02))), new("B", $"n{random.Next(count)}", Voltage.Of(25.5, "V"), Ohm(Between(0.005, 0.03)))],
            branches.ToSequence(), loads.ToSequence());
    }

    /// <summary>The operating point of a network, with a node shorted by 2 mΩ or none.</summary>
    /// <param name="network">The network.</param>
    /// <param name="printed">Nodes whose voltage is printed.</param>
    /// <param name="shorted">The node shorted.</param>
    /// <param name="solves">How often it is solved.</param>
    public static string Of(DcNetwork network, ImmutableArray<string> printed, string? shorted = null, int solves = 1)
    {
        var deck = new StringBuilder("network\n");
        void Line(FormattableString line) => deck.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        foreach (var (source, i) in network.Sources.Select((s, i) => (s, i)))
        {
            Line($"V{i} e{i} {source.Return} DC {source.Voltage.Si:R}");
            Line($"Rs{i} e{i} {source.Node} {source.Resistance.Si:R}");
        }

        foreach (var (branch, i) in network.Branches.Select((b, i) => (b, i)).Where(x => x.b.From != x.b.To))
        {
            Line($"R{i} {branch.From} {branch.To} {branch.Resistance.Si:R}");
        }

        foreach (var (load, i) in network.Loads.Select((l, i) => (l, i)))
        {
            Line(load switch
            {
                { Resistance: { } r } => $"Rl{i} {load.Node} {load.Return} {r.Si:R}",
                { Power: { } p } => $"Bl{i} {load.Node} {load.Return} I={p.Si:R}/max(v({load.Node},{load.Return}),1)",
                _ => $"Il{i} {load.Node} {load.Return} DC {load.Current!.Value.Si:R}",
            });
        }

        if (shorted is not null)
        {
            Line($"Rshort {shorted} 0 0.002");
        }

        deck.Append(CultureInfo.InvariantCulture, $".options reltol=1e-10 abstol=1e-12 vntol=1e-12\n.control\nset numdgt=12\nset noaskquit\n");
        if (solves > 1)
        {
            // Each solution is dropped before the next, as a long list of them slows the program down.
            deck.Append(CultureInfo.InvariantCulture, $"repeat {solves - 1}\nop\ndestroy all\nend\n");
        }

        deck.Append("op\n");
        foreach (var node in printed)
        {
            deck.Append(CultureInfo.InvariantCulture, $"print v({node})\n");
        }

        return deck.Append("quit\n.endc\n.end\n").ToString();
    }

    private static Resistance Ohm(double r) => Resistance.Of(r, "Ω");
}
