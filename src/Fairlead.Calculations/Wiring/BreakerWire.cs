namespace Fairlead.Calculations.Wiring;

/// <summary>What protects a wire.</summary>
public enum Protector
{
    /// <summary>Circuit breaker.</summary>
    Breaker,

    /// <summary>Fuse.</summary>
    Fuse,
}

/// <summary>Input of <see cref="BreakerWire"/>.</summary>
/// <param name="Breaker">Rating of the circuit breaker or fuse.</param>
/// <param name="Gauge">Gauge of the thinnest wire it protects.</param>
/// <param name="Rating">Conductor temperature rating of that wire.</param>
/// <param name="Ambient">Ambient temperature along it.</param>
/// <param name="Altitude">Altitude, 0 to 60,000 ft.</param>
/// <param name="Wires">Wires in its bundle.</param>
/// <param name="Loading">Share of the bundle capacity in use.</param>
/// <param name="Conductor">Copper or aluminium.</param>
/// <param name="Load">Continuous current of the circuit, when it is to be checked.</param>
/// <param name="Protector">Circuit breaker or fuse.</param>
public sealed record BreakerWireInput(
    [In("Ib", "rating of the circuit breaker or fuse", "A", Min = 0.1, Max = 500)] Current Breaker,
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("TR", "conductor temperature rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("alt", "altitude", "ft", Min = 0, Max = 60000)] Length Altitude,
    [In("N", "wires in the bundle", Min = 1, Max = 1000)] int Wires,
    [In("p", "share of the bundle capacity in use", "%", Min = 0, Max = 100)] Fraction Loading,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper,
    [In("I", "continuous current of the circuit", "A", Min = 0, Max = 500, Default = "not checked")] Current? Load = null,
    [In("protector", "what protects the wire", Default = "breaker")] Protector Protector = Protector.Breaker);

/// <summary>Whether a breaker protects its wire. Where the chart of AC 43.13-1B table 11-3 applies, the chart; elsewhere the rule it
/// stands for: the breaker's rating is no greater than the wire's allowed current in its bundle.</summary>
/// <remarks>
/// The chart and table 11-9 hold under different conditions (57 °C, 30,000 ft and 20 % against 70 °C, 60,000 ft and 33 wires), so several chart
/// values exceed table 11-9: the one may not be checked against the other. The chart's basis says "15 or more wires"; it is used here up to
/// 15 wires, where it is on the safe side. Check value: size 20, breaker 7.5 A, fuse 5 A.
/// </remarks>
public sealed class BreakerWire : ICalculation<BreakerWireInput>
{
    private static readonly TableFile Chart = TableFile.Load("breaker-wire");

    // Which breaker stands beside which size was aligned from memory; the column of fuses was read in full.
    private static readonly Source Breakers = Chart.Source with { Basis = Basis.Memory };
    private static readonly Source ChartBasis = Ac4313.Paragraph("table 11-3, basis of chart", Basis.Memory);
    private static readonly Source Rule = Ac4313.Paragraph("11-48");

    /// <inheritdoc/>
    public static CalculationInfo<BreakerWireInput> Info { get; } = new(
        "breaker-wire", "Breaker against wire", Discipline.Wiring,
        "Whether a circuit breaker protects the wire behind it", "Ib='7.5 A' AWG=20 TR='150 degC' T1='50 degC' alt='25000 ft' N=12 p='20 %' I='5 A'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(BreakerWireInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var allowed = Allowed(input);
        if (ChartLimit(input) is { } chart)
        {
            s.Note("basis", "what the breaker is held against", "table 11-3: its conditions hold here", ChartBasis.ToString());
            s.Uses(ChartBasis);
            s.Step("Ic", "largest protector for the wire", "table 11-3 by AWG", chart, "A", ChartSource(input));
            var meetsRule = allowed.IsKnown && input.Breaker <= allowed.Value;
            s.Check(
                "breaker rating", input.Breaker.As("A"), Sense.AtMost, chart.As("A"), "the breaker is no larger than the chart gives for the wire", ChartSource(input),
                meetsRule ? Verdict.Caution : Verdict.Fails);
            if (meetsRule && input.Breaker > chart)
            {
                s.Caution($"Above the chart, but within the allowed current of the wire, {allowed.Value.As("A")}, which is the rule the chart stands for: see 'wire-current'.");
            }
        }
        else if (s.Step("Imax", "allowed current of the wire in its bundle", "see wire-current", allowed, "A") is { } limit)
        {
            s.Note("basis", "what the breaker is held against", "the wire's allowed current: the conditions of table 11-3 do not hold here", ChartBasis.ToString());
            s.Uses(ChartBasis);
            s.Check("breaker rating", input.Breaker.As("A"), Sense.AtMost, limit.As("A"), "the breaker opens before the wire's allowed current is exceeded", Rule);
        }

        if (input.Load is { } load)
        {
            s.Check("circuit current", load.As("A"), Sense.AtMost, input.Breaker.As("A"), "the breaker carries the circuit's continuous current", Rule);
        }

        s.Caution("Current alone: compare the protector's time-current curve with the wire by 'fault-protection'.");
    });

    /// <summary>The largest breaker for a wire: of the chart where the chart applies, else the wire's allowed current.</summary>
    public static Looked<Current> Limit(BreakerWireInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return ChartLimit(input) is { } chart ? new(chart, ChartSource(input)) : Allowed(input);
    }

    private static Source ChartSource(BreakerWireInput input) => input.Protector == Protector.Breaker ? Breakers : Chart.Source;

    private static Looked<Current> Allowed(BreakerWireInput input) => WireCurrent.Allowed(
        new WireCurrentInput(input.Gauge, input.Rating, input.Ambient, input.Altitude, input.Wires, input.Loading, input.Conductor));

    private static Current? ChartLimit(BreakerWireInput input)
    {
        var applies = input.Conductor == Conductor.Copper && WireTable.Class(input.Rating, input.Conductor).IsKnown && input.Wires <= 15 && Math.Round(input.Ambient.In("°C"), 6) <= 57
            && Math.Round(input.Altitude.In("ft"), 6) <= 30000 && Math.Round(input.Loading.Si, 9) <= 0.2;
        return applies && Chart.RowWhere("AWG", input.Gauge.Number) is { } row && Chart.Rows[row][Chart.Column(input.Protector == Protector.Breaker ? "breaker A" : "fuse A")] is { } ampere
            ? Current.Of(ampere, "A") : null;
    }
}
