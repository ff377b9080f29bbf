using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations.Wiring;

public sealed class BundleLawTests
{
    private static readonly Gen<WireCurrentInput> Wire =
        from gauge in Gen.Int[0, 16]
        from rating in Gen.OneOf(105, 150, 200)
        from ambient in Gen.Double[-55, 100]
        from feet in Gen.Double[0, 60000]
        from wires in Gen.Int[1, 18]
        from percent in Gen.Double[0, 99]
        select new WireCurrentInput(
            WireTable.Sizes(Conductor.Copper)[gauge], Temperature.Of(rating, "°C"), Temperature.Of(ambient, "°C"), Length.Of(feet, "ft"), wires, Fraction.Of(percent, "%"));

    [Fact]
    public void Allowed_current_never_grows_with_heat_height_company_or_loading() => Wire.Sample(w =>
    {
        var here = Allowed(w);
        Assert.True(Allowed(w with { Ambient = w.Ambient + TemperatureRise.Of(1, "°C") }) < here);
        Assert.True(Allowed(w with { Altitude = w.Altitude * 0.9 }) >= here);
        Assert.True(Allowed(w with { Wires = w.Wires + 1 }) < here);
        Assert.True(Allowed(w with { Loading = w.Loading + Fraction.Of(1, "%") }) <= here);
    });

    // Heat lost is in proportion to the rise, heat made to the square of the current.
    [Fact]
    public void Allowed_current_goes_as_the_root_of_the_rise() => Wire.Sample(w =>
    {
        var rise = Temperature.Rise(w.Ambient, w.Rating);
        var quarter = w with { Ambient = w.Rating + (rise * -0.25) };
        Assert.Equal(0.5, Allowed(quarter) / Allowed(w), 1e-9);
    });

    [Fact]
    public void The_sheet_and_the_function_agree() =>
        Wire.Sample(w => Assert.Equal(Allowed(w).Si, WireCurrent.Run(w)["Imax"].Si, 1e-12));

    [Theory]
    [InlineData(0, 20)]
    [InlineData(20, 20)]
    [InlineData(20.1, 40)]
    [InlineData(60, 60)]
    [InlineData(99, 100)]
    [InlineData(100, 100)]
    public void A_loading_between_two_curves_takes_the_next_curve_up(double percent, double curve) =>
        Assert.Equal(curve, BundleDerating.Curve(Fraction.Of(percent, "%")).In("%"), 1e-9);

    [Fact]
    public void Between_20_and_35_wires_the_20_percent_curve_is_linear_and_marked_as_recalled()
    {
        var found = BundleDerating.Factor(23, Fraction.Of(20, "%"));
        Assert.Equal(0.615 + ((0.52 - 0.615) * 3 / 15), found.Value, 1e-12);
        Assert.Equal(Basis.Memory, found.Source.Basis);
        Assert.Equal(Basis.Read, BundleDerating.Factor(20, Fraction.Of(20, "%")).Source.Basis);
    }

