using System.Globalization;
using System.Text.Json;
using CsCheck;
using Fairlead.Records;

namespace Fairlead.Tests.Reference.Records;

/// <summary>RFC 8785 (June 2020). The number samples of appendix B, the sorting sample of section 3.2.3 and the sample of section 3.2.2 were read
/// in test suites of public implementations that quote them, not in the document itself.</summary>
public sealed class CanonicalJsonTests
{
    // Appendix B: the bits of a double and its text.
    [Theory]
    [InlineData("0000000000000000", "0")]
    [InlineData("8000000000000000", "0")]
    [InlineData("0000000000000001", "5e-324")]
    [InlineData("8000000000000001", "-5e-324")]
    [InlineData("7fefffffffffffff", "1.7976931348623157e+308")]
    [InlineData("ffefffffffffffff", "-1.7976931348623157e+308")]
    [InlineData("4340000000000000", "9007199254740992")]
    [InlineData("c340000000000000", "-9007199254740992")]
    [InlineData("4430000000000000", "295147905179352830000")]
    [InlineData("44b52d02c7e14af5", "9.999999999999997e+22")]
    [InlineData("44b52d02c7e14af6", "1e+23")]
    [InlineData("44b52d02c7e14af7", "1.0000000000000001e+23")]
    [InlineData("444b1ae4d6e2ef4e", "999999999999999700000")]
    [InlineData("444b1ae4d6e2ef4f", "999999999999999900000")]
    [InlineData("444b1ae4d6e2ef50", "1e+21")]
    [InlineData("3eb0c6f7a0b5ed8c", "9.999999999999997e-7")]
    [InlineData("3eb0c6f7a0b5ed8d", "0.000001")]
    [InlineData("41b3de4355555553", "333333333.3333332")]
    [InlineData("41b3de4355555554", "333333333.33333325")]
    [InlineData("41b3de4355555555", "333333333.3333333")]
    [InlineData("41b3de4355555556", "333333333.3333334")]
    [InlineData("41b3de4355555557", "333333333.33333343")]
    [InlineData("becbf647612f3696", "-0.0000033333333333333333")]
    [InlineData("43143ff3c1cb0959", "1424953923781206.2")]
    public void Numbers_are_those_of_appendix_B(string bits, string text) =>
        Assert.Equal(text, CanonicalJson.Number(BitConverter.UInt64BitsToDouble(ulong.Parse(bits, NumberStyles.HexNumber, CultureInfo.InvariantCulture))));

    // Appendix B: the two samples that have no form.
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void A_number_that_is_none_is_refused(double value) => Assert.Throws<FormatException>(() => CanonicalJson.Number(value));

    [Fact]
    public void The_sample_of_section_3_2_2_has_the_form_it_prints() => Assert.Equal(
        """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""",
        CanonicalJson.Of("""
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """));

    [Fact]
    public void Names_stand_in_the_order_of_section_3_2_3() => Assert.Equal(
        "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\u007f\",\"\u00f6\":\"Latin Small Letter O With Diaeresis\",\"\u20ac\":\"Euro Sign\",\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
        CanonicalJson.Of("""
            {
              "\u20ac": "Euro Sign",
              "\r": "Carriage Return",
              "\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\ud83d\ude00": "Emoji: Grinning Face",
              "\u0080": "Control\u007f",
              "\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """));

    // Section 3.1: I-JSON only.
    [Theory]
    [InlineData("""{"a":1,"a":2}""")]
    [InlineData("""{"a":1,"\u0061":2}""")]
    [InlineData("""["\ud800"]""")]
    [InlineData("""["\udc00\ud800"]""")]
    [InlineData("[1e400]")]
    [InlineData("[01]")]
    [InlineData("[1,]")]
    [InlineData("{} {}")]
    [InlineData("")]
    public void What_is_no_interoperable_json_is_refused(string json) => Assert.Throws<FormatException>(() => CanonicalJson.Of(json));

    [Fact]
    public void Every_number_reads_back_as_itself_and_no_shorter_one_does() => Gen.Double.Where(double.IsFinite).Sample(value =>
    {
        var text = CanonicalJson.Number(value);
        Assert.Equal(value, double.Parse(text, CultureInfo.InvariantCulture));
        var shorter = value.ToString("E" + Math.Max(0, Significant(text) - 2).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        Assert.True(Significant(text) <= 1 || double.Parse(shorter, CultureInfo.InvariantCulture) != value, $"{text} against {shorter}");
    });

    [Fact]
    public void The_form_of_a_form_is_itself() => Gen.Dictionary(Gen.String, Gen.Double.Where(double.IsFinite)).Sample(fields =>
    {
        string json;
        try
        {
            json = CanonicalJson.Of(JsonSerializer.Serialize(fields));
        }
        catch (Exception e) when (e is FormatException or ArgumentException)
        {
            return;
        }

        Assert.Equal(json, CanonicalJson.Of(json));
    });

    private static int Significant(string text) => text.Split('e')[0].Replace(".", "", StringComparison.Ordinal).Trim('-').Trim('0').Length;
}
