using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations.Wiring;

public sealed class ProtectionLawTests
{
    private static readonly Sequence<TripPoint> Curve = [Point(200, 0.4, 2.5), Point(400, 0.1, 0.5), Point(1000, 0.02, 0.12)];

    [Fact]
    public void The_product_of_current_squared_and_time_is_what_the_wire_stands() => Gen.Select(Gen.Double[0.001, 5], Gen.Double[0.1, 100]).Sample((seconds, area) =>
    {
        var sheet = AdiabaticLimit.Run(new(Duration.Of(seconds, "s"), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"), Area: Area.Of(area, "mm²")));
        Assert.Equal(1, sheet["Iad"].Si * sheet["Iad"].Si * seconds / sheet["I2t"].Si, 1e-9);
    });

    // Heating in two stages is heating in one: ln(c/a) = ln(b/a) + ln(c/b).
    [Fact]
    public void Let_through_adds_up_over_temperature() => Gen.Select(Gen.Double[0, 100], Gen.Double[101, 200], Gen.Double[201, 400]).Sample((a, b, c) =>
    {
        Assert.Equal(1, (Stands(a, b) + Stands(b, c)) / Stands(a, c), 1e-9);
    });

    [Fact]
    public void The_area_comes_from_the_gauge_or_is_given_and_not_both()
    {
        AdiabaticLimitInput neither = new(Duration.Of(1, "s"), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"));
        Assert.Equal(Verdict.CannotTell, AdiabaticLimit.Run(neither).Verdict);
        Assert.Equal(Verdict.CannotTell, AdiabaticLimit.Run(neither with { Gauge = Gauge.Read("20"), Area = Area.Of(1, "mm²") }).Verdict);
        Assert.Equal(Verdict.CannotTell, AdiabaticLimit.Run(neither with { Area = Area.Of(1, "mm²"), Initial = Temperature.Of(150, "°C") }).Verdict);
    }

    // Straight on log-log paper: at the geometric mean of two currents, the geometric mean of their times.
    [Fact]
    public void Between_two_points_the_trip_time_is_straight_on_log_log_paper() =>
        Assert.Equal(Math.Sqrt(2.5 * 0.5), Fault(Math.Sqrt(10 * 20))["tt"].Value, 1e-9);

    [Fact]
    public void The_order_of_the_points_does_not_matter() =>
        Assert.Equal(Fault(15)["tt"], Fault(15, [Curve[2], Curve[0], Curve[1]])["tt"]);

    [Fact]
    public void Below_the_curve_nothing_is_claimed()
    {
        var sheet = Fault(9.9);
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Contains("below the first point", Assert.Single(sheet.CannotTell), StringComparison.Ordinal);
    }

    [Fact]
    public void Above_the_curve_its_last_time_is_a_bound_that_can_prove_but_not_disprove()
    {
        var proved = Fault(100);
        Assert.Equal(0.12, proved["tt"].Value, 1e-12);
        Assert.Equal(Verdict.Holds, proved.Verdict);
        Assert.Contains(proved.Cautions, c => c.Contains("upper bound", StringComparison.Ordinal));
        Assert.Equal(Verdict.CannotTell, Fault(1000).Verdict);
    }

    [Fact]
    public void A_slow_breaker_fails_its_wire_and_a_very_slow_one_is_beyond_the_method()
    {
        Assert.Equal(Verdict.Fails, Fault(50, [Point(200, 1, 100), Point(1000, 0.5, 1.4)]).Verdict);
        Assert.Equal(Verdict.CannotTell, Fault(20, [Point(200, 1, 100), Point(1000, 0.5, 20)]).Verdict);
    }

    [Fact]
    public void A_curve_out_of_order_or_empty_is_refused()
    {
        Assert.Equal(Verdict.CannotTell, Fault(15, []).Verdict);
        Assert.Equal(Verdict.CannotTell, Fault(15, [Point(200, 3, 2)]).Verdict);
        Assert.Equal(Verdict.CannotTell, Fault(15, [Point(200, 1, 2), Point(400, 1, 3)]).Verdict);
        Assert.Equal(Verdict.CannotTell, Fault(15, [Point(200, 1, 2), Point(200, 1, 2)]).Verdict);
    }

    [Fact]
    public void A_longer_wire_lets_less_fault_current_flow()
    {
        FaultProtectionInput near = new(
            Voltage.Of(28, "V"), Resistance.Of(0.1, "ohm"), Gauge.Read("20"), Length.Of(10, "ft"), Resistance.Of(0.005, "ohm"),
            Temperature.Of(20, "°C"), Temperature.Of(150, "°C"), Current.Of(5, "A"), Curve);

        // Ohm's law by hand: 28 / (0.1 + 0.0988 + 0.005).
        Assert.Equal(28 / 0.2038, FaultProtection.Run(near)["If"].Value, 1e-6);
        Assert.True(FaultProtection.Run(near with { Length = Length.Of(20, "ft") })["If"].Si < 28 / 0.2038);
    }

    [Fact]
    public void A_breaker_above_the_chart_but_within_the_wires_current_is_a_caution()
    {
        BreakerWireInput single = new(
            Current.Of(7.5, "A"), Gauge.Read("22"), Temperature.Of(200, "°C"), Temperature.Of(40, "°C"), Length.Of(10000, "ft"), 1, Fraction.Of(20, "%"));
        Assert.Equal(Verdict.Caution, BreakerWire.Run(single).Verdict);
        Assert.Equal(Verdict.Fails, BreakerWire.Run(single with { Breaker = Current.Of(30, "A") }).Verdict);
        Assert.Equal(Verdict.Fails, BreakerWire.Run(single with { Breaker = Current.Of(5, "A"), Load = Current.Of(6, "A") }).Verdict);
    }

    [Theory]
    [InlineData(57.1, 30000, 15, 20)]
    [InlineData(57, 30001, 15, 20)]
    [InlineData(57, 30000, 16, 20)]
    [InlineData(57, 30000, 15, 21)]
    public void One_step_outside_the_charts_conditions_it_is_not_used(double ambient, double feet, int wires, double percent)
    {
        BreakerWireInput input = new(
            Current.Of(5, "A"), Gauge.Read("20"), Temperature.Of(150, "°C"), Temperature.Of(ambient, "°C"), Length.Of(feet, "ft"), wires, Fraction.Of(percent, "%"));
        var sheet = BreakerWire.Run(input);
        Assert.Null(sheet.Find("Ic"));
        Assert.Equal(
            WireCurrent.Allowed(new(input.Gauge, input.Rating, input.Ambient, input.Altitude, wires, input.Loading)).Value.Si, sheet["Imax"].Si, 1e-12);
    }

    [Fact]
    public void The_contacts_own_sheet_goes_before_the_table()
    {
        ContactFitInput stated = new("special", Gauge.Read("18"), Current.Of(9, "A"), Gauge.Read("22"), Gauge.Read("18"), Current.Of(10, "A"));
        Assert.Equal(Verdict.Holds, ContactFit.Run(stated).Verdict);
        Assert.Equal(Verdict.CannotTell, ContactFit.Run(stated with { Rating = null }).Verdict);
        Assert.Equal(Verdict.CannotTell, ContactFit.Run(new("22", Gauge.Read("22"), Current.Of(1, "A"))).Verdict);
        Assert.Equal(Verdict.Holds, ContactFit.Run(new("20", Gauge.Read("18"), Current.Of(9, "A"), Thickest: Gauge.Read("18"), Rating: Current.Of(10, "A"))).Verdict);
    }

    [Fact]
    public void A_wire_lighter_than_its_copper_is_not_believed()
    {
        WireMassInput wire = new(Gauge.Read("20"), LinearMass.Of(4.3, "lb/1000ft"), Length.Of(500, "ft"));
        Assert.Equal(2.15, WireMass.Run(wire)["W"].Value, 1e-9);
        Assert.Equal(Verdict.Fails, WireMass.Run(wire with { LinearMass = LinearMass.Of(3.6, "lb/1000ft") }).Verdict);
        Assert.Equal(Verdict.Fails, WireMass.Run(wire with { Conductors = 2 }).Verdict);
        Assert.Equal(Verdict.CannotTell, WireMass.Run(wire with { Gauge = Gauge.Read("28") }).Verdict);
    }

    private static double Stands(double initial, double final) =>
        AdiabaticLimit.LetThrough(Area.Of(1, "mm²"), Conductor.Copper, Temperature.Of(initial, "°C"), Temperature.Of(final, "°C")).Si;

    private static TripPoint Point(double percent, double least, double most) => new(Fraction.Of(percent, "%"), Duration.Of(least, "s"), Duration.Of(most, "s"));

    private static Sheet Fault(double ampere) => Fault(ampere, Curve);

    // Breaker 5 A, size 22 from 70 to 150 °C; the source alone sets the fault current.
    private static Sheet Fault(double ampere, Sequence<TripPoint> curve) => FaultProtection.Run(new(
        Voltage.Of(28, "V"), Resistance.Of(28 / ampere, "ohm"), Gauge.Read("22"), Length.Of(0, "ft"), Resistance.Of(0, "ohm"),
        Temperature.Of(70, "°C"), Temperature.Of(150, "°C"), Current.Of(5, "A"), curve));
}
