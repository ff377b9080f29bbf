using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>Breakers, contacts and the short-time limit of a wire.</summary>
public sealed class ProtectionTests
{
    // AC 43.13-1B table 11-3 (page 11-15, values read, alignment from memory). The same sizes carry less in table 11-9, at other
    // conditions: that must not make the chart's own breakers fail.
    [Theory]
    [InlineData("22", 5)]
    [InlineData("20", 7.5)]
    [InlineData("18", 10)]
    [InlineData("16", 15)]
    [InlineData("14", 20)]
    [InlineData("12", 30)]
    [InlineData("10", 40)]
    [InlineData("8", 50)]
    [InlineData("6", 80)]
    [InlineData("4", 100)]
    [InlineData("2", 125)]
    public void The_charts_breaker_holds_at_the_edge_of_the_charts_conditions(string gauge, double ampere)
    {
        var edge = Edge(gauge, ampere);
        Assert.Equal(Verdict.Holds, BreakerWire.Run(edge).Verdict);
        Assert.Equal(ampere, BreakerWire.Limit(edge).Value.Si);
        Assert.NotEqual(Verdict.Holds, BreakerWire.Run(edge with { Breaker = Current.Of(ampere * 1.01, "A") }).Verdict);
    }

    // The fuse column of the same table (read).
    [Theory]
    [InlineData("22", 5)]
    [InlineData("20", 5)]
    [InlineData("18", 10)]
    [InlineData("16", 10)]
    [InlineData("14", 15)]
    [InlineData("12", 20)]
    [InlineData("10", 30)]
    [InlineData("8", 50)]
    [InlineData("6", 70)]
    [InlineData("4", 70)]
    [InlineData("2", 100)]
    [InlineData("1", 150)]
    [InlineData("0", 150)]
    public void The_chart_has_its_own_column_for_fuses(string gauge, double ampere) =>
        Assert.Equal(ampere, BreakerWire.Limit(Edge(gauge, ampere) with { Protector = Protector.Fuse }).Value.Si);

    [Theory]
    [InlineData("20", 7.5)]
    [InlineData("22", 5)]
    public void Beyond_the_charts_conditions_the_wires_own_current_decides(string gauge, double ampere)
    {
        var hot = Edge(gauge, ampere) with { Ambient = Temperature.Of(70, "°C"), Altitude = Length.Of(60000, "ft"), Wires = 33, Rating = Temperature.Of(105, "°C") };
        Assert.Equal(Verdict.Fails, BreakerWire.Run(hot).Verdict);
        Assert.Null(BreakerWire.Run(hot).Find("Ic"));
    }

