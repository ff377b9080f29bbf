using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Makes a plan better by taking its tasks in other orders, then planned from the finish back and from the start on again (forward-backward improvement,
/// K. Y. Li and R. J. Willis, European Journal of Operational Research 56, 1992). An order is that of a good plan somewhat disturbed, or of one good plan with a
/// stretch of another's in it (two-point crossover, S. Hartmann, Naval Research Logistics 45, 1998). Then takes out what overtime it can.</summary>
internal sealed class Rearranger
{
    private const int Patience = 50;
    private const int PatiencePerTask = 4;
    private const int Tell = 20;

    // Good plans kept to be crossed.
    private const int Kept = 16;

    private readonly Problem problem;
    private readonly ListScheduler lists;
    private readonly Random random;
    private readonly bool overtime;
    private readonly List<(Schedule Plan, (int Finish, long Ends, int Overtime) Key)> kept = [];
    private (int Finish, ListScheduler Lists) back;

    /// <summary>Prepares a problem.</summary>
    public Rearranger(Problem problem, int seed)
    {
        this.problem = problem;
        lists = new(problem);
        random = new(seed);
        overtime = problem.Workers.Any(w => w.Overtime.Count > 0);
    }

    /// <summary>The best plan found in so many tries, never worse than the one given.</summary>
    /// <param name="plan">A plan.</param>
    /// <param name="tries">How many disturbed orders to try at most; it gives up sooner when one after the other brings nothing.</param>
    /// <param name="bound">No plan finishes before this.</param>
    /// <param name="tell">Told the best plan so far, whenever it finishes sooner and now and then besides.</param>
    /// <param name="stop">Asked before each try.</param>
    public Schedule Run(Schedule plan, int tries, int bound, Action<Schedule> tell, Func<bool> stop)
    {
        var (best, patience) = (plan, Patience + (PatiencePerTask * plan.Tasks.Count));
        kept.Clear();
        Keep(plan);
        for (var (i, last) = (0, 0); i < tries && i - last < patience && best.Finish > bound && !stop(); i++)
        {
            var sooner = false;
            if (Turned(Order(best, i)) is { } other)
            {
                Keep(other);
                if (Key(other).CompareTo(Key(best)) <= 0)
                {
                    (sooner, best) = (other.Finish < best.Finish, other);
                    last = sooner ? i : last;
                }
            }

            if (sooner || i % Tell == 0)
            {
                tell(best);
            }
        }

        return best.Overtime > 0 ? Thrifty(best, stop) : best;
    }

    private static (int Finish, long Ends, int Overtime) Key(Schedule plan) => (plan.Finish, plan.Tasks.Sum(t => (long)t.End), plan.Overtime);

    // Among the best so far, each only once.
    private void Keep(Schedule plan)
    {
        var key = Key(plan);
        if (kept.Any(k => k.Key == key))
        {
            return;
        }

        kept.Add((plan, key));
        if (kept.Count > Kept)
        {
            kept.Remove(kept.MaxBy(k => k.Key));
        }
    }

    private double[] Order(Schedule best, int turn) => turn % 2 == 1 && kept.Count > 2 ? Crossed(Picked(), Picked()) : Disturbed(turn % 4 == 2 ? Picked() : best, turn == 0 ? 0 : 1 + (turn / 2));

    private Schedule Picked() => kept[random.Next(kept.Count)].Plan;

    // A stretch of the first's order taken in the order of the second, the rest as in the first; and a task here and there exchanged with its neighbour.
    private double[] Crossed(Schedule one, Schedule other)
    {
        int[] first = [.. Enumerable.Range(0, one.Tasks.Count).OrderBy(i => one.Tasks[i].Start)];
        int[] second = [.. Enumerable.Range(0, other.Tasks.Count).OrderBy(i => other.Tasks[i].Start)];
        var (from, to) = (random.Next(first.Length + 1), random.Next(first.Length + 1));
        (from, to) = (Math.Min(from, to), Math.Max(from, to));
        var taken = new HashSet<int>(first.Take(from));
        int[] order = [.. first.Take(from), .. second.Where(taken.Add).Take(to - from)];
        taken = [.. order];
        var keys = new double[first.Length];
        foreach (var (place, task) in order.Concat(first.Where(taken.Add)).Index())
        {
            keys[task] = place + (random.Next(20) == 0 ? random.NextDouble() * 3 : 0);
        }

        return keys;
    }

    // First the order as it stands; then by turns a little noise on all, and much on the tasks about one moment.
    private double[] Disturbed(Schedule plan, int turn)
    {
        var spread = turn == 0 ? 0 : plan.Finish * Math.Pow(2, -random.Next(2, 8));
        var (middle, reach) = (random.NextDouble() * plan.Finish, turn % 2 == 0 ? plan.Finish : plan.Finish * 0.15);
        return [.. plan.Tasks.Select(t => t.Start + (Math.Abs(t.Start - middle) < reach ? (random.NextDouble() - 0.5) * 2 * spread : 0))];
    }

    private Schedule? Turned(double[] keys)
    {
        if (lists.Run(keys, overtime) is not { } forward)
        {
            return null;
        }

        back = back.Lists is not null && back.Finish == forward.Finish ? back : (forward.Finish, new(Mirror.Of(problem, forward.Finish)));
        var turned = back.Lists.Run([.. forward.Tasks.Select(t => -(double)t.End)], overtime: false);
        var again = turned is null ? null : lists.Run([.. turned.Tasks.Select(t => -(double)t.End)], overtime);
        return again is not null && Key(again).CompareTo(Key(forward)) < 0 ? again : forward;
    }

    // Without each stretch of overtime in turn, the latest first: what is not missed stays out.
    private Schedule Thrifty(Schedule plan, Func<bool> stop)
    {
        var (best, rules) = (plan, problem);
        foreach (var (who, slot) in problem.Workers.SelectMany((w, i) => w.Overtime.Where(s => s.From < plan.Finish).Select(s => (i, s))).OrderByDescending(x => x.s.From))
        {
            if (stop() || !best.Tasks.Any(t => t.Crew.Contains(problem.Workers[who].Id) && t.Pieces.Any(slot.Overlaps)))
            {
                continue;
            }

            var less = new Problem(rules.Horizon, rules.Tasks, rules.Workers.Select((w, i) => i == who ? w with { Overtime = w.Overtime.Where(s => s != slot).ToSequence() } : w).ToSequence(), rules.Resources);
            if (new ListScheduler(less).Run([.. best.Tasks.Select(t => (double)t.Start)], overtime) is { } without && without.Finish <= best.Finish && without.Overtime < best.Overtime)
            {
                (best, rules) = (without, less);
            }
        }

        return best;
    }
}
