using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Substantiation;

/// <summary>Everything that follows from a job.</summary>
public sealed record Assessment
{
    internal Assessment(Job job, ImmutableArray<Finding> findings, Lazy<ImmutableArray<SubjectSheet>> sheets, Provision provision)
    {
        Job = job;
        Findings = findings;
        this.sheets = sheets;
        this.provision = provision;
    }

    private readonly Lazy<ImmutableArray<SubjectSheet>> sheets;
    private readonly Provision provision;

    /// <summary>The job.</summary>
    public Job Job { get; }

    /// <summary>The worst finding, accepted ones weighing no more than a caution.</summary>
    public Verdict Verdict => Findings.Length == 0 ? Verdict.Holds
        : Findings.Max(f => f.Accepted is not null && f.Severity > Verdict.Caution ? Verdict.Caution : f.Severity);

    /// <summary>The findings, most serious first.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Every sheet, worked again from its input when first asked for.</summary>
    public IEnumerable<SubjectSheet> Sheets => sheets.Value;

    /// <summary>The circuits, in the order of the change.</summary>
    public ImmutableArray<CircuitResult> Circuits { get; init; } = [];

    /// <summary>The power feeds, in the order of the change.</summary>
    public ImmutableArray<FeedResult> Feeds { get; init; } = [];

    /// <summary>The bundles that new circuits run in.</summary>
    public ImmutableArray<BundleResult> Bundles { get; init; } = [];

    /// <summary>How full the segments are that new circuits run in.</summary>
    public ImmutableArray<SegmentUse> Segments { get; init; } = [];

    /// <summary>How good the ways of all circuits are together.</summary>
    public required RoutingResult Routing { get; init; }

    /// <summary>Load on each source in each condition it supplies.</summary>
    public ImmutableArray<SourceLoad> SourceLoads { get; init; } = [];

    /// <summary>Load on each bus in each condition.</summary>
    public ImmutableArray<BusLoad> BusLoads { get; init; } = [];

    /// <summary>Load on each breaker that new equipment is fed from.</summary>
    public ImmutableArray<BreakerLoad> BreakerLoads { get; init; } = [];

    /// <summary>The batteries.</summary>
    public ImmutableArray<BatteryResult> Batteries { get; init; } = [];

    /// <summary>Empty weight before the change.</summary>
    public required EmptyWeight EmptyBefore { get; init; }

    /// <summary>Empty weight after the change; null when it cannot be told.</summary>
    public EmptyWeight? EmptyAfter { get; init; }

    /// <summary>Everything the change takes out, with mass and place.</summary>
    public Sequence<ItemRow> MassOut { get; init; }

    /// <summary>Everything the change puts in, wires and connectors included.</summary>
    public Sequence<ItemRow> MassIn { get; init; }

    /// <summary>The worst loadings before the change.</summary>
    public ImmutableArray<LoadingExtreme> LoadingBefore { get; init; } = [];

    /// <summary>The worst loadings after the change.</summary>
    public ImmutableArray<LoadingExtreme> LoadingAfter { get; init; } = [];

    /// <summary>Marks of the wires.</summary>
    public ImmutableArray<WireMark> Marks => provision.Marks;

    /// <summary>Sleeves and labels to print.</summary>
    public ImmutableArray<PrintLine> PrintLines => PrintFile.Of(Job, Marks);

    /// <summary>What is cut of each kind of wire, from what.</summary>
    public ImmutableArray<CutPlan> Cuts => provision.Cuts;

    /// <summary>The kit: everything that must be at hand before the aircraft is opened.</summary>
    public KitList Kit => provision.Kit;

    /// <summary>The kit against the days of a plan: when each line is needed, and whether it lasts until its last use.</summary>
    public KitList KitOn(KitDates dates) => provision.KitOn(dates);

    /// <summary>The equipment list, with what the change does to each line.</summary>
    public ImmutableArray<EquipmentLine> Equipment { get; init; } = [];

    /// <summary>The sheet of a subject, or null.</summary>
    public Sheet? Sheet(string subject) => sheets.Value.FirstOrDefault(s => s.Subject == subject)?.Sheet;
}
