using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;

namespace Fairlead.Tests.Calculations.Network;

/// <summary>Laws of linear networks, and the honest end of those that are not.</summary>
public sealed class NetworkLawTests
{
    private static readonly Gen<(int[] Parents, double[] Ohms, double[] Loads)> Tree =
        from size in Gen.Int[2, 40]
        from parents in Gen.Double[0, 1].Array[size]
        from ohms in Gen.Double[0.001, 0.2].Array[size]
        from loads in Gen.Double[0, 2].Array[size]
        select (parents.Select((p, i) => Math.Max(0, Math.Min((int)(p * i), i - 1))).ToArray(), ohms, loads);

    [Fact]
    public void Currents_sum_to_zero_and_no_power_is_lost() => Tree.Sample(tree =>
    {
        var solution = NetworkSolver.Solve(Network(tree))!;
        var network = solution.Network;
        Assert.True(solution.Residual.Si < 1e-8);
        var given = network.Sources.Sum(s => s.Voltage.Si * solution.From(s).Si);
        var used = network.Sources.Sum(s => Math.Pow(solution.From(s).Si, 2) * s.Resistance.Si)
            + network.Branches.Sum(b => Math.Pow(solution.Through(b).Si, 2) * b.Resistance.Si)
            + network.Loads.Sum(l => solution.Across(l)!.Value.Si * solution.Into(l).Si);
        Assert.Equal(given, used, 1e-7 * Math.Max(1, Math.Abs(given)));
    });

    [Fact]
    public void Drops_of_constant_current_loads_superpose() => Tree.Sample(tree =>
    {
        var all = NetworkSolver.Solve(Network(tree))!;
        var none = NetworkSolver.Solve(Network(tree with { Loads = [.. tree.Loads.Select(_ => 0.0)] }))!;
        foreach (var node in all.Network.Nodes)
        {
            var sum = 0.0;
            for (var i = 0; i < tree.Loads.Length; i++)
            {
                var one = NetworkSolver.Solve(Network(tree with { Loads = [.. tree.Loads.Select((l, j) => i == j ? l : 0)] }))!;
                sum += (none.At(node) - one.At(node))!.Value.Si;
            }

            Assert.Equal((none.At(node) - all.At(node))!.Value.Si, sum, 1e-8);
        }
    }, iter: 20);

    [Fact]
    public void A_current_here_moves_the_voltage_there_as_much_as_the_other_way_round() => Tree.Sample(tree =>
    {
        var size = tree.Loads.Length;
        double Drop(int at, int seen)
        {
            var loads = new double[size];
            loads[at] = 1;
            return 28 - NetworkSolver.Solve(Network(tree with { Loads = loads }))!.At($"n{seen}")!.Value.Si;
        }

        Assert.Equal(Drop(0, size - 1), Drop(size - 1, 0), 1e-9);
        Assert.Equal(Drop(size / 2, size - 1), Drop(size - 1, size / 2), 1e-9);
    });

    [Fact]
    public void A_short_is_the_network_with_one_resistance_more() => Tree.Sample(tree =>
    {
        var before = NetworkSolver.Solve(Network(tree))!;
        var resistive = before.Network.Loads.Where(l => before.Into(l).Si > 0).Select(l => l with { Current = null, Resistance = before.Across(l)!.Value / before.Into(l) }).ToSequence();
        if (resistive.Any(l => l.Resistance!.Value.Si <= 0))
        {
            return;
        }

        var node = $"n{tree.Loads.Length - 1}";
        var whole = NetworkSolver.Solve(DcNetwork.Of(before.Network.Sources, [.. before.Network.Branches, new("short", node, "0", Resistance.Of(3, "mΩ"))], resistive))!;
        var state = FaultStudy.Of(before)!.Short(node, Resistance.Of(3, "mΩ"))!;
        Assert.All(before.Network.Nodes, n => Assert.Equal(whole.At(n)!.Value.Si, state.At(n)!.Value.Si, 1e-7));
        Assert.Equal(whole.Through(whole.Network.Branches[^1]).Si, state.Current.Si, 1e-6 * state.Current.Si);
    });

    // Greatest power through a resistance is V²/4R; the solution of higher voltage is (V + √(V² − 4RP))/2.
    [Theory]
    [InlineData(100)]
    [InlineData(900)]
    [InlineData(979.9)]
    public void A_load_of_constant_power_finds_the_higher_voltage(double watts)
    {
        var solution = NetworkSolver.Solve(OnePower(watts))!;
        Assert.Equal((28 + Math.Sqrt((28 * 28) - (4 * 0.2 * watts))) / 2, solution.At("a")!.Value.Si, 1e-6);
    }

