using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>AC 43.13-1B CHG 1, 11-68 f example No. 2 (page 11-27): 20 A continuous over 15.5 ft of path at 28 V, rating 200 °C, ambient 50 °C,
/// 20,000 ft, 8 wires at 60 %. Step 1 was read; the printed results of steps 2 and 3 are from memory and their arithmetic closes.</summary>
public sealed class HotConductorExampleTests
{
    private static readonly Temperature Ambient = Temperature.Of(50, "°C");
    private static readonly Temperature Rating = Temperature.Of(200, "°C");

    [Fact]
    public void Step_1_reads_26_A_for_size_14()
    {
        var sheet = BundleCurrent.Run(new(Current.Of(47, "A"), Length.Of(20000, "ft"), 8, Fraction.Of(60, "%")));
        Assert.Equal(0.91, sheet["A"].Value, 1e-9);
        Assert.Equal(42.77, sheet["Ifree"].Value * sheet["A"].Value, 0.005);

        // The circular reads 0.6 off the chart where the digitised curve has 0.595; then it rounds to whole amperes.
        Assert.Equal(0.6, sheet["F"].Value, 0.01);
        Assert.Equal(26, sheet["Imax"].Value, 0.5 + (42.77 * 0.01));
    }

    [Theory]
    [InlineData(26, 182)]
    [InlineData(37, 160)]
    public void Steps_2_and_3_estimate_the_conductor_temperature(double allowed, double printed)
    {
        var sheet = ConductorTemperature.Run(new(Ambient, Rating, Current.Of(20, "A"), Current.Of(allowed, "A")));
        Assert.Equal(printed, sheet["T2"].Value, 0.5);
    }

    [Theory]
    [InlineData("14", 15.5, 26, 9.471, 9.5, 0.05)]
    [InlineData("12", 24, 37, 15.48, 15.4, 0.1)]
    public void Steps_2_and_3_shorten_the_chart_length(string gauge, double chart, double allowed, double unrounded, double printed, double tolerance)
    {
        var sheet = RunLength.Run(Example(gauge, allowed) with { ChartLength = Length.Of(chart, "ft") });
        Assert.Equal(unrounded, sheet["L2"].Value, 0.02);
        Assert.Equal(printed, sheet["L2"].Value, tolerance);
    }

    // The circular accepts 15.4 ft for a run of 15.5 ft. The check is strict on a chart length, and size 12 passes when worked from its resistance.
    [Fact]
    public void Size_14_is_too_small_and_size_12_serves()
    {
        var run = Length.Of(15.5, "ft");
        Assert.Equal(Verdict.Fails, RunLength.Run(Example("14", 26) with { Run = run }).Verdict);
        Assert.Equal(Verdict.Holds, RunLength.Run(Example("12", 37) with { Run = run }).Verdict);
        Assert.Equal(Verdict.Fails, RunLength.Run(Example("12", 37) with { Run = run, ChartLength = Length.Of(24, "ft") }).Verdict);
    }

    [Fact]
    public void The_smallest_wire_is_the_circulars()
    {
        var chosen = WireSize.Choose(new(
            Current.Of(20, "A"), Length.Of(15.5, "ft"), Voltage.Of(28, "V"), Rating, Ambient, Length.Of(20000, "ft"), 8, Fraction.Of(60, "%")));
        Assert.Equal(Gauge.Read("12"), chosen!.Gauge);
    }

    // Arithmetic outside the project: hot drops over 15.5 ft.
    [Theory]
    [InlineData("14", 26, 1.552)]
    [InlineData("12", 37, 0.971)]
    public void The_hot_drop_is_that_of_the_resistance(string gauge, double allowed, double volts)
    {
        var sheet = VoltageDrop.Run(new(
            [new(Length.Of(15.5, "ft"), Current.Of(20, "A"), Current.Of(allowed, "A"), Ambient, Rating, Gauge.Read(gauge))], Voltage.Of(28, "V")));
        Assert.Equal(volts, sheet["VD"].Value, 0.002);
    }

    private static RunLengthInput Example(string gauge, double allowed) =>
        new(Gauge.Read(gauge), Current.Of(20, "A"), Voltage.Of(1, "V"), Ambient, Rating, Current.Of(allowed, "A"));
}
