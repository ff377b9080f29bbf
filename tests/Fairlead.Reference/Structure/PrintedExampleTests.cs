using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using static Fairlead.Tests.Reference.Structure.Typed;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Further rows and worked examples of the documents, each as printed.</summary>
public sealed class PrintedExampleTests
{
    // A transponder's installation manual (read): 3.4 lb, up 6.0 g, side 4.5 g, forward 18 g.
    [Fact]
    public void A_third_makers_static_test_loads()
    {
        var sheet = InertiaLoads.Run(new(Lb(3.4), InertiaRule.CircularItem, FittingFactor.None, Up: 6));
        Assert.Equal([20.4, 15.3, 61.2], new[] { "FU", "FS", "FF" }.Select(k => Math.Round(sheet[k].Value, 6)));
    }

    // AC 43.13-1B table 4-8 (read), psi.
    [Theory]
    [InlineData(RivetAlloy.A1100, 10_000)]
    [InlineData(RivetAlloy.Ad2117, 30_000)]
    [InlineData(RivetAlloy.D2017, 34_000)]
    [InlineData(RivetAlloy.Hd2017, 38_000)]
    [InlineData(RivetAlloy.Dd2024, 41_000)]
    [InlineData(RivetAlloy.B5056, 27_000)]
    [InlineData(RivetAlloy.Monel, 49_000)]
    public void Shear_stress_of_rivet_alloys(RivetAlloy alloy, double psi) => Assert.Equal(psi, Rivets.Shear(alloy).Stress.In("psi"), 1e-6);

    // AC 43.13-2B table 9-1 (read), lbf, rounded as printed: g, weight, fitting factor, share.
    [Theory]
    [InlineData(9, 215, 1.33, 40, 1029)]
    [InlineData(9, 170, 1.33, 40, 814)]
    [InlineData(9, 190, 1.33, 40, 910)]
    [InlineData(9, 170, 1.15, 40, 704)]
    [InlineData(9, 190, 1.15, 40, 787)]
    [InlineData(4, 170, 1.15, 60, 469)]
    [InlineData(4, 170, 1.33, 60, 543)]
    public void Straps_of_table_9_1(double factor, double pounds, double fitting, double share, double load) =>
        Assert.Equal(load, StrapLoad.Run(new(Lb(pounds), factor, fitting, Fraction.Of(share, "%")))["P"].Value, 0.5);

    // AC 43.13-2B table 9-2 (read): multiplier of the strap's angle.
    [Theory]
    [InlineData(5, 1.004)]
    [InlineData(10, 1.015)]
    [InlineData(15, 1.035)]
    [InlineData(20, 1.064)]
    [InlineData(25, 1.103)]
    [InlineData(30, 1.155)]
    [InlineData(35, 1.221)]
    [InlineData(40, 1.305)]
    [InlineData(50, 1.556)]
    [InlineData(60, 2.0)]
    public void Straps_at_an_angle(double degrees, double multiplier) =>
        Assert.Equal(multiplier, StrapLoad.Run(new(Lb(1), 1, 1, Angles: [new(Angle.Of(degrees, "°"))]))["k"].Value, 0.00055);

    // The three examples below table 9-2 (read), computed there from rounded loads and multipliers.
    [Theory]
    [InlineData(1.33, 15, 10, 855)]
    [InlineData(1.33, 30, 30, 1086)]
    [InlineData(1.15, 25, 0, 777)]
    public void Straps_at_two_angles(double fitting, double plan, double side, double load) =>
        Assert.Equal(load, StrapLoad.Run(new(Lb(170), 9, fitting, Fraction.Of(40, "%"), [new(Angle.Of(plan, "°")), new(Angle.Of(side, "°"))]))["P"].Value, 1.0);

    // Derived: 125 ksi on the root area π/4 · (D − 1.299/n)²; a bolt of the table bears no more than that by more than 1 %, and far less than on the stress area.
    [Theory]
    [InlineData("AN3", 2191, 2499)]
    [InlineData("AN4", 4070, 4547)]
    [InlineData("AN5", 6554, 7258)]
    [InlineData("AN6", 10_108, 10_979)]
    public void Bolts_bear_what_their_root_area_does(string bolt, double root, double stress)
    {
        var tension = Bolts.Find(bolt).Value.Tension.In("lbf");
        Assert.InRange(tension, root * 0.99, root * 1.01);
        Assert.True(tension < stress);
    }

    // FAA-H-8083-31B figure 4-76 (read), in diameters: AD 1.5 by 0.5, at most 1.66 by 0.33; D, E and M 1.4 by 0.6, at most 1.5 by 0.5; 1.25 at least for all.
    [Theory]
    [InlineData(RivetAlloy.Ad2117, 1.5, 0.5, 1.66, 0.33)]
    [InlineData(RivetAlloy.D2017, 1.4, 0.6, 1.5, 0.5)]
    [InlineData(RivetAlloy.Dd2024, 1.4, 0.6, 1.5, 0.5)]
    [InlineData(RivetAlloy.Monel, 1.4, 0.6, 1.5, 0.5)]
    public void Shop_heads_by_alloy(RivetAlloy alloy, double width, double height, double most, double least)
    {
        var sheet = RivetLength.Run(new(In(0.125), In(0.080), alloy));
        Assert.Equal([width, height, 1.25, most, least], new[] { "W", "H", "Wmin", "Wmax", "Hmin" }.Select(k => Math.Round(sheet[k].Value / 0.125, 9)));
    }

