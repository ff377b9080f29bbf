using Fairlead.Calculations;
using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace Fairlead.Planning.Scheduling;

/// <summary>A problem as a constraint model. Every piece is an interval of fixed size; a person's part in a task is one truth value for all its pieces.</summary>
internal sealed class PlanModel
{
    private readonly Problem problem;
    private readonly CpModel model = new();
    private readonly int latest;
    private readonly int[] earliestStart;
    private readonly int[] latestEnd;
    private readonly IntVar[][] starts;
    private readonly int[][] lengths;
    private readonly Dictionary<(int Task, int Need, int Worker), BoolVar> manned = [];
    private readonly Dictionary<(int Task, int Worker), BoolVar> joins = [];
    private readonly List<(BoolVar Over, int Length, int Worker, int Task, int Piece)> late = [];
    private readonly IntVar finish;

    public PlanModel(Problem problem, int latest, int bound)
    {
        (this.problem, this.latest) = (problem, latest);
        lengths = [.. problem.Tasks.Select(t => t.Pieces().ToArray())];
        (earliestStart, latestEnd) = (new Heads(problem, Carrier.Of(problem), backward: false).Start, Bounds.Latest(problem, latest));
        starts = [.. problem.Tasks.Select((t, i) => lengths[i].Select((_, k) => Start(i, k)).ToArray())];
        finish = model.NewIntVar(Math.Min(bound, latest), latest, "finish");
        Sequence();
        Man();
        Share();
        Carry();
    }

    /// <summary>How much there is for the solver to get through: the places where somebody or something may be used.</summary>
    public static int Size(Problem problem) => problem.Tasks.Sum(t => t.Pieces().Count() * (1 + t.Demands.Count + t.Crew.Sum(c => problem.Workers.Count(w => w.Skills.Contains(c.Skill)))));

    public void MinimiseFinish() => model.Minimize(finish);

    public void MinimiseOvertime() => model.Minimize(LinearExpr.WeightedSum(late.Select(l => l.Over), late.Select(l => l.Length)));

    public (Schedule? Schedule, int Bound, bool Proved) Solve(OptimiserOptions options, Schedule? hint, IProgress<OptimiserProgress>? progress, CancellationToken cancel)
    {
        Hint(hint);
        using var watch = new Watch(progress);
        using var solver = new Solver(options);
        using var stop = cancel.Register(solver.Stop);
        var status = solver.Solve(model, watch);
        if (status is CpSolverStatus.ModelInvalid)
        {
            throw new InvalidOperationException($"the plan model is not valid: {model.Validate()}");
        }

        var proved = status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible;
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? (Read(solver), solver.Bound, proved) : (null, status is CpSolverStatus.Infeasible ? latest : 0, proved);
    }

    // Within the times that the bounds leave it; where they leave none, no plan is as good as the one known.
    private IntVar Start(int at, int k)
    {
        var (task, length, name) = (problem.Tasks[at], lengths[at][k], Name(problem.Tasks[at].Id, k));
        var from = Math.Clamp(earliestStart[at] + lengths[at].Take(k).Sum(), 0, latest);
        var to = Math.Max(from, latestEnd[at] - lengths[at].Skip(k).Sum());
        if (task.Windows.Count == 0)
        {
            return model.NewIntVar(from, to, name);
        }

        var open = Domain.FromIntervals(Hours.Starts(Hours.Joined(task.Windows), length));
        var left = open.IntersectionWith(new Domain(from, to));
        return model.NewIntVarFromDomain(left.IsEmpty() ? open : left, name);
    }

    private void Sequence()
    {
        for (var at = 0; at < starts.Length; at++)
        {
            var (task, last) = (problem.Tasks[at], starts[at].Length - 1);
            model.Add(starts[at][0] >= task.NotBefore);
            model.Add(finish >= starts[at][last] + lengths[at][last]);
            for (var k = 1; k <= last; k++)
            {
                model.Add(starts[at][k] >= starts[at][k - 1] + lengths[at][k - 1]);
            }

            foreach (var before in task.After)
            {
                var i = problem.IndexOf(before.Task);
                model.Add(starts[at][0] >= starts[i][^1] + lengths[i][^1] + before.Lag);
            }
        }
    }

