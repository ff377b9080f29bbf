using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using static Fairlead.Tests.Reference.Structure.Typed;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Load factors of 14 CFR part 23, torques of AC 43.13-1B and AC 43.13-2B, bends.</summary>
public sealed class LoadFactorAndTorqueTests
{
    // 14 CFR 23.337 (2014 annual edition, read); numbers derived. The cap of 3.8 is met at 4,117.6 lb.
    [Theory]
    [InlineData(2000, 3.8)]
    [InlineData(3000, 3.8)]
    [InlineData(4117, 3.8)]
    [InlineData(4118, 3.79996)]
    [InlineData(6000, 3.600)]
    [InlineData(10_000, 3.300)]
    [InlineData(12_500, 3.1667)]
    public void Manoeuvring_factor_of_a_normal_aeroplane(double mass, double factor) =>
        Assert.Equal(factor, ManoeuvreFactor.Run(new(AeroplaneCategory.Normal, Lb(mass)))["n"].Value, 0.00005);

    // 23.337 and 23.303 (read); derived: 6.6, 9.0, 2.64, 4.5.
    [Theory]
    [InlineData(AeroplaneCategory.Utility, 6.6, 2.64)]
    [InlineData(AeroplaneCategory.Acrobatic, 9.0, 4.5)]
    public void Ultimate_manoeuvring_factors(AeroplaneCategory category, double positive, double negative)
    {
        var sheet = ManoeuvreFactor.Run(new(category, Lb(2500)));
        Assert.Equal(positive, sheet["nu"].Value, 1e-9);
        Assert.Equal(negative, sheet["nnegu"].Value, 1e-9);
    }

    // 23.341(c) (read); numbers derived: 16 psf, 4.9 ft, 4.8 per radian, sea level.
    [Theory]
    [InlineData(120, 50, 3.4507)]
    [InlineData(160, 25, 2.6338)]
    public void Gust_factor(double knots, double gust, double factor)
    {
        var sheet = GustFactor.Run(new(AreaMass.Of(16, "lb/ft²"), Length.Of(4.9, "ft"), 4.8, Speed.Of(knots, "kt"), Speed.Of(gust, "ft/s")));
        Assert.Equal(17.791, sheet["mu"].Value, 0.0015);
        Assert.Equal(0.67802, sheet["Kg"].Value, 0.00002);
        Assert.Equal(factor, sheet["n"].Value, 0.0001);
    }

    // AC 43.13-1B table 7-1 (read).
    [Theory]
    [InlineData("8-36", 12, 15, 20, 7, 9, 12)]
    [InlineData("8-32", 12, 15, 20, 7, 9, 12)]
    [InlineData("10-32", 20, 25, 40, 12, 15, 25)]
    [InlineData("10-24", 20, 25, 35, 12, 15, 21)]
    [InlineData("1/4-28", 50, 70, 100, 30, 40, 60)]
    [InlineData("3/8-24", 160, 190, 390, 95, 110, 240)]
    [InlineData("1-14", 3700, 5500, 10_000, 2200, 3300, 6000)]
    [InlineData("1-1/4-12", 9000, 11_000, 25_000, 5400, 6600, 15_000)]
    [InlineData("7/8-9", 2200, 3000, 4600, 1300, 1800, 2700)]
    public void Torque_of_table_7_1(string thread, double least, double most, double limit, double shearLeast, double shearMost, double shearLimit)
    {
        var tension = BoltTorque.Run(new(thread, TorqueUse.Tension));
        var shear = BoltTorque.Run(new(thread, TorqueUse.Shear));
        Assert.Equal([least, most, limit, shearLeast, shearMost, shearLimit], new[] { tension["Tl"], tension["Tm"], tension["Tx"], shear["Tl"], shear["Tm"], shear["Tx"] }.Select(m => Math.Round(m.Value, 9)));
    }

