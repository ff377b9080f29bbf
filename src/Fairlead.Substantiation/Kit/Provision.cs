using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Substantiation.Kit;

/// <summary>Marks, cutting plan and kit of a job. Without a stock file nothing of the kit is a finding, and it is worked out when somebody asks for it.
/// An edit that changes nothing but what circuits carry leaves cuts and kit as they are.</summary>
internal sealed class Provision
{
    private readonly Job job;
    private readonly ImmutableArray<CircuitResult> circuits;
    private readonly ImmutableArray<SegmentUse> segments;
    private readonly Lazy<ImmutableArray<CutPlan>> cuts;
    private readonly Lazy<KitList> kit;

    public Provision(Job job, ImmutableArray<CircuitResult> circuits, ImmutableArray<SegmentUse> segments, CutMemory memory, MarkWork marks, Watch watch, Provision? known)
    {
        (this.job, this.circuits, this.segments, Marks) = (job, circuits, segments, marks.Marks);
        var same = known?.Serves(this) == true;
        cuts = same ? known!.cuts : new(() => CutPlans.Of(job, circuits, Marks, memory, watch));
        kit = same ? known!.kit : new(() => Work(null));
        Findings = [.. marks.Findings, .. job.Stock is null ? [] : KitFindings.Of(job, kit.Value)];
    }

    public ImmutableArray<WireMark> Marks { get; }

    public ImmutableArray<CutPlan> Cuts => cuts.Value;

    public KitList Kit => kit.Value;

    public KitList KitOn(KitDates dates) => Work(dates);

    public ImmutableArray<Finding> Findings { get; }

    private KitList Work(KitDates? dates) => KitWork.Of(job, circuits, segments, Marks, cuts.Value, dates);

    private bool Serves(Provision other)
    {
        var same = job with { Change = other.job.Change } == other.job && job.Change with { Circuits = other.job.Change.Circuits } == other.job.Change
            && Marks == other.Marks && segments.SequenceEqual(other.segments) && circuits.Length == other.circuits.Length;
        for (var i = 0; same && i < circuits.Length; i++)
        {
            same = ReferenceEquals(circuits[i], other.circuits[i]) || Uncharged(circuits[i]) == Uncharged(other.circuits[i]);
        }

        return same;
    }

    // A circuit without what it carries, of which neither cuts nor kit know anything.
    private static CircuitResult Uncharged(CircuitResult c) => c with
    {
        Circuit = c.Circuit with { Current = null }, Verdict = default, Current = default, CurrentOrigin = "", Allowed = null, Temperature = null, Drop = null,
    };
}