    // MIL-HDBK-5J table 8.1.2.1(b), single shear, as transcribed (read, second-hand): all rows.
    [Theory]
    [InlineData(3.0 / 16, ".018 .933 .020 .953 .025 .970 .032 1.0")]
    [InlineData(1.0 / 4, ".020 .920 .025 .961 .032 .979 .036 .995 .040 1.0")]
    [InlineData(5.0 / 16, ".032 .944 .036 .964 .040 .981 .045 .995 .050 1.0")]
    [InlineData(3.0 / 8, ".025 .909 .032 .933 .036 .953 .040 .972")]
    public void Single_shear_in_thin_sheet(double diameter, string printed) => Assert.All(Pairs(printed), p => Assert.Equal(p[1], Rivets.Correction(1, In(diameter), In(p[0])).Value));

    // The same table, double shear.
    [Theory]
    [InlineData(1.0 / 8, ".036 .789 .040 .834 .045 .870 .050 .937 .063 .966 .071 .992 .080 1.0")]
    [InlineData(3.0 / 16, ".025 .653 .032 .708 .040 .808 .045 .852 .050 .891 .063 .924 .071 .951 .080 1.0")]
    [InlineData(1.0 / 4, ".032 .737 .036 .789 .040 .834 .045 .870 .050 .935 .063 .992 .071 1.0")]
    [InlineData(5.0 / 16, ".025 .55 .032 .622 .040 .744 .045 .789 .050 .870 .063 .941 .071 .981 .080 1.0")]
    [InlineData(3.0 / 8, ".025 .508 .032 .585 .036 .653 .050 .805 .063 .891 .071 .939 .100 1.0")]
    public void Double_shear_in_thin_sheet(double diameter, string printed) => Assert.All(Pairs(printed), p => Assert.Equal(p[1], Rivets.Correction(2, In(diameter), In(p[0])).Value));

    // AC 43.13-1B table 7-1 (read): the rows not tried elsewhere, tension nuts and their limit, shear nuts and theirs.
    [Theory]
    [InlineData("5/16-24", 100, 140, 225, 60, 85, 140)]
    [InlineData("7/16-20", 450, 500, 840, 270, 300, 500)]
    [InlineData("1/2-20", 480, 690, 1100, 290, 410, 660)]
    [InlineData("9/16-18", 800, 1000, 1600, 480, 600, 960)]
    [InlineData("5/8-18", 1100, 1300, 2400, 600, 780, 1400)]
    [InlineData("3/4-16", 2300, 2500, 5000, 1300, 1500, 3000)]
    [InlineData("7/8-14", 2500, 3000, 7000, 1500, 1800, 4200)]
    [InlineData("1-1/8-12", 5000, 7000, 15_000, 3000, 4200, 9000)]
    [InlineData("1/4-20", 40, 50, 75, 25, 30, 45)]
    [InlineData("5/16-18", 80, 90, 160, 48, 55, 100)]
    [InlineData("3/8-16", 160, 185, 275, 95, 100, 170)]
    [InlineData("7/16-14", 235, 255, 475, 140, 155, 280)]
    [InlineData("1/2-13", 400, 480, 880, 240, 290, 520)]
    [InlineData("9/16-12", 500, 700, 1100, 300, 420, 650)]
    [InlineData("5/8-11", 700, 900, 1500, 420, 540, 900)]
    [InlineData("3/4-10", 1150, 1600, 2500, 700, 950, 1500)]
    public void Torques_of_table_7_1(string thread, double least, double most, double limit, double shearLeast, double shearMost, double shearLimit)
    {
        var (tension, shear) = (BoltTorque.Run(new(thread, TorqueUse.Tension)), BoltTorque.Run(new(thread, TorqueUse.Shear)));
        Assert.Equal([least, most, limit, shearLeast, shearMost, shearLimit], new[] { tension["Tl"], tension["Tm"], tension["Tx"], shear["Tl"], shear["Tm"], shear["Tx"] }.Select(m => Math.Round(m.Value, 9)));
    }

    // TM 9-254 (read): a wrench of 12 in that shows 60 with 14 in to the bolt gives 70.
    [Fact]
    public void A_wrench_that_shows_sixty_gives_seventy() => Assert.Equal(60, WrenchAdapter.Run(new(Torque.Of(70, "lbf·in"), In(12), In(2)))["Tw"].Value, 1e-9);

