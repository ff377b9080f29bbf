using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Server.Work;

/// <summary>The derived tasks and test cards as the log and the release gate require them: under the ids that the cards carry.</summary>
public static class Requirements
{
    // Panels, controls and the release itself the log follows by other entries.
    private static readonly TaskKind[] Elsewhere = [TaskKind.Open, TaskKind.Close, TaskKind.Controls, TaskKind.Release];

    /// <summary>What an assessed job requires.</summary>
    public static Required Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var tasks = TaskList.Of(assessment);
        var byId = tasks.ToDictionary(t => t.Id, StringComparer.Ordinal);
        var (required, controls) = (Required.Of(assessment.Job), Controls(assessment.Job.Aircraft, tasks).ToSequence());
        return required with
        {
            Tasks = tasks.Where(t => t.Card is null && !Elsewhere.Contains(t.Kind)).Select(t => Task(t, byId) with { Moves = Moves(t, required).ToSequence(), VoidAfter = t.Kind == TaskKind.ZoneControls ? InZone(assessment.Job.Aircraft, t, byId) : [] }).ToSequence(),
            Tests = tasks.Where(t => t.Card is not null).Select(t => Test(t, byId)).ToSequence(),
            Controls = controls,
            Asks = tasks.SelectMany(t => JobCards.Signatures(t)).Select(s => new RequiredSignature(s.Subject, s.Entered, s.Scope)).Where(s => s.Scope.Length > 0)
                .Concat(controls.Select(p => new RequiredSignature("controls/" + p, "work", Skills.Inspection))).Distinct().ToSequence(),
            Certifying = tasks.FirstOrDefault(t => t.Kind == TaskKind.Release)?.Authorisation ?? "",
            Panels = tasks.Where(t => t.Kind == TaskKind.Open).Select(t => new RequiredPanel(t.Panels[0], Holds(t, byId), Holds(byId["CLOSE-" + t.Panels[0]], byId))).ToSequence(),
        };
    }

    private static RequiredTask Task(JobTask task, Dictionary<string, JobTask> byId) => new(task.Id, task.Title, task.Panels, task.Independent)
    {
        After = Holds(task, byId), Stages = task.Stages.Select(s => new RequiredStage(s.Id, s.Text)).ToSequence(), Photographs = task.Photographs, Clear = task.Clear,
        Sealant = task.Kind == TaskKind.Seal, Against = task.Against, UndoneBy = task.UndoneBy.Length > 0 ? JobCards.SubjectOf(byId[task.UndoneBy]) : "",
    };

    private static IEnumerable<string> Moves(JobTask task, Required required) =>
    [
        .. task.Removes.Length > 0 ? ["removed part/" + task.Removes] : Array.Empty<string>(),
        .. task.Fits.Length > 0 ? ["fitted part/" + task.Fits, .. required.ConnectorsOf(task.Fits).Select(c => "plugged connector/" + c)] : Array.Empty<string>(),
    ];

    // Behind a panel of a zone that has a check of its own, the controls are checked with it, where the panel does not ask for more.
    private static IEnumerable<string> Controls(Aircraft aircraft, Sequence<JobTask> tasks)
    {
        var checks = tasks.Where(t => t.Kind == TaskKind.ZoneControls).Select(t => t.Zone).ToHashSet(StringComparer.Ordinal);
        return (aircraft.Panels ?? Catalog<Panel>.Empty).Where(p => p.Controls || (!checks.Contains(p.Zone) && aircraft.Zones.Find(p.Zone)?.Controls == true)).Select(p => p.Id);
    }

    // Whatever panel of the zone is opened, planned or not, and whatever work in it is done again, the check comes after it.
    private static Sequence<string> InZone(Aircraft aircraft, JobTask check, Dictionary<string, JobTask> byId) =>
        (aircraft.Panels ?? Catalog<Panel>.Empty).Where(p => p.Zone == check.Zone).Select(p => "panel/" + p.Id).Concat(check.After.Select(w => JobCards.SubjectOf(byId[w.Task]))).Distinct(StringComparer.Ordinal).ToSequence();

    /// <summary>The test of a task that is a test card, without what comes before it.</summary>
    internal static RequiredTest Test(JobTask task) => new(task.Id, task.Title, task.Card!.Lines.Select(l => Line(task.Card, l)).ToSequence())
    {
        Independent = task.Independent, Radiates = task.Card.Radiates, AsFound = task.Card.Stage == WorkStage.Before,
    };

    private static RequiredTest Test(JobTask task, Dictionary<string, JobTask> byId) => Test(task) with { After = Holds(task, byId) };

    private static RequiredLine Line(TestCard card, TestLine line) => new(line.Id, $"{line.From}{(line.To.Length > 0 ? $" to {line.To}" : "")}: {line.Expected}", line.Unit, line.Least, line.Most, line.IsNumber ? "" : line.Expected, card.Kind == TestKind.Settings);

    // A panel in the way is open by itself; only what has to be finished first holds.
    private static Sequence<Hold> Holds(JobTask task, Dictionary<string, JobTask> byId) => task.After.Where(w => w.Hold).Select(w => new Hold(JobCards.SubjectOf(byId[w.Task]), w.Why)).ToSequence();
}
