using Fairlead.Calculations;

namespace Fairlead.Tests.Calculations;

public sealed class QuantityReaderTests
{
    [Theory]
    [InlineData(Dimension.Length, "24.5 in", 24.5 * 0.0254)]
    [InlineData(Dimension.Length, "3 ft 2 in", 38 * 0.0254)]
    [InlineData(Dimension.Length, "-3 ft 2 in", -38 * 0.0254)]
    [InlineData(Dimension.Resistance, "2.5 mohm", 0.0025)]
    [InlineData(Dimension.Temperature, "-20 degC", 253.15)]
    [InlineData(Dimension.Temperature, "32 degF", 273.15)]
    [InlineData(Dimension.Fraction, "80 %", 0.8)]
    [InlineData(Dimension.Fraction, "0.8", 0.8)]
    [InlineData(Dimension.Current, "12A", 12)]
    [InlineData(Dimension.LinearResistance, "9.88 ohm/1000ft", 9.88 / 304.8)]
    [InlineData(Dimension.Charge, "35 Ah", 126000)]
    public void Text_as_people_write_it_is_read(Dimension dimension, string text, double si)
    {
        Assert.True(QuantityReader.TryRead(dimension, text, out var found, out _));
        Assert.Equal(si, found, Math.Abs(si) * 1e-12);
    }

    [Theory]
    [InlineData(Dimension.Length, "24.5")]
    [InlineData(Dimension.Length, "24.5 A")]
    [InlineData(Dimension.Length, "2 in 3 ft")]
    [InlineData(Dimension.Length, "3 ft -2 in")]
    [InlineData(Dimension.Length, "")]
    [InlineData(Dimension.Length, null)]
    [InlineData(Dimension.Current, "twelve A")]
    [InlineData(Dimension.Current, "1e999 A")]
    public void Anything_else_is_refused_with_what_was_expected(Dimension dimension, string? text)
    {
        Assert.False(QuantityReader.TryRead(dimension, text, out _, out var expected));
        Assert.NotEmpty(expected);
    }
}
