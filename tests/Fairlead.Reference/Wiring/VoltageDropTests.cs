using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>AC 43.13-1B CHG 1 tables 11-7 and 11-8 (page 11-22, read): drops at 20 °C for 20 A.</summary>
public sealed class VoltageDropTests
{
    [Theory]
    [InlineData("6", 107, 0.942, 0.0005)]
    [InlineData("4", 90, 0.504, 0.0005)]
    [InlineData("14", 100, 6.12, 0.005)]
    [InlineData("10", 39, 0.98, 0.005)]
    [InlineData("10", 156, 3.93, 0.005)]
    [InlineData("10", 273, 6.88, 0.005)]
    public void The_drop_is_the_printed_one(string gauge, double feet, double printed, double tolerance) =>
        Assert.Equal(printed, Drop(gauge, feet)["VD20"].Value, tolerance);

    // Two rows of the tables are not the product of their own numbers: 12 AWG, 88 ft (table 11-7) and 10 AWG, 19.5 ft (table 11-8).
    [Theory]
    [InlineData("12", 88, 3.60, 3.5552)]
    [InlineData("10", 19.5, 0.366, 0.4914)]
    public void The_two_misprinted_drops_are_not_reproduced(string gauge, double feet, double misprint, double product)
    {
        var drop = Drop(gauge, feet)["VD20"].Value;
        Assert.Equal(product, drop, 1e-9);
        Assert.True(Math.Abs(drop - misprint) > 0.04);
    }

    // Table 11-8: given drop and size 10, the longest run at 20 °C for 20 A; the chart is read to the foot or half foot.
    [Theory]
    [InlineData(1, 39, 1)]
    [InlineData(0.5, 19.5, 0.5)]
    [InlineData(4, 156, 3)]
    [InlineData(7, 273, 5)]
    public void The_longest_run_is_within_the_reading_of_the_chart(double volts, double feet, double tolerance)
    {
        var sheet = RunLength.Run(new(Gauge.Read("10"), Current.Of(20, "A"), Voltage.Of(volts, "V"), Temperature.Of(20, "°C"), Temperature.Of(200, "°C"), Current.Of(100, "A")));
        Assert.Equal(feet, sheet["L1"].Value, tolerance);
        Assert.True(sheet["L1"].Value > feet, "the circular's chart is on the short side of V/(R·I)");
    }

    // Table 11-6 (from memory); the continuous set is that of tables 11-7 and 11-8, which were read.
    [Theory]
    [InlineData(14, 0.5, 1)]
    [InlineData(28, 1, 2)]
    [InlineData(115, 4, 8)]
    [InlineData(200, 7, 14)]
    public void Table_11_6_gives_the_allowed_drop_and_is_marked_as_recalled(double nominal, double continuous, double intermittent)
    {
        var voltage = Voltage.Of(nominal, "V");
        Assert.Equal(continuous, VoltageDrop.AllowedDrop(voltage, Duty.Continuous).Value.Si);
        Assert.Equal(intermittent, VoltageDrop.AllowedDrop(voltage, Duty.Intermittent).Value.Si);
        Assert.Equal(Basis.Memory, VoltageDrop.AllowedDrop(voltage, Duty.Continuous).Source.Basis);
    }

    private static Sheet Drop(string gauge, double feet) => VoltageDrop.Run(new(
        [new(Length.Of(feet, "ft"), Current.Of(20, "A"), Current.Of(100, "A"), Temperature.Of(20, "°C"), Temperature.Of(200, "°C"), Gauge.Read(gauge))],
        Voltage.Of(28, "V")));
}
