using System.Collections.Immutable;
using Fairlead.Calculations.Radio;

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
    [In("dB", "greatest error of the bearing shown", "°", Min = 1, Max = 180, Default = "27°")] Angle? BearingError = null);

/// <summary>A ramp scenario of one simulated target: what the display should show second by second, when advisories begin and end, and by how much each may differ.</summary>
/// <remarks>
/// Straight flight. The rows follow modified time; the table of advisories gives the band between modified and plain time. A traffic advisory is shown at least 8 s.
/// Check value: 10 nmi ahead, same altitude, closing at 300 kt: a traffic advisory between 99.716 and 100.000 s (level A), 88.612 and 90.000 s (level B).
/// </remarks>
public sealed class TrafficScenario : ICalculation<TrafficScenarioInput>
{
    private const double LeastShown = 8;
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

    /// <inheritdoc/>
    public static Sheet Run(TrafficScenarioInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (_, _, level, source) = AlertTable.Of(input.Logic, input.Altitude, input.ReportsAltitude);
        s.Note("SL", "sensitivity level", level, input.Logic == TrafficLogic.Tcas2 ? "by our altitude" : "by logic");
        s.Uses(source);
        var start = Start(input);
        s.Step("V", "closing speed at the start", "Vo · cos(B) − Vt · cos(T − B)", new Speed(-start.RangeRate), "kt");
        s.Step("tcpa", "time of the closest point", "R · V / (relative speed)², not before the start", new Duration(Math.Max(0, start.TimeToClosest)), "s", Times);
        s.Step("dcpa", "distance at the closest point", "range at tcpa", new Length(start.MissDistance), "nmi", Times);
        var advisories = Advisories(input);
        s.Table("Advisories", ["advisory", "start, earliest", "start, latest", "end, earliest", "end, latest"], advisories.Select(a => Row(a, (input.Update ?? Duration.Of(1, "s")).Si)));
        s.Table("Expected on the display", ["time", "range", "bearing, + right", "relative altitude", "tag", "arrow", "symbol"], Rows(input, start, advisories));
        s.Table("Tolerances", ["what", "may differ by", "because"], Tolerances(input));
        s.Step("n", "advisories", "counted", advisories.Length);
        AddCautions(s, input);
    });

    private static double Lasts(TrafficScenarioInput input) => (input.Lasts ?? Duration.Of(120, "s")).Si;

    private static IEnumerable<ImmutableArray<SheetValue>> Rows(TrafficScenarioInput input, Encounter start, ImmutableArray<AdvisoryWindow> advisories)
    {
        var (lasts, step) = (Lasts(input), (input.Step ?? Duration.Of(1, "s")).Si);
        for (var i = 0; i * step <= lasts + 1e-9; i++)
        {
            var e = start.After(i * step);
            var above = new Length(e.H);
            yield return
            [
                new Duration(i * step).As("s"), new Length(e.Range).As("nmi"), Bearing(e).As("°"),
                input.ReportsAltitude ? above.As("ft") : "not reported",
                input.ReportsAltitude ? TrafficTag.Altitude(above) : "none",
                input.ReportsAltitude ? TrafficTag.Arrow(input.Climb) : "none",
                Symbol(input, e, i * step, advisories),
            ];
        }
    }

    // From above −180° to 180°: dead astern is 180°, whichever side rounding puts it.
    private static Angle Bearing(Encounter e)
    {
        var degrees = Math.Round(new Angle(Math.Atan2(e.X, e.Y)).In("°"), 6);
        return Angle.Of(degrees <= -180 ? 180 : degrees, "°");
    }

    private static string Symbol(TrafficScenarioInput input, Encounter e, double time, ImmutableArray<AdvisoryWindow> advisories)
    {
        var now = advisories.LastOrDefault(a => time >= a.EarliestStart && time < Math.Max(a.LatestEnd ?? double.PositiveInfinity, a.EarliestStart + LeastShown));
        return now is null ? TrafficTag.Symbol(e, input.ReportsAltitude) : now.Advisory == "resolution advisory" ? "filled red square (resolution advisory)" : "filled amber circle (traffic advisory)";
    }

    // An update may come a full interval late, and what is shown lasts at least 8 s.
    private static ImmutableArray<SheetValue> Row(AdvisoryWindow a, double update)
    {
        SheetValue At(double? seconds, string otherwise) => seconds is { } t ? new Duration(t).As("s") : otherwise;
        double? Shown(double? start, double? end) => start is { } from && end is { } to ? Math.Max(to, from + LeastShown) : null;
        return
        [
            a.Advisory, At(a.EarliestStart, ""), At(a.LatestStart + update, "none by plain time"),
            At(a.LatestStart is null ? null : Shown(a.EarliestStart, a.EarliestEnd), a.LatestStart is null ? "none by plain time" : "after the scenario"),
            At(Shown((a.LatestStart ?? a.EarliestStart) + update, a.LatestEnd + update), "after the scenario"),
        ];
    }

    private static IEnumerable<ImmutableArray<SheetValue>> Tolerances(TrafficScenarioInput input) =>
    [
        ["range", (Propagation.Distance(ReplyDelay.Tolerance(ReplyKind.ModeC)) / 2).As("nmi"), "turn-round of a transponder ± 0.5 µs, and the display's own steps"],
        ["bearing", (input.BearingError ?? Angle.Of(27, "°")).As("°"), "peak error; 9° rms"],
        ["tag", Length.Of(100, "ft").As("ft"), "both altitudes come in steps of up to 100 ft"],
        ["arrow", "either way near 500 ft/min", "the rate is tracked from those steps"],
        ["symbol and advisories", (input.Update ?? Duration.Of(1, "s")).As("s"), "an update late; see the table of advisories for plain and modified time"],
    ];

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
