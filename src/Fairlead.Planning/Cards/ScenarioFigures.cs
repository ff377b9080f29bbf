using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Cards;

/// <summary>What a display must show of simulated traffic, at a step that a card has room for and wherever a mark changes, to be ticked or written beside.</summary>
internal static class ScenarioFigures
{
    private const int MostTimes = 30;
    private static readonly int[] Steps = [5, 10, 15, 30, 60, 120];

    public static CardTable Of(Sequence<ExpectedTrack> tracks)
    {
        var last = tracks.Max(t => t.Moments[^1].Second);
        var step = Steps.FirstOrDefault(s => last / s <= MostTimes, Steps[^1]);
        var rows = tracks.SelectMany(t => Times(t, step)).Distinct().Order().SelectMany(second => tracks.Select(t => Row(t, second)).OfType<Sequence<string>>());
        return new CardTable("Expected on the display", ["Time, s", "Target", "Range, nmi", "Bearing", "Altitude", "Shown, and heard", "As told", "Seen instead"], rows.ToSequence())
        {
            Note = $"Every {NumberFormat.Text(step)} s on the clock of the scenario, and where a mark changes; the sheets have every second. An advisory may begin an update late, and as late as the lines below say. "
                + "The call is heard once as its advisory begins, in the words of the equipment's data, and nothing otherwise. Altitude: hundreds of feet above or below us, and the arrow. Other traffic: open diamond; proximate: filled diamond; traffic advisory: filled amber circle; resolution advisory: filled red square; where the equipment's manual differs, it holds.",
        };
    }

    // When it appears and disappears, at each step, and when its mark changes.
    private static IEnumerable<double> Times(ExpectedTrack track, int step)
    {
        var moments = track.Moments;
        return moments.Where((m, i) => i == 0 || i == moments.Count - 1 || m.Mark != moments[i - 1].Mark || Math.Floor(m.Second / step) > Math.Floor(moments[i - 1].Second / step)).Select(m => m.Second);
    }

    // The moment shown at a second is the last that has come; none before the target appears and after it disappears.
    private static Sequence<string>? Row(ExpectedTrack track, double second)
    {
        var at = track.Moments.Count(m => m.Second <= second) - 1;
        if (at < 0 || second > track.Moments[^1].Second)
        {
            return null;
        }

        var now = track.Moments[at];
        var altitude = now.Arrow == "none" ? now.Tag : $"{now.Tag} {now.Arrow}";
        return [NumberFormat.Text(Math.Round(second, 1)), track.Target, NumberFormat.Text(Math.Round(now.Range.In("nmi"), 1)), Bearing(now.Bearing), altitude, Shown(now, at == 0 ? TrafficMark.Other : track.Moments[at - 1].Mark), "", ""];
    }

    private static string Shown(DisplayMoment now, TrafficMark before) => now.Mark switch
    {
        TrafficMark.Resolution => "resolution advisory" + Call(now.Mark, before),
        TrafficMark.Traffic => "traffic advisory" + Call(now.Mark, before),
        TrafficMark.Proximate => "proximate",
        _ => "other",
    };

    private static string Call(TrafficMark now, TrafficMark before) => now > before ? ", call heard" : "";

    private static string Bearing(Angle bearing) => Math.Round(bearing.In("°")) switch
    {
        0 => "ahead",
        180 => "behind",
        < 0 and var left => $"{NumberFormat.Text(-left)}° left",
        var right => $"{NumberFormat.Text(right)}° right",
    };
}
