using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using static Fairlead.Tests.Reference.Balance.Typed;

namespace Fairlead.Tests.Reference.Balance;

/// <summary>AC 43.13-1B CHG 1, figures 10-10 to 10-14 (read): empty 1,169 lb at 10.6, limits 8.5 and 21.9, maximum 2,100 lb. The lowest mass of the envelope
/// is not in the figures; 1,100 lb is assumed. The circular picks its extreme loadings by rule; here they are found among all legal ones.</summary>
public sealed class WorstLoadingTests
{
    private static readonly WorstLoadingInput Aircraft = new(
        Lb(1169), In(10.6),
        [
            new("oil", In(-49), Lb(17), Lb(17)), new("pilot", In(16), Lb(170), Lb(170)), new("front seat", In(16), Lb(170)),
            new("rear seats", In(48), Lb(340)), new("baggage", In(75.5), Lb(100)),
        ],
        [new("main", In(22), Lb(240))],
        [new(Lb(1100), In(8.5)), new(Lb(2100), In(8.5)), new(Lb(2100), In(21.9)), new(Lb(1100), In(21.9))],
        Lb(2100), MinFuel: Lb(83));

    // Figure 10-10: pilot and minimum fuel, 16,104.4 / 1,439; printed +11.2.
    [Fact]
    public void The_forward_extreme_is_that_of_figure_10_10()
    {
        var forward = WorstLoading.Find(Aircraft)!.Forward;
        Assert.Equal(11.191383, forward.Fs.In("in"), 5e-7);
        Assert.Equal(1439, forward.Mass.In("lb"), 1e-9);
        Assert.Equal(83, forward.Fuel.In("lb"), 1e-9);
        Assert.Equal(0, forward.Stations.Skip(2).Sum(x => x.Mass.In("lb")), 1e-9);
        Assert.Equal(11.191383 - 8.5, forward.Margin.In("in"), 5e-7);
    }

    // Figure 10-11: pilot, rear seats, baggage and full fuel, 43,428.4 / 2,036; printed +21.3. The tank at 22 lies 0.1 in behind the limit, so it is full.
    [Fact]
    public void The_rearward_extreme_is_that_of_figure_10_11()
    {
        var aft = WorstLoading.Find(Aircraft)!.Aft;
        Assert.Equal(21.330255, aft.Fs.In("in"), 5e-7);
        Assert.Equal(2036, aft.Mass.In("lb"), 1e-9);
        Assert.Equal(240, aft.Fuel.In("lb"), 1e-9);
        Assert.Equal([17.0, 170, 0, 340, 100], aft.Stations.Select(x => x.Mass.In("lb")), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(Verdict.Holds, WorstLoading.Run(Aircraft).Verdict);
    }

    // Each loading of figures 10-10, 10-11, 10-13 and 10-14 by itself: the only legal one is the worst one. (10-13 prints 18.6; its own numbers give 18.317.)
    [Theory]
    [InlineData(170, 0, 0, 0, 83, 1439, 11.191383)]
    [InlineData(170, 0, 340, 100, 240, 2036, 21.330255)]
    [InlineData(170, 170, 340, 0, 234, 2100, 18.317333)]
    [InlineData(170, 170, 170, 100, 240, 2036, 18.658350)]
    public void A_single_legal_loading_is_the_figures(double pilot, double front, double rear, double baggage, double fuel, double mass, double fs)
    {
        double[] loads = [17, pilot, front, rear, baggage];
        var only = WorstLoading.Find(Aircraft with
        {
            Stations = Aircraft.Stations.Select((s, i) => s with { Min = Lb(loads[i]), Max = Lb(loads[i]) }).ToSequence(),
            Tanks = [new("main", In(22), Lb(fuel))],
            MinFuel = Lb(fuel),
        })!;
        Assert.All((LoadingCase[])[only.Forward, only.Aft, only.Heaviest], found =>
        {
            Assert.Equal(mass, found.Mass.In("lb"), 1e-9);
            Assert.Equal(fs, found.Fs.In("in"), 5e-7);
        });
    }

    // Figure 10-13 is exactly at the maximum: the heaviest legal loading is no heavier.
    [Fact]
    public void The_heaviest_is_the_maximum_of_figure_10_13() =>
        Assert.Equal(2100, WorstLoading.Find(Aircraft)!.Heaviest.Mass.In("lb"), 1e-9);
}
