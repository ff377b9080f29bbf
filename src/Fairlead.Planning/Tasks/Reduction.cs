using System.Collections;
using Fairlead.Calculations;

namespace Fairlead.Planning.Tasks;

/// <summary>Takes away waits that follow from others: what waits for B need not also say that it waits for A, when B waits for A.</summary>
internal static class Reduction
{
    /// <summary>The tasks with the waits that remain; a wait with a cure or a hold always does.</summary>
    /// <param name="tasks">The tasks, each after all that it waits for.</param>
    public static Sequence<JobTask> Of(IReadOnlyList<JobTask> tasks)
    {
        var index = tasks.Select((t, i) => (t.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        var before = new BitArray[tasks.Count];
        var kept = new List<JobTask>();
        for (var i = 0; i < tasks.Count; i++)
        {
            var all = before[i] = new BitArray(tasks.Count);
            var waits = new List<Wait>();
            foreach (var wait in tasks[i].After.OrderByDescending(w => index[w.Task]))
            {
                if (wait.Lag > 0 || wait.Hold || !all[index[wait.Task]])
                {
                    waits.Add(wait);
                }

                all.Or(before[index[wait.Task]]).Set(index[wait.Task], true);
            }

            waits.Reverse();
            kept.Add(tasks[i] with { After = waits.ToSequence() });
        }

        return kept.ToSequence();
    }
}
