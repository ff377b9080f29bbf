using System.Globalization;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;

namespace Fairlead.Tests.Reference.Network;

/// <summary>Networks solved here and by ngspice, a general circuit simulator. The decks are written by the test.</summary>
public sealed class CircuitSimulatorTests
{
    // Closed form in exact fractions; ngspice agrees in all printed digits.
    [Theory]
    [InlineData("gen", 27.930466375)]
    [InlineData("bus", 27.902652925)]
    [InlineData("a1", 27.882951140)]
    [InlineData("a2", 27.582498920)]
    [InlineData("b1", 27.882652925)]
    [InlineData("b2", 27.737652925)]
    [InlineData("c1", 27.555825599)]
    public void A_bus_with_resistive_and_constant_current_loads(string node, double volts)
    {
        var solution = NetworkSolver.Solve(Bus())!;
        Assert.Equal(volts, solution.At(node)!.Value.Si, 5e-10);
        Assert.Equal(13.906725008, solution.From(solution.Network.Sources[0]).Si, 5e-8);
    }

    // The branch quadratic V = (Vb + √(Vb² − 4RP))/2 by hand; ngspice agrees.
    [Theory]
    [InlineData("bus", 27.959539560)]
    [InlineData("p1", 27.670422178)]
    [InlineData("p2", 27.699608084)]
    public void A_bus_with_loads_of_constant_power(string node, double volts)
    {
        var solution = NetworkSolver.Solve(DcNetwork.Of(
            [new("V1", "bus", Volt(28), Ohm(0.007))],
            [new("w1", "bus", "p1", Ohm(0.080)), new("w2", "bus", "p2", Ohm(0.120))],
            [new("l1", "p1", Power: Wattage.Of(100, "W")), new("l2", "p2", Power: Wattage.Of(60, "W"))]))!;
        Assert.Equal(volts, solution.At(node)!.Value.Si, 5e-10);
        Assert.Equal(5.780062896, solution.From(solution.Network.Sources[0]).Si, 5e-9);
    }

    [Fact]
    public void Fifty_generated_networks_and_a_short_in_each_agree_with_ngspice()
    {
        Tools.Need("ngspice");
        for (var seed = 1; seed <= 50; seed++)
        {
            var network = Generated(new Random(seed));
            var solution = NetworkSolver.Solve(network)!;
            foreach (var (node, volts) in Simulated(network, shorted: null))
            {
                Assert.Equal(volts, solution.At(node)!.Value.Si, 2e-8);
            }

            // During a short the loads are the resistances they were before it: so they are in the second deck.
            var study = FaultStudy.Of(solution)!;
            var fixedLoads = network.Loads.Select(l => l with { Current = null, Power = null, Resistance = solution.Across(l)!.Value / solution.Into(l) });
            var resistive = DcNetwork.Of(network.Sources, network.Branches, fixedLoads.ToSequence());
            var shorted = network.Nodes[seed % network.Nodes.Length];
            var state = study.Short(shorted, Ohm(0.002))!;
            foreach (var (node, volts) in Simulated(resistive, shorted))
            {
                Assert.Equal(volts, state.At(node)!.Value.Si, 2e-8);
            }
        }
    }

    private static DcNetwork Bus() => DcNetwork.Of(
        [new("V1", "gen", Volt(28), Ohm(0.005))],
        [
            new("feeder", "gen", "bus", Ohm(0.002)), new("cbA", "bus", "a1", Ohm(0.010)), new("wA", "a1", "a2", Ohm(0.1525)),
            new("cbB", "bus", "b1", Ohm(0.004)), new("wB", "b1", "b2", Ohm(0.029)), new("wC", "bus", "c1", Ohm(0.050)),
        ],
        [new("A", "a2", Resistance: Ohm(14)), new("B", "b2", Ampere(5)), new("C", "c1", Resistance: Ohm(7)), new("C2", "c1", Ampere(3))]);

    // A tree of buses and boxes with a few cross-ties and return paths of their own.
    private static DcNetwork Generated(Random random)
    {
        double Between(double low, double high) => low + (random.NextDouble() * (high - low));
        var count = random.Next(5, 30);
        var branches = new List<NetworkBranch>();
        var loads = new List<NetworkLoad>();
        for (var i = 1; i < count; i++)
        {
            branches.Add(new($"w{i}", $"n{random.Next(i)}", $"n{i}", Ohm(Between(0.002, 0.08))));
            branches.Add(new($"r{i}", $"g{i}", "0", Ohm(Between(0.001, 0.02))));
            loads.Add(random.Next(3) switch
            {
                0 => new($"l{i}", $"n{i}", Ampere(Between(0.1, 4)), Return: $"g{i}"),
                1 => new($"l{i}", $"n{i}", Power: Wattage.Of(Between(2, 60), "W"), Return: $"g{i}"),
                _ => new($"l{i}", $"n{i}", Resistance: Ohm(Between(8, 200)), Return: $"g{i}"),
            });
        }

        for (var t = 0; t < 2; t++)
        {
            branches.Add(new($"t{t}", $"n{random.Next(count)}", $"n{random.Next(count)}", Ohm(Between(0.005, 0.05))));
        }

        return DcNetwork.Of(
            [new("G", "n0", Volt(28.5), Ohm(Between(0.002, 0.02))), new("B", $"n{random.Next(count)}", Volt(25.5), Ohm(Between(0.005, 0.03)))],
            branches.ToSequence(), loads.ToSequence());
    }

    private static List<(string Node, double Volts)> Simulated(DcNetwork network, string? shorted)
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
            if (load.Resistance is { } r)
            {
                Line($"Rl{i} {load.Node} {load.Return} {r.Si:R}");
            }
            else if (load.Power is { } p)
            {
                Line($"Bl{i} {load.Node} {load.Return} I={p.Si:R}/max(v({load.Node},{load.Return}),1)");
            }
            else
            {
                Line($"Il{i} {load.Node} {load.Return} DC {load.Current!.Value.Si:R}");
            }
        }

        if (shorted is not null)
        {
            Line($"Rshort {shorted} 0 0.002");
        }

        deck.Append(".options reltol=1e-10 abstol=1e-12 vntol=1e-12\n.control\nset numdgt=12\nset noaskquit\nop\n");
        foreach (var node in network.Nodes)
        {
            deck.Append(CultureInfo.InvariantCulture, $"print v({node})\n");
        }

        deck.Append("quit\n.endc\n.end\n");
        return Run(deck.ToString(), network.Nodes.Length);
    }

    private static List<(string Node, double Volts)> Run(string deck, int expected)
    {
        var output = Tools.Run("ngspice", "cir", deck, file => ["-b", file, "-o", file + ".log"], file => File.ReadAllText(file + ".log"));
        var values = output.Split('\n').Where(l => l.StartsWith("v(", StringComparison.Ordinal)).Select(l => l.Split('=', StringSplitOptions.TrimEntries))
            .Select(p => (p[0][2..^1], double.Parse(p[1], CultureInfo.InvariantCulture))).ToList();
        Assert.True(values.Count == expected, output);
        return values;
    }

    private static Voltage Volt(double v) => Voltage.Of(v, "V");

    private static Resistance Ohm(double r) => Resistance.Of(r, "Ω");

    private static Current Ampere(double i) => Current.Of(i, "A");
}
