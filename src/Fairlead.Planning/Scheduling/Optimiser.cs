using System.Globalization;

namespace Fairlead.Planning.Scheduling;

/// <summary>How long and how the optimiser may search.</summary>
/// <param name="Effort">Limit in the solver's own count of work, so that the same problem gives the same plan on every machine.</param>
/// <param name="Seconds">Limit on the clock for all of it; null for none. A plan cut off by the clock may differ from run to run.</param>
/// <param name="Seed">Seed of the search.</param>
public sealed record OptimiserOptions(double Effort = 20, double? Seconds = null, int Seed = 7)
{
    /// <summary>Searchers at work side by side. Their results are merged in a fixed order.</summary>
    public int Searchers { get; init; } = 8;
}

/// <summary>Progress of the optimiser.</summary>
/// <param name="Finish">Finish of the best plan so far.</param>
/// <param name="Bound">No plan finishes before this.</param>
public readonly record struct OptimiserProgress(int Finish, int Bound);

/// <summary>Finds the plan that finishes first and, of those, one with little overtime: at once by <see cref="ListScheduler"/>, better by
/// <see cref="Rearranger"/>, then by a constraint solver, which can also prove that none is better. The plan is never made worse, and every plan is looked
/// over by <see cref="ScheduleChecker"/> before it is given away.</summary>
public static class Optimiser
{
    // Tasks placed in disturbed orders per unit of effort: about as long as the solver takes for it.
    private const double PlacedPerEffort = 240_000;

    // Where the solver follows, a better plan to begin from is worth some of its time.
    private const double BeforeSolver = 2;

    // In a problem too big to get through, the solver finds nothing that the orders did not: so much it can always be given, and so much more by effort.
    private const double Solved = 700;
    private const double SolvedPerEffort = 700;

    /// <summary>Plans a problem.</summary>
    public static ScheduleResult Run(Problem problem, OptimiserOptions? options = null, IProgress<OptimiserProgress>? progress = null, CancellationToken cancel = default) =>
        Run(problem, options ?? new(), known: null, progress, cancel);

    /// <summary>Plans a problem, beginning from a plan of the same tasks made with fewer people or hours: the new one is never worse.</summary>
    internal static ScheduleResult Run(Problem problem, OptimiserOptions options, Schedule? known, IProgress<OptimiserProgress>? progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (Impossible(problem) is { } why)
        {
            return new(null, 0, Proved: true, why);
        }

        var result = Best(problem, options, known, progress, cancel);
        return result.Schedule is not null && ScheduleChecker.Faults(problem, result.Schedule) is [var fault, ..]
            ? throw new InvalidOperationException($"the plan found breaks a rule: {fault}") : result;
    }

    private static ScheduleResult Best(Problem problem, OptimiserOptions options, Schedule? known, IProgress<OptimiserProgress>? progress, CancellationToken cancel)
    {
        var first = known is not null && ScheduleChecker.Faults(problem, known).Count == 0 ? known : new ListScheduler(problem).Run();
        if (first is not null)
        {
            progress?.Report(new(first.Finish, Bounds.Chain(problem)));
        }

        var clock = System.Diagnostics.Stopwatch.StartNew();
        double Left() => (options.Seconds ?? double.PositiveInfinity) - clock.Elapsed.TotalSeconds;
        OptimiserOptions Rest() => options with { Seconds = options.Seconds is null ? null : Math.Max(0, Left()) };
        var bound = Bounds.Finish(problem, first?.Finish ?? problem.Horizon);
        if (first is null)
        {
            return cancel.IsCancellationRequested ? new(null, bound, Proved: false, "stopped before a plan was found") : Search(problem, Rest(), null, bound, progress, cancel);
        }

        progress?.Report(new(first.Finish, bound));
        var searched = PlanModel.Size(problem) <= Solved + (SolvedPerEffort * options.Effort);
        var tries = (int)(options.Effort * PlacedPerEffort * (searched ? BeforeSolver : 1) / Math.Max(1, problem.Tasks.Count));
        bool Stop() => cancel.IsCancellationRequested || Left() <= (searched ? (options.Seconds ?? 0) / 2 : 0);
        var best = new Rearranger(problem, options.Seed).Run(first, tries, bound, p => progress?.Report(new(p.Finish, bound)), Stop);
        return cancel.IsCancellationRequested || Left() <= 0 || !searched || (best.Finish == bound && best.Overtime == 0)
            ? new(Settled(problem, best), bound, best.Finish == bound) : Search(problem, Rest(), best, bound, progress, cancel);
    }