    private void Man()
    {
        for (var w = 0; w < problem.Workers.Count; w++)
        {
            var (worker, busy) = (problem.Workers[w], new List<IntervalVar>());
            for (var at = 0; at < starts.Length; at++)
            {
                var parts = problem.Tasks[at].Crew.Select((need, n) => (need, n)).Where(x => worker.Skills.Contains(x.need.Skill)).Select(x => manned[(at, x.n, w)] = model.NewBoolVar(Name(problem.Tasks[at].Id, x.n, worker.Id))).ToArray();
                if (parts.Length > 0)
                {
                    busy.AddRange(Join(w, at, parts));
                }
            }

            model.AddNoOverlap(busy);
        }

        foreach (var (at, need, n) in problem.Tasks.SelectMany((t, at) => t.Crew.Select((need, n) => (at, need, n))))
        {
            model.Add(LinearExpr.Sum(Enumerable.Range(0, problem.Workers.Count).Where(w => manned.ContainsKey((at, n, w))).Select(w => manned[(at, n, w)])) == need.Count);
        }
    }

    // A person who takes part is there for every piece, in the shift or in overtime.
    private IEnumerable<IntervalVar> Join(int w, int at, BoolVar[] parts)
    {
        var worker = problem.Workers[w];
        var there = parts[0];
        if (parts.Length > 1)
        {
            there = joins[(at, w)] = model.NewBoolVar($"{problem.Tasks[at].Id}/{worker.Id}");
            model.Add(LinearExpr.Sum(parts) == there);
        }

        var (shifts, both) = (Hours.Joined(worker.Shifts), Hours.Joined(worker.Shifts.Concat(worker.Overtime)));
        for (var k = 0; k < starts[at].Length; k++)
        {
            var (start, length) = (starts[at][k], lengths[at][k]);
            if (length == 0)
            {
                continue;
            }

            model.AddLinearExpressionInDomain(start, Domain.FromIntervals(Hours.Starts(both, length))).OnlyEnforceIf(there);
            if (worker.Overtime.Count > 0)
            {
                Late(w, at, k, there, Hours.Starts(shifts, length));
            }

            yield return model.NewOptionalFixedSizeIntervalVar(start, length, there, Name(problem.Tasks[at].Id, k, worker.Id));
        }
    }

    // Overtime is counted by the piece: a piece that is not wholly within a shift costs its whole length here, and the plan counts what truly lies outside.
    private void Late(int w, int at, int k, BoolVar there, long[][] inShift)
    {
        var over = model.NewBoolVar(Name(problem.Tasks[at].Id, k, problem.Workers[w].Id, "over"));
        model.AddLinearExpressionInDomain(starts[at][k], Domain.FromIntervals(inShift)).OnlyEnforceIf([there, over.Not()]);
        model.AddImplication(over, there);
        late.Add((over, lengths[at][k], w, at, k));
    }

    private void Share()
    {
        foreach (var resource in problem.Resources)
        {
            var shared = model.AddCumulative(resource.Capacity);
            for (var at = 0; at < starts.Length; at++)
            {
                var amount = problem.Tasks[at].Demands.Where(d => d.Resource == resource.Id).Sum(d => d.Amount);
                for (var k = 0; amount > 0 && k < starts[at].Length; k++)
                {
                    if (lengths[at][k] > 0)
                    {
                        shared.AddDemand(model.NewFixedSizeIntervalVar(starts[at][k], lengths[at][k], Name(problem.Tasks[at].Id, k, resource.Id)), amount);
                    }
                }
            }
        }
    }

