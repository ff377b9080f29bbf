using Fairlead.Workbench;

namespace Fairlead.Tests.Workbench;

/// <summary>Readings as they are keyed in at the aircraft. Prefixes: SI Brochure, 9th edition, table 7.</summary>
public sealed class KeyedReadingTests
{
    [Theory]
    [InlineData("2.1", "2.1")]
    [InlineData("0.5", "0.5")]
    [InlineData("007", "7")]
    [InlineData(".5", "0.5")]
    [InlineData("1.2.3", "1.23")]
    [InlineData("12-", "−12")]
    [InlineData("-12-", "12")]
    [InlineData("550>", ">550")]
    [InlineData("12\b\b3", "3")]
    [InlineData("-\b", "")]
    [InlineData("12O", "O.L")]
    [InlineData("O7", "7")]
    [InlineData("O\b", "")]
    [InlineData("O.", "O.L")]
    [InlineData("12345678901234", "123456789012")]
    public void Keys_make_the_reading_that_a_display_would_show(string keys, string shown) => Assert.Equal(shown, keys.Aggregate(KeyedReading.In("V"), (r, key) => r.After(key)).Text);

    [Theory]
    [InlineData("mΩ", "2.1", "Ω", "0.0021")]
    [InlineData("Ω", "0.0021", "mΩ", "2.1")]
    [InlineData("MΩ", "550", "kΩ", "550000")]
    [InlineData("V", "27.9", "V", "27.9")]
    [InlineData("mA", "150", "A", "0.15")]
    [InlineData("dB", "1.4", "dB", "1.4")]
    public void A_reading_is_told_exactly_in_the_unit_that_is_due(string shown, string keys, string due, string number) =>
        Assert.Equal(decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture), keys.Aggregate(KeyedReading.In(shown), (r, key) => r.After(key)).As(due));

    [Fact]
    public void Nothing_keyed_and_nothing_reading_through_are_no_numbers()
    {
        Assert.Null(KeyedReading.In("V").As("V"));
        Assert.Null(KeyedReading.In("V").After('-').As("V"));
        Assert.Null(KeyedReading.In("Ω").After('O').As("Ω"));
        Assert.Null(KeyedReading.In("V").After('1').As("Ω"));
    }

    [Theory]
    [InlineData("2.1", "mΩ", "2.1")]
    [InlineData("2.1 mohm", "mΩ", "2.1")]
    [InlineData("0.0021 ohm", "mΩ", "2.1")]
    [InlineData(">200 Mohm", "MΩ", "200")]
    [InlineData("-0.5", "V", "-0.5")]
    [InlineData("3.2 dB", "dB", "3.2")]
    public void What_is_typed_with_a_unit_or_without_is_read(string words, string due, string number) =>
        Assert.Equal(decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture), KeyedReading.Typed(words, due)!.As(due));

    [Theory]
    [InlineData("")]
    [InlineData("ok")]
    [InlineData("2.1 bananas")]
    [InlineData("5 A")]
    [InlineData("1.2.3")]
    [InlineData("1e3")]
    public void What_is_no_reading_in_such_a_unit_is_not_taken(string words) => Assert.Null(KeyedReading.Typed(words, "mΩ"));

    [Theory]
    [InlineData("O.L")]
    [InlineData("0L")]
    [InlineData("open")]
    public void What_meters_show_beyond_their_range_is_open(string words) => Assert.True(KeyedReading.Typed(words, "Ω")!.Open);

    [Fact]
    public void The_units_to_choose_from_differ_by_their_prefix_alone()
    {
        Assert.Equal(["mΩ", "Ω", "kΩ", "MΩ"], KeyedReading.Units("Ω"));
        Assert.Equal(["mV", "V"], KeyedReading.Units("mV"));
        Assert.Equal(["contacts"], KeyedReading.Units("contacts"));
        Assert.Equal(["dB"], KeyedReading.Units("dB"));
    }
}
