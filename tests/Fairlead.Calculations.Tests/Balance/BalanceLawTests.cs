using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;

namespace Fairlead.Tests.Calculations.Balance;

/// <summary>Laws that any mass and balance arithmetic obeys.</summary>
public sealed class BalanceLawTests
{
    private static readonly Gen<ItemRow> Item =
        from mass in Gen.Double[0.1, 200]
        from fs in Gen.Double[-100, 400]
        from bl in Gen.Double[-80, 80]
        from wl in Gen.Double[0, 120]
        select new ItemRow("item", Mass.Of(mass, "lb"), Length.Of(fs, "in"), Length.Of(bl, "in"), Length.Of(wl, "in"));

    private static readonly Gen<(Sequence<ItemRow> Removed, Sequence<ItemRow> Fitted)> Items =
        from removed in Item.List[0, 6]
        from fitted in Item.List[0, 6]
        select (removed.ToSequence(), fitted.ToSequence());

    [Fact]
    public void Undoing_a_change_gives_back_the_empty_weight() => Items.Sample(items =>
    {
        var there = EmptyWeightChange.Run(Input(4000, 100, items.Removed, items.Fitted));
        var back = EmptyWeightChange.Run(Input(there["W"].Value, there["FS"].Value, items.Fitted, items.Removed) with { Bl = new(there["BL"].Si), Wl = new(there["WL"].Si) });
        Assert.Equal(4000, back["W"].Value, 1e-7);
        Assert.Equal(100, back["FS"].Value, 1e-7);
        Assert.Equal(2, back["BL"].Value, 1e-7);
        Assert.Equal(40, back["WL"].Value, 1e-7);
    });

    [Fact]
    public void Moving_the_datum_moves_the_centre_of_gravity_with_it() => Items.Sample(items =>
    {
        const double Shift = 37.5;
        Sequence<ItemRow> Moved(Sequence<ItemRow> rows) => rows.Select(r => r with { Fs = r.Fs + Length.Of(Shift, "in") }).ToSequence();
        var here = EmptyWeightChange.Run(Input(4000, 100, items.Removed, items.Fitted));
        var there = EmptyWeightChange.Run(Input(4000, 100 + Shift, Moved(items.Removed), Moved(items.Fitted)));
        Assert.Equal(here["FS"].Value + Shift, there["FS"].Value, 1e-8);
        Assert.Equal(here["dFS"].Value, there["dFS"].Value, 1e-8);
    });

    [Fact]
    public void A_change_done_in_two_goes_is_the_change_done_in_one() => Items.Sample(items =>
    {
        var once = EmptyWeightChange.Run(Input(4000, 100, items.Removed, items.Fitted));
        var first = EmptyWeightChange.Run(Input(4000, 100, items.Removed, default));
        var second = EmptyWeightChange.Run(Input(first["W"].Value, first["FS"].Value, default, items.Fitted) with { Bl = new(first["BL"].Si), Wl = new(first["WL"].Si) });
        Assert.Equal(once["W"].Value, second["W"].Value, 1e-8);
        Assert.Equal(once["FS"].Value, second["FS"].Value, 1e-8);
        Assert.Equal(once["BL"].Value, second["BL"].Value, 1e-8);
        Assert.Equal(once["WL"].Value, second["WL"].Value, 1e-8);
    });

    [Fact]
    public void The_centre_of_gravity_lies_between_the_outermost_items() => Item.List[1, 8].Sample(items =>
    {
        var fs = new Length(LoadedCg.Run(new(items.ToSequence()))["FS"].Si);
        Assert.InRange(fs.Si, items.Min(i => i.Fs.Si) - 1e-9, items.Max(i => i.Fs.Si) + 1e-9);
    });

    [Fact]
    public void Weighing_an_aircraft_made_of_its_items_gives_their_centre_of_gravity() => Item.List[1, 8].Sample(items =>
    {
        // A beam on two supports: the reactions follow from moments about each of them.
        const double Nose = -200, Mains = 500;
        var (mass, moment) = (items.Sum(i => i.Mass.In("lb")), items.Sum(i => i.Mass.In("lb") * i.Fs.In("in")));
        var mains = (moment - (mass * Nose)) / (Mains - Nose);
        var sheet = Weighing.Run(new([new("nose", Mass.Of(mass - mains, "lb"), Length.Of(Nose, "in")), new("mains", Mass.Of(mains, "lb"), Length.Of(Mains, "in"))]));
        Assert.Equal(mass, sheet["W"].Value, 1e-9 * mass);
        Assert.Equal(moment / mass, sheet["FS"].Value, 1e-8);
    });

    [Fact]
    public void Ballast_put_aboard_brings_the_loading_to_the_limit()
    {
        var inputs =
            from mass in Gen.Double[500, 8000]
            from distance in Gen.Double[0.01, 5]
            from arm in Gen.Double[20, 300]
            from forward in Gen.Bool
            select (mass, distance, arm, forward);
        inputs.Sample(x =>
        {
            const double Limit = 90;
            var side = x.forward ? 1 : -1;
            var (fs, place) = (Limit - (side * x.distance), Limit + (side * x.arm));
            var b = Ballast.Run(new(Mass.Of(x.mass, "lb"), Length.Of(fs, "in"), Length.Of(Limit, "in"), x.forward ? BalanceLimit.Forward : BalanceLimit.Aft, Length.Of(place, "in")))["b"];
            var loaded = LoadedCg.Run(new([new("aircraft", Mass.Of(x.mass, "lb"), Length.Of(fs, "in")), new("ballast", new(b.Si), Length.Of(place, "in"))]));
            Assert.Equal(Limit, loaded["FS"].Value, 1e-8);
        });
    }

    [Fact]
    public void An_axis_an_item_lacks_is_left_out_and_said()
    {
        var sheet = EmptyWeightChange.Run(Input(4000, 100, default, [new("no buttock line", Mass.Of(1, "lb"), Length.Of(10, "in"), Wl: Length.Of(20, "in"))]));
        Assert.DoesNotContain(sheet.Steps, s => s.Symbol == "BL");
        Assert.Contains(sheet.Steps, s => s.Symbol == "WL");
        Assert.Contains(sheet.Cautions, c => c.Contains("buttock line", StringComparison.Ordinal));
    }

    private static EmptyWeightChangeInput Input(double mass, double fs, Sequence<ItemRow> removed, Sequence<ItemRow> fitted) =>
        new(Mass.Of(mass, "lb"), Length.Of(fs, "in"), removed, fitted, Length.Of(2, "in"), Length.Of(40, "in"));
}
