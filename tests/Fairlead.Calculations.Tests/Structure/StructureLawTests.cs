using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Structure;

namespace Fairlead.Tests.Calculations.Structure;

/// <summary>Laws that structure calculations obey whatever the numbers.</summary>
public sealed class StructureLawTests
{
    private static readonly double[] RivetSizes = [3.0 / 32, 1.0 / 8, 5.0 / 32, 3.0 / 16, 1.0 / 4];
    private static readonly Gen<double> Size = Gen.Int[0, 4].Select(i => RivetSizes[i]);

    [Fact]
    public void Every_rule_of_inertia_has_a_source_and_loads_grow_with_the_mass() => Gen.Select(Gen.Enum<InertiaRule>(), Gen.Enum<FittingFactor>(), Gen.Double[0.1, 500]).Sample((rule, fitting, mass) =>
    {
        var one = InertiaLoads.Run(new(Mass.Of(mass, "lb"), rule, fitting));
        var two = InertiaLoads.Run(new(Mass.Of(2 * mass, "lb"), rule, fitting));
        Assert.NotEmpty(one.Sources);
        foreach (var step in one.Steps.Where(s => s.Symbol.Length == 2 && s.Symbol[0] == 'F'))
        {
            Assert.Equal(2 * step.Value.Si, two[step.Symbol].Si, 1e-9 * (1 + step.Value.Si));
            Assert.Equal(step.Value.Si * one["ff"].Value, one["P" + step.Symbol[1]].Si, 1e-9 * (1 + step.Value.Si));
        }
    });

    [Fact]
    public void A_kilogram_and_its_pounds_load_alike()
    {
        var kilogram = InertiaLoads.Run(new(Mass.Of(1, "kg"), InertiaRule.Part25, FittingFactor.None));
        Assert.Equal(9 * 9.80665, kilogram["FF"].Si, 1e-9);
        Assert.Equal(kilogram["FF"].Si, InertiaLoads.Run(new(Mass.Of(1 / 0.45359237, "lb"), InertiaRule.Part25, FittingFactor.None))["FF"].Si, 1e-9);
    }

    [Fact]
    public void A_limit_factor_below_the_rules_changes_nothing_and_one_above_governs()
    {
        InertiaLoadsInput item = new(Mass.Of(1, "lb"), InertiaRule.Part25, FittingFactor.None);
        Assert.Equal(6, InertiaLoads.Run(item with { Manoeuvre = 2.5 })["nD"].Value);
        Assert.Equal(7.5, InertiaLoads.Run(item with { Manoeuvre = 5 })["nD"].Value);
    }

    [Fact]
    public void A_rivet_is_as_strong_as_the_weaker_of_shear_and_bearing_and_more_sheet_never_weakens_it() =>
        Gen.Select(Size, Gen.Enum<RivetAlloy>(), Gen.Double[0.02, 0.2], Gen.Double[0, 0.1], Gen.Double[50, 200], Gen.Int[1, 2]).Sample((d, alloy, t, more, ksi, planes) =>
        {
            RivetStrengthInput thin = new(Length.Of(d, "in"), alloy, Length.Of(t, "in"), Pressure.Of(ksi, "ksi"), planes);
            var (one, two) = (RivetStrength.Run(thin), RivetStrength.Run(thin with { Sheet = Length.Of(t + more, "in") }));
            if (one.Verdict != Verdict.CannotTell && two.Verdict != Verdict.CannotTell)
            {
                Assert.Equal(Math.Min(one["Ps"].Si, one["Pb"].Si), one["Pu"].Si);
                Assert.True(two["Pu"].Si >= one["Pu"].Si);
            }
        });

    [Fact]
    public void A_rivets_length_leaves_enough_to_drive_and_no_sixteenth_too_much() => Gen.Select(Size, Gen.Double[0.02, 1]).Sample((d, grip) =>
    {
        var sheet = RivetLength.Run(new(Length.Of(d, "in"), Length.Of(grip, "in")));
        Assert.True(sheet["h"].Value >= (1.33 * d) - 1e-9);
        Assert.InRange(sheet["L"].Value - sheet["Lw"].Value, -1.0 / 32 - 1e-9, (1.0 / 16) + 1e-9);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
    });

    [Fact]
    public void More_width_never_needs_fewer_rivets_and_a_share_never_more() =>
        Gen.Select(Gen.Enum<SheetGroup>(), Gen.Double[0.016, 0.1], Size, Gen.Double[0.1, 20], Gen.Double[0, 5], Gen.Enum<SplicePlace>()).Sample((group, t, d, width, more, place) =>
        {
            RivetPatternInput full = new(group, Length.Of(t, "in"), Length.Of(d, "in"), Length.Of(width, "in"));
            if (RivetPattern.Run(full).Find("n") is { } n)
            {
                Assert.True(RivetPattern.Run(full with { Width = Length.Of(width + more, "in") })["n"].Value >= n.Value);
                Assert.True(RivetPattern.Run(full with { Place = place })["n"].Value <= n.Value);
            }
        });

    [Fact]
    public void The_stricter_countersink_rule_is_the_worse_of_the_two() => Gen.Select(Gen.Int[0, 3].Select(i => RivetSizes[i]), Gen.Double[0.02, 0.15]).Sample((d, t) =>
    {
        bool Fails(CountersinkRule rule) => CountersinkDepth.Run(new(Length.Of(d, "in"), Length.Of(t, "in"), rule)).Verdict == Verdict.Fails;
        Assert.Equal(Fails(CountersinkRule.TwoThirds) || Fails(CountersinkRule.HeadHeight), Fails(CountersinkRule.Stricter));
        Assert.True(Fails(CountersinkRule.TwoThirds) || !Fails(CountersinkRule.HeadHeight));
    });

