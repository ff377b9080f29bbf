using System.Collections.Immutable;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="TrafficScenario"/>.</summary>
/// <param name="Range">Horizontal range of the target at the start.</param>
/// <param name="Bearing">Its bearing from our nose at the start.</param>
/// <param name="Own">Our ground speed, as the equipment is told; 0 on the ramp.</param>
/// <param name="Other">Its ground speed.</param>
/// <param name="Track">Its track from our nose.</param>
/// <param name="Above">Its relative altitude at the start.</param>
/// <param name="Climb">Its vertical rate; we fly level.</param>
/// <param name="Altitude">Our altitude, which sets the sensitivity level of TCAS II.</param>
/// <param name="Logic">Whose thresholds are used.</param>
/// <param name="ReportsAltitude">Whether it reports altitude.</param>
/// <param name="Lasts">How long the scenario lasts.</param>
/// <param name="Step">Time between the rows.</param>
/// <param name="Update">Time between two updates of the equipment.</param>
/// <param name="BearingError">Greatest error of the bearing shown.</param>
/// <param name="From">When the target appears, on the clock of the tables.</param>
/// <param name="SensorRange">Greatest range of the traffic the sensor shows.</param>
/// <param name="SensorAltitude">Greatest relative altitude of the traffic the sensor shows.</param>
/// <param name="Expect">Advisory the scenario is to raise.</param>
/// <param name="ExpectAt">When that advisory is to begin, on the clock of the tables.</param>
/// <param name="Number">Number of the intruder on the bus; 0 when the bus carries no words of it.</param>
public sealed record TrafficScenarioInput(
    [In("R", "horizontal range of the target at the start", "nmi", Min = 0.01, Max = 100)] Length Range,
    [In("B", "its bearing from our nose at the start, + right", "°", Min = -360, Max = 360)] Angle Bearing,
    [In("Vt", "its ground speed", "kt", Min = 0, Max = 2000)] Speed Other,
    [In("T", "its track from our nose", "°", Min = -360, Max = 360)] Angle Track,
    [In("h", "its relative altitude at the start, + above", "ft", Min = -50000, Max = 50000, Default = "0 ft")] Length Above = default,
    [In("w", "its vertical rate, + up", "ft/min", Min = -20000, Max = 20000, Default = "0 ft/min")] Speed Climb = default,
    [In("Vo", "our ground speed", "kt", Min = 0, Max = 2000, Default = "0 kt")] Speed Own = default,
    [In("H", "our altitude", "ft", Min = -1500, Max = 60000, Default = "0 ft")] Length Altitude = default,
    [In("logic", "whose thresholds are used", Default = "tas-b")] TrafficLogic Logic = TrafficLogic.TasB,
    [In("reports", "whether it reports altitude", Default = "yes")] bool ReportsAltitude = true,
    [In("lasts", "how long the scenario lasts", "s", Min = 1, Max = 1200, Default = "120 s")] Duration? Lasts = null,
    [In("dt", "time between the rows", "s", Min = 0.5, Max = 60, Default = "1 s")] Duration? Step = null,
    [In("u", "time between two updates of the equipment", "s", Min = 0.1, Max = 10, Default = "1 s")] Duration? Update = null,
    [In("dB", "greatest error of the bearing shown", "°", Min = 1, Max = 180, Default = "27°")] Angle? BearingError = null,
    [In("t0", "when the target appears, on the clock of the tables", "s", Min = 0, Max = 3600, Default = "0 s")] Duration From = default,
    [In("Rmax", "greatest range of the traffic the sensor shows", "nmi", Min = 0.1, Max = 200, Default = "not checked")] Length? SensorRange = null,
    [In("hmax", "greatest relative altitude of the traffic the sensor shows", "ft", Min = 100, Max = 50000, Default = "not checked")] Length? SensorAltitude = null,
    [In("expect", "advisory the scenario is to raise", Default = "not checked")] AdvisoryKind? Expect = null,
    [In("tE", "when that advisory is to begin", "s", Min = 0, Max = 3600, Default = "not checked")] Duration? ExpectAt = null,
    [In("number", "number of the intruder on the bus; 0 for none", Min = 0, Max = 31, Default = "0")] int Number = 0);

