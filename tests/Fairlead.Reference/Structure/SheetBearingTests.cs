using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using static Fairlead.Tests.Reference.Structure.Typed;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Sheet under a screw or bolt, and rivets held against their grip.</summary>
public sealed class SheetBearingTests
{
    // MIL-HDBK-5 8.1.5 as quoted by a hardware note (read, second-hand): .250 bolt in .10 sheet, 2,500 lb at 100 ksi; 7075-T6 of 156 ksi: 3,900 lb.
    [Theory]
    [InlineData(100, 2500)]
    [InlineData(156, 3900)]
    public void A_quarter_inch_bolt_bears_as_the_handbook_has_it(double ksi, double pounds) =>
        Assert.Equal(pounds, Run(0.25, 0.10, 0.5, ksi)["Pb"].Value, 0.01);

    // Derived: two planes from the edge of the hole, 2 · .10 · (.5 − .125) · 40,000 = 3,000 lb.
    [Fact]
    public void Tear_out_shears_two_planes() => Assert.Equal(3000, Run(0.25, 0.10, 0.5, 156, strength: 40)["Pt"].Value, 0.01);

    // Derived: half way between 1.5 D and 2 D the strength is half way between both values: (97 + 121) / 2.
    [Fact]
    public void Between_one_and_a_half_and_two_diameters_the_strength_lies_between() =>
        Assert.Equal(109, Run(0.20, 0.063, 0.35, 121, near: 97)["Fb"].Value, 1e-9);

    // Fbru belongs to its edge distance (MIL-HDBK-5); unit bearing from t/D = 0.18 (MIL-HDBK-5H page 8-9).
    [Theory]
    [InlineData(0.20, 0.063, 0.35, null)]
    [InlineData(0.20, 0.063, 0.29, 97.0)]
    [InlineData(0.20, 0.035, 0.50, 97.0)]
    public void Outside_what_is_published_nothing_is_told(double d, double t, double e, double? near) =>
        Assert.Equal(Verdict.CannotTell, Run(d, t, e, 121, near: near).Verdict);

    [Theory]
    [InlineData(2499, Verdict.Holds)]
    [InlineData(2501, Verdict.Fails)]
    public void A_load_beyond_the_strength_fails(double load, Verdict expected) => Assert.Equal(expected, Run(0.25, 0.10, 0.5, 100, load).Verdict);

    // FAA-H-8083-31B (read): two sheets of .040 in and a 1/8 in rivet take −4. One sixteenth longer is to be cut; −3 leaves .1075 in, less than 1.33 D.
    [Theory]
    [InlineData(0.25, Verdict.Holds)]
    [InlineData(0.3125, Verdict.Caution)]
    [InlineData(0.1875, Verdict.Fails)]
    public void A_rivet_at_hand_is_held_against_its_grip(double length, Verdict expected) =>
        Assert.Equal(expected, RivetLength.Run(new(In(0.125), In(0.080), Length: In(length))).Verdict);

    private static Sheet Run(double d, double t, double e, double ksi, double load = 100, double? near = null, double? strength = null) => SheetBearing.Run(new(
        Lbf(load), In(d), In(t), Pressure.Of(ksi, "ksi"), In(e), near is { } n ? Pressure.Of(n, "ksi") : null, strength is { } s ? Pressure.Of(s, "ksi") : null));
}
