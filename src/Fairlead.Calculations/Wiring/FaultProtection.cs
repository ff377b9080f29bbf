using System.Collections.Immutable;

namespace Fairlead.Calculations.Wiring;

/// <summary>One point of a breaker's trip curve.</summary>
/// <param name="Multiple">Current over the breaker's rating.</param>
/// <param name="Least">Shortest time to trip.</param>
/// <param name="Most">Longest time to trip.</param>
public sealed record TripPoint(
    [In("multiple", "current over rating", "%", Min = 100, Max = 10000)] Fraction Multiple,
    [In("tmin", "shortest time to trip", "s", Min = 0.0001, Max = 36000)] Duration Least,
    [In("tmax", "longest time to trip", "s", Min = 0.0001, Max = 36000)] Duration Most);

/// <summary>Input of <see cref="FaultProtection"/>.</summary>
/// <param name="Source">Voltage of the source.</param>
/// <param name="SourceResistance">Resistance of source and feeders up to the breaker, breaker included.</param>
/// <param name="Gauge">Gauge of the wire between breaker and fault.</param>
/// <param name="Length">Length of that wire.</param>
/// <param name="ReturnResistance">Resistance of the return from the fault to the source.</param>
/// <param name="Initial">Conductor temperature before the fault.</param>
/// <param name="Final">Greatest conductor temperature allowed.</param>
/// <param name="Breaker">Breaker rating.</param>
/// <param name="Curve">Trip curve of the breaker, from its own sheet.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record FaultProtectionInput(
    [In("V", "source voltage", "V", Min = 1, Max = 600)] Voltage Source,
    [In("Rs", "resistance of source and feeders", "mΩ", Min = 0.1, Max = 1e6)] Resistance SourceResistance,
    [In("AWG", "gauge of the wire between breaker and fault")] Gauge Gauge,
    [In("L", "length of wire between breaker and fault", "ft", Min = 0, Max = 1000)] Length Length,
    [In("Rr", "resistance of the return", "mΩ", Min = 0, Max = 1e6)] Resistance ReturnResistance,
    [In("Ti", "conductor temperature before the fault", "°C", Min = -65, Max = 260)] Temperature Initial,
    [In("Tf", "greatest conductor temperature", "°C", Min = 0, Max = 400)] Temperature Final,
    [In("Ib", "breaker rating", "A", Min = 0.1, Max = 500)] Current Breaker,
    [In("curve", "trip curve of the breaker")] Sequence<TripPoint> Curve,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Whether the breaker opens before a bolted fault overheats the wire: If = V/(Rs + Rf + Rr); If² · t_trip against the adiabatic limit of the wire.</summary>
/// <remarks>
/// The longest trip time is taken, log-log between the points of the curve. Below the first point nothing is claimed; above the last the last
/// point's longest time is an upper bound. Trip curves differ widely between breaker types: one type's may not be used for another.
/// Check: a 5 A breaker at 400 % with 0.10 to 0.54 s lets through 20² · 0.54 = 216 A²s; size 22 from 70 to 150 °C stands 1,744 A²s.
/// </remarks>
public sealed class FaultProtection : ICalculation<FaultProtectionInput>
{
    private static readonly Source Rule = Ac4313.Paragraph("11-48");
    private static readonly Source Ohm = new("Ohm's law", "", "", Basis.Derived);
    private static readonly Source Limit = new("IEC 60949", "", "adiabatic short-circuit current");

    /// <inheritdoc/>
    public static CalculationInfo<FaultProtectionInput> Info { get; } = new(
        "fault-protection", "Fault current against breaker and wire", Discipline.Wiring,
        "Whether the breaker opens before a bolted fault overheats its wire",
        "V='28 V' Rs='25 mohm' AWG=22 L='40 ft' Rr='5 mohm' Ti='70 degC' Tf='150 degC' Ib='5 A' curve='200 %,0.38 s,2.5 s;400 %,0.10 s,0.54 s;600 %,0.05 s,0.27 s;1000 %,0.02 s,0.12 s'",
        Rule);

