using System.Collections.Immutable;

namespace Fairlead.Calculations.Traffic;

/// <summary>When an advisory is asked for, in seconds from the start. Equipment that uses modified time gives it from the earliest start to the latest end;
/// equipment that uses plain time from the latest start to the earliest end, or not at all.</summary>
/// <param name="Advisory">Which.</param>
/// <param name="EarliestStart">Start by modified time.</param>
/// <param name="LatestStart">Start by plain time; null when plain time does not ask for it.</param>
/// <param name="EarliestEnd">End by plain time.</param>
/// <param name="LatestEnd">End by modified time; null when it lasts beyond the scenario.</param>
public sealed record AdvisoryWindow(string Advisory, double EarliestStart, double? LatestStart, double? EarliestEnd, double? LatestEnd)
{
    private const double Fine = 1e-6;

    /// <summary>Whether it is a resolution advisory.</summary>
    public bool IsResolution => Advisory == AlertThresholds.Resolution;

    /// <summary>The windows of an advisory in a scenario of some seconds, sought at a step and then narrowed to a microsecond.</summary>
    public static ImmutableArray<AdvisoryWindow> Find(AlertThresholds thresholds, Encounter start, double seconds, double step)
    {
        ArgumentNullException.ThrowIfNull(thresholds);
        var plain = Windows(t => thresholds.Given(start.After(t), TimeMeasure.Plain), seconds, step);

        // Modified time is never longer than plain time, so every plain window lies within a modified one.
        return [.. Windows(t => thresholds.Given(start.After(t), TimeMeasure.Modified), seconds, step).Select(m =>
        {
            var inside = plain.Where(p => p.From >= m.From - Fine && p.From <= (m.To ?? seconds)).ToArray();
            return new AdvisoryWindow(thresholds.Name, m.From, inside.Length == 0 ? null : inside[0].From, inside.Length == 0 ? null : inside[^1].To, m.To);
        })];
    }

    private static List<(double From, double? To)> Windows(Func<double, bool> given, double seconds, double step)
    {
        var windows = new List<(double From, double? To)>();
        double? from = given(0) ? 0 : null;
        for (var i = 1; (i - 1) * step < seconds; i++)
        {
            var (before, now) = ((i - 1) * step, Math.Min(i * step, seconds));
            if (given(now) == (from is not null))
            {
                continue;
            }

            var change = Change(given, before, now);
            if (from is { } start)
            {
                windows.Add((start, change));
            }

            from = from is null ? change : null;
        }

        if (from is { } open)
        {
            windows.Add((open, null));
        }

        return windows;
    }

    private static double Change(Func<double, bool> given, double low, double high)
    {
        var atLow = given(low);
        while (high - low > Fine)
        {
            var middle = (low + high) / 2;
            (low, high) = given(middle) == atLow ? (middle, high) : (low, middle);
        }

        return high;
    }
}
