using System.Globalization;
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
            var random = new Random(seed);
            var network = CircuitDeck.Generated(random, random.Next(5, 30));
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

    private static List<(string Node, double Volts)> Simulated(DcNetwork network, string? shorted)
    {
        var output = Tools.Run("ngspice", "cir", CircuitDeck.Of(network, network.Nodes, shorted), file => ["-b", file, "-o", file + ".log"], file => File.ReadAllText(file + ".log"));
        var values = output.Split('\n').Where(l => l.StartsWith("v(", StringComparison.Ordinal)).Select(l => l.Split('=', StringSplitOptions.TrimEntries))
            .Select(p => (p[0][2..^1], double.Parse(p[1], CultureInfo.InvariantCulture))).ToList();
        Assert.True(values.Count == network.Nodes.Length, output);
        return values;
    }

    private static Voltage Volt(double v) => Voltage.Of(v, "V");

    private static Resistance Ohm(double r) => Resistance.Of(r, "Ω");

    private static Current Ampere(double i) => Current.Of(i, "A");
}
