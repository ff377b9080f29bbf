using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>A target on the face of the display.</summary>
/// <param name="Track">Its id.</param>
/// <param name="Now">What is shown of it.</param>
/// <param name="X">To the right of us, as a share of the outermost ring.</param>
/// <param name="Y">Behind us, as a share of the outermost ring.</param>
public sealed record Blip(string Track, MomentView Now, double X, double Y)
{
    /// <summary>What is shown, in words.</summary>
    public string Words => string.Join(", ", new[]
    {
        Track, Now.Symbol switch { "resolution" => "resolution advisory", "traffic" => "traffic advisory", "proximate" => "proximate traffic", _ => "other traffic" },
        $"{NumberFormat.Text(Math.Round(Now.Range, 2))} nmi", $"bearing {NumberFormat.Text(Math.Round(Now.Bearing))}°", Now.Tag.Length > 0 ? Now.Tag : "no altitude", Now.Arrow switch { "up" => "climbing", "down" => "descending", _ => "" },
    }.Where(w => w.Length > 0));
}

/// <summary>A scenario being played: which second it is, and how far out the display reaches.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Second">The second, on the clock of the scenario.</param>
/// <param name="Reach">Range of the outermost ring, nmi.</param>
/// <param name="Playing">Whether it goes on by itself.</param>
public sealed record ScenarioPlayer(ScenarioView Scenario, int Second, double Reach, bool Playing)
{
    /// <summary>Ranges the outermost ring may have, nmi.</summary>
    public static ImmutableArray<double> Reaches { get; } = [2, 5, 10, 20, 40];

    /// <summary>The last second.</summary>
    public int Last => (int)Math.Ceiling(Scenario.Tracks.SelectMany(t => t.Moments).Select(m => m.Second).DefaultIfEmpty(0).Max());

    /// <summary>What the display shows now, nearest first. What is beyond the outermost ring is not shown.</summary>
    public IEnumerable<Blip> Blips => Scenario.Tracks.Select(t => (t.Id, Now: At(t))).Where(t => t.Now is not null && t.Now.Range <= Reach).OrderBy(t => t.Now!.Range).Select(t => Place(t.Id, t.Now!));

    /// <summary>Targets that are there, but too far out to be shown.</summary>
    public IEnumerable<string> Beyond => Scenario.Tracks.Where(t => At(t) is { } now && now.Range > Reach).Select(t => t.Id);

    /// <summary>Where something changes: seconds with what begins or ends there.</summary>
    public IEnumerable<(int Second, string What)> Events => Scenario.Tracks.SelectMany(Turns).OrderBy(e => e.Second);

    /// <summary>A scenario at its start, with the smallest reach that shows all of it.</summary>
    public static ScenarioPlayer Of(ScenarioView scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        var far = scenario.Tracks.SelectMany(t => t.Moments).Select(m => m.Range).DefaultIfEmpty(0).Max();
        return new ScenarioPlayer(scenario, 0, Reaches.FirstOrDefault(r => r >= far, Reaches[^1]), Playing: false);
    }

    /// <summary>At another second; one outside the scenario counts as the nearest of it.</summary>
    public ScenarioPlayer To(int second) => this with { Second = Math.Clamp(second, 0, Last) };

    /// <summary>Plays on, from the start when it is over; or stops.</summary>
    public ScenarioPlayer Toggled() => this with { Playing = !Playing, Second = !Playing && Second == Last ? 0 : Second };

    /// <summary>A second later, as it plays; at the end it stops.</summary>
    public ScenarioPlayer Ticked() => !Playing ? this : this with { Second = Math.Min(Second + 1, Last), Playing = Second + 1 < Last };

    private static Blip Place(string id, MomentView now, double reach)
    {
        var (sin, cos) = Math.SinCos(now.Bearing * Math.PI / 180);
        return new Blip(id, now, now.Range / reach * sin, -now.Range / reach * cos);
    }

    private Blip Place(string id, MomentView now) => Place(id, now, Reach);

    private MomentView? At(TrackView track) => track.Moments is [var first, ..] && Second >= first.Second && Second <= track.Moments[^1].Second ? track.Moments.LastOrDefault(m => m.Second <= Second) : null;

    private static IEnumerable<(int Second, string What)> Turns(TrackView track)
    {
        var before = "";
        foreach (var moment in track.Moments.Where(m => m.Symbol != before))
        {
            if (moment.Symbol != before)
            {
                yield return ((int)Math.Ceiling(moment.Second), $"{track.Id} {(before.Length == 0 ? "appears, " : "")}{moment.Symbol switch { "resolution" => "resolution advisory", "traffic" => "traffic advisory", var other => other }}");
                before = moment.Symbol;
            }
        }
    }
}
