using System.Collections.Immutable;

namespace Fairlead.Calculations.Wiring;

/// <summary>A wire that may be chosen.</summary>
/// <param name="Gauge">Its gauge.</param>
/// <param name="PerLength">Its resistance per length at 20 °C, when it is not taken from the table.</param>
public sealed record CandidateWire(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("r20", "resistance per length at 20 °C", "Ω/1000ft", Min = 0.001, Max = 2000, Default = "table 11-9 or 11-10")] LinearResistance? PerLength = null);

/// <summary>Input of <see cref="WireSize"/>.</summary>
/// <param name="Current">Continuous current of the circuit.</param>
/// <param name="Length">Length of the whole path, ground wire included.</param>
/// <param name="Nominal">Nominal voltage: 14, 28, 115 or 200 V, unless a limit is given.</param>
/// <param name="Rating">Conductor temperature rating.</param>
/// <param name="Ambient">Ambient temperature.</param>
/// <param name="Altitude">Altitude, 0 to 60,000 ft.</param>
/// <param name="Wires">Wires in the bundle.</param>
/// <param name="Loading">Share of the bundle capacity in use.</param>
/// <param name="Duty">Continuous or intermittent load.</param>
/// <param name="Limit">Allowed drop, when it is not that of table 11-6.</param>
/// <param name="Breaker">Rating of the breaker that protects the wire.</param>
/// <param name="Thinnest">Thinnest gauge every contact on the wire takes.</param>
/// <param name="Thickest">Thickest gauge every contact on the wire takes.</param>
/// <param name="Contact">Current rating of the weakest contact on the wire.</param>
/// <param name="Conductor">Copper or aluminium.</param>
/// <param name="Candidates">The wires to choose from; none means every size of the table.</param>
public sealed record WireSizeInput(
    [In("I", "continuous current", "A", Min = 0, Max = 1000)] Current Current,
    [In("L", "length of the path, ground wire included", "ft", Min = 0, Max = 1000)] Length Length,
    [In("V", "nominal voltage", "V", Min = 1, Max = 600)] Voltage Nominal,
    [In("TR", "conductor temperature rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("alt", "altitude", "ft", Min = 0, Max = 60000)] Length Altitude,
    [In("N", "wires in the bundle", Min = 1, Max = 1000)] int Wires,
    [In("p", "share of the bundle capacity in use", "%", Min = 0, Max = 100)] Fraction Loading,
    [In("duty", "duty of the load", Default = "continuous")] Duty Duty = Duty.Continuous,
    [In("Vmax", "allowed voltage drop", "V", Min = 0.001, Max = 100, Default = "table 11-6")] Voltage? Limit = null,
    [In("Ib", "rating of the circuit breaker", "A", Min = 0.1, Max = 500, Default = "not checked")] Current? Breaker = null,
    [In("thinnest", "thinnest gauge the contacts take", Default = "any")] Gauge? Thinnest = null,
    [In("thickest", "thickest gauge the contacts take", Default = "any")] Gauge? Thickest = null,
    [In("Ic", "current rating of the contacts", "A", Min = 0.01, Max = 1000, Default = "not checked")] Current? Contact = null,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper,
    [In("candidates", "wires to choose from", Default = "every size of the table")] Sequence<CandidateWire> Candidates = default);

/// <summary>The smallest wire that satisfies current, voltage drop, contacts and breaker at once; each candidate is shown with the reason it was refused.</summary>
/// <remarks>Check: AC 43.13-1B page 11-27 refuses size 14 for 20 A over 15.5 ft at 28 V hot and accepts size 12.</remarks>
public sealed class WireSize : ICalculation<WireSizeInput>
{
    private static readonly Source Selection = Ac4313.Paragraph("11-66 and 11-67");
    private static readonly Source ContactRule = Ac4313.Paragraph("11-67");

    /// <inheritdoc/>
    public static CalculationInfo<WireSizeInput> Info { get; } = new(
        "wire-size", "Smallest wire", Discipline.Wiring,
        "The smallest wire that satisfies current, voltage drop, contacts and breaker at once",
        "I='5 A' L='27 ft' V='28 V' TR='150 degC' T1='50 degC' alt='25000 ft' N=12 p='20 %' Ib='7.5 A' thinnest=24 thickest=20 Ic='7.5 A'", Selection);

    /// <inheritdoc/>
    public static Sheet Run(WireSizeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var limit = DropLimit(input);
        if (limit.WhyNot is { } why)
        {
            s.CannotTell(why);
            return;
        }

        var trials = Candidates(input).Select(c => Try(c, input, limit.Value)).ToArray();
        s.Table("Candidates", ["wire gauge", "allowed current", "drop hot", "result"], trials.Select(t => ImmutableArray.Create<SheetValue>(
            t.Wire.Gauge.ToString(), t.Allowed is { } a ? a.As("A") : "-", t.Drop is { } d ? d.As("V") : "-", t.Refused.Length > 0 ? t.Refused : "serves")));
        if (trials.All(t => t.Allowed is null))
        {
            s.CannotTell(trials[0].Refused);
            return;
        }

        s.Step("n", "candidates that satisfy every rule", "count of the table", trials.Count(t => t.Refused.Length == 0));
        Conclude(s, input, limit, trials.FirstOrDefault(t => t.Refused.Length == 0));
        WireTable.CautionAluminium(s, input.Conductor);
    });

    /// <summary>The smallest wire that serves, or null when none does.</summary>
    public static CandidateWire? Choose(WireSizeInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var limit = DropLimit(input);
        return limit.IsKnown ? Candidates(input).FirstOrDefault(c => Try(c, input, limit.Value).Refused.Length == 0) : null;
    }

    /// <summary>The thickest wire that satisfies every rule but the drop, or null when there is none: what is left where the drop of one wire
    /// is too great and that of the whole way is judged elsewhere.</summary>
    public static CandidateWire? Thickest(WireSizeInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Candidates(input).LastOrDefault(c => Try(c, input, new Voltage(double.PositiveInfinity)).Refused.Length == 0);
    }

    private static IEnumerable<CandidateWire> Candidates(WireSizeInput input) =>
        (input.Candidates.Count > 0 ? input.Candidates : WireTable.Sizes(input.Conductor).Select(g => new CandidateWire(g))).OrderBy(c => c.Gauge);

    private static Looked<Voltage> DropLimit(WireSizeInput input) => input.Limit is { } stated
        ? new(stated, new Source("Stated limit", "", "Vmax", Basis.Stated)) : VoltageDrop.AllowedDrop(input.Nominal, input.Duty);

    private static Trial Try(CandidateWire wire, WireSizeInput input, Voltage limit)
    {
        var place = new WireCurrentInput(wire.Gauge, input.Rating, input.Ambient, input.Altitude, input.Wires, input.Loading, input.Conductor);
        var allowed = WireCurrent.Allowed(place);
        var perLength = VoltageDrop.PerLength(wire.Gauge, wire.PerLength, input.Conductor);
        if ((allowed.WhyNot ?? perLength.WhyNot) is { } why)
        {
            return new(wire, null, null, default, why);
        }

        if (input.Current > allowed.Value)
        {
            return new(wire, allowed.Value, null, default, $"carries at most {allowed.Value.As("A")}");
        }

        var hot = ConductorTemperature.Estimate(input.Ambient, input.Rating, input.Current / allowed.Value);
        var drop = input.Current * (perLength.Value * input.Length) * WireTable.HotFactor(input.Conductor, hot);
        var breaker = BreakerWire.Limit(new BreakerWireInput(input.Breaker ?? default, wire.Gauge, input.Rating, input.Ambient, input.Altitude, input.Wires, input.Loading, input.Conductor));
        var refused = drop > limit ? $"drops more than {limit.As("V")}"
            : input.Thinnest is { } thin && wire.Gauge < thin ? $"too thin for the contacts ({thin} or thicker)"
            : input.Thickest is { } thick && wire.Gauge > thick ? $"too thick for the contacts ({thick} or thinner)"
            : input.Breaker is { } rating && rating > breaker.Value ? $"not protected by a breaker above {breaker.Value.As("A")}"
            : "";
        return new(wire, allowed.Value, drop, breaker, refused);
    }

    private static void Conclude(SheetBuilder s, WireSizeInput input, Looked<Voltage> limit, Trial? chosen)
    {
        if (input.Contact is { } contact)
        {
            s.Check("contact current", input.Current.As("A"), Sense.AtMost, contact.As("A"), "where the wire can carry more than the contact, the contact's rating governs", ContactRule);
        }

        if (chosen is null)
        {
            s.Check("wires that serve", Measure.Number(0), Sense.AtLeast, Measure.Number(1), "at least one candidate satisfies every rule", Selection);
            return;
        }

        s.Note("AWG", "smallest wire that serves", chosen.Wire.Gauge.ToString(), Selection.ToString());
        s.Check("wire current", input.Current.As("A"), Sense.AtMost, chosen.Allowed!.Value.As("A"), "the wire carries no more than its allowed current in the bundle", Selection);
        s.Check("voltage drop", chosen.Drop!.Value.As("V"), Sense.AtMost, limit.Value.As("V"), "the drop from bus to ground stays within the allowed drop, conductors hot", limit.Source);
        if (input.Breaker is { } breaker)
        {
            s.Check("breaker rating", breaker.As("A"), Sense.AtMost, chosen.Breaker.Value.As("A"), "the breaker protects the wire", chosen.Breaker.Source);
        }
    }

    private sealed record Trial(CandidateWire Wire, Current? Allowed, Voltage? Drop, Looked<Current> Breaker, string Refused);
}