    // What follows from the above and is seen sooner so: a group of people together cannot do more at once than there are of them at work.
    private void Carry()
    {
        foreach (var (group, heads) in Carrier.Groups(problem).Where(g => g.Workers.Length > 1))
        {
            var together = model.AddCumulative(group.Length);
            foreach (var away in group.SelectMany(w => Away(problem.Workers[w])))
            {
                together.AddDemand(model.NewFixedSizeIntervalVar(away.From, away.Length, "away"), 1);
            }

            foreach (var (at, k) in heads.SelectMany((many, at) => lengths[at].Select((length, k) => (at, k, Much: many * length))).Where(x => x.Much > 0).Select(x => (x.at, x.k)))
            {
                together.AddDemand(model.NewFixedSizeIntervalVar(starts[at][k], lengths[at][k], Name(problem.Tasks[at].Id, k)), heads[at]);
            }
        }
    }

    private IEnumerable<Slot> Away(Worker worker)
    {
        var from = 0;
        foreach (var there in Hours.Joined(worker.Shifts.Concat(worker.Overtime)).Where(s => s.From < latest).Append(new(latest, latest)))
        {
            if (there.From > from)
            {
                yield return new(from, there.From);
            }

            from = there.To;
        }
    }

    // Every variable, so that the solver begins from the plan and need not complete it.
    private void Hint(Schedule? hint)
    {
        if (hint is null)
        {
            return;
        }

        model.AddHint(finish, hint.Finish);
        for (var at = 0; at < starts.Length; at++)
        {
            for (var k = 0; k < starts[at].Length; k++)
            {
                model.AddHint(starts[at][k], hint.Tasks[at].Pieces[k].From);
            }
        }

        bool There(int at, int w) => hint.Tasks[at].Crew.Contains(problem.Workers[w].Id);
        foreach (var ((at, need, w), part) in manned)
        {
            var before = problem.Tasks[at].Crew.Take(need).Sum(c => c.Count);
            model.AddHint(part, hint.Tasks[at].Crew.Skip(before).Take(problem.Tasks[at].Crew[need].Count).Contains(problem.Workers[w].Id));
        }

        foreach (var ((at, w), there) in joins)
        {
            model.AddHint(there, There(at, w));
        }

        foreach (var (over, length, w, at, k) in late)
        {
            var from = hint.Tasks[at].Pieces[k].From;
            model.AddHint(over, There(at, w) && Hours.Earliest(problem.Workers[w].Shifts, from, length) != from);
        }
    }

    private Schedule Read(Solver solver)
    {
        var placed = starts.Select((pieces, at) => new Placed(
            problem.Tasks[at].Id,
            pieces.Select((s, k) => new Slot((int)solver.Value(s), (int)solver.Value(s) + lengths[at][k])).ToSequence(),
            problem.Tasks[at].Crew.SelectMany((_, n) => Enumerable.Range(0, problem.Workers.Count).Where(w => manned.TryGetValue((at, n, w), out var part) && solver.Value(part) == 1).Select(w => problem.Workers[w].Id)).ToSequence()));
        return Schedule.Of(problem, placed.ToSequence());
    }

    private static string Name(string task, int part, params ReadOnlySpan<string> more) => $"{task}/{NumberFormat.Text(part)}/{string.Join('/', more)}";

    private sealed class Watch(IProgress<OptimiserProgress>? progress) : CpSolverSolutionCallback
    {
        public override void OnSolutionCallback() => progress?.Report(new((int)ObjectiveValue(), (int)Math.Ceiling(BestObjectiveBound() - 1e-6)));
    }

    private sealed class Solver : IDisposable
    {
        private readonly CpSolver solver = new();

        public Solver(OptimiserOptions options) => solver.StringParameters = FormattableString.Invariant(
            $"num_workers:{options.Searchers},interleave_search:true,random_seed:{options.Seed},use_timetable_edge_finding_in_cumulative:true,cp_model_probing_level:0,max_deterministic_time:{options.Effort}")
            + (options.Seconds is { } seconds ? FormattableString.Invariant($",max_time_in_seconds:{seconds}") : "");

        public int Bound => (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6);

        public CpSolverStatus Solve(CpModel model, CpSolverSolutionCallback watch) => solver.Solve(model, watch);

        public long Value(IntVar variable) => solver.Value(variable);

        public void Stop() => solver.StopSearch();

        public void Dispose() => GC.KeepAlive(solver);
    }
}
