using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Planning.Plans;

/// <summary>On which days a plan uses each line of the kit. Of the tasks on what a line is for, those count that take its part or do the kind of work its kind of thing is
/// for; where none does, all tasks on it; where nothing is known, the day the aircraft is opened.</summary>
public static class KitDays
{
    /// <summary>The days; null where there is no plan.</summary>
    public static KitDates? Of(Assessment assessment, JobPlan plan)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Tasks.Count == 0)
        {
            return null;
        }

        var on = Subjects(assessment, plan);
        return new(Opening(plan.Tasks), assessment.Kit.Lines.ToImmutableDictionary(l => l.Key, l => Days(l, plan, on)));
    }

    /// <summary>The day the aircraft is opened: that of the first task that opens or takes out something, else the first day.</summary>
    public static DateOnly Opening(Sequence<PlannedTask> tasks) =>
        DateOnly.FromDateTime(tasks.Where(t => t.Task.Kind is TaskKind.Open or TaskKind.Remove).Select(t => t.Start).DefaultIfEmpty(tasks[0].Start).Min());

    private static (DateOnly First, DateOnly Last) Days(KitLine line, JobPlan plan, ILookup<string, PlannedTask> on)
    {
        bool Takes(PlannedTask t) => line.Part.Length > 0 && (t.Task.Parts.Contains(line.Part) || t.Task.Tools.Contains(line.Part));
        var work = Work(line.Kind);
        PlannedTask[] about = [.. line.For.SelectMany(id => on[id]).Distinct()];
        PlannedTask[][] choices =
        [
            [.. about.Concat(line.Kind is KitKind.Wire or KitKind.Tool or KitKind.TestGear ? plan.Tasks : []).Where(t => Takes(t) || work.Contains(t.Task.Kind)).Distinct()],
            about,
            [.. plan.Tasks.Where(Takes)],
        ];
        var found = line.Kind is KitKind.Tool or KitKind.TestGear && choices[2].Length > 0 ? choices[2] : Array.Find(choices, c => c.Length > 0);
        return found is null ? (Opening(plan.Tasks), DateOnly.FromDateTime(plan.Finish)) : (DateOnly.FromDateTime(found.Min(t => t.Start)), DateOnly.FromDateTime(found.Max(t => t.End)));
    }

    // The work for which a kind of thing is taken out of the kit.
    private static TaskKind[] Work(KitKind kind) => kind switch
    {
        KitKind.Wire or KitKind.Marking => [TaskKind.Cut],
        KitKind.Contact or KitKind.Terminal or KitKind.Shield or KitKind.Connector or KitKind.Backshell or KitKind.Plug or KitKind.Tool => [TaskKind.Terminate],
        KitKind.Clamp or KitKind.Tie => [TaskKind.RunWire],
        KitKind.Rivet or KitKind.AnchorNut or KitKind.Doubler => [TaskKind.Rivet],
        KitKind.Drill => [TaskKind.Drill],
        KitKind.Sealant => [TaskKind.Seal],
        KitKind.TestGear => [TaskKind.Test, TaskKind.HarnessCheck, TaskKind.PrePower],
        _ => [TaskKind.Mount],
    };

    // The tasks on an id of the change, a connector of it ('XPD1 P1'), or a segment.
    private static ILookup<string, PlannedTask> Subjects(Assessment assessment, JobPlan plan)
    {
        var byId = plan.Tasks.ToDictionary(t => t.Task.Id, StringComparer.Ordinal);
        IEnumerable<(string Id, PlannedTask Task)> Tasks(string id, params IEnumerable<string> about) => byId.TryGetValue(id, out var task) ? about.Select(a => (a, task)) : [];
        return plan.Tasks.Where(t => t.Task.Source.Count('/') == 2).Select(t => (Id: t.Task.Source[(t.Task.Source.LastIndexOf('/') + 1)..], Task: t))
            .Concat(assessment.Circuits.SelectMany(c => Tasks("CUT-" + c.Circuit.Bundle, c.Circuit.Id, c.Circuit.Cable)))
            .Concat(Ends.Of(assessment).SelectMany(e => Tasks("TERM-" + e.Name, [e.Name.Replace('-', ' '), e.Item, .. e.Circuits.SelectMany(c => new[] { c.Circuit.Id, c.Circuit.Cable })])))
            .Concat(assessment.Circuits.SelectMany(c => (c.Way?.Segments ?? []).SelectMany(s => Tasks($"RUN-{c.Circuit.Bundle}-{WorkedIn(assessment.Job.Aircraft, s)}", s))))
            .Where(x => x.Id.Length > 0).Distinct().ToLookup(x => x.Id, x => x.Task, StringComparer.Ordinal);
    }

    // As bundles are run: by the zone in which a segment is worked.
    private static string WorkedIn(Aircraft aircraft, string segment) => aircraft.Segments?.Find(segment) is { } known ? Ways.WorkedIn(aircraft, known) : "";
}