    // MIL-DTL-38999 and AS39029 contacts (from memory).
    [Theory]
    [InlineData("22D", "28", "22", 5)]
    [InlineData("20", "24", "20", 7.5)]
    [InlineData("16", "20", "16", 13)]
    [InlineData("12", "14", "12", 23)]
    [InlineData("10", "10", "10", 33)]
    [InlineData("8", "8", "8", 46)]
    public void A_contact_takes_its_range_and_its_current(string contact, string thinnest, string thickest, double ampere)
    {
        Assert.Equal((Gauge.Read(thinnest), Gauge.Read(thickest), Current.Of(ampere, "A")), ContactFit.Find(contact));
        var sheet = ContactFit.Run(new(contact, Gauge.Read(thickest), Current.Of(ampere, "A")));
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Memory);
        Assert.Equal(Verdict.Fails, ContactFit.Run(new(contact, new Gauge(Gauge.Read(thinnest).Number + 1), Current.Of(1, "A"))).Verdict);
        Assert.Equal(Verdict.Fails, ContactFit.Run(new(contact, new Gauge(Gauge.Read(thickest).Number - 1), Current.Of(1, "A"))).Verdict);
        Assert.Equal(Verdict.Fails, ContactFit.Run(new(contact, Gauge.Read(thickest), Current.Of(ampere + 0.1, "A"))).Verdict);
    }

    // BS 7671 k values (read in a quotation), printed to the whole number.
    [Theory]
    [InlineData(Conductor.Copper, 70, 160, 115)]
    [InlineData(Conductor.Copper, 90, 160, 100)]
    [InlineData(Conductor.Copper, 90, 250, 143)]
    [InlineData(Conductor.Aluminium, 70, 160, 76)]
    [InlineData(Conductor.Aluminium, 90, 250, 94)]
    public void Adiabatic_factors_are_those_of_BS_7671(Conductor conductor, double initial, double final, double k) =>
        Assert.Equal(k, Adiabatic(conductor, initial, final, 1, 1)["k"].Value, 0.5);

    // IEC 60949 example (read in a quotation): 630 mm² copper, 90 to 250 °C; printed with β = 234, which is 0.08 % apart from 234.5.
    [Theory]
    [InlineData(1, 90216)]
    [InlineData(0.5, 127585)]
    [InlineData(2, 63792)]
    public void A_630_mm2_cable_carries_what_is_printed(double seconds, double ampere) =>
        Assert.Equal(ampere, Adiabatic(Conductor.Copper, 90, 250, seconds, 630)["Iad"].Value, ampere * 0.001);

    // Arithmetic outside the project: table 11-9 areas from 70 to 150 °C, k = 109.15.
    [Theory]
    [InlineData("24", 0.2407, 26.27, 690)]
    [InlineData("22", 0.3826, 41.76, 1744)]
    [InlineData("20", 0.6162, 67.26, 4523)]
    [InlineData("18", 0.9627, 105.1, 11043)]
    [InlineData("16", 1.2293, 134.2, 18004)]
    [InlineData("14", 1.9412, 211.9, 44897)]
    [InlineData("12", 2.9764, 324.9, 105551)]
    [InlineData("10", 4.7397, 517.4, 267664)]
    public void Small_wire_stands_so_much_let_through(string gauge, double area, double ampere, double letThrough)
    {
        var sheet = AdiabaticLimit.Run(new(Duration.Of(1, "s"), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"), Gauge.Read(gauge)));
        Assert.Equal(area, sheet["S"].Value, 1e-4);
        Assert.Equal(ampere, sheet["Iad"].Value, ampere * 5e-4);
        Assert.Equal(letThrough, sheet["I2t"].Value, letThrough * 1e-3);
    }

    // NSN 5925-00-226-0377, 5 A thermal breaker at 25 °C (read): longest times 2.5, 0.54, 0.27 and 0.12 s at 200, 400, 600 and 1000 %.
    [Theory]
    [InlineData(10, 2.5)]
    [InlineData(20, 0.54)]
    [InlineData(30, 0.27)]
    [InlineData(50, 0.12)]
    public void At_a_point_of_the_trip_curve_its_longest_time_is_taken(double fault, double seconds)
    {
        // All of the circuit's resistance in the source: the fault current is V/Rs.
        var sheet = FaultProtection.Run(new(
            Voltage.Of(28, "V"), Resistance.Of(28 / fault, "ohm"), Gauge.Read("22"), Length.Of(0, "ft"), Resistance.Of(0, "ohm"),
            Temperature.Of(70, "°C"), Temperature.Of(150, "°C"), Current.Of(5, "A"), ThermalBreaker));
        Assert.Equal(fault, sheet["If"].Value, 1e-9);
        Assert.Equal(seconds, sheet["tt"].Value, seconds * 1e-9);
        Assert.Equal(Verdict.Holds, sheet.Verdict);
    }

    private static readonly Sequence<TripPoint> ThermalBreaker =
        [Point(200, 0.38, 2.5), Point(400, 0.10, 0.54), Point(600, 0.05, 0.27), Point(1000, 0.02, 0.12)];

    private static TripPoint Point(double percent, double least, double most) => new(Fraction.Of(percent, "%"), Duration.Of(least, "s"), Duration.Of(most, "s"));

    private static BreakerWireInput Edge(string gauge, double ampere) => new(
        Current.Of(ampere, "A"), Gauge.Read(gauge), Temperature.Of(150, "°C"), Temperature.Of(57, "°C"), Length.Of(30000, "ft"), 15, Fraction.Of(20, "%"));

    private static Sheet Adiabatic(Conductor conductor, double initial, double final, double seconds, double squareMillimetres) => AdiabaticLimit.Run(new(
        Duration.Of(seconds, "s"), Temperature.Of(initial, "°C"), Temperature.Of(final, "°C"), Area: Area.Of(squareMillimetres, "mm²"), Conductor: conductor));
}
