using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using static Fairlead.Tests.Reference.Balance.Typed;

namespace Fairlead.Tests.Reference.Balance;

/// <summary>Weighing examples of FAA-H-8083-1B ch. 3 and AC 43.13-1B fig. 10-4: nose or tail wheel, datum ahead of or behind the main wheels.</summary>
public sealed class WeighingTests
{
    // F, L, W of the nosewheel cases were read; the datum distances and both tailwheel cases are from memory. Printed answers to 0.1 in.
    [Theory]
    [InlineData(1666, 0, 340, -78, -13.2)]
    [InlineData(1666, 128, 340, 50, 114.8)]
    [InlineData(1666, -75, 340, -153, -88.2)]
    [InlineData(1151, 7.5, 67, 229.5, 19.7)]
    [InlineData(1151, -80, 67, 142, -67.8)]
    public void The_centre_of_gravity_is_the_printed_one_wherever_the_datum_lies(double mains, double mainArm, double third, double thirdArm, double printed) =>
        Assert.Equal(printed, Weighing.Run(new([new("mains", Lb(mains), In(mainArm)), new("third", Lb(third), In(thirdArm))]))["FS"].Value, 0.05);

    // FAA-H-8083-30 ch. 4, fig. 4-20: inputs from a secondary copy, printed answers 1,331.5 lb and +50.1 in from memory.
    [Fact]
    public void Tare_fuel_and_unusable_fuel_are_accounted_for()
    {
        var sheet = Weighing.Run(new(
            [new("left", Lb(650), In(70), Lb(5)), new("right", Lb(640), In(70), Lb(5)), new("nose", Lb(225), In(-30), Lb(2.5))],
            [new("fuel, 30 gal at 5.9 lb/gal", Lb(-177), In(95)), new("unusable fuel", Lb(6), In(98))]));
        Assert.Equal(1502.5, sheet["Wn"].Value, 1e-9);
        Assert.Equal(82_925, sheet["Mn"].Value, 1e-6);
        Assert.Equal(1331.5, sheet["W"].Value, 1e-9);
        Assert.Equal(50.1, sheet["FS"].Value, 0.05);
        Assert.Equal(66_698 / 1331.5, sheet["FS"].Value, 1e-9);
    }

    // Examination items (secondary): 285 kg on the nose, 1,465 and 1,395 kg on the mains, 92 in apart; and 475, 1,046, 1,040 lb.
    [Fact]
    public void Examination_items_come_out()
    {
        var metric = Weighing.Run(new([new("nose", Mass.Of(285, "kg"), In(0)), new("left", Mass.Of(1465, "kg"), In(92)), new("right", Mass.Of(1395, "kg"), In(92))]));
        Assert.Equal(3145, new Mass(metric["W"].Si).In("kg"), 1e-9);
        Assert.Equal(83.7, metric["FS"].Value, 0.05);
        var feet = Weighing.Run(new([new("nose", Lb(475), In(55)), new("right", Lb(1046), In(121)), new("left", Lb(1040), In(121))]));
        Assert.Equal(2561, feet["W"].Value, 1e-9);
        Assert.Equal(((475 * 55) + (2086 * 121)) / 2561.0, feet["FS"].Value, 1e-9);
    }

    [Fact]
    public void A_scale_that_reads_less_than_its_tare_is_no_weighing() =>
        Assert.Equal(Verdict.CannotTell, Weighing.Run(new([new("left", Lb(4), In(70), Lb(5)), new("right", Lb(640), In(70))])).Verdict);
}
