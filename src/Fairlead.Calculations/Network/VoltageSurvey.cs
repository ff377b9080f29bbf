using System.Collections.Immutable;

namespace Fairlead.Calculations.Network;

/// <summary>Input of <see cref="VoltageSurvey"/>.</summary>
/// <param name="Sources">Sources; node <c>0</c> is the reference.</param>
/// <param name="Branches">Resistances between nodes.</param>
/// <param name="Loads">Loads.</param>
public sealed record VoltageSurveyInput(
    [In("sources", "sources")] Sequence<NetworkSource> Sources,
    [In("branches", "feeders, wires, breakers, returns")] Sequence<NetworkBranch> Branches,
    [In("loads", "loads", Default = "none")] Sequence<NetworkLoad> Loads = default);

/// <summary>Voltages and currents all over a DC network, by Kirchhoff's laws at every node.</summary>
/// <remarks>
/// Check value: 28 V behind 7 mΩ, 14 Ω behind 162.5 mΩ, 5 A behind 33 mΩ, and 7 Ω with 3 A behind 50 mΩ: 27.902652925 V at the bus and
/// 13.906725008 A from the source (closed form, and a general circuit simulator to all printed digits).
/// </remarks>
public sealed class VoltageSurvey : ICalculation<VoltageSurveyInput>
{
    internal static readonly Source Kirchhoff = new("Kirchhoff's laws", "", "nodal analysis", Basis.Derived);
    private static readonly Source Stated = new("Data of the equipment", "", "least voltage", Basis.Stated);

    /// <inheritdoc/>
    public static CalculationInfo<VoltageSurveyInput> Info { get; } = new(
        "voltage-survey", "Voltages all over the network", Discipline.Network,
        "Voltage at every node, current in every branch, with loads of constant current, power or resistance",
        "sources='generator,gen,28 V,5 mohm' branches='feeder,gen,bus,2 mohm;breaker and wire A,bus,a,162.5 mohm;wire B,bus,b,33 mohm' loads='A,a,,,14 ohm;B,b,5 A,,,,22 V'",
        Kirchhoff);

    /// <inheritdoc/>
    public static Sheet Run(VoltageSurveyInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Faults(input.Loads) is { } fault)
        {
            s.CannotTell(fault);
            return;
        }

        var network = DcNetwork.Of(input.Sources, input.Branches, input.Loads);
        if (NetworkSolver.Solve(network) is not { } solution)
        {
            s.CannotTell("No solution: the sources cannot carry the loads of constant power at any voltage, or the resistances differ too much for the digits of the machine.");
            return;
        }

        if (input.Loads.FirstOrDefault(l => solution.Across(l) is { Si: < 0 }) is { } impossible)
        {
            s.CannotTell($"Load '{impossible.Name}' would have to draw its current against the voltage: the network cannot carry it.");
            return;
        }

        Report(s, solution);
    });

    /// <summary>What is wrong with the loads, or null.</summary>
    internal static string? Faults(Sequence<NetworkLoad> loads) =>
        loads.FirstOrDefault(l => new[] { l.Current is not null, l.Power is not null, l.Resistance is not null }.Count(given => given) != 1) is { } odd
            ? $"Load '{odd.Name}' must have exactly one of current, power and resistance." : null;

    private static void Report(SheetBuilder s, NetworkSolution solution)
    {
        var network = solution.Network;
        s.Table("Voltages", ["node", "voltage"], solution.Voltages.Select(v => ImmutableArray.Create<SheetValue>(v.Node, v.Voltage is { } volts ? volts.As("V") : "dead")));
        s.Table("Branches", ["branch", "from", "to", "current"], network.Branches.Select(b => ImmutableArray.Create<SheetValue>(b.Name, b.From, b.To, solution.Through(b).As("A"))));
        s.Table("Loads", ["load", "voltage", "current"], network.Loads.Select(l =>
            ImmutableArray.Create<SheetValue>(l.Name, solution.Across(l) is { } volts ? volts.As("V") : "dead", solution.Into(l).As("A"))));
        s.Step("Is", "current of all sources", "sum over the sources", new Current(network.Sources.Sum(x => solution.From(x).Si)), "A", Kirchhoff);
        s.Step("Ps", "power of all sources", "sum of V · I at their terminals", new Wattage(network.Sources.Sum(x => (solution.At(x.Node) - solution.At(x.Return) ?? default).Si * solution.From(x).Si)), "W");
        s.Step("Pl", "power of all loads", "sum of V · I over the loads", new Wattage(network.Loads.Sum(l => (solution.Across(l) ?? default).Si * solution.Into(l).Si)), "W");
        s.Step("Pb", "power lost in the branches", "sum of I² · R", new Wattage(network.Branches.Sum(b => solution.Through(b).Si * solution.Through(b).Si * b.Resistance.Si)), "W");
        s.Step("res", "greatest sum of currents at a node", "zero but for rounding", solution.Residual, "A");
        foreach (var load in network.Loads.Where(l => l.Least is not null))
        {
            s.Check($"voltage at {load.Name}", (solution.Across(load) ?? default).As("V"), Sense.AtLeast, load.Least!.Value.As("V"), "the load has its least voltage", Stated);
        }

        if (!network.Dead.IsEmpty)
        {
            s.Caution($"No source reaches {string.Join(", ", network.Dead)}.", affectsVerdict: true);
        }
    }
}
