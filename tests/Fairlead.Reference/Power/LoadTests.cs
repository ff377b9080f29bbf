using Fairlead.Calculations;
using Fairlead.Calculations.Power;

namespace Fairlead.Tests.Reference.Power;

/// <summary>Switches, sources and feeders against the circulars; the load analysis against the charge counted by the second.</summary>
public sealed class LoadTests
{
    // AC 43.13-1B table 11-4 (page 11-17, read).
    [Theory]
    [InlineData(28, SwitchedLoad.Lamp, 8)]
    [InlineData(28, SwitchedLoad.Inductive, 4)]
    [InlineData(28, SwitchedLoad.Resistive, 2)]
    [InlineData(28, SwitchedLoad.Motor, 3)]
    [InlineData(12, SwitchedLoad.Lamp, 5)]
    [InlineData(12, SwitchedLoad.Inductive, 2)]
    [InlineData(12, SwitchedLoad.Resistive, 1)]
    [InlineData(12, SwitchedLoad.Motor, 2)]
    public void The_switch_factor_is_that_of_table_11_4(double volts, SwitchedLoad load, double factor)
    {
        var sheet = SwitchRating.Run(new(Voltage.Of(volts, "V"), load, Current.Of(1, "A"), Current.Of(50, "A")));
        Assert.Equal(factor, sheet["k"].Value);
        Assert.Contains(sheet.Sources, s => s.Document.Contains("43.13", StringComparison.Ordinal) && s.Basis == Basis.Read);
    }

    // Arithmetic of that table; the inverse use is note 2, from memory, and marked so.
    [Fact]
    public void Switches_needed_and_the_load_a_switch_may_break()
    {
        Assert.Equal(16, SwitchRating.Run(new(Voltage.Of(28, "V"), SwitchedLoad.Lamp, Current.Of(2, "A"), Current.Of(20, "A")))["Ineed"].Value, 1e-12);
        Assert.Equal(15, SwitchRating.Run(new(Voltage.Of(28, "V"), SwitchedLoad.Motor, Current.Of(5, "A"), Current.Of(20, "A")))["Ineed"].Value, 1e-12);
        var inverse = SwitchRating.Run(new(Voltage.Of(28, "V"), SwitchedLoad.Inductive, Current.Of(1, "A"), Current.Of(20, "A")));
        Assert.Equal(5, inverse["Iuse"].Value, 1e-12);
        Assert.Equal(Basis.Memory, inverse.Steps.First(s => s.Symbol == "Iuse").Source!.Basis);
    }

    // AC 43.13-1B page 11-17 (read): below 0.5 A continuous is a low-energy load, for which silver contacts are not recommended.
    [Theory]
    [InlineData(0.49, true)]
    [InlineData(0.5, false)]
    public void A_low_energy_load_is_pointed_out(double ampere, bool low) => Assert.Equal(
        low, SwitchRating.Run(new(Voltage.Of(28, "V"), SwitchedLoad.Resistive, Current.Of(ampere, "A"), Current.Of(5, "A"))).Cautions.Any(c => c.Contains("low-energy", StringComparison.Ordinal)));

    // AC 43.13-1B 11-35 (read): at most 80 % without placards or monitoring. The amperes are arithmetic.
    [Theory]
    [InlineData(60, 48)]
    [InlineData(100, 80)]
    public void An_alternator_keeps_a_fifth_in_hand(double rating, double limit)
    {
        var sheet = SourceMargin.Run(new(Current.Of(limit, "A"), Current.Of(rating, "A")));
        Assert.Equal(limit, sheet["Ilim"].Value, 1e-12);
        Assert.True(sheet.Verdict < Verdict.Fails);
        Assert.Equal(Verdict.Fails, SourceMargin.Run(new(Current.Of(limit + 0.1, "A"), Current.Of(rating, "A"))).Verdict);
        Assert.True(SourceMargin.Run(new(Current.Of(limit + 0.1, "A"), Current.Of(rating, "A"), true)).Verdict < Verdict.Fails);
    }

    // FAA powerplant handbook (read on two sites that quote it): main power wires lose at most 2 % of the regulated voltage. The volts are arithmetic.
    [Theory]
    [InlineData(28, 0.56)]
    [InlineData(14, 0.28)]
    public void A_main_power_wire_may_lose_two_percent(double volts, double limit) =>
        Assert.Equal(limit, Feeder(volts, 100, "4", 10, 20)["Vmax"].Value, 1e-12);