    [Fact]
    public void More_power_than_the_network_can_carry_has_no_solution() =>
        Assert.Null(NetworkSolver.Solve(OnePower(980.1)));

    [Fact]
    public void What_no_source_reaches_is_dead_and_draws_nothing()
    {
        var network = DcNetwork.Of([new("G", "a", Volt(28), Ohm(0.1))], [new("w", "b", "c", Ohm(1))], [new("l", "b", Current.Of(3, "A")), new("m", "a", Current.Of(1, "A"))]);
        var solution = NetworkSolver.Solve(network)!;
        Assert.Equal(["b", "c"], network.Dead.Order(StringComparer.Ordinal));
        Assert.Null(solution.At("b"));
        Assert.Equal(27.9, solution.At("a")!.Value.Si, 1e-12);
        Assert.Equal(0, solution.Into(network.Loads[0]).Si);
    }

    [Fact]
    public void Ten_thousand_nodes_are_solved()
    {
        var random = new Random(7);
        var branches = Enumerable.Range(1, 9999).Select(i => new NetworkBranch($"w{i}", $"n{random.Next(Math.Max(0, i - 40), i)}", $"n{i}", Ohm(0.001))).ToSequence();
        var loads = Enumerable.Range(1, 9999).Select(i => new NetworkLoad($"l{i}", $"n{i}", Power: Wattage.Of(0.001, "W"))).ToSequence();
        var solution = NetworkSolver.Solve(DcNetwork.Of([new("G", "n0", Volt(28), Ohm(0.001))], branches, loads))!;
        Assert.Equal(9.999, solution.Network.Loads.Sum(l => solution.Across(l)!.Value.Si * solution.Into(l).Si), 1e-9);
        var feeder = solution.From(solution.Network.Sources[0]).Si;
        Assert.Equal(solution.Network.Loads.Sum(l => solution.Into(l).Si), feeder, 1e-7);
    }

    // 5 A breaker behind a 60 A one: at 280 A the small one opens in at most 0.12 s, the large one not before 3 s.
    [Fact]
    public void Only_the_nearest_breaker_opens_where_the_curves_keep_apart()
    {
        Sequence<NetworkTrip> Curves(double upstream) =>
        [
            new("feeder", Fraction.Of(200, "%"), Duration.Of(upstream, "s"), Duration.Of(10 * upstream, "s")), new("feeder", Fraction.Of(1000, "%"), Duration.Of(upstream / 5, "s"), Duration.Of(upstream, "s")),
            new("wire", Fraction.Of(200, "%"), Duration.Of(0.4, "s"), Duration.Of(2.5, "s")), new("wire", Fraction.Of(10_000, "%"), Duration.Of(0.02, "s"), Duration.Of(0.12, "s")),
        ];
        var input = new ShortCircuitInput(
            [new("G", "gen", Volt(28), Ohm(0.005))], [new("feeder", "gen", "bus", Ohm(0.002)), new("wire", "bus", "box", Ohm(0.093))], "box",
            Breakers: [new("feeder", Current.Of(60, "A")), new("wire", Current.Of(5, "A"))], Curves: Curves(5));
        var sheet = ShortCircuit.Run(input);
        Assert.Equal(280, sheet["If"].Value, 1e-6);
        Assert.Equal("feeder stays closed", Assert.Single(sheet.Checks).Name);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Equal(Verdict.Fails, ShortCircuit.Run(input with { Curves = Curves(0.1) }).Verdict);
        Assert.Equal(Verdict.CannotTell, ShortCircuit.Run(input with { Fault = Ohm(10) }).Verdict);
    }

    private static DcNetwork OnePower(double watts) =>
        DcNetwork.Of([new("G", "g", Volt(28), Ohm(0.05))], [new("w", "g", "a", Ohm(0.15))], [new("l", "a", Power: Wattage.Of(watts, "W"))]);

    private static DcNetwork Network((int[] Parents, double[] Ohms, double[] Loads) tree) => DcNetwork.Of(
        [new("G", "root", Volt(28), Ohm(0.01))],
        [new("feeder", "root", "n0", Ohm(0.001)), .. tree.Parents.Select((p, i) => new NetworkBranch($"w{i}", $"n{p}", $"n{i}", Ohm(tree.Ohms[i]))).Where(b => b.From != b.To)],
        tree.Loads.Select((l, i) => new NetworkLoad($"l{i}", $"n{i}", Current.Of(l, "A"))).ToSequence());

    private static Voltage Volt(double v) => Voltage.Of(v, "V");

    private static Resistance Ohm(double r) => Resistance.Of(r, "Ω");
}
