using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations.Wiring;

public sealed class DropLawTests
{
    private static readonly Temperature Rating = Temperature.Of(150, "°C");

    private static readonly Gen<DropLeg> Leg =
        from gauge in Gen.Int[0, 7]
        from feet in Gen.Double[2, 40]
        from allowed in Gen.Double[2, 30]
        from share in Gen.Double[0.3, 1]
        from ambient in Gen.Double[20, 120]
        select new DropLeg(
            Length.Of(feet, "ft"), Current.Of(allowed * share, "A"), Current.Of(allowed, "A"), Temperature.Of(ambient, "°C"), Rating, WireTable.Sizes(Conductor.Copper)[gauge]);

    [Fact]
    public void A_wire_cut_in_two_drops_as_much_as_the_whole() => Gen.Select(Leg, Gen.Double[0.1, 0.9]).Sample((leg, share) =>
    {
        var parts = Run(leg with { Length = leg.Length * share }, leg with { Length = leg.Length * (1 - share) });
        Assert.Equal(1, parts["VD"].Si / Run(leg)["VD"].Si, 1e-9);
    });

    [Fact]
    public void Hot_drops_more_than_cold_and_no_more_than_at_the_rating() => Leg.Sample(leg =>
    {
        var sheet = Run(leg);
        Assert.InRange(sheet["VD"].Si / sheet["VD20"].Si, 1, WireTable.HotFactor(Conductor.Copper, Rating) * (1 + 1e-9));
    });

    // Differential: the longest run and the drop are the same law read two ways.
    [Fact]
    public void The_run_is_the_longest_for_the_drop_it_has() => Leg.Sample(leg =>
    {
        var drop = new Voltage(Run(leg)["VD"].Si);
        var run = RunLength.Run(new(leg.Gauge!.Value, leg.Current, drop, leg.Ambient, leg.Rating, leg.Allowed))["L2"];
        Assert.Equal(1, run.Si / leg.Length.Si, 1e-9);
    });

    [Fact]
    public void A_stated_resistance_goes_before_the_table_and_is_marked() => Leg.Sample(leg =>
    {
        var stated = Run(leg with { Gauge = Gauge.Read("30"), PerLength = WireTable.Resistance(leg.Gauge!.Value, Conductor.Copper).Value });
        Assert.Equal(Run(leg)["VD"], stated["VD"]);
        Assert.Contains(stated.Sources, s => s.Basis == Basis.Stated);
    });

    [Fact]
    public void Aluminium_of_a_size_drops_more_than_copper_and_is_marked()
    {
        var leg = new DropLeg(Length.Of(20, "ft"), Current.Of(20, "A"), Current.Of(40, "A"), Temperature.Of(50, "°C"), Rating, Gauge.Read("4"));
        var aluminium = Run(leg with { Conductor = Conductor.Aluminium });
        Assert.True(aluminium["VD"].Si > Run(leg)["VD"].Si);
        Assert.Equal(Verdict.Caution, aluminium.Verdict);
    }

    [Fact]
    public void What_is_missing_or_unknown_is_said_and_nothing_is_claimed()
    {
        var leg = new DropLeg(Length.Of(20, "ft"), Current.Of(2, "A"), Current.Of(4, "A"), Temperature.Of(50, "°C"), Rating, Gauge.Read("20"));
        Assert.Contains("neither a gauge", Assert.Single(Run(leg with { Gauge = null }).CannotTell), StringComparison.Ordinal);
        Assert.Contains("no 'ohm/1000ft' for size 30", Assert.Single(Run(leg with { Gauge = Gauge.Read("30") }).CannotTell), StringComparison.Ordinal);
        Assert.Contains("not above its ambient", Assert.Single(Run(leg with { Ambient = Rating }).CannotTell), StringComparison.Ordinal);
        Assert.Contains("give the allowed drop", Assert.Single(VoltageDrop.Run(new([leg], Voltage.Of(24, "V"))).CannotTell), StringComparison.Ordinal);
        Assert.Equal(Verdict.CannotTell, VoltageDrop.Run(new([], Voltage.Of(28, "V"))).Verdict);
        Assert.Equal(Verdict.Holds, VoltageDrop.Run(new([leg], Voltage.Of(24, "V"), Limit: Voltage.Of(0.8, "V"))).Verdict);
    }

    [Fact]
    public void A_wire_above_its_allowed_current_fails_even_when_the_drop_is_small()
    {
        var sheet = Run(new DropLeg(Length.Of(1, "ft"), Current.Of(5, "A"), Current.Of(4, "A"), Temperature.Of(50, "°C"), Rating, Gauge.Read("20")));
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Equal("wire current 1", Assert.Single(sheet.Checks, c => !c.Holds).Name);
    }

    [Fact]
    public void The_temperature_estimate_lies_above_the_square_law_up_to_the_allowed_current() => Gen.Double[0, 1].Sample(share =>
    {
        var sheet = ConductorTemperature.Run(new(Temperature.Of(50, "°C"), Rating, Current.Of(10 * share, "A"), Current.Of(10, "A")));
        Assert.True(sheet["T2"].Si >= sheet["T2s"].Si - 1e-9);
    });

    [Fact]
    public void A_run_at_more_than_the_allowed_current_is_not_estimated() => Assert.Equal(
        Verdict.CannotTell,
        RunLength.Run(new(Gauge.Read("20"), Current.Of(5, "A"), Voltage.Of(1, "V"), Temperature.Of(50, "°C"), Rating, Current.Of(4, "A"))).Verdict);

    private static Sheet Run(params ReadOnlySpan<DropLeg> legs) => VoltageDrop.Run(new(Sequence.Create(legs), Voltage.Of(28, "V")));
}
