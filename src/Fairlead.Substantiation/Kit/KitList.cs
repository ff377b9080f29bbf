using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation.Kit;

/// <summary>What kind of thing a line of the kit is.</summary>
public enum KitKind
{
    /// <summary>Box, sensor or display.</summary>
    Equipment,

    /// <summary>Antenna.</summary>
    Antenna,

    /// <summary>Wire, cable or coax by length.</summary>
    Wire,

    /// <summary>Contact.</summary>
    Contact,

    /// <summary>Connector.</summary>
    Connector,

    /// <summary>Backshell.</summary>
    Backshell,

    /// <summary>Sealing plug of an empty cavity.</summary>
    Plug,

    /// <summary>Circuit breaker.</summary>
    Breaker,

    /// <summary>Terminal or splice.</summary>
    Terminal,

    /// <summary>Terminal board, ground stud or disconnect.</summary>
    Junction,

    /// <summary>Termination of a shield.</summary>
    Shield,

    /// <summary>Sleeve or label.</summary>
    Marking,

    /// <summary>Tie.</summary>
    Tie,

    /// <summary>Clamp.</summary>
    Clamp,

    /// <summary>Screw, bolt, nut or washer.</summary>
    Fastener,

    /// <summary>Anchor nut.</summary>
    AnchorNut,

    /// <summary>Rivet.</summary>
    Rivet,

    /// <summary>Doubler and the sheet it is cut from.</summary>
    Doubler,

    /// <summary>Sealant.</summary>
    Sealant,

    /// <summary>What a task takes.</summary>
    Material,

    /// <summary>Drill or countersink.</summary>
    Drill,

    /// <summary>Crimp tool, die, or insertion and extraction tool.</summary>
    Tool,

    /// <summary>Test gear.</summary>
    TestGear,
}

/// <summary>How a line of the kit stands against the stock.</summary>
public enum KitState
{
    /// <summary>Enough is on hand.</summary>
    Covered,

    /// <summary>The job does not say what is on hand.</summary>
    StockUnknown,

    /// <summary>The job does not say what is needed.</summary>
    NotStated,

    /// <summary>Too little is on hand.</summary>
    Short,

    /// <summary>Its calibration ends before the use date.</summary>
    CalibrationEnds,
}

/// <summary>A line of the kit.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Part">The part, tool or instrument; empty where the job does not say which.</param>
/// <param name="Name">What it is.</param>
/// <param name="Unit">Unit of the quantities: each, m, pack.</param>
/// <param name="Used">How much the change uses.</param>
/// <param name="Spare">How much is taken beyond that.</param>
/// <param name="For">What it is for, by ids of the change.</param>
/// <param name="How">How the quantity came about, in words.</param>
/// <param name="State">How it stands against the stock.</param>
/// <param name="OnHand">How much is on hand and can be used on the use date; null when the job does not say.</param>
/// <param name="Shortage">How much is missing: need less stock, never negative; for wire no less than the pieces that cannot be cut.</param>
/// <param name="OrderBy">Last day to order what is missing; null when nothing is missing or the lead time is not stated.</param>
/// <param name="Batches">Batches on hand.</param>
/// <param name="Remark">Cure and shelf life of a sealant, calibration of a tool, expired batches; empty when there is nothing to say.</param>
/// <param name="NeededOn">The day by which it must be there: that of the first task that uses it where there is a plan, else the use date; null when neither is known.</param>
public sealed record KitLine(
    KitKind Kind, string Part, string Name, string Unit, double Used, double Spare, Sequence<string> For, string How, KitState State,
    double? OnHand = null, double Shortage = 0, DateOnly? OrderBy = null, Sequence<string> Batches = default, string Remark = "", DateOnly? NeededOn = null)
{
    /// <summary>How much the kit holds: what is used and the spare.</summary>
    public double Need => Used + Spare;

    /// <summary>What tells the line from all others of its kit.</summary>
    public (KitKind Kind, string What) Key => (Kind, Part.Length > 0 ? Part : Name);

    /// <summary>What the part is called on lists.</summary>
    public string PartText => Part.Length > 0 ? Part : "not stated";
}

/// <summary>The kit of a change: everything that must be at hand before the aircraft is opened.</summary>
/// <param name="Lines">The lines, by kind.</param>
/// <param name="UseDate">The day everything must be at hand; null when the job names none.</param>
/// <param name="UseDateOrigin">Where that day comes from, in words.</param>
/// <param name="Missing">Why the aircraft is not to be opened yet, in sentences; none when everything is at hand.</param>
public sealed record KitList(ImmutableArray<KitLine> Lines, DateOnly? UseDate, string UseDateOrigin, ImmutableArray<string> Missing)
{
    /// <summary>Whether everything is at hand. When it is not: do not open the aircraft yet.</summary>
    public bool IsComplete => Missing.IsEmpty;

    /// <summary>The verdict of the kit in words.</summary>
    public string Verdict => IsComplete ? "Everything is at hand." : "Do not open the aircraft yet.";
}

/// <summary>When the plan of the work needs what is in the kit.</summary>
/// <param name="Opening">The day the aircraft is opened.</param>
/// <param name="Days">First and last day on which each line is used, by its key.</param>
public sealed record KitDates(DateOnly Opening, ImmutableDictionary<(KitKind Kind, string What), (DateOnly First, DateOnly Last)> Days);