    [Fact]
    public void The_rivets_of_an_anchor_nut_balance_the_torque()
    {
        AnchorNutInput nut = new(new(100), new(9000), new(2), Length.Of(1, "in"), Length.Of(3.0 / 32, "in"), RivetAlloy.Ad2117, Length.Of(0.04, "in"), Pressure.Of(100, "ksi"));
        var sheet = AnchorNut.Run(nut);
        Assert.Equal(2, sheet["V"].Si * 0.0254, 1e-12);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Equal(Verdict.Fails, AnchorNut.Run(nut with { Tension = new(9001) }).Verdict);
        Assert.Equal(Verdict.CannotTell, AnchorNut.Run(nut with { Push = new(50) }).Verdict);
        Assert.Equal(Verdict.Fails, AnchorNut.Run(nut with { Push = new(50), RivetTension = new(24) }).Verdict);
    }

    [Fact]
    public void A_grip_is_judged_by_shank_threads_washers_and_protrusion()
    {
        Length In(double x) => Length.Of(x, "in");
        GripLengthInput good = new([new("stack", In(.250))], In(.063), In(.25), 32, "AN3-5");
        Assert.Equal(Verdict.Holds, GripLength.Run(good).Verdict);
        Assert.Equal(Verdict.Caution, GripLength.Run(good with { Layers = [new("stack", In(.300))] }).Verdict);
        Assert.Equal(Verdict.Fails, GripLength.Run(good with { Layers = [new("stack", In(.150))] }).Verdict);
        Assert.Equal(Verdict.Fails, GripLength.Run(good with { Washers = In(.126) }).Verdict);
        Assert.Equal(Verdict.Fails, GripLength.Run(good with { Nut = In(.32) }).Verdict);
        Assert.Equal(Verdict.CannotTell, GripLength.Run(good with { Bolt = "AN3-99" }).Verdict);
        Assert.Equal(Verdict.Holds, GripLength.Run(good with { Bolt = "own", Grip = In(.25), Length = In(.656) }).Verdict);
    }

    [Fact]
    public void Air_load_grows_with_the_square_of_speed_and_equivalent_and_true_airspeed_agree() => Gen.Select(Gen.Double[10, 200], Gen.Double[0, 60_000], Gen.Double[0.01, 5]).Sample((knots, feet, area) =>
    {
        var altitude = Length.Of(feet, "ft");
        AntennaDragInput slow = new(Area.Of(area, "ft²"), Speed.Of(knots, "kt"), DragMethod.Coefficient, Coefficient: 0.2);
        var drag = AntennaDrag.Run(slow)["D"].Si;
        Assert.Equal(4 * drag, AntennaDrag.Run(slow with { Speed = slow.Speed * 2 })["D"].Si, 1e-9 * drag);
        var ratio = Math.Sqrt(AntennaDrag.StandardDensity(default).Si / AntennaDrag.StandardDensity(altitude).Si);
        if (knots * ratio <= 450)
        {
            Assert.Equal(drag, AntennaDrag.Run(slow with { Speed = slow.Speed * ratio, Basis = SpeedBasis.True, Altitude = altitude })["D"].Si, 1e-9 * drag);
        }
    });

    [Fact]
    public void A_tray_whose_change_is_undone_weighs_and_balances_as_before()
    {
        TrayItemRow Item(double m, double x) => new("item", new(m), new(x), new(0), new(0));
        var after = SharedTray.Run(new([Item(7, 0)], [Item(3, 0.1)]));
        Assert.Equal(10, after["W"].Si, 1e-12);
        Assert.Equal(0.03, after["cx"].Si, 1e-12);
        var undone = SharedTray.Run(new([Item(7, 0), Item(3, 0.1)], default, [Item(3, 0.1)], new(7)));
        Assert.Equal(0, undone["cx"].Si, 1e-12);
        Assert.Equal(Verdict.Holds, undone.Verdict);
        Assert.Equal(Verdict.Fails, SharedTray.Run(new([Item(7, 0)], [Item(3, 0.1)], default, new(9.99))).Verdict);
        Assert.Equal(Verdict.CannotTell, SharedTray.Run(new([Item(7, 0)], default, [Item(8, 0)])).Verdict);
    }

    [Fact]
    public void A_bonding_path_adds_up_in_any_order_and_a_strap_in_two_halves_is_the_same()
    {
        Length In(double x) => Length.Of(x, "in");
        BondRow Strap(double l) => new("strap", null, In(l), Area.Of(0.016, "in²"), StrapMetal.Copper);
        BondRow joint = new("joint", new(0.001));
        double Total(params BondRow[] path) => BondingResistance.Run(new(path.ToSequence(), BondPurpose.Rack))["Rp"].Si;
        Assert.Equal(Total(joint, Strap(6)), Total(Strap(3), joint, Strap(3)), 1e-15);
        Assert.Equal(0.2545e-3, Total(Strap(6)), 5e-8);
        Assert.Equal(Verdict.CannotTell, BondingResistance.Run(new([new("strap", null, In(6))], BondPurpose.Rack)).Verdict);
        Assert.Equal(Verdict.CannotTell, BondingResistance.Run(new([], BondPurpose.Rack)).Verdict);
    }

    [Fact]
    public void A_wrench_without_adapter_shows_what_the_nut_gets_and_one_that_turns_nothing_says_so()
    {
        WrenchAdapterInput wrench = new(new(5), new(0.3), default);
        Assert.Equal(5, WrenchAdapter.Run(wrench)["Tw"].Si, 1e-12);
        Assert.Equal(Verdict.CannotTell, WrenchAdapter.Run(wrench with { Adapter = new(-0.3) }).Verdict);
    }
}
