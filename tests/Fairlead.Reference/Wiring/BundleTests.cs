using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>Bundles: the derating curves, the 35-wire harness example, and packing of circles.</summary>
public sealed class BundleTests
{
    // A published digitisation of the MIL-W-5088L curves (read): 20, 40, 60, 80, 100 %.
    [Theory]
    [InlineData(1, 1.0, 1.0, 1.0, 1.0, 1.0)]
    [InlineData(2, 0.9675, 0.92, 0.91, 0.87, 0.825)]
    [InlineData(3, 0.935, 0.855, 0.815, 0.77, 0.725)]
    [InlineData(4, 0.9075, 0.805, 0.75, 0.705, 0.66)]
    [InlineData(5, 0.875, 0.76, 0.695, 0.65, 0.61)]
    [InlineData(6, 0.85, 0.725, 0.655, 0.605, 0.5725)]
    [InlineData(7, 0.82, 0.695, 0.625, 0.57, 0.54)]
    [InlineData(8, 0.795, 0.6675, 0.595, 0.5425, 0.5125)]
    [InlineData(9, 0.775, 0.645, 0.575, 0.52, 0.485)]
    [InlineData(10, 0.755, 0.6225, 0.55, 0.5, 0.465)]
    [InlineData(11, 0.735, 0.6, 0.53, 0.48, 0.445)]
    [InlineData(12, 0.715, 0.585, 0.515, 0.465, 0.43)]
    [InlineData(13, 0.6975, 0.5675, 0.495, 0.4475, 0.415)]
    [InlineData(14, 0.685, 0.5525, 0.48, 0.435, 0.3975)]
    [InlineData(15, 0.67, 0.54, 0.465, 0.42, 0.385)]
    [InlineData(16, 0.6575, 0.5275, 0.455, 0.41, 0.37)]
    [InlineData(17, 0.645, 0.515, 0.4425, 0.3975, 0.36)]
    [InlineData(18, 0.635, 0.505, 0.4325, 0.3875, 0.35)]
    [InlineData(19, 0.625, 0.495, 0.4225, 0.38, 0.3425)]
    public void Bundle_curves_are_those_published(int wires, params double[] factors)
    {
        for (var i = 0; i < factors.Length; i++)
        {
            Assert.Equal(factors[i], BundleDerating.Factor(wires, Fraction.Of(20 * (i + 1), "%")).Value, 1e-12);
        }
    }

    // The circular's own readings of the same curves: page 11-27 (read) and 11-69 b (from memory).
    [Theory]
    [InlineData(8, 60, 0.6)]
    [InlineData(12, 100, 0.43)]
    public void The_circulars_readings_lie_on_the_curves(int wires, double percent, double read) =>
        Assert.Equal(read, BundleDerating.Factor(wires, Fraction.Of(percent, "%")).Value, 0.01);

