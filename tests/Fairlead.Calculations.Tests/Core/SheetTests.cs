using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations;

public sealed class SheetTests
{
    private static readonly Source Rule = new("Test rule", "", "1");

    private static ConductorTemperatureInput Example(double current = 20) => new(
        Temperature.Of(50, "°C"), Temperature.Of(200, "°C"), Current.Of(current, "A"), Current.Of(26, "A"));

    // AC 43.13-1B page 11-27 example 2 step 2: the arithmetic gives 181.56, the page prints 182 (printed value from memory).
    [Fact]
    public void Conductor_temperature_reproduces_the_circulars_example() =>
        Assert.Equal(182, ConductorTemperature.Run(Example())["T2"].Value, 0.5);

    [Fact]
    public void Substituted_numbers_are_those_the_formula_names()
    {
        var sheet = ConductorTemperature.Run(Example());
        Assert.Equal("20 A / 26 A", sheet.Substituted(sheet.Steps[0]));
        Assert.Equal("50 °C + (200 °C − 50 °C) · √(0.769231)", sheet.Substituted(sheet.Steps[1]));
    }

    [Fact]
    public void An_input_out_of_range_gives_no_claim_and_says_why()
    {
        var sheet = ConductorTemperature.Run(Example() with { Ambient = Temperature.Of(-80, "°C") });
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Equal("T1 (ambient temperature) is -80 °C; this method is valid for -65 to 250 °C.", Assert.Single(sheet.CannotTell));
        Assert.Empty(sheet.Steps);
    }

    [Fact]
    public void Not_a_number_gives_no_claim() =>
        Assert.Equal(Verdict.CannotTell, ConductorTemperature.Run(Example(double.NaN)).Verdict);

    [Fact]
    public void The_ends_of_a_range_are_inside_it() =>
        Assert.NotEqual(Verdict.CannotTell, ConductorTemperature.Run(Example() with { Ambient = Temperature.Of(-65, "°C") }).Verdict);

    [Theory]
    [InlineData(5, 5, Sense.AtMost, true)]
    [InlineData(5.0000000001, 5, Sense.AtMost, true)]
    [InlineData(5.001, 5, Sense.AtMost, false)]
    [InlineData(5, 5, Sense.AtLeast, true)]
    [InlineData(4.999, 5, Sense.AtLeast, false)]
    public void A_check_compares_with_rounding_aside(double demand, double limit, Sense sense, bool holds)
    {
        var check = new Check("x", Current.Of(demand, "A").Measure, sense, Current.Of(limit, "A").Measure, "rule", Rule);
        Assert.Equal(holds, check.Holds);
        Assert.Equal(holds ? Verdict.Holds : Verdict.Fails, check.Verdict);
    }

    [Fact]
    public void A_margin_on_a_temperature_scale_is_a_difference()
    {
        var check = new Check("x", Temperature.Of(68, "°F").Measure with { Unit = Units.Get(Dimension.Temperature, "°F") }, Sense.AtMost, Temperature.Of(86, "°F").As("°F"), "rule", Rule);
        Assert.Equal(18, check.Margin, 1e-9);
    }

    [Fact]
    public void Origins_replace_the_word_given()
    {
        var sheet = ConductorTemperature.Run(Example()).WithOrigins(new Dictionary<string, string>(StringComparer.Ordinal) { ["T1"] = "zone 141" });
        Assert.Equal(["zone 141", "given", "given", "given"], sheet.Given.Select(g => g.Origin));
    }

    [Fact]
    public void Sequences_are_equal_by_their_items()
    {
        Sequence<int> a = [1, 2, 3];
        Assert.Equal(a, new[] { 1, 2, 3 }.ToSequence());
        Assert.NotEqual(a, new[] { 1, 2 }.ToSequence());
        Assert.Equal(default, Array.Empty<int>().ToSequence());
        Assert.Equal(a.GetHashCode(), new[] { 1, 2, 3 }.ToSequence().GetHashCode());
    }
}
