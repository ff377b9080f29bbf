using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Environment;

namespace Fairlead.Tests.Calculations.Environment;

public sealed class EnvironmentLawTests
{
    private static readonly Gen<double> Coefficient = Gen.Double[-2, 2];

    // The coefficients are those of a Fourier sum: deviations made of known ones give them back, on any nominal heading.
    [Fact]
    public void Deviations_made_of_coefficients_give_them_back() => Gen.Select(Coefficient, Coefficient, Coefficient, Coefficient, Coefficient).Sample((a, b, c, d, e) =>
    {
        var sheet = CompassDeviation.Run(new(Enumerable.Range(0, 8).Select(i =>
        {
            var heading = Math.PI / 4 * i;
            return Row(45 * i, a + (b * Math.Sin(heading)) + (c * Math.Cos(heading)) + (d * Math.Sin(2 * heading)) + (e * Math.Cos(2 * heading)));
        }).ToSequence(), CompassCard.Part25));
        double[] made = [a, b, c, d, e];
        Assert.All(made.Zip(["A", "B", "C", "D", "E"]), pair => Assert.Equal(pair.First, sheet[pair.Second].Value, 1e-9));
    });

    [Fact]
    public void A_deviation_across_north_is_small() =>
        Assert.Equal(4, CompassDeviation.Run(new([Row(2, 4)]))["dmax"].Value, 1e-9);

    [Fact]
    public void A_swing_without_the_cardinal_headings_has_no_coefficients()
    {
        var sheet = CompassDeviation.Run(new([Row(15, 1), Row(105, 1), Row(195, 1), Row(285, 1)]));
        Assert.Null(sheet.Find("B"));
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Equal(Verdict.CannotTell, CompassDeviation.Run(new([])).Verdict);
    }

    // At the distance the sheet asks for, the deflection is one degree, in every field not above the criterion's.
    [Fact]
    public void At_the_distance_asked_for_the_deflection_is_one_degree() => Gen.Select(Gen.Double[0.05, 5], Gen.Double[3, 14.4]).Sample((safe, field) =>
    {
        var needed = CompassDistance.Run(new(new Length(1), new Length(safe), field))["dmin"].Si;
        Assert.Equal(1, CompassDistance.Run(new(new Length(needed * (1 + 1e-12)), new Length(safe), field))["phi"].Value, 1e-6);
    });

    [Fact]
    public void Nearer_than_the_safe_distance_it_fails_and_no_deflection_is_claimed()
    {
        var sheet = CompassDistance.Run(new(new Length(0.29), new Length(0.3)));
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Null(sheet.Find("phi"));
    }

    [Fact]
    public void Heat_adds_up_and_spreads() => Gen.Select(Gen.Double[1, 100], Gen.Double[1, 100], Gen.Double[5, 50]).Sample((p, q, area) =>
    {
        Assert.Equal(Rise(p, area) + Rise(q, area), Rise(p + q, area), 1e-9);
        Assert.Equal(Rise(p, area), 2 * Rise(p, 2 * area), 1e-9);
    });

    [Fact]
    public void A_rise_far_beyond_what_the_coefficient_is_for_tells_nothing()
    {
        var sheet = BayHeat.Run(new(new Wattage(1000), new Area(1), Temperature.Of(20, "°C"), Limit: Temperature.Of(300, "°C")));
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Null(sheet.Find("T"));
    }

    [Theory]
    [InlineData("B2", "B2", Verdict.Holds)]
    [InlineData("b2", "B2 ", Verdict.Holds)]
    [InlineData("B1", "B2", Verdict.Holds)]
    [InlineData("A1", "F1", Verdict.Holds)]
    [InlineData("B2", "B1", Verdict.Fails)]
    [InlineData("B1", "A1", Verdict.Fails)]
    [InlineData("B1", "C3", Verdict.CannotTell)]
    [InlineData("B1", "X", Verdict.Fails)]
    [InlineData("X", "A1", Verdict.Holds)]
    [InlineData("A4", "A4", Verdict.Holds)]
    [InlineData("Q7", "B2", Verdict.CannotTell)]
    public void Temperature_and_altitude_are_compared_limit_by_limit(string need, string has, Verdict expected) =>
        Assert.Equal(expected, Match([new("temperature-altitude", need)], [new("Temperature-Altitude", has)]).Verdict);

    // Category letters of the other sections stand for curves and procedures that have no single order.
    [Theory]
    [InlineData("S", "S", Verdict.Holds)]
    [InlineData("S", "R", Verdict.CannotTell)]
    [InlineData("S", null, Verdict.CannotTell)]
    [InlineData("S", "X", Verdict.Fails)]
    public void Other_sections_hold_when_equal_only(string need, string? has, Verdict expected) =>
        Assert.Equal(expected, Match([new("vibration", need)], has is null ? [] : [new("vibration", has)]).Verdict);

    [Theory]
    [InlineData(25_000, 70, -45, Verdict.Holds)]
    [InlineData(25_001, 70, -45, Verdict.Fails)]
    [InlineData(25_000, 71, -45, Verdict.Fails)]
    [InlineData(25_000, 70, -46, Verdict.Fails)]
    public void The_place_itself_must_lie_within_the_category(double feet, double hottest, double coldest, Verdict expected) => Assert.Equal(expected, QualificationMatch.Run(new(
        [new("temperature-altitude", "B2")], [new("temperature-altitude", "B2")], Length.Of(feet, "ft"), Temperature.Of(hottest, "°C"), Temperature.Of(coldest, "°C"))).Verdict);

    // Between the operating low, which is from memory, and the short-time low.
    [Fact]
    public void What_breaks_a_value_from_memory_only_is_a_caution() => Assert.Equal(Verdict.Caution, QualificationMatch.Run(new(
        [new("temperature-altitude", "A1")], [new("temperature-altitude", "A1")], Coldest: Temperature.Of(-20, "°C"))).Verdict);

    [Fact]
    public void Without_needs_or_clearances_nothing_is_claimed()
    {
        Assert.Equal(Verdict.CannotTell, Match([], [new("vibration", "S")]).Verdict);
        Assert.Equal(Verdict.CannotTell, LineClearance.Run(new()).Verdict);
    }

    private static Sheet Match(Sequence<CategoryRow> needs, Sequence<CategoryRow> has) => QualificationMatch.Run(new(needs, has));

    private static double Rise(double watts, double area) => BayHeat.Run(new(new Wattage(watts), new Area(area), Temperature.Of(20, "°C")))["dT"].Value;

    private static SwingRow Row(double magnetic, double deviation) => new(Angle.Of(magnetic, "°"), Angle.Of((magnetic - deviation + 360) % 360, "°"));
}