    [Theory]
    [InlineData(36, 20)]
    [InlineData(20, 40)]
    [InlineData(20, 100)]
    public void Beyond_the_published_curve_nothing_is_claimed_and_the_way_out_is_said(int wires, double percent)
    {
        var found = BundleDerating.Factor(wires, Fraction.Of(percent, "%"));
        Assert.False(found.IsKnown);
        Assert.Contains("split the bundle", found.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void Altitude_derating_is_linear_between_points_and_ends_at_60000_ft()
    {
        Assert.Equal(0.955, AltitudeDerating.Factor(Length.Of(10000, "ft")).Value, 1e-12);
        Assert.Equal(0.885, AltitudeDerating.Factor(Length.Of(27500, "ft")).Value, 1e-12);
        Assert.Equal(Basis.Memory, AltitudeDerating.Factor(Length.Of(10000, "ft")).Source.Basis);
        Assert.Equal(Basis.Read, AltitudeDerating.Factor(Length.Of(20000, "ft")).Source.Basis);
        Assert.False(AltitudeDerating.Factor(Length.Of(60001, "ft")).IsKnown);
        Assert.False(AltitudeDerating.Factor(Length.Of(-1, "ft")).IsKnown);
    }

    [Theory]
    [InlineData("26", 150, 50)]
    [InlineData("20", 90, 50)]
    [InlineData("20", 150, 150)]
    [InlineData("20", 199, 150)]
    public void Outside_the_table_nothing_is_claimed(string gauge, double rating, double ambient)
    {
        var sheet = WireCurrent.Run(new(Gauge.Read(gauge), Temperature.Of(rating, "°C"), Temperature.Of(ambient, "°C"), Length.Of(0, "ft"), 1, Fraction.Of(20, "%")));
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Single(sheet.CannotTell);
    }

    [Fact]
    public void A_wire_rated_above_the_last_class_is_taken_at_that_class()
    {
        var input = new WireCurrentInput(Gauge.Read("20"), Temperature.Of(200, "°C"), Temperature.Of(50, "°C"), Length.Of(0, "ft"), 3, Fraction.Of(20, "%"));
        Assert.Equal(Allowed(input), Allowed(input with { Rating = Temperature.Of(260, "°C") }));
    }

    // Differential: the loading found against every curve tried in the open.
    [Fact]
    public void The_loading_is_the_lowest_curve_that_serves() => Gen.Select(Wire, Gen.Double[0, 60]).Sample((w, ampere) =>
    {
        var sheet = BundleLoading.Run(new([new(w.Gauge, w.Rating, w.Wires, Current.Of(ampere, "A"))], w.Ambient, w.Altitude));
        var serving = BundleDerating.Curves.Where(p => ampere <= p.Si * w.Wires * Allowed(w with { Loading = p }).Si).ToArray();
        Assert.Equal(serving.Length == 0 ? 1 : serving[0].Si, sheet["p"].Si, 1e-12);
        Assert.Equal(serving.Length == 0 ? Verdict.Fails : Verdict.Holds, sheet.Verdict);
        Assert.Equal(w.Wires, sheet["N"].Value);
    });

    [Fact]
    public void Mixed_ratings_take_the_lowest_for_all()
    {
        BundleGroup cool = new(Gauge.Read("22"), Temperature.Of(150, "°C"), 4, Current.Of(8, "A"));
        BundleGroup hot = cool with { Rating = Temperature.Of(200, "°C") };
        var mixed = Loading(cool, hot);
        Assert.Equal(Loading(cool, cool)["C"], mixed["C"]);
        Assert.Equal(150, mixed["TR"].Value, 1e-9);
    }

    [Fact]
    public void A_large_bundle_is_judged_by_the_20_percent_curve_or_not_at_all()
    {
        BundleGroup many = new(Gauge.Read("22"), Temperature.Of(150, "°C"), 30, Current.Of(5, "A"));
        Assert.Equal(Verdict.Holds, Loading(many).Verdict);
        Assert.Equal(Verdict.CannotTell, Loading(many with { Current = Current.Of(80, "A") }).Verdict);
        Assert.Equal(Verdict.CannotTell, Loading(many with { Count = 36 }).Verdict);
        Assert.Equal(Verdict.CannotTell, BundleLoading.Run(new([], Temperature.Of(50, "°C"), Length.Of(0, "ft"))).Verdict);
    }

    [Fact]
    public void A_bundle_grows_with_its_wires_and_with_their_size() => Gen.Select(Gen.Double[0.03, 0.3], Gen.Int[1, 30], Gen.Double[0.03, 0.3], Gen.Double[1.01, 3]).Sample((d, n, other, scale) =>
    {
        BundleDiameterInput bundle = new([new(Length.Of(d, "in"), n), new(Length.Of(other, "in"), 2)]);
        var diameter = BundleDiameter.Of(bundle);
        Assert.True(diameter >= Length.Of(Math.Max(Math.Max(d, other) + Math.Min(d, other), 2 * other) * (1 - 1e-12), "in"));
        Assert.True(BundleDiameter.Of(new([new(Length.Of(d, "in"), n + 1), bundle.Wires[1]])) >= diameter);
        Assert.Equal(scale, BundleDiameter.Of(new([new(Length.Of(d * scale, "in"), n), new(Length.Of(other * scale, "in"), 2)])) / diameter, 1e-9);
    });

    [Fact]
    public void A_single_wire_is_as_thick_as_its_estimate_and_an_empty_bundle_is_refused()
    {
        Assert.Equal(1, BundleDiameter.Run(new([new(Length.Of(0.05, "in"), 1)]))["q"].Value);
        Assert.Throws<ArgumentException>(() => BundleDiameter.Of(new([])));
    }

    private static Current Allowed(WireCurrentInput input)
    {
        var found = WireCurrent.Allowed(input);
        Assert.True(found.IsKnown, found.WhyNot);
        return found.Value;
    }

    private static Sheet Loading(params ReadOnlySpan<BundleGroup> groups) =>
        BundleLoading.Run(new(Sequence.Create(groups), Temperature.Of(50, "°C"), Length.Of(25000, "ft")));
}
