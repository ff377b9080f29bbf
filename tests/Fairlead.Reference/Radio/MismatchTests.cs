using Fairlead.Calculations.Radio;

namespace Fairlead.Tests.Reference.Radio;

/// <summary>Standing wave ratio, return loss, mismatch loss, and how a cable hides them.</summary>
public sealed class MismatchTests
{
    // Definitions in the Electronic Warfare and Radar Systems Engineering Handbook (read); the rows are computed from them.
    [Theory]
    [InlineData(1.05, .0244, 32.256, .0026, 0.059)]
    [InlineData(1.10, .0476, 26.444, .0099, 0.227)]
    [InlineData(1.20, .0909, 20.828, .0360, 0.826)]
    [InlineData(1.25, .1111, 19.085, .0540, 1.235)]
    [InlineData(1.30, .1304, 17.692, .0745, 1.701)]
    [InlineData(1.40, .1667, 15.563, .1223, 2.778)]
    [InlineData(1.50, .2000, 13.979, .1773, 4.000)]
    [InlineData(1.70, .2593, 11.725, .3022, 6.722)]
    [InlineData(2.00, .3333, 9.542, .5115, 11.111)]
    [InlineData(2.50, .4286, 7.360, .8814, 18.367)]
    [InlineData(3.00, .5000, 6.021, 1.2494, 25.000)]
    [InlineData(4.00, .6000, 4.437, 1.9382, 36.000)]
    [InlineData(5.00, .6667, 3.522, 2.5527, 44.444)]
    [InlineData(10.0, .8182, 1.743, 4.8073, 66.942)]
    public void Standing_wave_ratio_in_other_words(double vswr, double rho, double returnLoss, double mismatchLoss, double reflected)
    {
        var sheet = Mismatch.Run(new(vswr));
        Assert.Equal(rho, sheet["rho"].Value, 6e-5);
        Assert.Equal(returnLoss, sheet["RLr"].Value, 6e-4);
        Assert.Equal(mismatchLoss, sheet["ML"].Value, 6e-5);
        Assert.Equal(reflected, sheet["refl"].Value, 6e-4);
    }

    [Theory]
    [InlineData(10, 1.9250)]
    [InlineData(14, 1.4985)]
    [InlineData(15, 1.4326)]
    [InlineData(20, 1.2222)]
    public void Return_loss_as_standing_wave_ratio(double returnLoss, double vswr) => Assert.Equal(vswr, Mismatch.Run(new(ReturnLoss: returnLoss))["Sa"].Value, 6e-5);

    // Pairs printed in a radio amateur's table (read).
    [Theory]
    [InlineData(1.5, 14.0)]
    [InlineData(1.1, 26.4)]
    [InlineData(1.2, 20.8)]
    [InlineData(1.4, 15.6)]
    public void Printed_pairs_of_a_second_source(double vswr, double returnLoss) => Assert.Equal(returnLoss, Mismatch.Run(new(vswr))["RLr"].Value, 0.051);

    // The same table prints 1.3 as 17.8, 1.8 as 10.2 and 2.0 as 9.6 dB: bad roundings of 17.69, 10.88 and 9.54.
    [Theory]
    [InlineData(1.3, 17.8)]
    [InlineData(1.8, 10.2)]
    [InlineData(2.0, 9.6)]
    public void Misprinted_pairs_are_not_reproduced(double vswr, double printed) => Assert.True(Math.Abs(Mismatch.Run(new(vswr))["RLr"].Value - printed) > 0.051);

    // RL(box) = RL(antenna) + 2A, from memory of line theory; rows computed.
    [Theory]
    [InlineData(3.0, 1.0, 8.021, 2.3177)]
    [InlineData(3.0, 2.0, 10.021, 1.9217)]
    [InlineData(3.0, 3.0, 12.021, 1.6688)]
    [InlineData(2.0, 1.5, 12.542, 1.6177)]
    [InlineData(2.0, 3.0, 15.542, 1.4011)]
    [InlineData(1.5, 3.0, 19.979, 1.2228)]
    public void A_cable_flatters_the_antenna(double antenna, double loss, double returnLoss, double box)
    {
        var sheet = Mismatch.Run(new(antenna, Loss: loss));
        Assert.Equal(returnLoss, sheet["RLb"].Value, 6e-4);
        Assert.Equal(box, sheet["Sb"].Value, 6e-5);
    }

    [Theory]
    [InlineData(1.5, 5.8480)]
    [InlineData(3.0, 3.0095)]
    [InlineData(6.0, 1.6709)]
    public void An_open_end_behind_a_cable(double loss, double box) => Assert.Equal(box, Mismatch.Run(new(1.05, At: MeasuredAt.Box, Loss: loss))["So"].Value, 6e-5);

    [Theory]
    [InlineData(1.5, 2.0, 1.928)]
    [InlineData(1.5, 3.0, 2.328)]
    [InlineData(1.3, 3.0, 1.704)]
    public void A_reading_at_the_box_as_it_is_at_the_antenna(double box, double loss, double antenna) =>
        Assert.Equal(antenna, Mismatch.Run(new(box, At: MeasuredAt.Box, Loss: loss))["Sa"].Value, 6e-4);

    [Theory]
    [InlineData(1.5, 1.5, 1.5893)]
    [InlineData(1.5, 3.0, 2.1680)]
    [InlineData(3.0, 2.0, 3.3886)]
    [InlineData(3.0, 3.0, 3.9677)]
    public void Loss_of_a_mismatched_line(double loss, double vswr, double total) => Assert.Equal(total, Mismatch.Run(new(vswr, Loss: loss))["At"].Value, 6e-5);
}
