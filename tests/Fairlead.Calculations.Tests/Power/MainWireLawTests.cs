using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations.Power;

/// <summary>Laws of feeders, breakers, switches and the margin of a source.</summary>
public sealed class MainWireLawTests
{
    private static readonly Gen<FeederDropInput> Feeder =
        from ampere in Gen.Double[1, 300]
        from gauge in Gen.Int[8, 16]
        from feet in Gen.Double[0.5, 60]
        from celsius in Gen.Double[-40, 200]
        select new FeederDropInput(Voltage.Of(28, "V"), Current.Of(ampere, "A"), WireTable.Sizes(Conductor.Copper)[gauge], Length.Of(feet, "ft"), Temperature.Of(celsius, "°C"));

    [Fact]
    public void The_drop_grows_with_current_and_length_and_falls_with_wires_in_parallel() => Gen.Select(Feeder, Gen.Double[1.1, 3], Gen.Int[2, 8]).Sample((feeder, k, n) =>
    {
        var drop = Drop(feeder);
        Assert.Equal(drop * k, Drop(feeder with { Current = feeder.Current * k }), 1e-9 * drop * k);
        Assert.Equal(drop * k, Drop(feeder with { Length = feeder.Length * k }), 1e-9 * drop * k);
        Assert.Equal(drop / n, Drop(feeder with { Parallel = n }), 1e-9 * drop);
    });

    [Fact]
    public void A_hotter_or_thinner_feeder_drops_more() => Gen.Select(Feeder, Gen.Double[1, 50]).Sample((feeder, warmer) =>
    {
        Assert.True(Drop(feeder with { Temperature = feeder.Temperature + TemperatureRise.Of(warmer, "K") }) > Drop(feeder));
        var thinner = WireTable.Sizes(Conductor.Copper).Last(g => g < feeder.Gauge);
        Assert.True(Drop(feeder with { Gauge = thinner }) > Drop(feeder));
    });

    [Fact]
    public void Aluminium_of_a_size_drops_more_than_copper()
    {
        var feeder = new FeederDropInput(Voltage.Of(28, "V"), Current.Of(60, "A"), Gauge.Read("4"), Length.Of(8, "ft"), Temperature.Of(60, "°C"));
        Assert.True(Drop(feeder with { Conductor = Conductor.Aluminium }) > Drop(feeder));
    }

    [Fact]
    public void A_gauge_without_a_table_value_wants_its_resistance_stated()
    {
        var feeder = new FeederDropInput(Voltage.Of(28, "V"), Current.Of(1, "A"), Gauge.Read("30"), Length.Of(8, "ft"), Temperature.Of(20, "°C"));
        Assert.Equal(Verdict.CannotTell, FeederDrop.Run(feeder).Verdict);
        var stated = FeederDrop.Run(feeder with { PerLength = LinearResistance.Of(100, "Ω/1000ft") });
        Assert.Equal(0.8, stated["Vd"].Value, 1e-12);
        Assert.Contains(stated.Sources, s => s.Basis == Basis.Stated);
    }

    [Theory]
    [InlineData(4, Verdict.Holds)]
    [InlineData(4.01, Verdict.Caution)]
    [InlineData(5, Verdict.Caution)]
    [InlineData(5.01, Verdict.Fails)]
    public void A_breaker_carries_four_fifths_for_long_and_its_rating_for_a_while(double ampere, Verdict verdict) =>
        Assert.Equal(verdict, Breaker(ampere, null).Verdict);

    [Fact]
    public void A_short_peak_within_the_rating_needs_no_reserve() => Assert.Equal(Verdict.Holds, Breaker(5, Duration.Of(1, "min")).Verdict);

    [Fact]
    public void The_switch_that_a_load_needs_may_break_that_load() =>
        Gen.Select(Gen.OneOf(Gen.Const(12.0), Gen.Const(28.0)), Gen.Enum<SwitchedLoad>(), Gen.Double[0.5, 50]).Sample((volts, load, ampere) =>
        {
            var needed = SwitchRating.Run(new(Voltage.Of(volts, "V"), load, Current.Of(ampere, "A"), Current.Of(1, "A")))["Ineed"];
            var sheet = SwitchRating.Run(new(Voltage.Of(volts, "V"), load, Current.Of(ampere, "A"), new Current(needed.Si)));
            Assert.Equal(ampere, sheet["Iuse"].Value, 1e-9);
            Assert.True(sheet.Checks[0].Holds);
            Assert.False(SwitchRating.Run(new(Voltage.Of(volts, "V"), load, Current.Of(ampere, "A"), new Current(needed.Si * 0.999))).Checks[0].Holds);
        });

    [Theory]
    [InlineData(14)]
    [InlineData(24)]
    public void Between_the_voltages_of_the_table_no_factor_is_made_up(double volts) =>
        Assert.Equal(Verdict.CannotTell, SwitchRating.Run(new(Voltage.Of(volts, "V"), SwitchedLoad.Lamp, Current.Of(1, "A"), Current.Of(20, "A"))).Verdict);

    [Fact]
    public void Monitoring_lifts_the_rule_of_thumb_but_not_the_rating() => Gen.Double[0, 120].Sample(ampere =>
    {
        var (bare, watched) = (Margin(ampere, false), Margin(ampere, true));
        Assert.Equal(ampere <= 80, bare.Verdict < Verdict.Fails);
        Assert.Equal(ampere <= 100, watched.Verdict < Verdict.Fails);
    });

    private static double Drop(FeederDropInput input) => FeederDrop.Run(input)["Vd"].Value;

    private static Sheet Breaker(double ampere, Duration? on) => BreakerLoad.Run(new([new("load", Current.Of(ampere, "A"), on)], Current.Of(5, "A")));

    private static Sheet Margin(double ampere, bool monitored) => SourceMargin.Run(new(Current.Of(ampere, "A"), Current.Of(100, "A"), monitored));
}
