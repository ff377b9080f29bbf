using Fairlead.Calculations;
using Fairlead.Calculations.Environment;

namespace Fairlead.Tests.Reference.Environment;

public sealed class PlaceTests
{
    // RTCA DO-160G table 4-1, read in a public summary: altitude, operating high, short-time high and low by category.
    [Theory]
    [InlineData("A1", 15_000, 55, 70, -40)]
    [InlineData("A3", 15_000, 70, 85, -40)]
    [InlineData("B1", 25_000, 55, 70, -40)]
    [InlineData("B2", 25_000, 70, null, -45)]
    [InlineData("C2", 35_000, 70, null, -55)]
    [InlineData("D1", 50_000, 55, 70, -40)]
    [InlineData("E2", 70_000, null, null, -55)]
    [InlineData("F2", 55_000, 70, null, -55)]
    public void A_category_has_the_limits_of_the_table(string code, double feet, int? high, int? shortHigh, int low)
    {
        var category = TemperatureAltitude.Find(code)!;
        Assert.Equal(feet, category.Altitude.In("ft"), 1e-6);
        Assert.Equal(high, Whole(category.OperatingHigh));
        Assert.Equal(shortHigh ?? high, Whole(category.ShortTimeHigh));
        Assert.Equal(low, Whole(category.ShortTimeLow));
    }

    // Same summary: these are declared by the maker.
    [Theory]
    [InlineData("A4")]
    [InlineData("B3")]
    [InlineData("C3")]
    [InlineData("D3")]
    [InlineData("E1")]
    [InlineData("F3")]
    public void What_the_maker_declares_is_not_made_up(string code) => Assert.Null(TemperatureAltitude.Find(code)!.OperatingHigh);

    [Theory]
    [InlineData("")]
    [InlineData("B9")]
    [InlineData("G1")]
    [InlineData("B2Y")]
    public void Other_codes_are_unknown(string code) => Assert.Null(TemperatureAltitude.Find(code));

    // Trade guides on closed sheet-metal boxes (common practice): 500 W, 5.5 W/(m²·K), 6.06 m², 15 K. And a chart (read off): 300 W in
    // a box of 48 x 36 x 16 in, 42 ft², 30 °F: what the coefficient taken when none is stated reproduces.
    [Fact]
    public void The_published_examples_of_closed_boxes_come_out()
    {
        var painted = BayHeat.Run(new(new Wattage(500), new Area(6.06), Temperature.Of(20, "°C"), 5.5));
        Assert.Equal(15, painted["dT"].Value, 0.05);
        var chart = BayHeat.Run(new(new Wattage(300), Area.Of(42, "ft²"), Temperature.Of(20, "°C")));
        Assert.Equal(30, new TemperatureRise(chart["dT"].Si).In("°F"), 0.5);
    }

    // AC 43.13-1B par. 11-96 w (read): 6 in, never less than 2 in, between them closely clamped and rigidly supported.
    [Theory]
    [InlineData(6.0, null, Verdict.Holds)]
    [InlineData(5.9, null, Verdict.Caution)]
    [InlineData(5.9, false, Verdict.Fails)]
    [InlineData(5.9, true, Verdict.Holds)]
    [InlineData(2.0, true, Verdict.Holds)]
    [InlineData(1.9, true, Verdict.Fails)]
    [InlineData(1.9, null, Verdict.Fails)]
    public void Fluid_lines_keep_their_distance(double inches, bool? supported, Verdict expected) =>
        Assert.Equal(expected, LineClearance.Run(new(Length.Of(inches, "in"), null, supported)).Verdict);

    // AC 43.13-1B par. 11-125 (from memory): 1/2 in.
    [Theory]
    [InlineData(0.5, Verdict.Holds)]
    [InlineData(0.49, Verdict.Fails)]
    public void Moving_controls_keep_their_distance(double inches, Verdict expected) =>
        Assert.Equal(expected, LineClearance.Run(new(Control: Length.Of(inches, "in"))).Verdict);

    // TM 1-1500-204-23-4 (read): within 6 in wires run above fluid lines.
    [Theory]
    [InlineData(3.0, true, Verdict.Holds)]
    [InlineData(3.0, false, Verdict.Caution)]
    [InlineData(6.0, false, Verdict.Holds)]
    public void Near_a_fluid_line_wires_run_above_it(double inches, bool above, Verdict expected) =>
        Assert.Equal(expected, LineClearance.Run(new(Length.Of(inches, "in"), null, true, above)).Verdict);

    private static int? Whole(Temperature? value) => value is { } t ? (int)Math.Round(t.In("°C")) : null;
}
