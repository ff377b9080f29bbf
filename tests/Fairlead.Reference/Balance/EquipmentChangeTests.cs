using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using static Fairlead.Tests.Reference.Balance.Typed;

namespace Fairlead.Tests.Reference.Balance;

/// <summary>Equipment changes of the FAA mechanic test items and FAA-H-8083-1B ch. 7.</summary>
public sealed class EquipmentChangeTests
{
    // FAA mechanic test item (inputs and answer read in a secondary copy): the centre of gravity moves 1.62 in aft.
    [Fact]
    public void Seats_out_cabinet_seat_and_radio_in()
    {
        var sheet = EmptyWeightChange.Run(new(Lb(2886), In(35.23), [Item(15, 71), Item(15, 71)], [Item(97, 71), Item(20, 71), Item(30, 94)]));
        Assert.Equal(101_673.78, sheet["M0"].Value, 1e-6);
        Assert.Equal(3003, sheet["W"].Value, 1e-9);
        Assert.Equal(110_670.78, sheet["M"].Value, 1e-6);
        Assert.Equal(1.62, sheet["dFS"].Value, 0.005);
    }

    // FAA mechanic test item in its two published variants (secondary copies; the printed +33.68 is from memory).
    [Theory]
    [InlineData(25, 2141, 72_118.5)]
    [InlineData(35, 2151, 72_863.5)]
    public void Both_published_variants_of_the_seat_item(double seat, double mass, double moment)
    {
        var sheet = EmptyWeightChange.Run(new(Lb(2100), In(32.5), [Item(36, 73)], [Item(17, 77), Item(seat, 74.5), Item(35, 95)]));
        Assert.Equal(mass, sheet["W"].Value, 1e-9);
        Assert.Equal(moment, sheet["M"].Value, 1e-6);
        if (seat == 25)
        {
            Assert.Equal(33.68, sheet["FS"].Value, 0.005);
        }
    }

    // FAA handbook, equipment change (rule read): an item ahead of the datum that is removed adds moment, one behind it takes moment away.
    [Theory]
    [InlineData(-20, 1)]
    [InlineData(20, -1)]
    public void The_sign_of_a_removed_moment_follows_the_side_of_the_datum(double station, int sign)
    {
        var sheet = EmptyWeightChange.Run(new(Lb(2000), In(10), [Item(3, station)]));
        Assert.Equal(sign, Math.Sign(sheet["M"].Value - sheet["M0"].Value));
    }

    [Fact]
    public void Removing_more_than_there_is_tells_nothing() =>
        Assert.Equal(Verdict.CannotTell, EmptyWeightChange.Run(new(Lb(10), In(10), [Item(11, 5)])).Verdict);

    // AC 43.13-1B par. 10-2c (read). The text leaves exactly 5,000 and 50,000 lb to no band; the lower, stricter one is taken.
    [Theory]
    [InlineData(4999, 1.0, true)]
    [InlineData(4999, 1.01, false)]
    [InlineData(5000, 1.0, true)]
    [InlineData(5000, 1.01, false)]
    [InlineData(5001, 2.0, true)]
    [InlineData(5001, 2.01, false)]
    [InlineData(50_000, 2.01, false)]
    [InlineData(50_001, 5.0, true)]
    [InlineData(50_001, 5.01, false)]
    public void A_negligible_mass_follows_the_bands(double empty, double change, bool negligible)
    {
        foreach (var sign in new[] { 1, -1 })
        {
            var sheet = NegligibleChange.Run(new(Lb(empty), Lb(sign * change), In(0), In(60)));
            Assert.Equal(negligible ? Verdict.Holds : Verdict.Caution, sheet.Verdict);
        }
    }

    // Same paragraph: 0.05 % of the chord for fixed wing, 0.2 % of the permitted range for rotary wing.
    [Theory]
    [InlineData(0.0299, true)]
    [InlineData(0.0301, false)]
    public void A_negligible_shift_follows_chord_or_range(double shift, bool negligible)
    {
        var expected = negligible ? Verdict.Holds : Verdict.Caution;
        Assert.Equal(expected, NegligibleChange.Run(new(Lb(4000), Lb(0.5), In(shift), In(60))).Verdict);
        Assert.Equal(expected, NegligibleChange.Run(new(Lb(4000), Lb(0.5), In(-shift), Range: In(15))).Verdict);
    }

    // EASA AMC1 CAT.POL.MAB.100(b) (read): 0.5 % of 2,000 kg is 10.0 kg, of 1.500 m it is 7.5 mm.
    [Theory]
    [InlineData(10.0, 7.5, Verdict.Holds)]
    [InlineData(10.01, 7.5, Verdict.Caution)]
    [InlineData(-10.01, 0, Verdict.Caution)]
    [InlineData(10.0, 7.51, Verdict.Caution)]
    public void A_record_is_revised_beyond_half_a_per_cent(double kilograms, double millimetres, Verdict expected) =>
        Assert.Equal(expected, RecordRevision.Run(new(Mass.Of(2000, "kg"), Mass.Of(kilograms, "kg"), Length.Of(millimetres, "mm"), Length.Of(1.5, "m"))).Verdict);
}
