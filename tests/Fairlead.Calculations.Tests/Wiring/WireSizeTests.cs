using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Calculations.Wiring;

public sealed class WireSizeTests
{
    private static readonly Gen<WireSizeInput> Circuit =
        from ampere in Gen.Double[0.1, 40]
        from feet in Gen.Double[1, 150]
        from nominal in Gen.OneOf(14, 28, 115)
        from rating in Gen.OneOf(105, 150, 200)
        from ambient in Gen.Double[0, 90]
        from altitude in Gen.Double[0, 60000]
        from wires in Gen.Int[1, 19]
        from percent in Gen.Double[0, 100]
        from spare in Gen.Double[1, 2]
        select new WireSizeInput(
            Current.Of(ampere, "A"), Length.Of(feet, "ft"), Voltage.Of(nominal, "V"), Temperature.Of(rating, "°C"), Temperature.Of(ambient, "°C"),
            Length.Of(altitude, "ft"), wires, Fraction.Of(percent, "%"), Breaker: Current.Of(ampere * spare, "A"));

    // Differential: every size is put through the separate calculations; the chosen one passes them all and every thinner one fails one.
    [Fact]
    public void The_chosen_size_passes_every_single_calculation_and_no_thinner_size_does() => Circuit.Sample(circuit =>
    {
        var serving = WireTable.Sizes(Conductor.Copper).Where(size => Serves(circuit, size)).ToArray();
        Assert.Equal(serving.Length == 0 ? null : serving[0], WireSize.Choose(circuit)?.Gauge);
        Assert.Equal(serving.Length == 0 ? Verdict.Fails : Verdict.Holds, WireSize.Run(circuit).Verdict);
        Assert.Equal(serving.Length, WireSize.Run(circuit)["n"].Value);
    });

    [Fact]
    public void The_order_of_the_candidates_does_not_matter() => Circuit.Sample(circuit =>
    {
        Gauge[] sizes = [.. new[] { "10", "22", "16", "12", "20" }.Select(Gauge.Read)];
        var given = circuit with { Candidates = sizes.Select(g => new CandidateWire(g)).ToSequence() };
        var sorted = circuit with { Candidates = sizes.Order().Select(g => new CandidateWire(g)).ToSequence() };
        Assert.Equal(WireSize.Choose(sorted), WireSize.Choose(given));
    });

    [Fact]
    public void Each_refusal_says_its_reason()
    {
        var sheet = WireSize.Run(Example with { Loading = Fraction.Of(60, "%"), Thinnest = Gauge.Read("18"), Thickest = Gauge.Read("16"), Breaker = Current.Of(7.5, "A") });
        var results = sheet.Tables[^1].Rows.ToDictionary(r => r[0].ToString(), r => r[3].ToString(), StringComparer.Ordinal);
        Assert.StartsWith("carries at most", results["24"], StringComparison.Ordinal);
        Assert.StartsWith("drops more than 1 V", results["22"], StringComparison.Ordinal);
        Assert.StartsWith("too thin for the contacts (18", results["20"], StringComparison.Ordinal);
        Assert.Equal("serves", results["18"]);
        Assert.StartsWith("too thick for the contacts (16", results["14"], StringComparison.Ordinal);
        Assert.Equal("18", sheet.Given.Single(g => g.Symbol == "AWG").Value.ToString());
    }

    [Fact]
    public void A_breaker_too_large_for_the_wire_moves_the_choice_up()
    {
        Assert.Equal("20", WireSize.Choose(Example with { Breaker = Current.Of(7.5, "A") })!.Gauge.ToString());
        Assert.Equal("16", WireSize.Choose(Example with { Breaker = Current.Of(15, "A") })!.Gauge.ToString());
    }

    [Fact]
    public void The_contacts_rating_governs_whatever_the_wire()
    {
        var sheet = WireSize.Run(Example with { Contact = Current.Of(4, "A") });
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Equal("contact current", Assert.Single(sheet.Checks, c => !c.Holds).Name);
    }

    [Fact]
    public void When_no_candidate_serves_the_sheet_fails_and_when_the_limit_is_unknown_it_cannot_tell()
    {
        Assert.Equal(Verdict.Fails, WireSize.Run(Example with { Candidates = [new(Gauge.Read("24"))] }).Verdict);
        Assert.Null(WireSize.Choose(Example with { Candidates = [new(Gauge.Read("24"))] }));
        Assert.Equal(Verdict.CannotTell, WireSize.Run(Example with { Nominal = Voltage.Of(24, "V") }).Verdict);
        Assert.Null(WireSize.Choose(Example with { Nominal = Voltage.Of(24, "V") }));
    }

    private static WireSizeInput Example => new(
        Current.Of(5, "A"), Length.Of(12, "ft"), Voltage.Of(28, "V"), Temperature.Of(150, "°C"), Temperature.Of(50, "°C"), Length.Of(25000, "ft"), 15, Fraction.Of(20, "%"));

    private static bool Serves(WireSizeInput c, Gauge size)
    {
        var place = new WireCurrentInput(size, c.Rating, c.Ambient, c.Altitude, c.Wires, c.Loading, Actual: c.Current);
        if (WireCurrent.Run(place) is not { Verdict: Verdict.Holds } current)
        {
            return false;
        }

        var drop = VoltageDrop.Run(new([new(c.Length, c.Current, new(current["Imax"].Si), c.Ambient, c.Rating, size)], c.Nominal));
        var breaker = BreakerWire.Run(new(c.Breaker!.Value, size, c.Rating, c.Ambient, c.Altitude, c.Wires, c.Loading));
        return drop.Verdict == Verdict.Holds && breaker.Verdict == Verdict.Holds;
    }
}
