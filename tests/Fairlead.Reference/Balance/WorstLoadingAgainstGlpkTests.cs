using System.Globalization;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using static Fairlead.Tests.Reference.Balance.Typed;

namespace Fairlead.Tests.Reference.Balance;

/// <summary>The boundary of the reachable masses and moments against GLPK, which solves the loading as a mixed integer program: the stations, groups and limits as
/// rows, and the burn path by one binary per burn order ("a tank that burns earlier holds fuel only if those that burn later are full").</summary>
public sealed class WorstLoadingAgainstGlpkTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void At_any_mass_the_least_and_greatest_moment_are_those_of_glpk(int seed)
    {
        Tools.Need("glpsol");
        var random = new Random(seed);
        var input = Aircraft(random);
        var polygons = WorstLoading.Reachable(input);
        var masses = polygons.SelectMany(p => p.Forward).Select(p => p.Mass.In("lb")).ToArray();
        for (var i = 0; i <= 4; i++)
        {
            var mass = masses.Min() + ((masses.Max() - masses.Min()) * i / 4);
            var (least, greatest) = Boundary(polygons, mass);
            Assert.Equal(Glpk(input, mass, "minimize"), least, 1e-6 * mass * 100);
            Assert.Equal(Glpk(input, mass, "maximize"), greatest, 1e-6 * mass * 100);
        }

        Assert.Equal(Glpk(input, null, "maximize"), WorstLoading.Find(input)!.Heaviest.Mass.In("lb"), 1e-6 * masses.Max());
    }

    private static WorstLoadingInput Aircraft(Random random)
    {
        LoadingStationRow Station(int i)
        {
            var min = random.Next(3) == 0 ? random.Next(100) : 0;
            return new($"S{i}", In(random.Next(-50, 150)), Lb(min + random.Next(300)), Lb(min), i switch { < 2 => "A+B", < 4 => "A", _ => "" });
        }

        Sequence<LoadingStationRow> stations = [.. Enumerable.Range(0, 7).Select(Station)];
        double Least(int from, int to) => stations.Skip(from).Take(to - from).Sum(s => s.Min.In("lb"));
        Sequence<LoadingTankRow> tanks = [.. Enumerable.Range(0, 4).Select(i => new LoadingTankRow($"T{i}", In(random.Next(-20, 120)), Lb(random.Next(20, 200)), 1 + (i % 3)))];
        return new(
            Lb(1200), In(30), stations, tanks,
            [new(Lb(1000), In(0)), new(Lb(4000), In(0)), new(Lb(4000), In(80)), new(Lb(1000), In(80))],
            Lb(1200 + Least(0, 7) + 100 + random.Next(900)), Lb(1200 + Least(0, 7) + random.Next(700)), null, Lb(random.Next(60)),
            [new("A", Lb(Least(0, 4) + random.Next(400))), new("B", Lb(Least(0, 2) + random.Next(200)))]);
    }

    // Between two corners the moment is linear in mass.
    private static (double Least, double Greatest) Boundary(Sequence<LoadingPolygon> polygons, double mass)
    {
        IEnumerable<double> At(Sequence<LoadingPoint> corners) =>
            from pair in corners.Zip(corners.Skip(1))
            let a = pair.First
            let b = pair.Second
            where mass >= a.Mass.In("lb") - 1e-9 && mass <= b.Mass.In("lb") + 1e-9
            select a.Moment.In("lb·in") + ((b.Moment - a.Moment).In("lb·in") * (mass - a.Mass.In("lb")) / (b.Mass - a.Mass).In("lb"));
        return (polygons.SelectMany(p => At(p.Forward)).Min(), polygons.SelectMany(p => At(p.Aft)).Max());
    }

    /// <summary>The least or greatest moment at a mass, or the greatest mass when none is given, in lb·in or lb.</summary>
    private static double Glpk(WorstLoadingInput input, double? mass, string sense)
    {
        var result = Tools.Run("glpsol", "lp", Program(input, mass, sense), file => ["--lp", file, "--write", file + ".out"], file => File.ReadAllText(file + ".out"));
        var summary = result.Split('\n').Single(line => line.StartsWith("s mip ", StringComparison.Ordinal)).Split(' ');
        Assert.Equal("o", summary[4]);
        return double.Parse(summary[5], CultureInfo.InvariantCulture) + (mass is null ? 1200 : 1200 * 30);
    }

    private static string Program(WorstLoadingInput input, double? mass, string sense)
    {
        var stations = input.Stations.Select((s, i) => (Name: $"x{i}", Arm: s.Arm.In("in"), s.Groups)).ToArray();
        var tanks = input.Tanks.Select((t, i) => (Name: $"f{i}", Arm: t.Arm.In("in"), Usable: t.Usable.In("lb"), t.BurnOrder)).ToArray();
        var everything = Sum(stations.Select(s => (1.0, s.Name)).Concat(tanks.Select(t => (1.0, t.Name))));
        var moment = Sum(stations.Select(s => (s.Arm, s.Name)).Concat(tanks.Select(t => (t.Arm, t.Name))));
        var text = new StringBuilder().AppendLine(sense).AppendLine(mass is null ? everything : moment).AppendLine("subject to");
        void Row(string sum, string relation, double value) => text.AppendLine(string.Create(CultureInfo.InvariantCulture, $" {sum} {relation} {value:R}"));
        Row(everything, "<=", input.MaxTakeOff.In("lb") - 1200);
        Row(Sum(stations.Select(s => (1.0, s.Name))), "<=", input.MaxZeroFuel!.Value.In("lb") - 1200);
        Row(Sum(tanks.Select(t => (1.0, t.Name))), ">=", input.MinFuel.In("lb"));
        foreach (var group in input.Groups)
        {
            Row(Sum(stations.Where(s => s.Groups.Contains(group.Name, StringComparison.Ordinal)).Select(s => (1.0, s.Name))), "<=", group.Max.In("lb"));
        }

        if (mass is { } given)
        {
            Row(everything, "=", given - 1200);
        }

        // Every tank holds the same share as the others of its order; z = 1 only when all that burn later are full.
        foreach (var (a, b) in tanks.SelectMany(a => tanks.Where(b => b.BurnOrder == a.BurnOrder && b != a).Select(b => (a, b))))
        {
            Row(Sum([(b.Usable, a.Name), (-a.Usable, b.Name)]), "=", 0);
        }

        foreach (var (early, late) in tanks.SelectMany(a => tanks.Where(b => b.BurnOrder > a.BurnOrder).Select(b => (a, b))))
        {
            Row(Sum([(1, early.Name), (-early.Usable, $"z{early.BurnOrder}")]), "<=", 0);
            Row(Sum([(1, late.Name), (-late.Usable, $"z{early.BurnOrder}")]), ">=", 0);
        }

        text.AppendLine("bounds");
        foreach (var (station, i) in input.Stations.Select((s, i) => (s, i)))
        {
            text.AppendLine(string.Create(CultureInfo.InvariantCulture, $" {station.Min.In("lb"):R} <= x{i} <= {station.Max.In("lb"):R}"));
        }

        foreach (var tank in tanks)
        {
            text.AppendLine(string.Create(CultureInfo.InvariantCulture, $" 0 <= {tank.Name} <= {tank.Usable:R}"));
        }

        return text.AppendLine("binary").AppendJoin('\n', tanks.Select(t => t.BurnOrder).Distinct().Select(o => $" z{o}")).AppendLine().AppendLine("end").ToString();
    }

    private static string Sum(IEnumerable<(double Factor, string Name)> terms) =>
        string.Join(" ", terms.Select(t => string.Create(CultureInfo.InvariantCulture, $"{(t.Factor < 0 ? "-" : "+")} {Math.Abs(t.Factor):R} {t.Name}")));
}