    /// <inheritdoc/>
    public static Sheet Run(FaultProtectionInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Problem(input) is { } why)
        {
            s.CannotTell(why);
            return;
        }

        var r20 = s.Step("r20", "resistance per length at 20 °C", "table by AWG", WireTable.Resistance(input.Gauge, input.Conductor), "Ω/1000ft");
        var area = s.Step("S", "conductor area", "table by AWG", WireTable.Area(input.Gauge, input.Conductor), "mm²");
        if (r20 is not { } r || area is not { } square)
        {
            return;
        }

        var wire = s.Step("Rf", "resistance of the wire at Ti", $"r20 · L · {WireTable.HotFormula(input.Conductor, "Ti")}", r * input.Length * WireTable.HotFactor(input.Conductor, input.Initial), "mΩ", Ac4313.Paragraph("11-66 d"));
        var fault = s.Step("If", "fault current", "V / (Rs + Rf + Rr)", input.Source / (input.SourceResistance + wire + input.ReturnResistance), "A", Ohm);
        var multiple = s.Step("m", "fault current over breaker rating", "If / Ib", new Fraction(fault / input.Breaker), "%");
        Judge(s, input, square, fault, multiple);
        s.Caution("A bolted fault at this length. A fault nearer the breaker draws more and one with an arc less: run both, and with the trip curve of the breaker actually fitted.");
    });

    private static void Judge(SheetBuilder s, FaultProtectionInput input, Area area, Current fault, Fraction multiple)
    {
        ImmutableArray<TripPoint> curve = [.. input.Curve.OrderBy(p => p.Multiple)];
        if (TripBand.At(curve, multiple) is not { } band)
        {
            s.CannotTell($"The fault draws {multiple.As("%")} of the breaker's rating, below the first point of its trip curve at {curve[0].Multiple.As("%")}: the breaker may be slow or not trip at all.");
            return;
        }

        var bounded = band.Bounded;
        if (bounded)
        {
            s.Caution($"Above the last point of the trip curve ({curve[^1].Multiple.As("%")}): the breaker is faster there, so that point's longest time is used as an upper bound.");
        }

        var time = s.Step("tt", "longest time to trip", bounded ? "last point of the curve" : "trip curve at m, log-log", band.Longest, "s", new Source("Trip curve of the breaker", "", "", Basis.Stated));
        var passed = s.Step("I2t", "let-through of the breaker", "If · If · tt", new SquareCurrentTime(fault.Si * fault.Si * time.Si), "A²·s");
        var limit = s.Step("I2tw", "let-through the wire stands", "see adiabatic-limit", AdiabaticLimit.LetThrough(area, input.Conductor, input.Initial, input.Final), "A²·s", Limit);

        // A bound that is too high, or a time so long that the wire sheds heat, makes a failed comparison inconclusive; a passed one stays sure.
        var broken = bounded || time.In("s") > 5 ? Verdict.CannotTell : Verdict.Fails;
        s.Check("let-through", passed.As("A²·s"), Sense.AtMost, limit.As("A²·s"), "the breaker opens before the wire passes its greatest temperature", Rule, broken);
        if (broken == Verdict.CannotTell && passed > limit)
        {
            s.CannotTell(bounded
                ? "The upper bound of the trip time is too long for the wire; the breaker may still be fast enough: get its curve at this current."
                : "The trip takes longer than the few seconds for which the adiabatic limit holds; the wire may still stand it: use its own overload data.");
        }
    }

    private static string? Problem(FaultProtectionInput input)
    {
        if (input.Curve.Count == 0)
        {
            return "The breaker has no trip curve: give its points.";
        }

        return !TripBand.InOrder([.. input.Curve.OrderBy(p => p.Multiple)]) ? "The trip curve is not in order: each point has tmin no longer than tmax, and a greater current trips no later."
            : input.Final <= input.Initial ? "The greatest conductor temperature is not above that before the fault: the wire stands no fault at all."
            : null;
    }
}
