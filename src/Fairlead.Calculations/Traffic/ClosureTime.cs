using System.Collections.Immutable;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="ClosureTime"/>.</summary>
/// <param name="Range">Horizontal range of the other aircraft.</param>
/// <param name="Bearing">Its bearing from our nose, + right.</param>
/// <param name="Own">Our ground speed.</param>
/// <param name="Other">Its ground speed.</param>
/// <param name="Track">Its track from our nose: 180° is head-on.</param>
/// <param name="Above">Its relative altitude, + above.</param>
/// <param name="Climb">Its vertical rate relative to ours, + up.</param>
/// <param name="Altitude">Our altitude, which sets the sensitivity level of TCAS II.</param>
/// <param name="Logic">Whose thresholds are used.</param>
/// <param name="ReportsAltitude">Whether it reports altitude.</param>
public sealed record ClosureTimeInput(
    [In("R", "horizontal range of the other aircraft", "nmi", Min = 0.001, Max = 300)] Length Range,
    [In("B", "its bearing from our nose, + right", "°", Min = -360, Max = 360)] Angle Bearing,
    [In("Vo", "our ground speed", "kt", Min = 0, Max = 2000)] Speed Own,
    [In("Vt", "its ground speed", "kt", Min = 0, Max = 2000)] Speed Other,
    [In("T", "its track from our nose", "°", Min = -360, Max = 360)] Angle Track,
    [In("h", "its relative altitude, + above", "ft", Min = -50000, Max = 50000, Default = "0 ft")] Length Above = default,
    [In("w", "its vertical rate relative to ours, + up", "ft/min", Min = -20000, Max = 20000, Default = "0 ft/min")] Speed Climb = default,
    [In("H", "our altitude", "ft", Min = -1500, Max = 60000, Default = "0 ft")] Length Altitude = default,
    [In("logic", "whose thresholds are used", Default = "tas-b")] TrafficLogic Logic = TrafficLogic.TasB,
    [In("reports", "whether it reports altitude", Default = "yes")] bool ReportsAltitude = true);

/// <summary>Time to the closest point, plain and modified by DMOD, and which advisory the published thresholds ask for.</summary>
/// <remarks>
/// τ = r / closing speed; τmod = (r² − DMOD²)/(r · closing speed). Check value: own 160 kt, another 1 nmi ahead at 100 kt on the same track: τ = 60 s, τmod = 41.85 s
/// with DMOD 0.55 nmi. A slow overtake shows why DMOD exists: 20 s at 60 kt is 0.333 nmi.
/// </remarks>
public sealed class ClosureTime : ICalculation<ClosureTimeInput>
{
    private static readonly Source Times = new("NASA, WellClear library, timevars and tcas_tau", "5912c270", "tau, modified tau, time to closest point");

    /// <inheritdoc/>
    public static CalculationInfo<ClosureTimeInput> Info { get; } = new(
        "closure-time", "Time to closest approach", Discipline.Traffic,
        "How long until another aircraft is closest, and which advisory is due", "R='4 nmi' B='0 deg' Vo='120 kt' Vt='120 kt' T='180 deg' H='6000 ft' logic=tcas2", Times);

    /// <inheritdoc/>
    public static Sheet Run(ClosureTimeInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var e = Encounter.Of(input.Range, input.Bearing, input.Above, input.Own, input.Other, input.Track, input.Climb);
        var (traffic, resolution, level, source) = AlertTable.Of(input.Logic, input.Altitude, input.ReportsAltitude);
        s.Note("SL", "sensitivity level", level, input.Logic == TrafficLogic.Tcas2 ? "by our altitude" : "by logic");
        s.Note("DMOD", "range within which a traffic advisory is given", traffic.Dmod.As("nmi"), "table");
        s.Note("TAU", "time within which a traffic advisory is given", traffic.Tau.As("s"), "table");
        s.Uses(source);
        var closing = s.Step("V", "closing speed", "Vo · cos(B) − Vt · cos(T − B)", new Speed(-e.RangeRate), "kt");
        if (e.Closing)
        {
            s.Step("tau", "range over closing speed", "R / V", new Duration(e.Tau), "s", Times);
            s.Step("taum", "modified by DMOD, for the traffic advisory", "(R · R − DMOD · DMOD) / (R · V)", new Duration(e.ModifiedTau(traffic.Dmod.Si)), "s", Times);
            s.Step("rp", "range of the advisory at this closing speed", "TAU · V", traffic.TriggerRange(closing, TimeMeasure.Plain), "nmi", Times);
            s.Step("rm", "range of the advisory with DMOD", "(TAU · V + √((TAU · V)² + 4 · DMOD · DMOD)) / 2", traffic.TriggerRange(closing, TimeMeasure.Modified), "nmi", Times);
            s.Step("tcpa", "time to the closest point", "R · V / (relative speed)²", new Duration(e.TimeToClosest), "s", Times);
        }
        else
        {
            s.Caution("The range does not shrink: only DMOD counts.");
        }

        s.Step("dcpa", "distance at the closest point", "range at tcpa, or now", new Length(e.MissDistance), "nmi", Times);
        s.Table("Advisories", ["advisory", "time", "DMOD", "relative altitude", "given by modified time", "given by plain time"], new[] { traffic, resolution }.OfType<AlertThresholds>().Select(a => Row(a, e)));
        Caution(s, input);
    });

    /// <summary>Says on a sheet what the thresholds leave open.</summary>
    internal static void Caution(SheetBuilder s, ClosureTimeInput input)
    {
        s.Caution(input.Logic == TrafficLogic.Tcas2
            ? "Published thresholds, not a certified logic: hysteresis, tracking and ground inhibits of the equipment change what it shows. Levels 2 to 4 go by radio altitude."
            : "Criteria from memory, and whether such equipment uses plain or modified time is not settled: accept the band between them, and the equipment's own data before both.");
    }

    private static ImmutableArray<SheetValue> Row(AlertThresholds a, Encounter e)
    {
        static string YesNo(bool yes) => yes ? "yes" : "no";
        return [a.Name, a.Tau.As("s"), a.Dmod.As("nmi"), a.Zthr?.As("ft") is { } zthr ? (SheetValue)zthr : "not reported", YesNo(a.Given(e, TimeMeasure.Modified)), YesNo(a.Given(e, TimeMeasure.Plain))];
    }
}
