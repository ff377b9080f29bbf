using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;
using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>Everything about power that does not depend on single circuits: loads, breakers, feeders, batteries. Never changed after it was worked out.</summary>
internal sealed class PowerWork
{
    private readonly Job job;
    private readonly Memo memo;
    private readonly ImmutableArray<LoadItem> loads;
    private readonly Sharing sharing;

    public PowerWork(Job job, Memo memo)
    {
        (this.job, this.memo) = (job, memo);
        loads = LoadItem.Of(job);
        sharing = new Sharing(job.Aircraft);
        var conditions = job.Aircraft.Conditions.OrEmpty();
        SourceLoads = [.. Supplied.Of(job.Aircraft).SelectMany(c => sharing.Of(c.Condition).Select(s => Load(s, c)))];
        BusLoads = [.. conditions.SelectMany(c => job.Aircraft.Buses.OrEmpty().Select(b => OnBus(b, c)))];
        BreakerLoads = [.. loads.Where(l => l.Action == ListAction.Fitted && l.Breaker is not null).Select(l => l.Breaker!).Distinct(StringComparer.Ordinal).Select(OnBreaker).OfType<BreakerLoad>()];
        foreach (var feeder in job.Aircraft.Feeders.OrEmpty())
        {
            new FeederChecks(feeder, job, loads, sharing).Run(memo, Findings, Shown);
        }

        Batteries = [.. job.Aircraft.Batteries.OrEmpty().Select(b => new BatteryChecks(b, job, loads, sharing).Run(memo, Findings, Shown))];
        Findings.AddRange(BusChecks.Run(job, loads, sharing));
    }

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    public ImmutableArray<SourceLoad> SourceLoads { get; }

    public ImmutableArray<BusLoad> BusLoads { get; }

    public ImmutableArray<BreakerLoad> BreakerLoads { get; }

    public ImmutableArray<BatteryResult> Batteries { get; }

    /// <summary>Whether the work holds for another job too.</summary>
    public bool Serves(Job other) => ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Parts, other.Parts)
        && ReferenceEquals(job.Change.Remove, other.Change.Remove) && ReferenceEquals(job.Change.Fit, other.Change.Fit)
        && ReferenceEquals(job.Change.Breakers, other.Change.Breakers) && ReferenceEquals(job.Change.Power, other.Change.Power);

    private SourceLoad Load(PowerSource source, Supplied supplied)
    {
        var condition = supplied.Condition;
        Sequence<LoadRow> Rows(Func<ListAction, bool> wanted) => loads.Where(l => wanted(l.Action))
            .Select(l => (l, share: sharing.Share(source, condition, l.Bus))).Where(x => x.share > 0)
            .Select(x => x.l.Row(condition.Id, x.share)).OfType<LoadRow>().ToSequence();

        var after = memo.Run<LoadAnalysis, LoadAnalysisInput>(new(Rows(a => a != ListAction.Removed), source.Rating, source.FiveMinutes, source.FiveSeconds), "Dcont");
        var change = memo.Run<LoadChange, LoadChangeInput>(new(
            Rows(a => a != ListAction.Fitted), Rows(a => a == ListAction.Removed), Rows(a => a == ListAction.Fitted), source.Rating, source.FiveMinutes, source.FiveSeconds), "Bcont");
        var subject = $"load/{source.Id}/{supplied.Key}";
        var origins = new Dictionary<string, string>(StringComparer.Ordinal) { ["Irated"] = $"source {source.Id}", ["I5min"] = $"source {source.Id}", ["I5s"] = $"source {source.Id}" };
        Shown.Add(new Shown(subject, after, () => origins));
        Shown.Add(new Shown($"{subject}/change", change, () => origins));
        if (Substantiation.Findings.Of(after, subject, $"aircraft/sources/{source.Id}", $"Take off {source.Name} some load that is on in '{condition.Name}', move them to another source, or fit monitoring or a greater source.") is { } finding)
        {
            Findings.Add(finding);
        }

        return new SourceLoad(source, condition, new(change.Value(0) ?? 0), new(after.Value(0) ?? 0), after.Verdict);
    }

    private BusLoad OnBus(Bus bus, OperatingCondition condition)
    {
        Current Sum(ListAction without) => new(loads.Where(l => l.Bus == bus.Id && l.Action != without).Sum(l => l.Average(condition.Id).Si));
        return new BusLoad(bus, condition, Sum(ListAction.Fitted), Sum(ListAction.Removed));
    }

    private BreakerLoad? OnBreaker(string id)
    {
        var breaker = job.BreakerOf(id);
        if (breaker is null || job.Parts.Breakers?.Find(breaker.Part) is not { } part)
        {
            return null;
        }

        var on = loads.Where(l => l.Breaker == id && l.Action != ListAction.Removed).ToArray();
        var outcome = job.Aircraft.Conditions.OrEmpty().Select(c => on.Select(l => l.Row(c.Id)).OfType<LoadRow>().ToSequence()).Distinct()
            .Select(rows => memo.Run<Calculations.Power.BreakerLoad, BreakerLoadInput>(new(rows, part.Rating), "Ipk"))
            .MaxBy(o => (o.Verdict, o.Value(0)));
        if (outcome is null)
        {
            return null;
        }

        var origins = new Dictionary<string, string>(StringComparer.Ordinal) { ["Icb"] = $"breaker {id}, part {part.Id}" };
        Shown.Add(new Shown($"breaker/{id}/load", outcome, () => origins));
        if (Substantiation.Findings.Of(outcome, $"breaker/{id}", job.PathOfBreaker(id), "Move a load to another breaker, or fit a greater breaker if its wires allow it.") is { } finding)
        {
            Findings.Add(finding);
        }

        return new BreakerLoad(breaker, part, new(outcome.Value(0) ?? 0), outcome.Verdict);
    }
}