    // AC 43.13-1B 7-40 (read): the measured drag is added.
    [Fact]
    public void The_drag_of_the_nut_is_added() =>
        Assert.Equal(26, BoltTorque.Run(new("10-32", TorqueUse.Tension, Torque.Of(6, "lbf·in")))["Tl"].Value, 1e-9);

    // AC 43.13-2B 309b(5) (read) against table 7-1: the same screw has another limit when it holds an antenna. 24 in-lb suits a 10-32 tension nut only.
    [Fact]
    public void Antenna_screws_have_a_rule_of_their_own()
    {
        Assert.Equal(20, BoltTorque.Run(new("8-32", TorqueUse.AntennaScrew))["Tm"].Value, 1e-9);
        Assert.Equal(23, BoltTorque.Run(new("10-32", TorqueUse.AntennaScrew))["Tm"].Value, 1e-9);
        Assert.Equal(Verdict.Fails, BoltTorque.Run(new("10-32", TorqueUse.AntennaScrew, Torque: Torque.Of(24, "lbf·in"))).Verdict);
        Assert.Equal(Verdict.Holds, BoltTorque.Run(new("10-32", TorqueUse.Tension, Torque: Torque.Of(24, "lbf·in"))).Verdict);
    }

    [Theory]
    [InlineData("10-33")]
    [InlineData("10")]
    [InlineData("-32")]
    [InlineData("1/0-20")]
    [InlineData("M5")]
    public void A_thread_that_is_not_in_the_table_tells_nothing(string thread) =>
        Assert.Equal(Verdict.CannotTell, BoltTorque.Run(new(thread, TorqueUse.Tension)).Verdict);

    // Torque wrench adapters as printed (read): TM 1-1500-204-23-9, a helicopter's standard practices (forward and back), TM 9-2350.
    [Theory]
    [InlineData(300, 10, 4, 214.29)]
    [InlineData(135, 10, 1.5, 117.39)]
    [InlineData(135, 10, -1.5, 158.82)]
    [InlineData(40, 12, 4, 30)]
    public void Wrench_with_an_adapter(double torque, double lever, double adapter, double shown) =>
        Assert.Equal(shown, WrenchAdapter.Run(new(Torque.Of(torque, "lbf·in"), In(lever), In(adapter)))["Tw"].Value, 0.005);

    // AC 43.13-1B 4-56b (read): setback .130 at 45 degrees, .758 at 135; table 4-7 factors .4142, .5773, 1, 1.732, 2.414.
    [Theory]
    [InlineData(45, .130)]
    [InlineData(135, .758)]
    public void Setback(double angle, double setback) => Assert.Equal(setback, Bend(.25, .064, angle)["SB"].Value, 0.00051);

    // Bend allowance and deduction: sheet metal workbook (read) .085 and .079; the others derived.
    [Theory]
    [InlineData(.032, .050, 90, .0853, .0787)]
    [InlineData(.125, .064, 90, .2410, .1370)]
    [InlineData(.125, .064, 45, .1205, .0361)]
    [InlineData(.25, .040, 120, .5603, .4442)]
    public void Allowance_and_deduction(double radius, double thickness, double angle, double allowance, double deduction)
    {
        Assert.Equal(allowance, Bend(radius, thickness, angle)["BA"].Value, 0.00006);
        Assert.Equal(deduction, Bend(radius, thickness, angle)["BD"].Value, 0.00006);
    }

    // U-channel .040 with mold lines 1.00, 2.00, 1.00 and radius .16: flats .8, 1.6, .8 (read); developed width 3.758 (derived).
    [Fact]
    public void Developed_width_of_a_channel()
    {
        var bend = Bend(.16, .040, 90);
        Assert.Equal(.2, bend["SB"].Value, 1e-9);
        Assert.Equal(3.758, 1.00 + 2.00 + 1.00 - (2 * bend["BD"].Value), 0.0005);
    }

    private static Sheet Bend(double radius, double thickness, double degrees) => BendAllowance.Run(new(In(radius), In(thickness), Angle.Of(degrees, "°")));
}