    // AC 43.13-1B 11-69 a (from memory): 50.6 A; FAA-H-8083-31 chapter 9 (from memory), the same harness at 35,000 ft: 55.2 A. Both round at every step.
    [Theory]
    [InlineData(60000, 6.6, 8.8, 50.6)]
    [InlineData(35000, 7.2, 9.6, 55.2)]
    public void The_35_wire_harness_carries_what_the_examples_print(double feet, double size22, double size20, double total)
    {
        var sheet = HarnessCapacity.Run(new(
            [new(Gauge.Read("20"), 10, Current.Of(21.5, "A")), new(Gauge.Read("22"), 25, Current.Of(16.2, "A"))], Length.Of(feet, "ft"), Fraction.Of(20, "%")));
        Assert.Equal(size20, 21.5 * sheet["F"].Value * sheet["A"].Value, 0.1);
        Assert.Equal(size22, 16.2 * sheet["F"].Value * sheet["A"].Value, 0.1);
        Assert.Equal(total, sheet["Itotal"].Value, total * 0.01);
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Memory);
    }

    // Second method: table 11-9 undone to one wire at sea level meets the chart's free-air points at a rise of 140 °C (from memory) within 15 %.
    [Theory]
    [InlineData("22", 16.2)]
    [InlineData("20", 21.5)]
    [InlineData("12", 61)]
    public void Table_11_9_undone_to_free_air_meets_the_chart(string gauge, double chart)
    {
        var free = WireCurrent.Allowed(new(Gauge.Read(gauge), Temperature.Of(200, "°C"), Temperature.Of(60, "°C"), Length.Of(0, "ft"), 1, Fraction.Of(100, "%")));
        Assert.InRange(free.Value.Si / chart, 0.85, 1.15);
    }

    // Closed forms of the smallest circle round N equal circles.
    public static TheoryData<int, double> ClosedForms => new()
    {
        { 1, 1 },
        { 2, 2 },
        { 3, 1 + (1 / Math.Sin(Math.PI / 3)) },
        { 4, 1 + Math.Sqrt(2) },
        { 5, 1 + (1 / Math.Sin(Math.PI / 5)) },
        { 6, 3 },
        { 7, 3 },
        { 8, 1 + (1 / Math.Sin(Math.PI / 7)) },
        { 9, 1 + (1 / Math.Sin(Math.PI / 8)) },
        { 11, 1 + (1 / Math.Sin(Math.PI / 9)) },
        { 13, 2 + Math.Sqrt(5) },
        { 18, 1 + Math.Sqrt(2) + Math.Sqrt(6) },
        { 19, 1 + Math.Sqrt(2) + Math.Sqrt(6) },
    };

    [Theory]
    [MemberData(nameof(ClosedForms))]
    public void Equal_wires_need_the_circle_that_geometry_gives(int wires, double ratio) =>
        Assert.Equal(ratio, Bundle(wires)["q"].Value, 5.1e-5);

    // 1.2 √N against the exact packing: below what can be built for 2 to 6, 9 and 10 wires.
    [Theory]
    [InlineData(2, false)]
    [InlineData(3, false)]
    [InlineData(4, false)]
    [InlineData(5, false)]
    [InlineData(6, false)]
    [InlineData(7, true)]
    [InlineData(8, true)]
    [InlineData(9, false)]
    [InlineData(10, false)]
    [InlineData(11, true)]
    [InlineData(12, true)]
    [InlineData(13, true)]
    [InlineData(14, true)]
    [InlineData(16, true)]
    [InlineData(19, true)]
    [InlineData(20, true)]
    public void The_estimate_with_1_2_is_not_always_buildable(int wires, bool buildable)
    {
        var sheet = Bundle(wires);
        Assert.Equal(buildable, sheet["De"].Value >= sheet["Dmin"].Value);
        Assert.Equal(Math.Max(sheet["De"].Value, sheet["Dmin"].Value), sheet["D"].Value);
    }

    // Arithmetic outside the project: ten wires of 0.058 in and twenty-five of 0.050 in with k = 1.2.
    [Fact]
    public void A_mixed_bundle_is_0_372_in_by_the_estimate() =>
        Assert.Equal(0.372, BundleDiameter.Run(new([new(Length.Of(0.058, "in"), 10), new(Length.Of(0.050, "in"), 25)]))["De"].Value, 5e-4);

    // Bend radius factors: ASTM F2639-18 7.2.1.65 and AS50881, both read in an article that quotes them; 10 × and 3 × for wire from memory of AC 11-96.
    [Theory]
    [InlineData(Bend.Coax, 6)]
    [InlineData(Bend.CoaxAs50881, 10)]
    [InlineData(Bend.Wire, 10)]
    [InlineData(Bend.AtTerminal, 3)]
    public void The_bend_factor_is_that_of_the_cited_standard(Bend bend, double factor) =>
        Assert.Equal(0.2 * factor, BendRadius.Run(new(Length.Of(0.2, "in"), bend))["rmin"].Value, 1e-9);

    // AC 43.13-1B 11-96 a and 11-118 (read).
    [Fact]
    public void Supports_stand_no_more_than_24_in_apart_except_in_a_duct()
    {
        Assert.Equal(Verdict.Holds, SupportSpacing.Run(new(Length.Of(24, "in"))).Verdict);
        Assert.Equal(Verdict.Fails, SupportSpacing.Run(new(Length.Of(24.1, "in"))).Verdict);
        Assert.Equal(Verdict.Holds, SupportSpacing.Run(new(Length.Of(40, "in"), Enclosed: true)).Verdict);
        Assert.Equal(Verdict.Fails, SupportSpacing.Run(new(Length.Of(20, "in"), Slack: Length.Of(0.6, "in"))).Verdict);
        Assert.Equal(Verdict.Holds, SupportSpacing.Run(new(Length.Of(20, "in"), Slack: Length.Of(0.6, "in"), CanTouch: false)).Verdict);
    }

    // AC 43.13-1B 11-167 c (read); the 12 in are from memory.
    [Fact]
    public void One_splice_in_a_segment_and_no_more()
    {
        Assert.Equal(Verdict.Holds, SpliceRule.Run(new(1, Length.Of(12, "in"))).Verdict);
        Assert.Equal(Verdict.Fails, SpliceRule.Run(new(2, Length.Of(12, "in"))).Verdict);
        Assert.Equal(Verdict.Fails, SpliceRule.Run(new(1, Length.Of(11.9, "in"))).Verdict);
        Assert.Equal(Verdict.Caution, SpliceRule.Run(new(2, Length.Of(1, "in"), Excepted: true)).Verdict);
    }

    private static Sheet Bundle(int wires) => BundleDiameter.Run(new([new(Length.Of(0.05, "in"), wires)]));
}
