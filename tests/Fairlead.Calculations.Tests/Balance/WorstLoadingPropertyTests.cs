using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;

namespace Fairlead.Tests.Calculations.Balance;

/// <summary>What the worst loading promises for any aircraft: nothing legal is worse, what it names is legal, and the laws of levers.</summary>
public sealed class WorstLoadingPropertyTests
{
    private const double Hair = 1e-8;

    private static readonly Gen<double> Share = Gen.Frequency((1, Gen.Const(0.0)), (1, Gen.Const(1.0)), (1, Gen.Double[0, 1]));

    [Fact]
    public void No_legal_loading_is_worse_than_the_one_found() =>
        Gen.Select(LoadingSamples.Input, Share.Array[7].Array[20], Gen.Int[0, 5]).Sample((input, loadings, first) =>
        {
            var worst = WorstLoading.Find(input)!;
            Assert.True(worst.Proved, $"gap {worst.ProofGap}");
            foreach (var shares in loadings)
            {
                var (stations, fuel) = LoadingSamples.Load(input, shares, first);
                Assert.True(LoadingSamples.IsLegal(input, stations, fuel.Si));
                var (mass, fs) = LoadingSamples.Weigh(input, stations, LoadingSamples.Fill(input, fuel.Si));
                var (forward, aft) = LoadingSamples.Limits(input, mass);
                Assert.True(fs - forward >= worst.Forward.Margin.Si - Hair, $"forward {fs - forward} < {worst.Forward.Margin.Si}");
                Assert.True(aft - fs >= worst.Aft.Margin.Si - Hair, $"aft {aft - fs} < {worst.Aft.Margin.Si}");
                Assert.InRange(mass, worst.LeastMass.Si - Hair, worst.Heaviest.Mass.Si + Hair);
                Assert.InRange(fs, worst.MostForwardCg.Si - Hair, worst.MostAftCg.Si + Hair);
            }
        });

    [Fact]
    public void The_loadings_found_are_legal_and_weigh_what_is_said() => LoadingSamples.Input.Sample(input =>
    {
        var worst = WorstLoading.Find(input)!;
        foreach (var found in (LoadingCase[])[worst.Forward, worst.Aft, worst.Heaviest])
        {
            Assert.True(LoadingSamples.IsLegal(input, [.. found.Stations.Select(x => x.Mass)], found.Fuel.Si));
            var tanks = found.Tanks.Select(x => x.Mass.Si).ToArray();
            Assert.Equal(LoadingSamples.Fill(input, found.Fuel.Si), tanks, (a, b) => Math.Abs(a - b) < Hair);
            var (mass, fs) = LoadingSamples.Weigh(input, [.. found.Stations.Select(x => x.Mass)], tanks);
            Assert.Equal(mass, found.Mass.Si, Hair);
            Assert.Equal(fs, found.Fs.Si, Hair);
        }

        Assert.Contains(Near(worst.Forward), m => Math.Abs(worst.Forward.Fs.Si - LoadingSamples.Limits(input, m).Forward - worst.Forward.Margin.Si) < 1e-6);
        Assert.Contains(Near(worst.Aft), m => Math.Abs(LoadingSamples.Limits(input, m).Aft - worst.Aft.Fs.Si - worst.Aft.Margin.Si) < 1e-6);
    });

    [Fact]
    public void Moving_the_datum_changes_no_margin() => Gen.Select(LoadingSamples.Input, Gen.Double[-200, 200]).Sample((input, inches) =>
    {
        var d = Length.Of(inches, "in");
        var moved = input with
        {
            EmptyFs = input.EmptyFs + d,
            Stations = input.Stations.Select(s => s with { Arm = s.Arm + d }).ToSequence(),
            Tanks = input.Tanks.Select(t => t with { Arm = t.Arm + d }).ToSequence(),
            Envelope = input.Envelope.Select(c => c with { Fs = c.Fs + d }).ToSequence(),
        };
        Same(WorstLoading.Find(input)!, WorstLoading.Find(moved)!);
    });

    [Fact]
    public void Scaling_every_mass_changes_no_margin() => Gen.Select(LoadingSamples.Input, Gen.Double[0.1, 50]).Sample((input, k) =>
    {
        var scaled = input with
        {
            EmptyMass = input.EmptyMass * k,
            Stations = input.Stations.Select(s => s with { Min = s.Min * k, Max = s.Max * k }).ToSequence(),
            Tanks = input.Tanks.Select(t => t with { Usable = t.Usable * k }).ToSequence(),
            Envelope = input.Envelope.Select(c => c with { Mass = c.Mass * k }).ToSequence(),
            Groups = input.Groups.Select(g => g with { Max = g.Max * k }).ToSequence(),
            MaxTakeOff = input.MaxTakeOff * k,
            MaxZeroFuel = input.MaxZeroFuel * k,
            MinFuel = input.MinFuel * k,
        };
        Same(WorstLoading.Find(input)!, WorstLoading.Find(scaled)!);
    });

