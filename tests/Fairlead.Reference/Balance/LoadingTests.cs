using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using static Fairlead.Tests.Reference.Balance.Typed;

namespace Fairlead.Tests.Reference.Balance;

/// <summary>Loadings, ballast, chord, floor and minimum fuel as printed in the circular and the handbooks.</summary>
public sealed class LoadingTests
{
    private static readonly ItemRow[] Always = [Item(1169, 10.6), Item(17, -49), Item(170, 16)];

    // AC 43.13-1B figs. 10-10, 10-11, 10-14 (read): weight, whole moment and centre of gravity to the tenth.
    public static TheoryData<double[], double, double, double> Printed => new()
    {
        { [83, 22], 1439, 16_104, 11.2 },
        { [340, 48, 240, 22, 100, 75.5], 2036, 43_428, 21.3 },
        { [170, 48, 170, 16, 240, 22, 100, 75.5], 2036, 37_988, 18.7 },
    };

    [Theory]
    [MemberData(nameof(Printed))]
    public void The_circulars_loadings_come_out(double[] more, double mass, double moment, double station)
    {
        var sheet = LoadedCg.Run(Loading(more));
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Equal(mass, sheet["W"].Value, 1e-9);
        Assert.Equal(moment, sheet["M"].Value, 0.5);
        Assert.Equal(station, sheet["FS"].Value, 0.05);
    }

    // Fig. 10-14 prints the divisor 20366 for 2,036: with it the centre of gravity would be 1.9 in.
    [Fact]
    public void The_misprinted_divisor_of_figure_10_14_is_not_reproduced()
    {
        var sheet = LoadedCg.Run(Loading([170, 48, 170, 16, 240, 22, 100, 75.5]));
        Assert.Equal(2036, sheet["W"].Value, 1e-9);
        Assert.Equal(18.658, sheet["FS"].Value, 0.0005);
        Assert.True(sheet["FS"].Value > 9 * (37_988 / 20_366.0));
    }

    // Fig. 10-13 prints 18.6 where its own moment and weight, 38,466 / 2,100, give 18.3.
    [Fact]
    public void The_misprint_of_figure_10_13_is_not_reproduced()
    {
        var sheet = LoadedCg.Run(Loading([170, 16, 340, 48, 234, 22]));
        Assert.Equal(2100, sheet["W"].Value, 1e-9);
        Assert.Equal(38_466.4, sheet["M"].Value, 1e-6);
        Assert.Equal(18.317, sheet["FS"].Value, 0.0005);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
    }

    // FAA-H-8083-1A/-1B, loaded centre of gravity of a helicopter (table from memory).
    [Theory]
    [InlineData(200, 288, 2203, 94.4, -1.2)]
    [InlineData(0, 132, 1847, 97.6, 0.7)]
    public void Both_axes_of_the_helicopter_come_out(double passenger, double fuel, double mass, double station, double buttock)
    {
        var sheet = LoadedCg.Run(new([Item(1545, 101.4, 0.2), Item(170, 64, 12.2), Item(passenger, 64, -13.3), Item(fuel, 96, -8.4)]));
        Assert.Equal(mass, sheet["W"].Value, 1e-9);
        Assert.Equal(station, sheet["FS"].Value, 0.05);
        Assert.Equal(buttock, sheet["BL"].Value, 0.05);
    }

    // The same helicopter: of all loadings between its legs, the one furthest left has passenger and full fuel, as printed for leg 1.
    [Fact]
    public void The_helicopters_first_leg_is_its_worst_loading_to_the_left()
    {
        var sheet = WorstLateral.Run(new(
            Lb(1545), In(0.2), [new("pilot", In(12.2), Lb(170), Lb(170)), new("passenger", In(-13.3), Lb(200))], [new("main", In(-8.4), Lb(288))], In(-1.3), In(2), Lb(2500)));
        Assert.Equal(-1.2, sheet["BLl"].Value, 0.05);
        Assert.Equal(2203, sheet["Wl"].Value, 1e-6);
        Assert.Equal(((1545 * 0.2) + (170 * 12.2)) / 1715, sheet["BLr"].Value, 1e-9);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
    }

    // FAA-H-8083-1B ch. 7 (empty weight and centre of gravity read, rest from memory): printed 7.7 lb.
    [Fact]
    public void The_handbooks_ballast_comes_out_and_is_exact()
    {
        var sheet = Ballast.Run(new(Lb(1876), In(32.2), In(33), BalanceLimit.Forward, In(228)));
        Assert.Equal(7.7, sheet["b"].Value, 0.05);
        Assert.Equal(33, sheet["FSb"].Value, 1e-9);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
    }

    [Fact]
    public void Ballast_rounds_up_since_rounding_down_would_fail()
    {
        var sheet = Ballast.Run(new(Lb(1876), In(32.2), In(33), BalanceLimit.Forward, In(228), Lb(0.1)));
        Assert.Equal(7.7, sheet["bf"].Value, 1e-9);
        Assert.Equal(33.000372, sheet["FSb"].Value, 5e-7);
        var roundedDown = LoadedCg.Run(new([Item(1876, 32.2), Item(7.6, 228)], Forward: In(33)));
        Assert.Equal(Verdict.Fails, roundedDown.Verdict);
    }

    [Fact]
    public void Ballast_on_the_wrong_side_tells_nothing() =>
        Assert.Equal(Verdict.CannotTell, Ballast.Run(new(Lb(1876), In(32.2), In(33), BalanceLimit.Forward, In(20))).Verdict);

    // FAA-H-8083-1B ch. 3 (from memory): 28.4 % and 10.0 %; a shift example of an airline forum (secondary): 27.8 % and 14.9 %.
    [Theory]
    [InlineData(161.6, 144, 62, 28.4)]
    [InlineData(70, 62, 80, 10.0)]
    [InlineData(663, 625.6, 134.5, 27.8)]
    [InlineData(645.586207, 625.6, 134.5, 14.9)]
    public void Position_on_the_chord(double station, double leadingEdge, double chord, double printed) =>
        Assert.Equal(printed, MacPosition.Run(new(In(station), In(leadingEdge), In(chord)))["p"].Value, 0.05);

    // FAA test item and FAA-H-8083-1B (from memory): 1,948 lb and 786.5 lb.
    [Theory]
    [InlineData(169, 36, 48, 47, 33, 1948)]
    [InlineData(76, 33.5, 48.5, 44, 27, 786.5)]
    public void Floor_load(double limit, double length, double width, double pallet, double ties, double printed)
    {
        var sheet = FloorLoad.Run(new(AreaMass.Of(limit, "lb/ft²"), In(length), In(width), Lb(pallet), Lb(ties), Lb(printed + 0.1)));
        Assert.Equal(printed, sheet["Wmax"].Value, 0.05);
        Assert.Equal(Verdict.Fails, sheet.Verdict);
    }

    // AC 43.13-1B par. 10-2p and fig. 10-10 (read): 165 hp need 13.75 gal, 82.5 lb, printed as 83; in pounds half the horsepower.
    [Fact]
    public void Minimum_fuel_is_a_twelfth_of_a_gallon_for_each_horsepower()
    {
        var sheet = MinimumFuel.Run(new(Wattage.Of(165, "hp"), Density.Of(6, "lb/gal")));
        Assert.Equal(13.75, sheet["V"].Value, 1e-9);
        Assert.Equal(165 / 2.0, sheet["Wfuel"].Value, 1e-9);
    }

    private static LoadedCgInput Loading(double[] more) =>
        new([.. Always, .. more.Chunk(2).Select(pair => Item(pair[0], pair[1]))], Lb(2100), In(8.5), In(21.9));
}
