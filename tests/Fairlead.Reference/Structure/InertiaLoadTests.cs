using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using static Fairlead.Tests.Reference.Structure.Typed;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Emergency landing factors and loads as printed in the regulations and circulars.</summary>
public sealed class InertiaLoadTests
{
    // 14 CFR 23.561, 27.561 (2015 annual edition), 25.561 and 29.561 (secondary copies), AC 43.13-2B (3 Mar 2008) table 1-1, all read;
    // CS-23, CS-VLA and CAR 3 from memory, and marked so by their source.
    [Theory]
    [InlineData(InertiaRule.Part23Item, 3.0, 18.0, 4.5, null, null, Basis.Read)]
    [InlineData(InertiaRule.Part23Occupant, 3.0, 9.0, 1.5, null, null, Basis.Read)]
    [InlineData(InertiaRule.Part23OccupantAcrobatic, 4.5, 9.0, 1.5, null, null, Basis.Read)]
    [InlineData(InertiaRule.Part23Baggage, null, 9.0, null, null, null, Basis.Read)]
    [InlineData(InertiaRule.Part25, 3.0, 9.0, 3.0, 6.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.Part25Seat, 3.0, 9.0, 4.0, 6.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.Part27Inside, 4.0, 16.0, 8.0, 20.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.Part27AboveOrBehind, 1.5, 12.0, 6.0, 12.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.Part27Tanks, 1.5, 4.0, 2.0, 4.0, null, Basis.Read)]
    [InlineData(InertiaRule.Part29Inside, 4.0, 16.0, 8.0, 20.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.Part29AboveOrBehind, 1.5, 12.0, 6.0, 12.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.Part29Tanks, 1.5, 4.0, 2.0, 4.0, null, Basis.Read)]
    [InlineData(InertiaRule.CircularItem, 3.0, 18.0, 4.5, null, null, Basis.Read)]
    [InlineData(InertiaRule.CircularOccupant, 3.0, 9.0, 3.0, 6.6, null, Basis.Read)]
    [InlineData(InertiaRule.CircularOccupantAcrobatic, 4.5, 9.0, 1.5, 9.0, null, Basis.Read)]
    [InlineData(InertiaRule.CircularRotorcraft, 4.0, 16.0, 8.0, 20.0, 1.5, Basis.Read)]
    [InlineData(InertiaRule.CsVla, 3.0, 9.0, 1.5, null, null, Basis.Memory)]
    [InlineData(InertiaRule.Cs23Item, 3.0, 18.0, 4.5, null, null, Basis.Memory)]
    [InlineData(InertiaRule.Car3, 3.0, 9.0, 1.5, null, null, Basis.Memory)]
    public void Factors_of_a_rule(InertiaRule rule, double? up, double? forward, double? side, double? down, double? aft, Basis basis)
    {
        var (factors, source) = InertiaFactors.Of(rule);
        Assert.Equal(new InertiaFactors(up, forward, side, down, aft), factors);
        Assert.Equal(basis, source.Basis);
    }

    // AC 43.13-2B table 1-2 (read): a box of 7 lb, utility.
    [Fact]
    public void The_circulars_box_of_seven_pounds()
    {
        var sheet = InertiaLoads.Run(new(Lb(7), InertiaRule.Stated, FittingFactor.None, Up: 3, Forward: 9, Side: 1.5, Down: 6));
        Assert.Equal([21.0, 63.0, 10.5, 42.0], new[] { "FU", "FF", "FS", "FD" }.Select(k => Math.Round(sheet[k].Value, 9)));
    }

    // Static test loads printed in three installation manuals (read), two decimals: down, up, side, forward.
    [Theory]
    [InlineData(2.69, 17.75, 16.14, 12.11, 48.42)]
    [InlineData(6.4, 42.24, 38.4, 28.8, 115.2)]
    public void Makers_static_test_loads(double mass, double down, double up, double side, double forward)
    {
        var sheet = InertiaLoads.Run(new(Lb(mass), InertiaRule.CircularItem, FittingFactor.None, Manoeuvre: 4.4, Up: 6));
        Assert.Equal([down, up, side, forward], new[] { "FD", "FU", "FS", "FF" }.Select(k => sheet[k].Value), (a, b) => Math.Abs(a - b) <= 0.0051);
    }

    // Derived: 10 lb under 23.561(b)(3) with the fitting factor 1.15, and 6.6 down.
    [Fact]
    public void Ten_pounds_with_the_fitting_factor()
    {
        var sheet = InertiaLoads.Run(new(Lb(10), InertiaRule.Part23Item, FittingFactor.Fitting, Manoeuvre: 4.4));
        Assert.Equal([207.0, 51.75, 34.5, 75.9], new[] { "PF", "PS", "PU", "PD" }.Select(k => Math.Round(sheet[k].Value, 9)));
    }

    // Derived from 23.303 and 23.337: 1.5 x 4.4 = 6.6, 1.5 x 6.0 = 9.0, 1.5 x 0.5 x 6.0 = 4.5: the circular's 6.6, 9.0 and 4.5 are already ultimate.
    [Theory]
    [InlineData(4.4, 6.6)]
    [InlineData(6.0, 9.0)]
    [InlineData(3.8, 5.7)]
    public void Downward_the_ultimate_manoeuvring_factor_acts(double limit, double ultimate) =>
        Assert.Equal(ultimate, InertiaLoads.Run(new(Lb(1), InertiaRule.Part23Item, FittingFactor.None, Manoeuvre: limit))["nD"].Value, 1e-12);

    // Known misprint: AC 43.13-2B table 1-1 side 3.0 and down 6.6, table 1-2 side 1.5 and down 6.0, 23.561(b)(2) side 1.5. Both values must be named.
    [Fact]
    public void The_circular_disagreeing_with_itself_is_a_caution_that_names_both_values()
    {
        var sheet = InertiaLoads.Run(new(Lb(7), InertiaRule.CircularOccupant, FittingFactor.None));
        Assert.Equal(Verdict.Caution, sheet.Verdict);
        Assert.Contains(sheet.Cautions, c => c.Contains("3.0", StringComparison.Ordinal) && c.Contains("1.5", StringComparison.Ordinal) && c.Contains("6.6", StringComparison.Ordinal) && c.Contains("6.0", StringComparison.Ordinal));
    }

    // Known trap: table 1-1 is titled "limit" but is ultimate; nothing here is multiplied by 1.5 again (figure 1-3 of the circular does not either).
    [Fact]
    public void The_circulars_factors_are_not_multiplied_again() =>
        Assert.Equal(63.0, InertiaLoads.Run(new(Lb(7), InertiaRule.CircularOccupant, FittingFactor.None))["FF"].Value, 1e-9);

    // 14 CFR 23.2270 from amendment 23-64 (read) gives no numbers.
    [Fact]
    public void From_amendment_64_the_rule_gives_no_load()
    {
        var sheet = InertiaLoads.Run(new(Lb(7), InertiaRule.Part23Amendment64, FittingFactor.None));
        Assert.Equal(Verdict.Caution, sheet.Verdict);
        Assert.Null(sheet.Find("FF"));
    }
}
