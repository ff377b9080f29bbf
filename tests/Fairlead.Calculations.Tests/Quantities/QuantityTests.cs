using CsCheck;
using Fairlead.Calculations;

namespace Fairlead.Tests.Calculations;

public sealed class QuantityTests
{
    [Fact]
    public void Every_unit_spelling_reads_back_the_value_that_was_written()
    {
        foreach (var dimension in Enum.GetValues<Dimension>().Where(d => d != Dimension.Number))
        {
            foreach (var spelling in Units.Spellings(dimension))
            {
                Assert.True(QuantityReader.TryRead(dimension, $"12.5 {spelling}", out var si, out _), $"{dimension} '{spelling}'");
                Assert.Equal(12.5, Units.Get(dimension, spelling).FromSi(si), 1e-9);
            }
        }
    }

    [Fact]
    public void A_unit_of_another_dimension_is_refused()
    {
        var exception = Assert.Throws<ArgumentException>(() => Length.Of(1, "A"));
        Assert.Contains("'A' is not a unit of Length", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Conversion_round_trips() => Gen.Double[-1e6, 1e6].Sample(value =>
        Math.Abs(Length.Of(value, "ft").In("mm") - (value * 304.8)) <= 1e-9 * Math.Abs(value * 304.8) + 1e-12);

    [Fact]
    public void Ohms_law_holds_in_all_three_forms() => Gen.Select(Gen.Double[0.01, 100], Gen.Double[0.01, 100]).Sample((amps, ohms) =>
    {
        var v = Current.Of(amps, "A") * Resistance.Of(ohms, "ohm");
        return Math.Abs((v / Resistance.Of(ohms, "ohm")).In("A") - amps) < 1e-9 * amps;
    });

    [Fact]
    public void A_temperature_rise_has_no_offset()
    {
        var rise = Temperature.Rise(Temperature.Of(50, "°C"), Temperature.Of(200, "°C"));
        Assert.Equal(150, rise.In("°C"), 1e-9);
        Assert.Equal(200, (Temperature.Of(50, "°C") + rise).In("°C"), 1e-9);
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(-1e-300, "-1e-300")]
    [InlineData(double.NaN, "not a number")]
    [InlineData(double.PositiveInfinity, "infinite")]
    [InlineData(1234567, "1234567")]
    [InlineData(0.1234567, "0.123457")]
    [InlineData(114.779661, "114.78")]
    [InlineData(0.00001, "1e-5")]
    [InlineData(-12.5, "-12.5")]
    public void Numbers_print_with_six_significant_digits_at_most(double value, string text) => Assert.Equal(text, NumberFormat.Text(value));

    /// <summary>The Système international writes a space before the per cent sign; so do our rules in words.</summary>
    [Fact]
    public void Per_cent_prints_as_it_is_written_in_words() => Assert.Equal("80 %", Fraction.Of(80, "%").As("%").ToString());

    [Theory]
    [InlineData("22", 22)]
    [InlineData("AWG 8", 8)]
    [InlineData("0", 0)]
    [InlineData("00", -1)]
    [InlineData("3/0", -2)]
    [InlineData("0000", -3)]
    public void Gauges_read_as_the_trade_writes_them(string text, int number) => Assert.Equal(number, Gauge.Read(text).Number);

    [Theory]
    [InlineData("")]
    [InlineData("00000")]
    [InlineData("41")]
    [InlineData("-1")]
    [InlineData("5/0")]
    [InlineData(null)]
    public void Other_gauges_are_refused(string? text) => Assert.False(Gauge.TryRead(text, out _));

    [Fact]
    public void Thicker_wires_order_after_thinner_ones() =>
        Assert.Equal(["24", "22", "0", "00", "0000"], new[] { "0000", "22", "00", "24", "0" }.Select(Gauge.Read).Order().Select(g => g.ToString()));
}