/// <summary>A ramp scenario of one simulated target: what the display should show second by second, when advisories begin and end, and by how much each may differ.</summary>
/// <remarks>
/// Straight flight. The rows follow modified time; the table of advisories gives the band between modified and plain time. A traffic advisory is shown at least 8 s.
/// Check value: 10 nmi ahead, same altitude, closing at 300 kt: a traffic advisory between 99.716 and 100.000 s (level A), 88.612 and 90.000 s (level B).
/// </remarks>
public sealed class TrafficScenario : ICalculation<TrafficScenarioInput>
{
    private static readonly Source Display = new("FAA, Introduction to TCAS II", "version 7.1", "traffic display: symbols and tags");
    private static readonly Source Trend = new("FAA, Introduction to TCAS II", "version 7.1", "trend arrow from 500 ft/min; advisory shown at least 8 s", Basis.Memory);
    private static readonly Source BearingRule = new("RTCA DO-185", "", "bearing error 9° rms, 27° peak", Basis.Memory);
    private static readonly Source Times = new("NASA, WellClear library, tcas_tau and horizontal_RA", "5912c270", "modified tau");

    /// <inheritdoc/>
    public static CalculationInfo<TrafficScenarioInput> Info { get; } = new(
        "traffic-scenario", "Traffic scenario", Discipline.Traffic,
        "What a traffic display should show during a simulated encounter, second by second",
        "R='4 nmi' B='0 deg' Vt='300 kt' T='180 deg' h='1100 ft' w='-600 ft/min' lasts='60 s' dt='5 s'", Times, Display, Trend, BearingRule);

    /// <summary>The encounter at the start.</summary>
    public static Encounter Start(TrafficScenarioInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Encounter.Of(input.Range, input.Bearing, input.Above, input.Own, input.Other, input.Track, input.Climb);
    }

    /// <summary>The advisories of a scenario, resolution advisories last.</summary>
    public static ImmutableArray<AdvisoryWindow> Advisories(TrafficScenarioInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var (traffic, resolution, _, _) = AlertTable.Of(input.Logic, input.Altitude, input.ReportsAltitude);
        var start = Start(input);
        return [.. new[] { traffic, resolution }.OfType<AlertThresholds>().SelectMany(a => AdvisoryWindow.Find(a, start, Lasts(input), 0.25))];
    }

    /// <summary>What the display should show, moment by moment: the rows of the sheet.</summary>
    public static ImmutableArray<DisplayMoment> Shown(TrafficScenarioInput input) => ScenarioTables.Display(input, Start(input), Advisories(input));

    /// <inheritdoc/>
    public static Sheet Run(TrafficScenarioInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (_, _, level, source) = AlertTable.Of(input.Logic, input.Altitude, input.ReportsAltitude);
        s.Note("SL", "sensitivity level", level, input.Logic == TrafficLogic.Tcas2 ? "by our altitude" : "by logic");
        s.Uses(source);
        var start = Start(input);
        s.Step("V", "closing speed at the start", "Vo · cos(B) − Vt · cos(T − B)", new Speed(-start.RangeRate), "kt");
        s.Step("tcpa", "time of the closest point, from its appearance", "R · V / (relative speed)², not before the start", new Duration(Math.Max(0, start.TimeToClosest)), "s", Times);
        s.Step("dcpa", "distance at the closest point", "range at tcpa", new Length(start.MissDistance), "nmi", Times);
        var advisories = Advisories(input);
        ScenarioTables.Add(s, input, start, advisories, level);
        s.Step("n", "advisories", "counted", advisories.Length);
        ScenarioChecks.Add(s, input, start, advisories);
        AddCautions(s, input);
    });

    internal static double Lasts(TrafficScenarioInput input) => (input.Lasts ?? Duration.Of(120, "s")).Si;

    internal static double Update(TrafficScenarioInput input) => (input.Update ?? Duration.Of(1, "s")).Si;

    private static void AddCautions(SheetBuilder s, TrafficScenarioInput input)
    {
        ClosureTime.Caution(s, new(input.Range, input.Bearing, input.Own, input.Other, input.Track, input.Above, input.Climb, input.Altitude, input.Logic, input.ReportsAltitude));
        if (Math.Abs(input.Above.In("ft")) > 2700)
        {
            s.Caution("Displays normally show traffic within 2,700 ft above or below (from memory): select a wider altitude range, or expect nothing at first.");
        }

        s.Caution("Ranges are horizontal; a test set works in slant range, which differs when the target is near and far above or below.");
        s.Caution("What a test set radiates, other aircraft may show as traffic and manoeuvre for: couple by cable or hood where possible, use the least power, and tell air traffic services.", affectsVerdict: true);
    }
}
