using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations.Radio;

namespace Fairlead.Calculations.Traffic;

/// <summary>The tables of a scenario: advisories, what the display shows and what the bus carries second by second, and the tolerances.</summary>
internal static class ScenarioTables
{
    private const double LeastShown = 8;
    private static readonly Source Bus = new("ARINC 429 part 1-17", "17 May 2004, with errata 1", "attachment 6, labels 130 to 132");

    public static void Add(SheetBuilder s, TrafficScenarioInput input, Encounter start, ImmutableArray<AdvisoryWindow> advisories, string level)
    {
        s.Table("Advisories", ["advisory", "start, earliest", "start, latest", "end, earliest", "end, latest"], advisories.Select(a => Advisory(input, a)));
        s.Table("Expected on the display", ["time", "range", "bearing, + right", "relative altitude", "tag", "arrow", "symbol", "altitude reply"], Moments(input, start).Select(m => Shown(input, m.Time, m.At, advisories)));
        if (input.Number > 0)
        {
            s.Table("Expected on the bus", ["time", "range, label 130", "relative altitude, label 131", "bearing, label 132"], Moments(input, start).Select(m => Words(input, m.Time, m.At, advisories, level)));
            s.Uses(Bus);
        }

        s.Table("Tolerances", ["what", "may differ by", "because"], Tolerances(input));
    }

    /// <summary>What the display should show, moment by moment.</summary>
    public static ImmutableArray<DisplayMoment> Display(TrafficScenarioInput input, Encounter start, ImmutableArray<AdvisoryWindow> advisories) => [.. Moments(input, start).Select(m => At(input, m.Time, m.At, advisories))];

    private static IEnumerable<(double Time, Encounter At)> Moments(TrafficScenarioInput input, Encounter start)
    {
        var (lasts, step) = (TrafficScenario.Lasts(input), (input.Step ?? Duration.Of(1, "s")).Si);
        for (var i = 0; i * step <= lasts + 1e-9; i++)
        {
            yield return (i * step, start.After(i * step));
        }
    }

    private static SheetValue Clock(TrafficScenarioInput input, double seconds) => new Duration(seconds + input.From.Si).As("s");

    private static ImmutableArray<SheetValue> Shown(TrafficScenarioInput input, double time, Encounter e, ImmutableArray<AdvisoryWindow> advisories)
    {
        var (above, now) = (new Length(e.H), At(input, time, e, advisories));
        return
        [
            Clock(input, time), now.Range.As("nmi"), now.Bearing.As("°"), input.ReportsAltitude ? above.As("ft") : "not reported",
            now.Tag, now.Arrow, TrafficTag.Symbol(now.Mark), input.ReportsAltitude ? Reply(input.Altitude + above) : "none",
        ];
    }

    private static DisplayMoment At(TrafficScenarioInput input, double time, Encounter e, ImmutableArray<AdvisoryWindow> advisories) => new(
        time + input.From.Si, new Length(e.Range), Bearing(e),
        input.ReportsAltitude ? TrafficTag.Altitude(new Length(e.H)) : "none", input.ReportsAltitude ? TrafficTag.Arrow(input.Climb) : "none",
        Now(time, advisories) switch
        {
            null => TrafficTag.Proximate(e, input.ReportsAltitude) ? TrafficMark.Proximate : TrafficMark.Other,
            { IsResolution: true } => TrafficMark.Resolution,
            _ => TrafficMark.Traffic,
        });

    // What the simulated transponder must send for that altitude.
    private static string Reply(Length altitude)
    {
        var hundreds = (int)Math.Round(Math.Round(altitude.In("ft"), 6) / 100, MidpointRounding.AwayFromZero);
        return hundreds is >= AltitudeEncoding.Lowest and <= AltitudeEncoding.Highest
            ? string.Create(CultureInfo.InvariantCulture, $"{100 * hundreds} ft, code {ModeACode.Text(AltitudeEncoding.Gillham(hundreds))}") : "no code reaches there";
    }

    private static ImmutableArray<SheetValue> Words(TrafficScenarioInput input, double time, Encounter e, ImmutableArray<AdvisoryWindow> advisories, string level)
    {
        static string Text(uint? word) => word is { } w ? Arinc429.Text(w) : "beyond the word";
        var sensitivity = input.Logic == TrafficLogic.Tcas2 ? Math.Min(7, level[0] - '0') : 0;
        var display = Now(time, advisories) switch
        {
            null => TrafficTag.Proximate(e, input.ReportsAltitude) ? 3 : 0,
            { IsResolution: true } => 2,
            _ => 1,
        };
        return
        [
            Clock(input, time), Text(IntruderWords.Range(input.Number, new Length(e.Range), sensitivity)),
            Text(IntruderWords.Altitude(input.Number, input.ReportsAltitude ? new Length(e.H) : null, input.Climb)), Text(IntruderWords.Bearing(input.Number, Bearing(e), display)),
        ];
    }

    // From above −180° to 180°: dead astern is 180°, whichever side rounding puts it.
    private static Angle Bearing(Encounter e)
    {
        var degrees = Math.Round(new Angle(Math.Atan2(e.X, e.Y)).In("°"), 6);
        return Angle.Of(degrees <= -180 ? 180 : degrees, "°");
    }

    // Of two advisories at a time the graver, which stands last.
    private static AdvisoryWindow? Now(double time, ImmutableArray<AdvisoryWindow> advisories) =>
        advisories.LastOrDefault(a => time >= a.EarliestStart && time < Math.Max(a.LatestEnd ?? double.PositiveInfinity, a.EarliestStart + LeastShown));

    // An update may come a full interval late, and what is shown lasts at least 8 s.
    private static ImmutableArray<SheetValue> Advisory(TrafficScenarioInput input, AdvisoryWindow a)
    {
        var update = TrafficScenario.Update(input);
        SheetValue At(double? seconds, string otherwise) => seconds is { } t ? Clock(input, t) : otherwise;
        double? Lasting(double? start, double? end) => start is { } from && end is { } to ? Math.Max(to, from + LeastShown) : null;
        return
        [
            a.Advisory, At(a.EarliestStart, ""), At(a.LatestStart + update, "none by plain time"),
            At(a.LatestStart is null ? null : Lasting(a.EarliestStart, a.EarliestEnd), a.LatestStart is null ? "none by plain time" : "after the scenario"),
            At(Lasting((a.LatestStart ?? a.EarliestStart) + update, a.LatestEnd + update), "after the scenario"),
        ];
    }

    private static ImmutableArray<ImmutableArray<SheetValue>> Tolerances(TrafficScenarioInput input)
    {
        ImmutableArray<ImmutableArray<SheetValue>> display =
        [
            ["range", (Propagation.Distance(ReplyDelay.Tolerance(ReplyKind.ModeC)) / 2).As("nmi"), "turn-round of a transponder ± 0.5 µs, and the display's own steps"],
            ["bearing", (input.BearingError ?? Angle.Of(27, "°")).As("°"), input.BearingError is null ? "peak error; 9° rms" : "as stated"],
            ["tag", Length.Of(100, "ft").As("ft"), "both altitudes come in steps of up to 100 ft"],
            ["arrow", "either way near 500 ft/min", "the rate is tracked from those steps"],
            ["symbol and advisories", new Duration(TrafficScenario.Update(input)).As("s"), "an update late; see the table of advisories for plain and modified time"],
        ];
        return input.Number == 0 ? display : display.Add(["words", "as the values they carry", "and by half a step: 1/32 nmi, 50 ft, 0.09°"]);
    }
}