    private static ScheduleResult Search(Problem problem, OptimiserOptions options, Schedule? first, int bound, IProgress<OptimiserProgress>? progress, CancellationToken cancel)
    {
        var (best, lower, proved) = (first, bound, first?.Finish == bound);
        var clock = System.Diagnostics.Stopwatch.StartNew();
        if (!proved)
        {
            var model = new PlanModel(problem, first?.Finish ?? problem.Horizon, bound);
            model.MinimiseFinish();
            var answer = model.Solve(options, first, progress, cancel);
            (best, lower, proved) = (answer.Schedule ?? first, Math.Max(bound, answer.Bound), answer.Proved);
        }

        if (best is null)
        {
            return new(null, lower, proved, proved ? "no plan keeps every rule before the end of the time looked at" : "no plan was found in the effort allowed");
        }

        if (best.Overtime > 0 && !cancel.IsCancellationRequested)
        {
            var second = new PlanModel(problem, best.Finish, bound);
            second.MinimiseOvertime();
            best = second.Solve(options with { Seconds = options.Seconds is { } seconds ? Math.Max(0, seconds - clock.Elapsed.TotalSeconds) : null }, best, null, cancel).Schedule is { } less && (less.Finish, less.Overtime).CompareTo((best.Finish, best.Overtime)) <= 0 ? less : best;
        }

        return new(Settled(problem, best), Math.Min(lower, best.Finish), proved || lower >= best.Finish);
    }

    // Every piece at its earliest, so that no task starts late for no reason.
    private static Schedule Settled(Problem problem, Schedule plan) =>
        new PlanReplay(problem, plan).Run(overtime: plan.Overtime > 0) is { } settled && (settled.Finish, settled.Overtime).CompareTo((plan.Finish, plan.Overtime)) <= 0 ? settled : plan;

    // What no plan can mend, said at once and by name.
    private static string? Impossible(Problem problem)
    {
        var meetings = new Meetings(problem);
        foreach (var task in problem.Tasks)
        {
            var longest = task.Pieces().Max();
            if (task.Windows.Count > 0 && !Hours.Joined(task.Windows).Any(w => w.Length >= longest))
            {
                return $"{task.Id} runs for longer without a pause than its windows are open";
            }

            foreach (var need in task.Crew)
            {
                var able = problem.Workers.Where(w => w.Skills.Contains(need.Skill)).ToArray();
                if (able.Length < need.Count)
                {
                    return string.Create(CultureInfo.InvariantCulture, $"{task.Id} needs {need.Count} with the skill {need.Skill}; there are {able.Length}");
                }

                if (able.Count(w => Hours.Joined(w.Shifts.Concat(w.Overtime)).Any(s => s.Length >= longest)) < need.Count)
                {
                    return $"{task.Id} runs for longer without a pause than a shift of those with the skill {need.Skill}";
                }
            }

            foreach (var demand in task.Demands)
            {
                if (demand.Amount > problem.Resources.First(r => r.Id == demand.Resource).Capacity)
                {
                    return $"{task.Id} needs more of {demand.Resource} than there is";
                }
            }

            if (!meetings.Ever(task))
            {
                return $"those who do {task.Id} together{(task.Windows.Count > 0 ? ", and its windows," : "")} never have so long in common";
            }
        }

        return null;
    }
}
