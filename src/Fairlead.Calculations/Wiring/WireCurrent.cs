namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="WireCurrent"/>.</summary>
/// <param name="Gauge">Wire gauge of table 11-9 or 11-10.</param>
/// <param name="Rating">Conductor temperature rating, 105 °C or more; the table's class at or below it is used.</param>
/// <param name="Ambient">Ambient temperature, below the class.</param>
/// <param name="Altitude">Altitude, 0 to 60,000 ft.</param>
/// <param name="Wires">Wires in the bundle: up to 35 at 20 % loading, up to 19 above.</param>
/// <param name="Loading">Share of the bundle capacity in use.</param>
/// <param name="Conductor">Copper or aluminium.</param>
/// <param name="Actual">The wire's continuous current, when it is to be checked.</param>
public sealed record WireCurrentInput(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("TR", "conductor temperature rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("alt", "altitude", "ft", Min = 0, Max = 60000)] Length Altitude,
    [In("N", "wires in the bundle", Min = 1, Max = 1000)] int Wires,
    [In("p", "share of the bundle capacity in use", "%", Min = 0, Max = 100)] Fraction Loading,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper,
    [In("I", "continuous current of the wire", "A", Min = 0, Max = 1000, Default = "not checked")] Current? Actual = null);

/// <summary>Current one wire may carry in a bundle, carried over from the conditions of AC 43.13-1B table 11-9 to those given:
/// I = I_table · √((TR − T1)/(TR − 70 °C)) · F(N, p)/F(Nref, 20 %) · A(alt)/A(60,000 ft).</summary>
/// <remarks>
/// Table conditions: 70 °C, 60,000 ft, 20 % loading, Nref = 33 wires for sizes 24 to 10 and 9 wires for 8 and larger. At those conditions
/// the result is the table's own value: size 20 rated 150 °C, 7 A. The free-air charts of figure 11-4 govern; <see cref="BundleCurrent"/> works from them.
/// </remarks>
public sealed class WireCurrent : ICalculation<WireCurrentInput>
{
    private static readonly Source Conditions = Ac4313.Paragraph("table 11-9 note 1");
    private static readonly Source Rule = Ac4313.Paragraph("11-67");
    private static readonly Fraction ReferenceLoading = Fraction.Of(20, "%");
    private static readonly Length ReferenceAltitude = Length.Of(60000, "ft");
    private static readonly Temperature ReferenceAmbient = Temperature.Of(70, "°C");

    /// <inheritdoc/>
    public static CalculationInfo<WireCurrentInput> Info { get; } = new(
        "wire-current", "Allowed current of a wire in a bundle", Discipline.Wiring,
        "Continuous current one wire may carry in its bundle at altitude and ambient temperature",
        "AWG=20 TR='150 degC' T1='50 degC' alt='25000 ft' N=12 p='40 %' I='7.5 A'", Conditions);

    /// <inheritdoc/>
    public static Sheet Run(WireCurrentInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var found = Derive(input);
        if (found.WhyNot is { } why)
        {
            s.CannotTell(why);
            return;
        }

        var d = found.Value;
        s.Step("TC", "temperature class of the table used", "105, 150 or 200 °C, not above TR", d.Class, "°C", d.Table.Source);
        s.Step("It", "table current", "table by AWG and TC", d.Table.Value, "A", d.Table.Source);
        s.Step("kT", "ambient factor", "√((TC − T1) / (TC − 70 °C))", d.Ambient, Conditions);
        s.Step("pc", "loading curve", "published curve at or above p", BundleDerating.Curve(input.Loading), "%");
        s.Step("F", "bundle factor", "figure 11-5 by N and pc", d.Bundle.Value, d.Bundle.Source);
        s.Step("Fref", "bundle factor of the table's conditions", $"figure 11-5 for {NumberFormat.Text(ReferenceWires(input.Gauge))} wires, 20 %", d.BundleReference.Value, d.BundleReference.Source);
        s.Step("A", "altitude factor", "figure 11-6 by alt", d.Altitude.Value, d.Altitude.Source);
        s.Step("Aref", "altitude factor of the table's conditions", "figure 11-6 for 60,000 ft", d.AltitudeReference.Value, d.AltitudeReference.Source);
        var allowed = s.Step("Imax", "allowed current", "It · kT · F / Fref · A / Aref", d.Allowed, "A", found.Source);
        if (input.Actual is { } actual)
        {
            s.Check("wire current", actual.As("A"), Sense.AtMost, allowed.As("A"), "the wire carries no more than its allowed current in the bundle", Rule);
        }

        s.Caution("Carried over from table 11-9 by its stated conditions; where the free-air charts of figure 11-4 are at hand, they govern.");
        WireTable.CautionAluminium(s, input.Conductor);
    });

    /// <summary>The allowed current, or why there is none.</summary>
    public static Looked<Current> Allowed(WireCurrentInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var found = Derive(input);
        return found.WhyNot is { } why ? new(default, found.Source, why) : new(found.Value.Allowed, found.Source);
    }

    private static int ReferenceWires(Gauge gauge) => gauge.Number >= 10 ? 33 : 9;

    private static Looked<Derivation> Derive(WireCurrentInput input)
    {
        var source = Conditions with { Basis = Basis.Derived };
        var temperatureClass = WireTable.Class(input.Rating, input.Conductor);
        var table = WireTable.BundledCurrent(input.Gauge, input.Conductor, input.Rating);
        var bundle = BundleDerating.Factor(input.Wires, input.Loading);
        var altitude = AltitudeDerating.Factor(input.Altitude);
        var whyNot = table.WhyNot ?? bundle.WhyNot ?? altitude.WhyNot
            ?? (input.Ambient >= temperatureClass.Value ? $"The ambient temperature {input.Ambient.As("°C")} is not below the class of the wire, {temperatureClass.Value.As("°C")}: the wire may carry no current there." : null);
        return whyNot is not null ? new(default, source, whyNot) : new(
            new Derivation(
                temperatureClass.Value, table,
                Math.Sqrt(Temperature.Rise(input.Ambient, temperatureClass.Value) / Temperature.Rise(ReferenceAmbient, temperatureClass.Value)),
                bundle, BundleDerating.Factor(ReferenceWires(input.Gauge), ReferenceLoading), altitude, AltitudeDerating.Factor(ReferenceAltitude)),
            source);
    }

    private readonly record struct Derivation(
        Temperature Class, Looked<Current> Table, double Ambient, Looked<double> Bundle, Looked<double> BundleReference, Looked<double> Altitude, Looked<double> AltitudeReference)
    {
        public Current Allowed => Table.Value * (Ambient * Bundle.Value / BundleReference.Value * Altitude.Value / AltitudeReference.Value);
    }
}
