namespace Fairlead.Calculations.Traffic;

/// <summary>Whose thresholds are used.</summary>
public enum TrafficLogic
{
    /// <summary>TCAS II version 7, by own altitude.</summary>
    Tcas2,

    /// <summary>Traffic advisory system or TCAS I, sensitivity level A.</summary>
    TasA,

    /// <summary>Traffic advisory system or TCAS I, sensitivity level B.</summary>
    TasB,
}

/// <summary>Whether the time to the closest point is taken as it is or shortened by DMOD.</summary>
public enum TimeMeasure
{
    /// <summary>Range over closing speed.</summary>
    Plain,

    /// <summary>Time to reach the distance DMOD.</summary>
    Modified,
}

/// <summary>Thresholds of one advisory.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Tau">Time to the closest point.</param>
/// <param name="Dmod">Range within which it is given whatever the time.</param>
/// <param name="Zthr">Relative altitude within which it is given; null when the other reports no altitude.</param>
/// <param name="Hmd">Miss distance within which it is given; null when it does not matter.</param>
public sealed record AlertThresholds(string Name, Duration Tau, Length Dmod, Length? Zthr, Length? Hmd = null)
{
    /// <summary>Name of the traffic advisory.</summary>
    public const string Traffic = "traffic advisory";

    /// <summary>Name of the resolution advisory.</summary>
    public const string Resolution = "resolution advisory";

    /// <summary>Whether range and time ask for the advisory.</summary>
    public bool Horizontal(Encounter e, TimeMeasure measure) =>
        e.Range <= Dmod.Si || (e.Closing && (measure == TimeMeasure.Plain ? e.Tau : e.ModifiedTau(Dmod.Si)) <= Tau.Si);

    /// <summary>Whether relative altitude asks for the advisory, now or within the time threshold.</summary>
    public bool Vertical(Encounter e) => Zthr is not { } zthr || Math.Abs(e.H) <= zthr.Si || e.TimeToCoAltitude <= Tau.Si;

    /// <summary>Whether the advisory is given.</summary>
    public bool Given(Encounter e, TimeMeasure measure) => Horizontal(e, measure) && Vertical(e) && (Hmd is not { } hmd || e.MissDistance <= hmd.Si);

    /// <summary>Range at which the time threshold is reached at a closing speed straight at us: (k + √(k² + 4·DMOD²))/2 with k = Tau · V, or k itself.</summary>
    public Length TriggerRange(Speed closing, TimeMeasure measure)
    {
        var k = Tau.Si * closing.Si;
        return new(measure == TimeMeasure.Plain ? k : (k + Math.Sqrt((k * k) + (4 * Dmod.Si * Dmod.Si))) / 2);
    }
}

/// <summary>The published thresholds: TCAS II by sensitivity level (read), traffic advisory systems (from memory).</summary>
public static class AlertTable
{
    private static readonly TableFile Tcas = TableFile.Load("tcas-thresholds");
    private static readonly TableFile Tas = TableFile.Load("tas-thresholds");

    /// <summary>The thresholds that apply: the traffic advisory, and the resolution advisory where there is one.</summary>
    public static (AlertThresholds Traffic, AlertThresholds? Resolution, string Level, Source Source) Of(TrafficLogic logic, Length ownAltitude, bool reportsAltitude)
    {
        if (logic != TrafficLogic.Tcas2)
        {
            var row = Enumerable.Range(0, Tas.Rows.Length).First(r => Cell(Tas, r, "level") == (logic == TrafficLogic.TasA ? 1 : 2) && Cell(Tas, r, "reports altitude") == (reportsAltitude ? 1 : 0));
            return (Read(Tas, row, "TA", reportsAltitude)!, null, logic == TrafficLogic.TasA ? "A" : "B", Tas.SourceOf(row));
        }

        // Rounded, so that a foot to metres and back does not move a bound.
        var feet = Math.Round(ownAltitude.In("ft"), 6);
        var level = Enumerable.Range(0, Tcas.Rows.Length).First(r => feet >= Cell(Tcas, r, "from ft") && feet < Cell(Tcas, r, "below ft"));
        return (Read(Tcas, level, "TA", reportsAltitude)!, reportsAltitude ? Read(Tcas, level, "RA", true) : null, NumberFormat.Text(Cell(Tcas, level, "level")!.Value), Tcas.SourceOf(level));
    }

    private static AlertThresholds? Read(TableFile table, int row, string kind, bool reportsAltitude) => Cell(table, row, kind + " s") is not { } tau ? null : new(
        kind == "TA" ? AlertThresholds.Traffic : AlertThresholds.Resolution, Duration.Of(tau, "s"), Length.Of(Cell(table, row, kind + " nmi")!.Value, "nmi"),
        reportsAltitude ? Length.Of(Cell(table, row, kind + " ft")!.Value, "ft") : null,
        kind == "RA" && Cell(table, row, "HMD ft") is { } hmd ? Length.Of(hmd, "ft") : null);

    private static double? Cell(TableFile table, int row, string column) => table.Rows[row][table.Column(column)];
}
