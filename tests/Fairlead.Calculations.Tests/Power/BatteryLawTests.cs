using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;

namespace Fairlead.Tests.Calculations.Power;

/// <summary>Laws of a charge that is drawn down by currents.</summary>
public sealed class BatteryLawTests
{
    private static readonly Charge Capacity = Charge.Of(24, "A·h");
    private static readonly Duration HalfHour = Duration.Of(30, "min");

    private static readonly Gen<BatteryLoad> Shed =
        from ampere in Gen.Double[0.1, 20]
        from minutes in Gen.Int[0, 120]
        select new BatteryLoad("shed", Current.Of(ampere, "A"), Duration.Of(minutes, "min"));

    private static readonly Gen<Sequence<BatteryLoad>> Loads =
        from stays in Gen.Double[0.5, 30]
        from shed in Shed.List[0, 6]
        select shed.Prepend(new BatteryLoad("stays", Current.Of(stays, "A"))).ToSequence();

    [Fact]
    public void Endurance_times_current_is_the_usable_charge() => Gen.Select(Gen.Double[0.5, 200], Gen.Double[1, 100]).Sample((ampere, hours) =>
    {
        var capacity = Charge.Of(hours, "A·h");
        var timeline = SheddingTimeline.Run(new(capacity, [new("all", Current.Of(ampere, "A"))], HalfHour));
        var phases = BatteryEndurance.Run(new(capacity, [new("all", Current.Of(ampere, "A"))], HalfHour));
        Assert.Equal(hours * 60 * 0.72, timeline["t"].Value * ampere, 1e-6);
        Assert.Equal(hours * 60 * 0.72, phases["t"].Value * ampere, 1e-6);
        Assert.Equal(timeline.Verdict, phases.Verdict);
    });

    [Fact]
    public void Shedding_later_never_lengthens() => Gen.Select(Loads, Gen.Int[0, 60]).Sample((loads, later) =>
        Assert.True(Lasts(loads.Select(l => l.Until is { } at ? l with { Until = at + Duration.Of(later, "min") } : l)) <= Lasts(loads) + 1e-6));

    [Fact]
    public void Another_load_never_lengthens() => Gen.Select(Loads, Shed).Sample((loads, more) =>
        Assert.True(Lasts(loads.Append(more)) <= Lasts(loads) + 1e-6));

    [Fact]
    public void A_load_divided_in_two_makes_no_difference() => Loads.Sample(loads =>
        Assert.Equal(Lasts(loads), Lasts(loads.SelectMany(l => new[] { l with { Current = l.Current * 0.25 }, l with { Current = l.Current * 0.75 } })), 1e-6));

    [Fact]
    public void A_load_cut_in_time_makes_no_difference() => Gen.Select(Loads, Gen.Int[1, 59]).Sample((loads, cut) =>
    {
        var at = Duration.Of(cut, "min");
        IEnumerable<BatteryLoad> Cut(BatteryLoad l) => l.Until is { } until && until <= at ? [l] : [l with { Until = at }, l with { From = at }];
        Assert.Equal(Lasts(loads), Lasts(loads.SelectMany(Cut)), 1e-6);
    });

    [Fact]
    public void A_greater_battery_lasts_longer() => Gen.Select(Loads, Gen.Double[1.01, 3]).Sample((loads, k) =>
        Assert.True(Lasts(loads, Capacity * k) > Lasts(loads)));

    [Fact]
    public void A_five_hour_rating_counts_for_less() => Loads.Sample(loads =>
        Assert.True(SheddingTimeline.Run(new(Capacity, loads, HalfHour, QuotedRate.FiveHour))["t"].Value < Lasts(loads)));

    // Second method: the charge counted down second by second.
    [Fact]
    public void The_timeline_is_that_of_counting_down_by_the_second() => Loads.Sample(loads =>
    {
        var (left, second) = (24 * 3600 * 0.72, 0);
        while (left > 0)
        {
            left -= loads.Where(l => l.Until is not { } until || second < until.In("s")).Sum(l => l.Current.In("A"));
            second++;
        }

        Assert.InRange(Lasts(loads), ((second - 1) / 60.0) - 1e-6, (second / 60.0) + 1e-6);
    }, iter: 50);

    // Differential: phases of given lengths are a timeline whose loads follow one another.
    [Fact]
    public void Phases_and_timeline_agree() => Gen.Select(Gen.Double[0, 30], Gen.Int[1, 20], Gen.Double[0.5, 20]).Sample((first, minutes, rest) =>
    {
        var t = Duration.Of(minutes, "min");
        var phases = BatteryEndurance.Run(new(Capacity, [new("first", Current.Of(first, "A"), t), new("rest", Current.Of(rest, "A"))], HalfHour));
        Assert.Equal(Lasts([new("first", Current.Of(first, "A"), t), new("rest", Current.Of(rest, "A"), From: t)]), phases["t"].Value, 1e-6);
    });

