using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;
using Google.OrTools.Sat;

namespace Fairlead.Bench;

/// <summary>The textbook model of a project given to the constraint solver as it is: no plan to begin from, no bounds, the solver's own defaults.</summary>
internal static class PlainSolver
{
    /// <summary>The best plan found in an effort.</summary>
    public static ScheduleResult Run(Problem problem, OptimiserOptions options)
    {
        var model = new CpModel();
        var starts = problem.Tasks.Select(t => model.NewIntVar(0, problem.Horizon, t.Id)).ToArray();
        var finish = model.NewIntVar(0, problem.Horizon, "finish");
        foreach (var (at, task) in problem.Tasks.Index())
        {
            model.Add(finish >= starts[at] + task.Duration);
            foreach (var before in task.After.Select(p => problem.IndexOf(p.Task)))
            {
                model.Add(starts[at] >= starts[before] + problem.Tasks[before].Duration);
            }
        }

        foreach (var resource in problem.Resources)
        {
            var shared = model.AddCumulative(resource.Capacity);
            foreach (var (at, task) in problem.Tasks.Index())
            {
                foreach (var demand in task.Demands.Where(d => d.Resource == resource.Id))
                {
                    shared.AddDemand(model.NewFixedSizeIntervalVar(starts[at], task.Duration, task.Id), demand.Amount);
                }
            }
        }

        model.Minimize(finish);
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:{options.Searchers},interleave_search:true,random_seed:{options.Seed},max_deterministic_time:{options.Effort}") };
        var status = solver.Solve(model);
        var placed = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? problem.Tasks.Select((t, at) => new Placed(t.Id, [At(solver.Value(starts[at]), t.Duration)], [])).ToSequence() : default;
        return new(placed.Count > 0 ? Schedule.Of(problem, placed) : null, (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6), status is CpSolverStatus.Optimal);
    }

    private static Slot At(long start, int duration) => new((int)start, (int)start + duration);
}
