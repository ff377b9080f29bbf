using Fairlead.Calculations;
using Fairlead.Calculations.Network;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations.Network;

public sealed class ShortSurveyTests
{
    private static readonly Sequence<NetworkTrip> Fast = [new("breaker", new(2), Seconds(0.4), Seconds(2)), new("breaker", new(100), Seconds(0.01), Seconds(0.02))];
    private static readonly Sequence<NetworkTrip> Slow = [new("feeder", new(2), Seconds(20), Seconds(90)), new("feeder", new(10), Seconds(1), Seconds(4))];

    // By hand: 28/(0.030 + 0.002 + 0.070) A at the near end, 28/(0.030 + 0.002 + 0.070 + 0.093) A at the far end.
    [Fact]
    public void Each_end_carries_the_current_of_Ohms_law()
    {
        var rows = ShortSurvey.Run(Radial()).Tables.Single(t => t.Title == "Shorts").Rows;
        Assert.Equal(28 / 0.102, rows[0][1].Number!.Value.Value, 1e-6);
        Assert.Equal(28 / 0.195, rows[^1][1].Number!.Value.Value, 1e-6);
    }

    // Where nothing but the wire and its breaker is in the way, each end is the fault of 'fault-protection': the far one with the whole wire ahead
    // of it, the near one with next to none.
    [Fact]
    public void The_let_through_at_either_end_is_that_of_the_single_fault()
    {
        var length = Length.Of(20, "ft");
        var r = WireTable.Resistance(new Gauge(22), Conductor.Copper).Value * length * WireTable.HotFactor(Conductor.Copper, Temperature.Of(70, "°C"));
        Sequence<TripPoint> curve = [new(new(2), Seconds(3), Seconds(20)), new(new(10), Seconds(0.06), Seconds(0.3)), new(new(100), Seconds(0.002), Seconds(0.006))];
        Sheet Single(Length of) => FaultProtection.Run(new(Voltage.Of(28, "V"), Resistance.Of(100, "mΩ"), new Gauge(22), of, default, Temperature.Of(70, "°C"), Temperature.Of(150, "°C"), Current.Of(5, "A"), curve));
        var survey = ShortSurvey.Run(new(
            [new("G", "gen", Voltage.Of(28, "V"), Resistance.Of(30, "mΩ"))], [new("breaker", "gen", "out", Resistance.Of(70, "mΩ")), new("wire", "out", "box", r)],
            [new("wire", new Gauge(22), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"))], [new("breaker", Current.Of(5, "A"))], curve.Select(p => new NetworkTrip("breaker", p.Multiple, p.Least, p.Most)).ToSequence()));
        var rows = survey.Tables.Single(t => t.Title == "Shorts").Rows.Where(x => x[5].Words == "wire").Select(x => x[6].Number!.Value.Si).ToArray();
        var (near, far) = (Single(Length.Of(0.001, "in"))["I2t"].Si, Single(length)["I2t"].Si);
        Assert.Equal([near, far], rows, (a, b) => Math.Abs(a - b) < a * 1e-3);
        Assert.Equal(Math.Max(near, far), survey.Checks.Single().Demand.Si, near * 1e-3);
        Assert.Equal(Single(length)["I2tw"].Si, survey.Checks.Single().Limit.Si, 1e-6);
    }

    // The second has half the resistance, so twice the current and four times the let-through; of a short at its own end each carries what the other brings there too.
    [Fact]
    public void Two_wires_in_parallel_share_a_short_beyond_them_by_their_resistance()
    {
        ShortWire Wire(string branch) => new(branch, new Gauge(20), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"));
        var input = Radial() with
        {
            Branches = [.. Radial().Branches, new("second", "out", "box", Resistance.Of(46.5, "mΩ")), new("tail", "box", "end", Resistance.Of(10, "mΩ"))],
            Wires = [Wire("wire"), Wire("second"), Wire("tail")],
        };
        var rows = ShortSurvey.Run(input).Tables.Single(t => t.Title == "Shorts").Rows;
        double Passed(string node, string wire) => rows.Single(r => r[0].Words == node && r[5].Words == wire)[6].Number!.Value.Value;
        Assert.Equal(4, Passed("end", "second") / Passed("end", "wire"), 6);
        Assert.Equal(1, Passed("box", "second") / Passed("box", "wire"), 6);
    }

    // With the second wire broken, what is left is the network with one wire: so the law is that of the survey without it.
    [Fact]
    public void Of_two_wires_in_parallel_one_must_stand_the_short_while_the_other_is_broken()
    {
        var both = ShortSurvey.Run(Radial() with
        {
            Branches = [.. Radial().Branches, new("second", "out", "box", Resistance.Of(46.5, "mΩ"))],
            Wires = [.. Radial().Wires, new("second", new Gauge(20), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"))],
        });
        double Passed(Sheet sheet, string where) => sheet.Tables.Single(t => t.Title == "Shorts").Rows.Single(r => r[0].Words == where && r[5].Words == "wire")[6].Number!.Value.Value;
        Assert.Equal(Passed(ShortSurvey.Run(Radial()), "box"), Passed(both, "box with second broken"), 1e-9);
        Assert.DoesNotContain(both.Tables.Single(t => t.Title == "Shorts").Rows, r => r[0].Words == "box with second broken" && r[5].Words == "second");
    }

    // A tail of 9 Ω does not trip the breaker; 24 AWG right behind it is too hot after 2 s of 5 A · 40 all the same.
    [Fact]
    public void A_short_that_cannot_be_told_hides_none_that_fails()
    {
        var sheet = ShortSurvey.Run(Radial() with
        {
            Branches = [.. Radial().Branches, new("tail", "box", "end", Resistance.Of(9, "Ω"))],
            Wires = [new("wire", new Gauge(24), Temperature.Of(70, "°C"), Temperature.Of(150, "°C")), new("tail", new Gauge(24), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"))],
            Curves = [new("breaker", new(2), Seconds(3), Seconds(20)), new("breaker", new(100), Seconds(0.5), Seconds(2))],
        });
        Assert.NotEmpty(sheet.CannotTell);
        Assert.Equal(Verdict.Fails, sheet.Verdict);
    }

    [Fact]
    public void A_feeder_as_fast_as_the_breaker_opens_too_and_fails() => Assert.Contains(
        ShortSurvey.Run(Radial() with { Curves = [.. Fast, new("feeder", new(1), Seconds(0.001), Seconds(0.5))], Breakers = [new("feeder", Current.Of(50, "A")), new("breaker", Current.Of(5, "A"))] }).Checks,
        c => c is { Verdict: Verdict.Fails } && c.Name.StartsWith("feeder stays closed", StringComparison.Ordinal));

    [Fact]
    public void A_short_below_the_trip_curve_cannot_be_told()
    {
        var sheet = ShortSurvey.Run(Radial() with { Branches = [new("feeder", "gen", "bus", Resistance.Of(2, "mΩ")), new("breaker", "bus", "out", Resistance.Of(70, "mΩ")), new("wire", "out", "box", Resistance.Of(9, "Ω"))] });
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Contains("may not trip breaker", sheet.CannotTell[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_breaker_on_the_way_nothing_is_claimed() =>
        Assert.Contains("No breaker lies between", ShortSurvey.Run(Radial() with { Breakers = [], Curves = [] }).CannotTell[0], StringComparison.Ordinal);

    private static ShortSurveyInput Radial() => new(
        [new("G", "gen", Voltage.Of(28, "V"), Resistance.Of(30, "mΩ"))],
        [new("feeder", "gen", "bus", Resistance.Of(2, "mΩ")), new("breaker", "bus", "out", Resistance.Of(70, "mΩ")), new("wire", "out", "box", Resistance.Of(93, "mΩ"))],
        [new("wire", new Gauge(20), Temperature.Of(70, "°C"), Temperature.Of(150, "°C"))],
        [new("feeder", Current.Of(100, "A")), new("breaker", Current.Of(5, "A"))], [.. Fast, .. Slow]);

    private static Duration Seconds(double s) => Duration.Of(s, "s");
}
