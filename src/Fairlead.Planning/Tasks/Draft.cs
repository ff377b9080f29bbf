using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Tasks;

/// <summary>The tasks as they are derived, one after the other.</summary>
internal sealed class Draft(Assessment assessment)
{
    private readonly List<JobTask> tasks = [];

    public Assessment Assessment { get; } = assessment;

    public Job Job { get; } = assessment.Job;

    public Change Change { get; } = assessment.Job.Change;

    public Aircraft Aircraft { get; } = assessment.Job.Aircraft;

    /// <summary>The test cards: every test task is one of them.</summary>
    public TestPlan Tests { get; } = TestPlan.Of(assessment);

    public LabourTable Labour { get; } = LabourTable.Of(assessment.Job);

    public IReadOnlyList<JobTask> Tasks => tasks;

    /// <summary>Every opened panel, those that must be opened first included, in the order of the aircraft.</summary>
    public required Sequence<Panel> Opened { get; init; }

    /// <summary>Adds a task: it waits for its panels to be opened, and takes the time that the job states for it, if it does.</summary>
    public JobTask Add(JobTask task, IEnumerable<Wait>? after = null)
    {
        var opens = task.Kind is TaskKind.Open or TaskKind.Close or TaskKind.Controls or TaskKind.ZoneControls ? [] : task.Panels.Select(p => new Wait("OPEN-" + p, $"panel {p} is in the way"));
        var waits = opens.Concat(after ?? []).Where(w => w.Task != task.Id).GroupBy(w => w.Task, StringComparer.Ordinal).Select(g => g.MaxBy(w => w.Lag)! with { Hold = g.Any(w => w.Hold) });
        var whole = task with { After = waits.ToSequence(), Time = Labour.ForTask(task.Id) ?? task.Time };
        tasks.Add(whole);
        return whole;
    }

    /// <summary>Waits for every task of some kinds derived so far.</summary>
    public IEnumerable<Wait> All(string why, params TaskKind[] kinds) => tasks.Where(t => kinds.Contains(t.Kind)).Select(t => new Wait(t.Id, why));

    /// <summary>Waits for every task of some kinds derived so far; the log holds the work until they are finished.</summary>
    public IEnumerable<Wait> Held(string why, params TaskKind[] kinds) => All(why, kinds).Select(w => w with { Hold = true });

    /// <summary>What is finished before anything of the aircraft is taken apart or changed: it is seen and tested as found, which takes power, the kit is complete, and the basis of
    /// its approval is recorded. The log holds the work until it is.</summary>
    public IEnumerable<Wait> InHand =>
    [
        new("SURVEY", "the aircraft is surveyed, photographed and tested as found", Hold: true),
        new("KIT", "the kit is complete before the aircraft is taken apart", Hold: true),
        new("APPROVAL", "the approval is in hand before the aircraft is taken apart", Hold: true),
        .. tasks.Where(t => t.Card is { Stage: WorkStage.Before }).Select(t => new Wait(t.Id, "it shows the aircraft as found", Hold: true)),
    ];

    /// <summary>Waits for the tasks of some names, those that are not there left out.</summary>
    public IEnumerable<Wait> These(string why, params IEnumerable<string> ids) => ids.Where(id => tasks.Any(t => t.Id == id)).Select(id => new Wait(id, why));

    /// <summary>Whether a task is done in a zone, reaches into it, or is done behind some panels: also one at the skin, whose own zone is outside, is done in the zones of the panels that are open for it.</summary>
    public bool In(JobTask task, string zone, Sequence<string> panels) =>
        task.Zone == zone || task.Passes.Contains(zone) || task.Panels.Any(p => panels.Contains(p) || Aircraft.Panels?.Find(p)?.Zone == zone);

    /// <summary>The work in a zone or behind some panels that throws swarf.</summary>
    public IEnumerable<JobTask> Metal(string zone, Sequence<string> panels) =>
        tasks.Where(t => (t.Drilled || t.Kind is TaskKind.Drill or TaskKind.Rivet || (t.Kind == TaskKind.Extra && t.Crew.Contains(Skills.Structure) && !t.Outside)) && In(t, zone, panels));

    /// <summary>Controlled tools with a word in their name.</summary>
    public IEnumerable<string> Tools(params string[] words) => words.Select(w => Aircraft.Tools.Each().FirstOrDefault(t => t.Name.Contains(w, StringComparison.OrdinalIgnoreCase))?.Id).OfType<string>();

    /// <summary>The first instrument that measures something.</summary>
    public IEnumerable<string> Instruments(IEnumerable<string> measured) =>
        measured.Select(m => Aircraft.Instruments.Each().FirstOrDefault(i => i.Measures.Contains(m))?.Id).OfType<string>();
}

internal static class Lists
{
    /// <summary>A catalogue that was left out has no entities.</summary>
    public static IEnumerable<T> Each<T>(this Catalog<T>? catalog)
        where T : class, IEntity => catalog ?? Catalog<T>.Empty;
}
