using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Planning;

/// <summary>The earliest finish by trying every place and crew for every piece: slow, plain, and nothing in common with the optimiser but the meaning of a plan.</summary>
internal static class Exhaustive
{
    /// <summary>The earliest finish of any plan; null when there is none.</summary>
    public static int? Finish(Problem problem)
    {
        var best = int.MaxValue;
        Extend(problem, [], 0, ref best);
        return best == int.MaxValue ? null : best;
    }

    // Tasks in an order that keeps precedence; a task may start at any moment.
    private static void Extend(Problem problem, List<Placed> placed, int finish, ref int best)
    {
        if (placed.Count == problem.Tasks.Count)
        {
            best = Math.Min(best, finish);
            return;
        }

        var task = problem.Tasks[placed.Count];
        var from = task.After.Select(p => placed[problem.IndexOf(p.Task)].End + p.Lag).Append(task.NotBefore).Max();
        foreach (var crew in Crews(problem, task))
        {
            foreach (var pieces in Runs(problem, placed, task, crew, [.. task.Pieces()], 0, from, best))
            {
                placed.Add(new(task.Id, pieces.ToSequence(), crew.ToSequence()));
                Extend(problem, placed, Math.Max(finish, pieces[^1].To), ref best);
                placed.RemoveAt(placed.Count - 1);
            }
        }
    }

    private static IEnumerable<string[]> Crews(Problem problem, Work task) => task.Crew.Aggregate(
        (IEnumerable<string[]>)[[]],
        (crews, need) => crews.SelectMany(c => problem.Workers.Where(w => w.Skills.Contains(need.Skill) && !c.Contains(w.Id)).Select(w => (string[])[.. c, w.Id])));

    private static IEnumerable<Slot[]> Runs(Problem problem, List<Placed> placed, Work task, string[] crew, int[] lengths, int at, int from, int best)
    {
        if (at == lengths.Length)
        {
            yield return [];
            yield break;
        }

        for (var start = from; start + lengths[at] < best && start + lengths[at] <= problem.Horizon; start++)
        {
            var slot = new Slot(start, start + lengths[at]);
            if (Free(problem, placed, task, crew, slot))
            {
                foreach (var rest in Runs(problem, placed, task, crew, lengths, at + 1, slot.To, best))
                {
                    yield return [slot, .. rest];
                }
            }
        }
    }

    private static bool Free(Problem problem, List<Placed> placed, Work task, string[] crew, Slot slot)
    {
        bool Within(IEnumerable<Slot> slots) => Enumerable.Range(slot.From, slot.Length).All(t => slots.Any(s => s.From <= t && t < s.To));
        var moments = Enumerable.Range(slot.From, slot.Length);
        return (task.Windows.Count == 0 || task.Windows.Any(w => w.From <= slot.From && slot.To <= w.To))
            && crew.All(id => problem.Workers.First(w => w.Id == id) is var w && Within(w.Shifts.Concat(w.Overtime)))
            && moments.All(t => placed.Where(p => p.Pieces.Any(s => s.From <= t && t < s.To)).All(p => !p.Crew.Any(crew.Contains)))
            && task.Demands.All(d => moments.All(t => d.Amount + placed.Zip(problem.Tasks).Where(x => x.First.Pieces.Any(s => s.From <= t && t < s.To)).Sum(x => x.Second.Demands.Where(e => e.Resource == d.Resource).Sum(e => e.Amount)) <= problem.Resources.First(r => r.Id == d.Resource).Capacity));
    }
}
