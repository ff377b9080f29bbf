using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Planning.Tasks;

/// <summary>The tasks of a job, derived from its change: what must be opened and closed again, what comes out and goes in, wires, checks, tests, records and release.</summary>
public static class TaskList
{
    /// <summary>All tasks, each after all that it waits for. The same assessment gives the same tasks.</summary>
    public static Sequence<JobTask> Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var draft = new Draft(assessment) { Opened = Opened(assessment) };
        Papers(draft);
        draft.Add(Survey(draft));
        TestTasks.Before(draft);
        Extra(draft, WorkStage.Before);
        AccessTasks.Open(draft);
        RemovalTasks.Add(draft);
        MountTasks.Add(draft);
        Extra(draft, WorkStage.Work);
        WiringTasks.Add(draft);
        TestTasks.Add(draft);
        Extra(draft, WorkStage.Tests);
        AccessTasks.Close(draft);
        Verify(draft);
        TestTasks.After(draft);
        Extra(draft, WorkStage.Outside);
        Extra(draft, WorkStage.Closed);
        Records(draft);
        return Sorted(draft.Tasks);
    }

    /// <summary>The panels to be opened, those in front of them included.</summary>
    public static Sequence<Panel> Opened(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var (panels, change) = (assessment.Job.Aircraft.Panels ?? Catalog<Panel>.Empty, assessment.Job.Change);
        var segments = assessment.Circuits.SelectMany(c => c.Way?.Segments ?? []).Distinct(StringComparer.Ordinal).SelectMany(s => assessment.Job.Aircraft.Segments?.Find(s)?.Panels ?? []);
        var left = new Stack<string>(change.Remove.Each().SelectMany(r => r.Panels).Concat(change.Fit.Each().SelectMany(f => f.Panels))
            .Concat(change.Antennas.Each().SelectMany(a => a.Panels)).Concat(change.Tasks.Each().SelectMany(t => t.Panels)).Concat(segments));
        var found = new HashSet<string>(StringComparer.Ordinal);
        while (left.TryPop(out var id))
        {
            if (found.Add(id))
            {
                foreach (var before in panels.Find(id)?.After ?? default)
                {
                    left.Push(before);
                }
            }
        }

        return panels.Where(p => found.Contains(p.Id)).ToSequence();
    }

    private static JobTask Survey(Draft draft) => new(
        "SURVEY", TaskKind.Survey, "Look the aircraft over, photograph it as found, compare it with the records, and test every system before it is touched", "", draft.Labour.For("survey"), [Skills.Avionics], "change")
    {
        Authorisation = Skills.Avionics, Photographs = true,
    };

    // What must be in hand before the aircraft is taken apart.
    private static void Papers(Draft draft)
    {
        var approval = draft.Job.Order.Approval;
        draft.Add(new JobTask("APPROVAL", TaskKind.Record, $"Write down the approval basis, {Words.Kebab(approval.Basis.ToString()).Replace('-', ' ')}, {approval.Reference}, and compare the revisions of its data", "", draft.Labour.For("approval"), [Skills.Inspection], "job/approval")
        {
            Authorisation = Skills.Inspection, Against = approval.Reference == "pending" ? "the approval is still pending" : "",
        });
        var missing = draft.Assessment.Kit.Lines.Where(l => l.State == KitState.Short).Select(l => l.Part).Distinct(StringComparer.Ordinal).ToArray();
        draft.Add(new JobTask("KIT", TaskKind.Record, "Count the kit: everything on the shelf, with release papers, shelf life and batch", "", draft.Labour.For("kit"), [Skills.Inspection], "change")
        {
            Authorisation = Skills.Inspection, Against = missing.Length == 0 ? "" : $"the stores do not have {string.Join(", ", missing)}",
        });
    }

    private static void Extra(Draft draft, WorkStage stage)
    {
        var after = stage switch
        {
            WorkStage.Before => [new Wait("SURVEY", "the aircraft is looked over first")],
            WorkStage.Work => [new Wait("BATTERY-OFF", "the battery is off before work", Hold: true)],
            WorkStage.Tests => draft.All("software and settings are verified first", TaskKind.Configure).Concat(draft.These("power is on", "BATTERY-ON-2")),
            _ => (IEnumerable<Wait>)[new Wait("VERIFY", "the aircraft is closed and clear", Hold: true)],
        };
        foreach (var extra in draft.Change.Tasks.Each().Where(t => t.Stage == stage))
        {
            var skill = extra.Skill.Length > 0 ? extra.Skill : Skills.Structure;
            draft.Add(
                new JobTask("EXTRA-" + extra.Id, TaskKind.Extra, extra.Name, extra.Zone, TaskTime.Of(extra.Time), [skill], $"change/tasks/{extra.Id}")
                {
                    Panels = extra.Panels, Parts = extra.Takes.Select(t => t.Part).ToSequence(), Outside = stage == WorkStage.Outside, Authorisation = Skills.Authorisation(skill),
                },
                after.Concat(stage == WorkStage.Work && skill == Skills.Structure ? [new Wait("APPROVAL", "the approval is in hand before metal is cut", Hold: true)] : []).Concat(extra.After.Select(a => new Wait("EXTRA-" + a, "the job says that it comes first"))));
        }
    }

    private static void Verify(Draft draft) => draft.Add(
        new JobTask("VERIFY", TaskKind.Inspect, "Verify that the aircraft is clear of tools, parts and rags, and that every panel is back", "", draft.Labour.For("verification"), [Skills.Inspection], "change") { Authorisation = Skills.Inspection, Clear = true },
        draft.Held("everything is closed and its controls are checked", TaskKind.Close, TaskKind.Controls, TaskKind.ZoneControls).Concat(draft.All("its work is done", [.. Enum.GetValues<TaskKind>().Where(k => k is not (TaskKind.Paint or TaskKind.Close or TaskKind.Controls or TaskKind.ZoneControls))])));

    private static void Records(Draft draft)
    {
        // What comes after closing and takes no parts changes no weight: a weighing is planned before the record, and the log holds the record for it no more than for a check flight.
        var late = draft.Change.Tasks.Each().Where(t => t.Stage is WorkStage.Outside or WorkStage.Closed && t.Takes.Count == 0).Select(t => "EXTRA-" + t.Id).ToHashSet(StringComparer.Ordinal);
        draft.Add(
            new JobTask("WEIGHT", TaskKind.Record, "Revise the weight and balance record and the equipment list", "", draft.Labour.For("weight-and-balance"), [Skills.Inspection], "aircraft/weighing"),
            draft.Held("what came out and went in is known, or weighed", TaskKind.Remove, TaskKind.Mount, TaskKind.Seal, TaskKind.RunWire, TaskKind.Terminate, TaskKind.Connect, TaskKind.Extra).Select(w => late.Contains(w.Task) ? w with { Hold = false } : w));
        draft.Add(
            new JobTask("LOADS", TaskKind.Record, "Bring the electrical load analysis up to date", "", draft.Labour.For("load-analysis"), [Skills.Avionics], "change/power") { Authorisation = Skills.Avionics },
            draft.All("the boxes are in", TaskKind.Connect));
        draft.Add(
            new JobTask("RELEASE", TaskKind.Release, "Look the papers through against the work, and release the aircraft to service", "", draft.Labour.For("release"), [Skills.Release], "job")
            {
                Authorisation = Skills.Release, Releases = draft.Job.Order.Number, Cautions = ["The release gate must be open; the person who certifies decides, by the approved data."],
            },
            draft.Tasks.Where(t => t.Kind != TaskKind.Paint).Select(t => new Wait(t.Id, "it is done before release"))
                .Concat(draft.Tasks.Where(t => t.Kind == TaskKind.Paint).Select(t => new Wait(t.Id, "paint is dry before release", Cure.Paint))));
    }

    // Each after all that it waits for, otherwise in the order of derivation; and without the waits that follow from others.
    private static Sequence<JobTask> Sorted(IReadOnlyList<JobTask> tasks)
    {
        var known = tasks.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        var left = tasks.Select(t => t with { After = t.After.Where(w => known.Contains(w.Task)).ToSequence() }).ToList();
        var (sorted, done) = (new List<JobTask>(), new HashSet<string>(StringComparer.Ordinal));
        while (left.Count > 0)
        {
            var at = left.FindIndex(t => t.After.All(w => done.Contains(w.Task)));
            if (at < 0)
            {
                throw new InvalidOperationException($"tasks wait for each other in a circle: {string.Join(", ", left.Select(t => t.Id).Take(8))}");
            }

            sorted.Add(left[at]);
            done.Add(left[at].Id);
            left.RemoveAt(at);
        }

        return Reduction.Of(sorted);
    }
}
