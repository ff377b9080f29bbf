using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;
using Problem = Fairlead.Planning.Scheduling.Problem;

namespace Fairlead.Planning.Plans;

/// <summary>How long each task may go on without a pause: no longer than those who could do it are there together, so that none of them is left out.</summary>
internal static class Stretches
{
    // Who is there for less than an hour at a time does not set the pace of the others: work in quarters of an hour would be planned by the thousand.
    private const int Least = PlanCalendar.PerHour;

    /// <summary>The problem with the tasks that may pause in pieces that fit.</summary>
    public static Problem Fitted(Problem problem)
    {
        var crews = new CrewChoices(problem).Of();
        Sequence<Slot>[] hours = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts))];
        var known = new Dictionary<(string Crew, bool Windows), int>();
        int Together(Work task, int[] crew)
        {
            var key = (string.Join(' ', crew.Order()), task.Windows.Count > 0);
            return known.TryGetValue(key, out var length) ? length : known[key] = Longest(crew.Select(w => hours[w]).Concat(task.Windows.Count > 0 ? [task.Windows] : []));
        }

        int Piece(Work task, int[][] choices)
        {
            int[] there = [.. choices.Where(c => c.Length > 0).Select(c => Math.Min(task.Piece, Together(task, c))).Where(l => l > 0)];
            return there.Where(l => l >= Least).DefaultIfEmpty(there.DefaultIfEmpty(task.Piece).Max()).Min();
        }

        return problem.With(problem.Tasks.Zip(crews).Select(x => x.First.Piece == 0 ? x.First : x.First with { Piece = Piece(x.First, x.Second) }).ToSequence());
    }

    private static int Longest(IEnumerable<Sequence<Slot>> hours) => hours.Aggregate(Hours.Common).Select(s => s.Length).DefaultIfEmpty(0).Max();
}
