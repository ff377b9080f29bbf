using Fairlead.Calculations;
using Fairlead.Calculations.Power;

namespace Fairlead.Tests.Reference.Power;

/// <summary>
/// Emergency battery calculation of two equipment makers' published installation manuals, which agree number for number (read):
/// 12 V, 35 A·h battery, night instrument flight with pitot heat, load shed by the pilot within 5 min, 10 min emergency landing, 30 min required.
/// </summary>
public sealed class BatteryExampleTests
{
    private static readonly Charge Capacity = Charge.Of(35, "A·h");

    [Fact]
    public void The_worked_example_comes_out_as_printed()
    {
        var sheet = Example(QuotedRate.OneHour, CapacityRule.ThreeQuarters, 30);
        Assert.Equal(1575, sheet["Cu"].Value, 1e-9);
        Assert.Equal(217.5 + 481, sheet["Qt"].Value, 1e-9);
        Assert.Equal(876.5, sheet["Ql"].Value, 1e-9);
        Assert.Equal(25.8, sheet["tx"].Value, 0.05);
        Assert.Equal(40.8, sheet["t"].Value, 0.05);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
    }

    [Theory]
    [InlineData(43.5, 5, 217.5)]
    [InlineData(48.1, 10, 481)]
    public void The_charge_of_each_fixed_phase_is_the_printed_one(double ampere, double minutes, double printed)
    {
        var sheet = BatteryEndurance.Run(new(Capacity, [new("phase", Current.Of(ampere, "A"), Duration.Of(minutes, "min")), new("rest", Current.Of(34, "A"))], Duration.Zero));
        Assert.Equal(printed, sheet["Qt"].Value, 1e-9);
    }

    // The same loads by the other capacity rules: arithmetic of the rows of CAP 562's battery leaflet (one-hour base, 0.85 and 0.80 read; 0.90 from memory).
    [Theory]
    [InlineData(QuotedRate.OneHour, CapacityRule.ThreeQuarters, 1575.0, 25.779, 40.779)]
    [InlineData(QuotedRate.OneHour, CapacityRule.AgedAndPartlyCharged, 1512.0, 23.926, 38.926)]
    [InlineData(QuotedRate.FiveHour, CapacityRule.AgedAndPartlyCharged, 1285.2, 17.256, 32.256)]
    public void The_capacity_rules_give_these_times(QuotedRate rate, CapacityRule rule, double charge, double cruise, double total)
    {
        var sheet = Example(rate, rule, 30);
        Assert.Equal(charge, sheet["Cu"].Value, 1e-9);
        Assert.Equal(cruise, sheet["tx"].Value, 0.0005);
        Assert.Equal(total, sheet["t"].Value, 0.0005);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Equal(Verdict.Fails, Example(rate, rule, 60).Verdict);
    }

    [Fact]
    public void The_state_of_charge_and_the_required_minutes_are_marked_as_recalled()
    {
        var sheet = Example(QuotedRate.FiveHour, CapacityRule.AgedAndPartlyCharged, 30);
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Memory && s.Document.Contains("CAP 562", StringComparison.Ordinal));
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Memory && s.Document == "14 CFR 23.1353(h)");
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Read && s.Document == "UK CAA CAP 562");
    }

    // Edge of the same example: C − I1·t1 − I2·t2 < 0 below 35 · 698.5/1575 A·h. The landing cannot be completed, and no negative cruise time is shown.
    [Theory]
    [InlineData(15.53, true)]
    [InlineData(15.51, false)]
    public void A_battery_too_small_for_the_landing_fails(double hours, bool completes)
    {
        var sheet = BatteryEndurance.Run(Input(Charge.Of(hours, "A·h"), QuotedRate.OneHour, CapacityRule.ThreeQuarters, 10));
        Assert.Equal(completes, sheet.Find("tx") is not null);
        Assert.Equal(completes ? Verdict.Holds : Verdict.Fails, sheet.Verdict);
    }

    // The timeline of the same loads without the landing set aside: 5 + (1575 − 217.5)/34 min (arithmetic).
    [Fact]
    public void The_shedding_timeline_agrees_with_the_example_up_to_the_landing()
    {
        var sheet = SheddingTimeline.Run(new(
            Capacity, [new("essential", Current.Of(34, "A")), new("shed by the pilot", Current.Of(9.5, "A"), Duration.Of(5, "min"))], Duration.Of(30, "min"), Rule: CapacityRule.ThreeQuarters));
        Assert.Equal(5 + ((1575 - 217.5) / 34), sheet["t"].Value, 1e-9);
        Assert.Equal(1575 - 217.5, sheet["Q0"].Value, 1e-9);
    }

    private static Sheet Example(QuotedRate rate, CapacityRule rule, double required) => BatteryEndurance.Run(Input(Capacity, rate, rule, required));

    private static BatteryEnduranceInput Input(Charge capacity, QuotedRate rate, CapacityRule rule, double required) => new(
        capacity,
        [
            new("recognition", Current.Of(43.5, "A"), Duration.Of(5, "min")),
            new("cruise", Current.Of(34.0, "A")),
            new("landing", Current.Of(48.1, "A"), Duration.Of(10, "min")),
        ],
        Duration.Of(required, "min"), rate, rule);
}