    [Fact]
    public void Allowing_more_never_makes_the_extremes_milder() => Gen.Select(LoadingSamples.Input, Gen.Int[0, 5], Gen.Int[0, 100], Gen.Int[0, 2]).Sample((input, which, more, what) =>
    {
        var extra = Mass.Of(more, "lb");
        var wider = what switch
        {
            0 => input with { Stations = input.Stations.Select((s, i) => i == which ? s with { Max = s.Max + extra } : s).ToSequence() },
            1 => input with { MaxTakeOff = input.MaxTakeOff + extra },
            _ => input with { Groups = input.Groups.Select(g => g with { Max = g.Max + extra }).ToSequence() },
        };
        var (before, after) = (WorstLoading.Find(input)!, WorstLoading.Find(wider)!);
        Assert.True(after.Forward.Margin.Si <= before.Forward.Margin.Si + Hair);
        Assert.True(after.Aft.Margin.Si <= before.Aft.Margin.Si + Hair);
        Assert.True(after.Heaviest.Mass.Si >= before.Heaviest.Mass.Si - Hair);
    });

    // Second method: with whole hundreds everywhere the corners of the reachable polygons are whole hundreds (nested limits are totally unimodular),
    // and against limits that are the same at every mass the worst is at a corner. So trying every whole hundred finds it.
    [Fact]
    public void Trying_every_loading_on_a_grid_finds_the_same() =>
        Gen.Select(Gen.Int[0, 3].Array[6], Gen.Int[-3, 8].Array[6], Gen.Int[3, 14], Gen.Int[0, 4], Gen.Int[0, 2]).Sample((most, arms, takeOff, group, least) =>
        {
            var input = OnGrid(most, arms, takeOff, group, Math.Min(least, most[3] + most[4] + most[5]));
            var states = Grid(input).ToArray();
            var worst = WorstLoading.Find(input)!;
            Assert.Equal(states.Min(s => s.Fs), worst.MostForwardCg.Si, Hair);
            Assert.Equal(states.Max(s => s.Fs), worst.MostAftCg.Si, Hair);
            Assert.Equal(states.Min(s => s.Fs) - input.Envelope[0].Fs.Si, worst.Forward.Margin.Si, Hair);
            Assert.Equal(input.Envelope[2].Fs.Si - states.Max(s => s.Fs), worst.Aft.Margin.Si, Hair);
            Assert.Equal(states.Max(s => s.Mass), worst.Heaviest.Mass.Si, Hair);
        }, iter: 40);

    private static WorstLoadingInput OnGrid(int[] most, int[] arms, int takeOff, int group, int least) => new(
        Mass.Of(1000, "lb"), Length.Of(20, "in"),
        [.. Enumerable.Range(0, 3).Select(i => new LoadingStationRow($"S{i}", Length.Of(10 * arms[i], "in"), Mass.Of(100 * most[i], "lb"), default, i < 2 ? "A" : ""))],
        [.. Enumerable.Range(3, 3).Select(i => new LoadingTankRow($"T{i}", Length.Of(10 * arms[i], "in"), Mass.Of(100 * most[i], "lb"), i - 2))],
        [new(Mass.Of(900, "lb"), Length.Of(10, "in")), new(Mass.Of(2000, "lb"), Length.Of(10, "in")), new(Mass.Of(2000, "lb"), Length.Of(40, "in")), new(Mass.Of(900, "lb"), Length.Of(40, "in"))],
        Mass.Of(1000 + (100 * takeOff), "lb"), Mass.Of(1400, "lb"), null, Mass.Of(100 * least, "lb"), [new("A", Mass.Of(100 * group, "lb"))]);

    private static IEnumerable<(double Mass, double Fs)> Grid(WorstLoadingInput input)
    {
        var steps = Enumerable.Range(0, 10).Select(i => Mass.Of(100 * i, "lb")).ToArray();
        return from a in steps
               from b in steps
               from c in steps
               from fuel in steps
               let loads = (Mass[])[a, b, c]
               where LoadingSamples.IsLegal(input, loads, fuel.Si)
               select LoadingSamples.Weigh(input, loads, LoadingSamples.Fill(input, fuel.Si));
    }

    // At a step of the envelope the margin is that of one side of the step.
    private static double[] Near(LoadingCase found) => [found.Mass.Si, found.Mass.Si * (1 - 1e-9), found.Mass.Si * (1 + 1e-9)];

    private static void Same(WorstLoadings a, WorstLoadings b)
    {
        Assert.Equal(a.Forward.Margin.Si, b.Forward.Margin.Si, 1e-7);
        Assert.Equal(a.Aft.Margin.Si, b.Aft.Margin.Si, 1e-7);
    }
}
