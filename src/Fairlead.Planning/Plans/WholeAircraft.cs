using System.Collections;
using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Plans;

/// <summary>The aircraft as a thing that is there once. A test outside needs it whole, and so does whatever radiates: people are kept clear of it. Two such tests never
/// go on at once, nor does any other work on the aircraft meanwhile; work at the bench and at the desk does.</summary>
internal static class WholeAircraft
{
    /// <summary>Its name in the problem.</summary>
    public const string Name = "the aircraft";

    /// <summary>Whether a task needs the aircraft for itself.</summary>
    public static bool Whole(JobTask task) => task.Outside || task.Card is { Radiates: true };

    /// <summary>The aircraft with room for so many, and what each task takes of it: everything, its people, or nothing where it is away from the aircraft or comes before
    /// or after all that needs it whole anyhow.</summary>
    /// <param name="tasks">The tasks, each after all that it waits for.</param>
    /// <param name="waits">Whether a task still waits for what comes before it.</param>
    /// <param name="people">How many people there are.</param>
    public static (Resource Aircraft, Sequence<Sequence<Demand>> Demands) Of(Sequence<JobTask> tasks, Func<JobTask, bool> waits, int people)
    {
        var room = Math.Max(1, people);
        var apart = Apart(tasks, waits);
        return (new(Name, room), tasks.Select((t, i) => Whole(t) ? [new(Name, room)] : OnAircraft(t) && apart[i] ? [new(Name, Math.Min(room, Math.Max(1, t.People)))] : (Sequence<Demand>)[]).ToSequence());
    }

    private static bool OnAircraft(JobTask task) =>
        task.Zone.Length > 0 || task.Panels.Count > 0 || task.Card is not null || task.Kind is TaskKind.Survey or TaskKind.Battery or TaskKind.Inspect;

    // Whether there is a task that needs the aircraft whole and is neither before nor after it.
    private static bool[] Apart(Sequence<JobTask> tasks, Func<JobTask, bool> waits)
    {
        var index = tasks.Select((t, i) => (t.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        var before = tasks.Select(_ => new BitArray(tasks.Count)).ToArray();
        foreach (var (at, task) in tasks.Index().Where(x => waits(x.Item)))
        {
            foreach (var i in task.After.Select(w => index.GetValueOrDefault(w.Task, -1)).Where(i => i >= 0))
            {
                before[at].Or(before[i]).Set(i, true);
            }
        }

        int[] whole = [.. tasks.Index().Where(x => Whole(x.Item)).Select(x => x.Index)];
        return [.. tasks.Select((_, at) => whole.Any(w => w != at && !before[at][w] && !before[w][at]))];
    }
}
