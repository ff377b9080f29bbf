using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Substantiation.Kit;

/// <summary>Marks, cutting plan and kit of a job. Without a stock file nothing of the kit is a finding, and it is worked out when somebody asks for it.</summary>
internal sealed class Provision
{
    private readonly Lazy<ImmutableArray<CutPlan>> cuts;
    private readonly Lazy<KitList> kit;
    private readonly Func<KitDates?, KitList> work;

    public Provision(Job job, ImmutableArray<CircuitResult> circuits, ImmutableArray<SegmentUse> segments, CutMemory memory, MarkWork marks, Watch watch)
    {
        Marks = marks.Marks;
        cuts = new(() => CutPlans.Of(job, circuits, Marks, memory, watch));
        work = dates => KitWork.Of(job, circuits, segments, Marks, cuts.Value, dates);
        kit = new(() => work(null));
        Findings = [.. marks.Findings, .. job.Stock is null ? [] : KitFindings.Of(job, kit.Value)];
    }

    public ImmutableArray<WireMark> Marks { get; }

    public ImmutableArray<CutPlan> Cuts => cuts.Value;

    public KitList Kit => kit.Value;

    public KitList KitOn(KitDates dates) => work(dates);

    public ImmutableArray<Finding> Findings { get; }
}
