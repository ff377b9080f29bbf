using System.Collections.Concurrent;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Planning.Plans;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Work;

/// <summary>The plans of kept jobs: one at once, then a better one in the background, until it is found or the search is ended.</summary>
/// <param name="clock">The clock.</param>
internal sealed class Plans(TimeProvider clock) : IDisposable
{
    private readonly ConcurrentDictionary<string, Search> searches = new(StringComparer.Ordinal);

    public PlanSummaryView Of(AssessedJob job)
    {
        var state = job.State(clock);
        var key = $"{job.Hash} {state.Head}";
        var search = searches.AddOrUpdate(job.Folder, _ => Begin(job, key), (_, old) => old.Key == key ? old : Begin(job, key, old));
        return View(search.Best.Value, !search.Ended, job.Job.Order.Title);
    }

    public IResult Stop(string folder)
    {
        if (searches.TryGetValue(folder, out var search))
        {
            search.Stop.Cancel();
        }

        return TypedResults.NoContent();
    }

    public void Dispose()
    {
        foreach (var search in searches.Values)
        {
            search.Stop.Cancel();
            search.Stop.Dispose();
        }
    }

    private Search Begin(AssessedJob job, string key, Search? old = null)
    {
        old?.Stop.Cancel();
        var now = clock.GetLocalNow().DateTime;
        var options = new PlanOptions(DateOnly.FromDateTime(now)) { Progress = LogProgress.Of(job.State(clock), job.Tasks, clock.LocalTimeZone) };
        options = options.Progress.Count == 0 ? options : options with { Now = now };
        var search = new Search(key, new Lazy<JobPlan>(() => Planner.Run(job.Tasks, job.Job, options with { Effort = 0, WhatIfs = false })));
        _ = Task.Run(() =>
        {
            try
            {
                var better = Planner.Run(job.Tasks, job.Job, options, null, search.Stop.Token);
                search.Best = new Lazy<JobPlan>(better);
            }
            catch (OperationCanceledException)
            {
                // The plan made at once stays.
            }
            finally
            {
                search.Ended = true;
            }
        });
        return search;
    }

    private static PlanSummaryView View(JobPlan plan, bool working, string title) => new(
        working, plan.Why, Time(plan.Finish), Time(plan.Bound), plan.Proved, plan.Promised?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", plan.Holds,
        plan.PromisedChance is { } chance ? $"{NumberFormat.Text(Math.Round(100 * chance))} %" : "", [.. PlanPages.Summary(plan)], [.. plan.Chain], [.. PlanPages.WhatIfs(plan)], [.. PlanPages.Chances(plan)],
        title, [.. plan.Tasks.Select(t => new PlanRowView(t.Task.Id, [.. t.People], [.. t.Pieces.SelectMany(p => new[] { p.From, p.To })], plan.Holding.Contains(t.Task.Id), t.Actual))], [.. plan.Findings.Select(Of)]);

    private static FindingView Of(Substantiation.Finding f) => new(f.Rule, VerdictWords.Of(f.Severity), f.Subject, f.Message, f.Figures, f.Source.ToString(), f.Remedy, f.Path, f.Accepted?.Id ?? "");

    private static string Time(DateTime at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private sealed record Search(string Key, Lazy<JobPlan> First)
    {
        private volatile Lazy<JobPlan> best = First;
        private volatile bool ended;

        public CancellationTokenSource Stop { get; } = new();

        public Lazy<JobPlan> Best { get => best; set => best = value; }

        public bool Ended { get => ended; set => ended = value; }
    }
}
