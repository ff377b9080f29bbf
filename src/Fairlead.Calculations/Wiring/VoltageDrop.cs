using System.Globalization;

namespace Fairlead.Calculations.Wiring;

/// <summary>Whether a load runs all the time.</summary>
public enum Duty
{
    /// <summary>Continuous.</summary>
    Continuous,

    /// <summary>Intermittent.</summary>
    Intermittent,
}

/// <summary>One wire of a circuit's path: the feed, the return, or a part of either.</summary>
/// <param name="Length">Length of the wire, 0 to 1000 ft.</param>
/// <param name="Current">Current through it, 0 A up to the allowed current.</param>
/// <param name="Allowed">Its allowed current at its rating.</param>
/// <param name="Ambient">Ambient temperature along it.</param>
/// <param name="Rating">Conductor temperature rating, above ambient.</param>
/// <param name="Gauge">Its gauge, from which the resistance is looked up.</param>
/// <param name="PerLength">Its resistance per length at 20 °C, when it is not taken from the table.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record DropLeg(
    [In("L", "length", "ft", Min = 0, Max = 1000)] Length Length,
    [In("I", "current", "A", Min = 0, Max = 1000)] Current Current,
    [In("Imax", "allowed current", "A", Min = 0.01, Max = 1000)] Current Allowed,
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("TR", "conductor rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("AWG", "wire gauge", Default = "r20 is given")] Gauge? Gauge = null,
    [In("r20", "resistance per length at 20 °C", "Ω/1000ft", Min = 0.001, Max = 2000, Default = "table 11-9 or 11-10")] LinearResistance? PerLength = null,
    [In("conductor", "conductor", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Input of <see cref="VoltageDrop"/>.</summary>
/// <param name="Legs">The wires from the bus through the load to ground, ground wire included.</param>
/// <param name="Nominal">Nominal voltage: 14, 28, 115 or 200 V, unless a limit is given.</param>
/// <param name="Duty">Continuous or intermittent load.</param>
/// <param name="Limit">Allowed drop, when it is not that of table 11-6.</param>
public sealed record VoltageDropInput(
    [In("legs", "wires of the circuit, ground wire included")] Sequence<DropLeg> Legs,
    [In("V", "nominal voltage", "V", Min = 1, Max = 600)] Voltage Nominal,
    [In("duty", "duty of the load", Default = "continuous")] Duty Duty = Duty.Continuous,
    [In("Vmax", "allowed voltage drop", "V", Min = 0.001, Max = 100, Default = "table 11-6")] Voltage? Limit = null);

/// <summary>Voltage drop of a circuit with its conductors hot: VD = Σ I · L · r20 · (234.5 + T2)/254.5, T2 by <see cref="ConductorTemperature"/>.</summary>
/// <remarks>
/// The length includes the ground wire; a return through structure counts as nothing (0.005 Ω is satisfactory).
/// Check values at 20 °C: size 4, 90 ft, 20 A drops 0.504 V; size 14, 100 ft, 20 A drops 6.12 V (AC 43.13-1B table 11-7).
/// </remarks>
public sealed class VoltageDrop : ICalculation<VoltageDropInput>
{
    private static readonly TableFile Limits = TableFile.Load("voltage-drop-limits");
    private static readonly Source Method = Ac4313.Paragraph("11-66");
    private static readonly Source Correction = Ac4313.Paragraph("11-66 d");
    private static readonly Source OwnSheet = new("Wire's own sheet", "", "r20", Basis.Stated);
    private static readonly Source CurrentRule = Ac4313.Paragraph("11-67");

    /// <inheritdoc/>
    public static CalculationInfo<VoltageDropInput> Info { get; } = new(
        "voltage-drop", "Voltage drop", Discipline.Wiring,
        "Voltage lost between bus and ground with the conductors hot",
        "legs='24 ft,5 A,9.6 A,50 degC,150 degC,20;3 ft,5 A,9.6 A,50 degC,150 degC,20' V='28 V' duty=continuous", Method);

    /// <inheritdoc/>
    public static Sheet Run(VoltageDropInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Legs.Count == 0)
        {
            s.CannotTell("The circuit has no wires.");
            return;
        }

        var (cold, hot) = (Voltage.Zero, Voltage.Zero);
        for (var i = 0; i < input.Legs.Count; i++)
        {
            if (Leg(s, input.Legs[i], "_" + (i + 1).ToString(CultureInfo.InvariantCulture)) is not { } drop)
            {
                return;
            }

            (cold, hot) = (cold + drop.Cold, hot + drop.Hot);
        }

        Conclude(s, input, cold, hot);
    });

    /// <summary>The allowed drop of table 11-6 for a nominal voltage.</summary>
    public static Looked<Voltage> AllowedDrop(Voltage nominal, Duty duty) =>
        Limits.RowWhere("nominal V", Math.Round(nominal.Si, 9)) is { } row
            ? new(Voltage.Of(Limits.Rows[row][duty == Duty.Continuous ? 1 : 2]!.Value, "V"), Limits.SourceOf(row))
            : new(default, Limits.Source, $"Table 11-6 has limits for 14, 28, 115 and 200 V and this is {nominal.As("V")}: give the allowed drop Vmax.");

    /// <summary>Resistance per length at 20 °C of a leg: as given, or of the table.</summary>
    internal static Looked<LinearResistance> PerLength(Gauge? gauge, LinearResistance? given, Conductor conductor) => (gauge, given) switch
    {
        (_, { } stated) => new(stated, OwnSheet),
        ({ } size, null) => WireTable.Resistance(size, conductor),
        _ => new(default, Method, "A wire has neither a gauge (AWG) nor a resistance per length (r20)."),
    };

    private static (Voltage Cold, Voltage Hot)? Leg(SheetBuilder s, DropLeg leg, string n)
    {
        if (leg.Rating <= leg.Ambient)
        {
            s.CannotTell("The conductor rating of a wire is not above its ambient temperature: it may carry no current there.");
            return null;
        }

        var found = PerLength(leg.Gauge, leg.PerLength, leg.Conductor);
        if (found.WhyNot is { } why)
        {
            s.CannotTell(why);
            return null;
        }

        s.Note("L" + n, "length", leg.Length.As("ft"), "wire table");
        s.Note("I" + n, "current", leg.Current.As("A"), "wire table");
        s.Note("Imax" + n, "allowed current", leg.Allowed.As("A"), "wire table");
        s.Note("T1" + n, "ambient temperature", leg.Ambient.As("°C"), "wire table");
        s.Note("TR" + n, "conductor rating", leg.Rating.As("°C"), "wire table");
        var r20 = s.Step("r20" + n, "resistance per length at 20 °C", leg.PerLength is null ? "table by AWG" : "as given", found.Value, "Ω/1000ft", found.Source);
        var cold = s.Step("Vc" + n, "drop at 20 °C", $"I{n} · L{n} · r20{n}", leg.Current * (r20 * leg.Length), "V");
        var t2 = s.Step("T2" + n, "estimated conductor temperature", $"T1{n} + (TR{n} − T1{n}) · √(I{n} / Imax{n})", ConductorTemperature.Estimate(leg.Ambient, leg.Rating, leg.Current / leg.Allowed), "°C", Correction);
        var hot = s.Step("Vh" + n, "drop hot", $"Vc{n} · {WireTable.HotFormula(leg.Conductor, "T2" + n)}", cold * WireTable.HotFactor(leg.Conductor, t2), "V", Correction);
        s.Check("wire current" + n.Replace('_', ' '), leg.Current.As("A"), Sense.AtMost, leg.Allowed.As("A"), "the wire carries no more than its allowed current", CurrentRule);
        WireTable.CautionAluminium(s, leg.Conductor);
        return (cold, hot);
    }

    private static void Conclude(SheetBuilder s, VoltageDropInput input, Voltage cold, Voltage hot)
    {
        s.Step("VD20", "drop at 20 °C", "sum of Vc", cold, "V", Method);
        s.Step("VD", "drop with the conductors hot", "sum of Vh", hot, "V", Correction);
        var allowed = input.Limit is { } stated ? new(stated, new Source("Stated limit", "", "Vmax", Basis.Stated)) : AllowedDrop(input.Nominal, input.Duty);
        if (allowed.WhyNot is { } why)
        {
            s.CannotTell(why);
            return;
        }

        s.Check("voltage drop", hot.As("V"), Sense.AtMost, allowed.Value.As("V"), "the drop from bus to ground stays within the allowed drop, conductors hot", allowed.Source);
        if (input.Nominal.Si >= 100)
        {
            s.Caution("Resistance only: at 400 Hz the reactance of large wires adds to the drop.");
        }
    }
}