    [Fact]
    public void The_order_of_the_phases_makes_no_difference_as_long_as_all_are_completed()
    {
        BatteryPhase[] phases = [new("a", Current.Of(40, "A"), Duration.Of(5, "min")), new("b", Current.Of(9, "A")), new("c", Current.Of(20, "A"), Duration.Of(10, "min"))];
        Assert.Equal(
            BatteryEndurance.Run(new(Capacity, phases.ToSequence(), HalfHour))["t"],
            BatteryEndurance.Run(new(Capacity, phases.Reverse().ToSequence(), HalfHour))["t"]);
    }

    [Fact]
    public void Units_make_no_difference()
    {
        var one = SheddingTimeline.Run(new(Charge.Of(24, "A·h"), [new("a", Current.Of(6, "A")), new("b", Current.Of(3, "A"), Duration.Of(10, "min"))], HalfHour));
        var other = SheddingTimeline.Run(new(Charge.Of(1440, "A·min"), [new("a", Current.Of(6000, "mA")), new("b", Current.Of(3000, "mA"), Duration.Of(600, "s"))], Duration.Of(0.5, "h")));
        Assert.Equal(one["t"].Value, other["t"].Value, 1e-9);
        Assert.Equal(one.Verdict, other.Verdict);
    }

    [Fact]
    public void What_a_battery_cannot_complete_fails_without_a_negative_time()
    {
        var sheet = BatteryEndurance.Run(new(Charge.Of(5, "A·h"), [new("recognition", Current.Of(43.5, "A"), Duration.Of(5, "min")), new("cruise", Current.Of(34, "A")), new("landing", Current.Of(48.1, "A"), Duration.Of(10, "min"))], HalfHour));
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Null(sheet.Find("t"));
        Assert.Null(sheet.Find("tx"));
        Assert.True(Assert.Single(sheet.Checks).Margin < 0);
    }

    [Fact]
    public void Without_exactly_one_open_phase_nothing_is_claimed()
    {
        BatteryPhase open = new("open", Current.Of(5, "A")), closed = new("closed", Current.Of(5, "A"), Duration.Of(5, "min"));
        Assert.Equal(Verdict.CannotTell, BatteryEndurance.Run(new(Capacity, [open, open], HalfHour)).Verdict);
        Assert.Equal(Verdict.CannotTell, BatteryEndurance.Run(new(Capacity, [closed], HalfHour)).Verdict);
        Assert.Equal(Verdict.CannotTell, BatteryEndurance.Run(new(Capacity, [], HalfHour)).Verdict);
    }

    [Fact]
    public void Where_nothing_is_drawn_the_time_has_no_end()
    {
        Assert.Contains("no end", Assert.Single(BatteryEndurance.Run(new(Capacity, [new("open", Current.Zero)], HalfHour)).CannotTell), StringComparison.Ordinal);
        Assert.Contains("no end", Assert.Single(SheddingTimeline.Run(new(Capacity, [], HalfHour)).CannotTell), StringComparison.Ordinal);
        Assert.Contains("no end", Assert.Single(SheddingTimeline.Run(new(Capacity, [new("shed", Current.Of(3, "A"), HalfHour)], HalfHour)).CannotTell), StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_switched_off_before_it_comes_on_is_a_slip() => Assert.Contains(
        "before it comes on",
        Assert.Single(SheddingTimeline.Run(new(Capacity, [new("slip", Current.Of(3, "A"), Duration.Of(5, "min"), Duration.Of(6, "min"))], HalfHour)).CannotTell),
        StringComparison.Ordinal);

    [Theory]
    [InlineData(0.05, 10)]
    [InlineData(1001, 10)]
    [InlineData(double.NaN, 10)]
    [InlineData(24, -1)]
    [InlineData(24, double.PositiveInfinity)]
    public void Out_of_range_nothing_is_claimed(double hours, double ampere)
    {
        var sheet = SheddingTimeline.Run(new(Charge.Of(hours, "A·h"), [new("load", Current.Of(ampere, "A"))], HalfHour));
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Empty(sheet.Steps);
    }

    private static double Lasts(IEnumerable<BatteryLoad> loads, Charge? capacity = null) =>
        SheddingTimeline.Run(new(capacity ?? Capacity, loads.ToSequence(), HalfHour))["t"].Value;
}