    // A supplier's list (read): grip and length of AN bolts.
    [Theory]
    [InlineData("AN3-3", .063, .469)]
    [InlineData("AN3-4", .125, .531)]
    [InlineData("AN3-6", .375, .781)]
    [InlineData("AN3-7", .500, .906)]
    [InlineData("AN3-10", .625, 1.031)]
    [InlineData("AN4-4", .063, .531)]
    [InlineData("AN4-5", .188, .656)]
    [InlineData("AN4-6", .313, .781)]
    public void Grips_of_bolts(string bolt, double grip, double length) => Assert.Equal((In(grip), In(length)), GripLength.Find(bolt).Value);

    // AC 43.13-1B table 4-7 (read): setback K · (R + T); at 90 degrees R + T. And three derived setbacks.
    [Theory]
    [InlineData(.25, .064, 60, .5773, .0002)]
    [InlineData(.25, .064, 90, 1.000, .0002)]
    [InlineData(.25, .064, 120, 1.732, .0002)]
    [InlineData(.125, .064, 90, 1.000, .0002)]
    [InlineData(.125, .064, 45, .4142, .0002)]
    [InlineData(.25, .040, 120, 1.732, .0002)]
    public void Setback_factors(double radius, double thickness, double degrees, double k, double tolerance) =>
        Assert.Equal(k * (radius + thickness), BendAllowance.Run(new(In(radius), In(thickness), Angle.Of(degrees, "°")))["SB"].Value, tolerance);

    // Derived: f = √(g / deflection) / 2π, so .001 in 98.9 Hz, .010 31.27, .050 13.99, .100 9.89; whatever bends so under its own item.
    [Theory]
    [InlineData(.001, 98.9, .05)]
    [InlineData(.010, 31.27, .01)]
    [InlineData(.050, 13.99, .01)]
    [InlineData(.100, 9.89, .01)]
    public void Frequency_from_the_static_deflection(double deflection, double hertz, double tolerance)
    {
        // A strip whose tip sinks by the wanted deflection under 10 lb: .4213 in at 6 in of length, as the cube of it.
        var length = 6 * Math.Cbrt(deflection / 0.42129638);
        var sheet = PanelBending.Run(new(Support.CantileverTip, In(length), In(1), In(.125), Psi(10.5e6), Lb(10), 1));
        Assert.Equal(deflection, sheet["d"].Value, deflection * 1e-4);
        Assert.Equal(hertz, sheet["fn"].Value, tolerance);
    }

    // Derived with the handbook's coefficients for mu .3 (from memory): 8 in square, 5 lb at 9 g, .063 in: 3,259 psi and .0487 in.
    [Fact]
    public void Square_plate_with_the_handbooks_ratio()
    {
        var sheet = PanelBending.Run(new(Support.PlateSimple, In(8), In(8), In(.063), Psi(10.5e6), Lb(5), 9, Poisson: 0.3));
        Assert.Equal(3259, sheet["f"].Value, 2.0);
        Assert.Equal(.0487, sheet["d"].Value, 0.0001);
    }

    // Derived: the six rivets of 388 lb have no margin left at 402.0 lb.
    [Fact]
    public void Six_rivets_hold_402_pounds()
    {
        var rivets = At("in", (0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1)).Select(f => f with { Shear = Lbf(388), Tension = Lbf(388) }).ToSequence();
        Assert.Equal(0, FastenerGroup.Run(new(rivets, Lbf(0), Lbf(-402.0), Lbf(0), In(5), In(0.5), In(0), Tilt.Centroid))["MS"].Value, 0.0002);
    }

    // Derived: head .179 in (from memory) of a 3/32 in rivet: .0358 in deep, so .054 in of sheet by two thirds; the least sheet .040 in is read in TM 9-2320-363-34-2.
    [Fact]
    public void Countersink_of_the_smallest_rivet()
    {
        Assert.Equal(.0358, CountersinkDepth.Run(new(In(3.0 / 32), In(.054)))["h"].Value, 0.00005);
        Assert.True(CountersinkDepth.Run(new(In(3.0 / 32), In(.054))).Checks.Single(c => c.Name == "two thirds of the sheet").Holds);
        Assert.True(CountersinkDepth.Run(new(In(3.0 / 32), In(.040))).Checks.Single(c => c.Name == "least sheet by table").Holds);
        Assert.False(CountersinkDepth.Run(new(In(3.0 / 32), In(.039))).Checks.Single(c => c.Name == "least sheet by table").Holds);
    }

    // Derived by beam theory: a couple of 20 lb-in in the middle of a strip 16 in long, 4 in by .040 in: 3 · 20 / (4 · .0016) = 9,375 psi, 20 · 16 / (12 · 10.5e6 · 2.1333e-5) = .11905 rad.
    [Fact]
    public void A_strip_with_a_couple_in_its_middle()
    {
        var sheet = SkinMoment.Run(new(Torque.Of(20, "lbf·in"), In(16), In(4), In(.040), Psi(10.5e6), Psi(60_000)));
        Assert.Equal(9375, sheet["f"].Value, 0.01);
        Assert.Equal(.11905, sheet["tilt"].Value, 0.00001);
    }

    private static double[][] Pairs(string printed) => [.. printed.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).Chunk(2)];
}
