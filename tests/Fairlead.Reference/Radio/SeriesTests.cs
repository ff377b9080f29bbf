using Fairlead.Calculations;
using Fairlead.Calculations.Radio;

namespace Fairlead.Tests.Reference.Radio;

/// <summary>Cables in a row: decibels and delays add. Sums done by hand from c = 299 792 458 m/s and 0.1·√(f in GHz) for each mated pair (design rule from memory).</summary>
public sealed class SeriesTests
{
    private static readonly Frequency F = Frequency.Of(1090, "MHz");

    [Fact]
    public void Loss_and_delay_of_two_cables()
    {
        var sheet = CoaxSeries.Run(new(F, [Piece("RG-142", 12, 1.7004, 69.5), Piece("RG-58", 10, 1.38, 65.9)], 3));
        Assert.Equal(1.7004 + 1.38 + (3 * 0.1044), sheet["A"].Value, 1e-4);
        Assert.Equal((12 * 1.46288) + (10 * 1.54280), sheet["t"].Value, 2e-4); // ns/ft of 69.5 % and 65.9 %
    }

    // A law: a cable cut in two and joined is the same cable with one more pair.
    [Fact]
    public void Two_halves_of_one_cable_are_that_cable()
    {
        var whole = CoaxLoss.Run(new(F, Length.Of(20, "ft"), Coax.Rg142, Pairs: 3));
        var half = CoaxLoss.Run(new(F, Length.Of(10, "ft"), Coax.Rg142, Pairs: 0))["A"].Value;
        Assert.Equal(whole["A"].Value, CoaxSeries.Run(new(F, [Piece("a", 10, half, 69.5), Piece("b", 10, half, 69.5)], 3))["A"].Value, 1e-9);
    }

    [Fact]
    public void Limits_of_loss_power_and_delay()
    {
        Verdict Of(CoaxSeriesInput input) => CoaxSeries.Run(input).Verdict;
        var run = new CoaxSeriesInput(F, [Piece("a", 10, 1, 70), Piece("b", 10, 2, 70)], 0); // 3 dB, 29.0 ns, half the power
        Assert.Equal(Verdict.Holds, Of(run with { MaxLoss = 3.01, MinLoss = 2.99, MinDelay = Duration.Of(29, "ns"), MaxDelay = Duration.Of(29.1, "ns"), Power = Wattage.Of(250, "W"), MinPower = Wattage.Of(125, "W") }));
        Assert.Equal(Verdict.Fails, Of(run with { MaxLoss = 2.99 }));
        Assert.Equal(Verdict.Fails, Of(run with { MinLoss = 3.01 }));
        Assert.Equal(Verdict.Fails, Of(run with { MaxDelay = Duration.Of(29, "ns") }));
        Assert.Equal(Verdict.Fails, Of(run with { MinDelay = Duration.Of(29.1, "ns") }));
        Assert.Equal(Verdict.Fails, Of(run with { Power = Wattage.Of(250, "W"), MinPower = Wattage.Of(126, "W") }));
        Assert.Equal(Verdict.CannotTell, Of(run with { Pieces = [] }));
    }

    // 250 W are 53.979 dBm (computed); half a wavelength apart, where no formula holds.
    [Fact]
    public void A_measured_isolation_tells_where_no_formula_does()
    {
        var near = new AntennaIsolationInput(F, Length.Of(5, "in"), MinIsolation: 20, Power: Wattage.Of(250, "W"), Damage: 30);
        Assert.Equal(Verdict.CannotTell, AntennaIsolation.Run(near).Verdict);
        var sheet = AntennaIsolation.Run(near with { Measured = 26 });
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Equal(53.979 - 26, sheet["Pr"].Value, 6e-4);
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Stated);
        Assert.Equal(Verdict.Fails, AntennaIsolation.Run(near with { Measured = 19.9 }).Verdict);
    }

    private static CoaxPiece Piece(string name, double feet, double loss, double velocity) => new(name, Length.Of(feet, "ft"), loss, Fraction.Of(velocity, "%"));
}
