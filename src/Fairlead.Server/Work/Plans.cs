using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Planning.Plans;
using Fairlead.Records;
using Fairlead.Server.Jobs;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Work;

/// <summary>The plans of kept jobs: one at once; a better one is searched for as long as somebody waits for it, for one job at a time.</summary>
/// <param name="clock">The clock.</param>
internal sealed class Plans(TimeProvider clock) : IDisposable
{
    // A page that waits for a better plan asks every two seconds: after this time without a question nobody waits any more.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);
    private readonly Remembered<Planned> plans = new(clock, p => p.Dispose());
    private readonly SemaphoreSlim turn = new(1);

    /// <summary>The best plan known. To ask for it begins no search.</summary>
    public PlanSummaryView Of(AssessedJob job)
    {
        var plan = Current(job);
        plan.Wait(Patience);
        return View(plan, job);
    }

    /// <summary>Begins the search for a better plan, unless it is at work or has ended.</summary>
    public PlanSummaryView Search(AssessedJob job)
    {
        var plan = Current(job);
        if (plan.Begin(Patience, clock) is { } stop)
        {
            _ = Task.Run(() => Work(plan, stop), CancellationToken.None);
        }

        return View(plan, job);
    }

    /// <summary>Ends the search: the best plan so far is the plan.</summary>
    public IResult Stop(string folder)
    {
        plans.Find(folder)?.End(enough: true);
        return TypedResults.NoContent();
    }

    public void Dispose()
    {
        foreach (var plan in plans.All)
        {
            plan.Dispose();
        }
    }

    // When the job or its log has moved on, what was planned before is nobody's plan any more.
    private Planned Current(AssessedJob job)
    {
        var state = job.State(clock);
        var key = $"{job.Hash} {state.Head}";
        return plans.Of(job.Folder, old =>
        {
            if (old?.Key == key)
            {
                return old;
            }

            old?.Dispose();
            return First(job, state, key);
        });
    }

    private Planned First(AssessedJob job, HangarState state, string key)
    {
        var now = clock.GetLocalNow().DateTime;
        var options = new PlanOptions(DateOnly.FromDateTime(now)) { Progress = LogProgress.Of(state, job.Tasks, job.Required, clock.LocalTimeZone) };
        options = options.Progress.Count == 0 ? options : options with { Now = now };
        return new(key, stop => Planner.Run(job.Tasks, job.Job, options, null, stop), new(() => Planner.Run(job.Tasks, job.Job, options with { Effort = 0, WhatIfs = false })));
    }

    private async Task Work(Planned plan, CancellationToken stop)
    {
        try
        {
            await turn.WaitAsync(stop);
            try
            {
                plan.Best = new(plan.Better(stop));
            }
            finally
            {
                turn.Release();
            }
        }
        catch (OperationCanceledException)
        {
            // The plan made at once stays.
        }
        finally
        {
            plan.Ended(stop);
        }
    }

    private static PlanSummaryView View(Planned planned, AssessedJob job)
    {
        // In this order: a search that ends in between is told as still at work, and its plan is asked for once more.
        var (working, searched) = planned.Stands;
        var plan = planned.Best.Value;
        return new(
            working, searched, plan.Why, Time(plan.Finish), Time(plan.Bound), plan.Proved, plan.Promised?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", plan.Holds,
            plan.PromisedChance is { } chance ? $"{NumberFormat.Text(Math.Round(100 * chance))} %" : "", [.. PlanPages.Summary(plan)], [.. plan.Chain], [.. PlanPages.WhatIfs(plan)], [.. PlanPages.Chances(plan)],
            job.Job.Order.Title, [.. plan.Tasks.Select(t => new PlanRowView(t.Task.Id, [.. t.People], [.. t.Pieces.SelectMany(p => new[] { p.From, p.To })], plan.Holding.Contains(t.Task.Id), t.Actual))], [.. plan.Findings.Select(Of)]);
    }

    private static FindingView Of(Substantiation.Finding f) => new(f.Rule, VerdictWords.Of(f.Severity), f.Subject, f.Message, f.Figures, f.Source.ToString(), f.Remedy, f.Path, f.Accepted?.Id ?? "");

    private static string Time(DateTime at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private sealed class Planned(string key, Func<CancellationToken, JobPlan> better, Lazy<JobPlan> first) : IDisposable
    {
        private readonly Lock changing = new();
        private volatile Lazy<JobPlan> best = first;
        private CancellationTokenSource? search;
        private bool searched;

        public string Key { get; } = key;

        public Func<CancellationToken, JobPlan> Better { get; } = better;

        public Lazy<JobPlan> Best { get => best; set => best = value; }

        public (bool Working, bool Searched) Stands
        {
            get
            {
                lock (changing)
                {
                    return (search is not null, searched);
                }
            }
        }

        /// <summary>What ends the search that begins now; null when there is none to begin.</summary>
        public CancellationToken? Begin(TimeSpan patience, TimeProvider clock)
        {
            lock (changing)
            {
                return searched || search is not null ? null : (search = new(patience, clock)).Token;
            }
        }

        public void Wait(TimeSpan patience)
        {
            lock (changing)
            {
                search?.CancelAfter(patience);
            }
        }

        public void End(bool enough)
        {
            lock (changing)
            {
                searched |= enough;
                _ = search?.CancelAsync();
            }
        }

        // The search itself looks at its token until it has ended.
        public void Dispose() => End(enough: false);

        public void Ended(CancellationToken stop)
        {
            lock (changing)
            {
                searched |= !stop.IsCancellationRequested;
                search = null;
            }
        }
    }
}
