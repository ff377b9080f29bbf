using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>ASTM B258-02 (read): No. 36 is 0.0050 in, No. 0000 is 0.4600 in, 39 steps between, ratio 92^(1/39) = 1.1229322.</summary>
public sealed class WireGaugeTests
{
    [Fact]
    public void The_two_defining_sizes_are_exact()
    {
        Assert.Equal(0.0050, WireGauge.Diameter(Gauge.Read("36")).In("in"), 1e-12);
        Assert.Equal(0.4600, WireGauge.Diameter(Gauge.Read("0000")).In("in"), 1e-12);
        Assert.Equal(1.1229322, WireGauge.Diameter(Gauge.Read("00")) / WireGauge.Diameter(Gauge.Read("0")), 5e-8);
    }

    // Worked outside the project from the two formulas (ASTM B258; 0.017241 Ω·mm²/m, NBS Circular 31).
    [Theory]
    [InlineData("0000", 0.46000, 11.6840, 211600, 107.219, 0.0490, 0.1608)]
    [InlineData("000", 0.40964, 10.4049, 167806, 85.029, 0.0618, 0.2028)]
    [InlineData("00", 0.36480, 9.2658, 133077, 67.431, 0.0779, 0.2557)]
    [InlineData("0", 0.32486, 8.2515, 105535, 53.475, 0.0983, 0.3224)]
    [InlineData("1", 0.28930, 7.3481, 83693, 42.408, 0.1239, 0.4066)]
    [InlineData("2", 0.25763, 6.5437, 66371, 33.631, 0.1563, 0.5127)]
    [InlineData("4", 0.20431, 5.1894, 41741, 21.151, 0.2485, 0.8152)]
    [InlineData("6", 0.16202, 4.1154, 26251, 13.302, 0.3951, 1.2961)]
    [InlineData("8", 0.12849, 3.2636, 16510, 8.3656, 0.6282, 2.0609)]
    [InlineData("10", 0.10190, 2.5882, 10383, 5.2612, 0.9988, 3.2770)]
    [InlineData("12", 0.08081, 2.0525, 6530, 3.3088, 1.5882, 5.2107)]
    [InlineData("14", 0.06408, 1.6277, 4107, 2.0809, 2.5254, 8.2853)]
    [InlineData("16", 0.05082, 1.2908, 2583, 1.3087, 4.0155, 13.174)]
    [InlineData("18", 0.04030, 1.0237, 1624, 0.8230, 6.3849, 20.948)]
    [InlineData("20", 0.03196, 0.8118, 1022, 0.5176, 10.152, 33.308)]
    [InlineData("22", 0.02535, 0.6438, 642, 0.3255, 16.143, 52.962)]
    [InlineData("24", 0.02010, 0.5106, 404, 0.2047, 25.668, 84.213)]
    [InlineData("26", 0.01594, 0.4049, 254, 0.1288, 40.814, 133.90)]
    [InlineData("28", 0.01264, 0.3211, 160, 0.0810, 64.897, 212.92)]
    [InlineData("30", 0.01003, 0.2546, 101, 0.0509, 103.19, 338.55)]
    public void Geometry_and_resistance_follow_the_two_formulas(string gauge, double inches, double millimetres, double circularMils, double squareMillimetres, double ohmPer1000Ft, double ohmPerKm)
    {
        var sheet = WireGauge.Run(new(Gauge.Read(gauge)));
        Assert.Equal(inches, sheet["d"].Value, 5.1e-6);
        Assert.Equal(millimetres, sheet["d"].Si * 1000, 5.1e-5);
        Assert.Equal(circularMils, sheet["cmil"].Value, 0.51);
        Assert.Equal(squareMillimetres, sheet["A"].Value, squareMillimetres > 10 ? 5.1e-4 : 5.1e-5);
        Assert.Equal(1, ohmPer1000Ft / sheet["r"].Value, 1.1e-3);
        Assert.Equal(1, ohmPerKm / (sheet["r"].Si * 1000), 3.2e-4);
    }

    // The trap: "stranded is always above solid" is wrong for sizes 20 and 18, which hold more copper than the gauge.
    [Theory]
    [InlineData("20", true)]
    [InlineData("18", true)]
    [InlineData("16", false)]
    [InlineData("14", false)]
    [InlineData("12", false)]
    [InlineData("10", false)]
    [InlineData("8", false)]
    public void Stranded_aircraft_wire_lies_on_either_side_of_solid(string gauge, bool below)
    {
        var size = Gauge.Read(gauge);
        Assert.Equal(below, WireTable.Resistance(size, Conductor.Copper).Value < WireGauge.SolidResistance(size));
    }
}