    // Resistances of AC 43.13-1B table 11-9 (read); 100 ft of No. 18 at 10 A: the FAA powerplant handbook's own example (read in a summary). The rest is arithmetic.
    [Theory]
    [InlineData("18", 100, 10, 20, 6.23)]
    [InlineData("4", 10, 100, 20, 0.28)]
    [InlineData("4", 10, 100, 70, 0.28 * 1.1965)]
    [InlineData("4", 10, 100, 105, 0.28 * 1.3340)]
    public void The_feeder_drops_this_much(string gauge, double feet, double ampere, double celsius, double volts) =>
        Assert.Equal(volts, Feeder(28, ampere, gauge, feet, celsius)["Vd"].Value, 5e-5);

    // Interval averaging: arithmetic; the intervals are those of MIL-E-7016, from memory, and the sheet says so.
    [Fact]
    public void Thirty_amperes_for_twelve_seconds_count_so_much_in_each_interval()
    {
        var sheet = IntervalDemand.Run(new(Current.Of(30, "A"), Duration.Of(12, "s")));
        Assert.Equal(30, sheet["I5s"].Value, 1e-12);
        Assert.Equal(1.2, sheet["I5min"].Value, 1e-12);
        Assert.Equal(0.4, sheet["Icont"].Value, 1e-12);
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Memory);
    }

    // Second method: everything switched on together, ampere-seconds counted by the second, and their mean taken over the interval.
    [Fact]
    public void The_load_analysis_is_the_mean_of_the_current_counted_by_the_second()
    {
        (double Ampere, int? Seconds)[] loads = [(1.2, null), (6.5, null), (30, 12), (9, 90), (4, 400), (22, 3)];
        double Mean(int seconds)
        {
            var sum = 0.0;
            for (var t = 0; t < seconds; t++)
            {
                foreach (var (ampere, on) in loads)
                {
                    sum += on is null || t < on ? ampere : 0;
                }
            }

            return sum / seconds;
        }

        var rows = loads.Select(l => new LoadRow("load", Current.Of(l.Ampere, "A"), l.Seconds is { } s ? Duration.Of(s, "s") : null)).ToSequence();
        var sheet = LoadAnalysis.Run(new(rows, Current.Of(60, "A"), FiveSeconds: Current.Of(80, "A")));
        Assert.Equal(Mean(5), sheet["D5s"].Value, 1e-9);
        Assert.Equal(Mean(300), sheet["D5min"].Value, 1e-9);
        Assert.Equal(Mean(900), sheet["Dcont"].Value, 1e-9);
    }

    // Worked by hand: cruise with 1.1 A of clock and 3.4 A of radio out, 1.5 A of transponder and 2.2 A of sensor in.
    // Before 12.0 + 8.5 + 3.4 + 1.1 = 25.0 A; after 25.0 − 4.5 + 3.7 = 24.2 A; of a 30 A alternator 5.0 A and then 5.8 A remain; 80 % are 24 A.
    [Fact]
    public void A_change_of_load_worked_by_hand()
    {
        LoadRow clock = new("clock", Current.Of(1.1, "A")), radio = new("radio", Current.Of(3.4, "A"));
        var sheet = LoadChange.Run(new(
            [new("lights", Current.Of(12, "A")), new("pitot heat", Current.Of(8.5, "A")), radio, clock],
            [radio, clock],
            [new("transponder", Current.Of(1.5, "A")), new("sensor", Current.Of(2.2, "A"))],
            Current.Of(30, "A")));
        Assert.Equal(25.0, sheet["Bcont"].Value, 1e-12);
        Assert.Equal(24.2, sheet["Dcont"].Value, 1e-12);
        Assert.Equal(5.0, sheet["Mbefore"].Value, 1e-12);
        Assert.Equal(5.8, sheet["Mafter"].Value, 1e-12);
        Assert.Equal(Verdict.Caution, sheet.Verdict);
    }

    // AC 43.13-1B 11-48 (read): the breaker opens before the sum of the load ratings on it is exceeded. 80 % is common practice, marked so.
    [Fact]
    public void The_loads_of_a_breaker_stay_within_it()
    {
        var sheet = BreakerLoad.Run(new([new("one", Current.Of(3, "A")), new("two", Current.Of(1.5, "A"))], Current.Of(5, "A")));
        Assert.Equal(4.5, sheet["Ipk"].Value, 1e-12);
        Assert.Equal(Verdict.Caution, sheet.Verdict);
        Assert.Equal(Basis.CommonPractice, Assert.Single(sheet.Checks, c => !c.Holds).Source.Basis);
        Assert.Equal(Verdict.Fails, BreakerLoad.Run(new([new("one", Current.Of(3, "A")), new("two", Current.Of(2.1, "A"))], Current.Of(5, "A"))).Verdict);
    }

    private static Sheet Feeder(double volts, double ampere, string gauge, double feet, double celsius) => FeederDrop.Run(new(
        Voltage.Of(volts, "V"), Current.Of(ampere, "A"), Gauge.Read(gauge), Length.Of(feet, "ft"), Temperature.Of(celsius, "°C")));
}
