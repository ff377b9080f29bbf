using Fairlead.Calculations;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Tasks;

/// <summary>What kind of work a task is.</summary>
public enum TaskKind
{
    /// <summary>The aircraft is looked over and its systems tested before anything is touched.</summary>
    Survey,

    /// <summary>The battery is switched off and tagged, or on.</summary>
    Battery,

    /// <summary>A panel or furnishing is opened or taken off.</summary>
    Open,

    /// <summary>Wires and cables are labelled before they are parted.</summary>
    Tag,

    /// <summary>Something comes out.</summary>
    Remove,

    /// <summary>Holes and cut-outs are made.</summary>
    Drill,

    /// <summary>Bare metal is protected.</summary>
    Protect,

    /// <summary>Rivets are set.</summary>
    Rivet,

    /// <summary>Something is mounted.</summary>
    Mount,

    /// <summary>Sealant is applied.</summary>
    Seal,

    /// <summary>Paint is touched up.</summary>
    Paint,

    /// <summary>Wires are cut and marked.</summary>
    Cut,

    /// <summary>A bundle is run and clamped.</summary>
    RunWire,

    /// <summary>Wires are terminated.</summary>
    Terminate,

    /// <summary>A harness or bond is checked, without aircraft power.</summary>
    HarnessCheck,

    /// <summary>Power is checked at unplugged connectors.</summary>
    PrePower,

    /// <summary>A box is put in place and its connectors are mated.</summary>
    Connect,

    /// <summary>Software and settings are verified.</summary>
    Configure,

    /// <summary>Something is tested.</summary>
    Test,

    /// <summary>Something is looked at before it is covered, or before release.</summary>
    Inspect,

    /// <summary>A panel or furnishing is put back.</summary>
    Close,

    /// <summary>Flight controls are checked, full, free and in the correct sense.</summary>
    Controls,

    /// <summary>Flight controls that run through a zone are checked once all work in it is done and closed.</summary>
    ZoneControls,

    /// <summary>Records are worked out.</summary>
    Record,

    /// <summary>The aircraft is released.</summary>
    Release,

    /// <summary>Work that the job itself names.</summary>
    Extra,
}

/// <summary>What must be finished before a task can start.</summary>
/// <param name="Task">The earlier task.</param>
/// <param name="Why">Why, in words.</param>
/// <param name="Lag">Wall time that must pass after its end, h: a cure.</param>
/// <param name="Hold">Whether the log refuses to begin before it is finished and signed: what hurts someone, cannot be seen later, or cannot be undone.</param>
public sealed record Wait(string Task, string Why, double Lag = 0, bool Hold = false);

/// <summary>A stage of a task that a second person looks at before the work goes on and covers it.</summary>
/// <param name="Id">Name within its task.</param>
/// <param name="Text">What is looked at.</param>
public sealed record StageInspection(string Id, string Text);

/// <summary>A task derived from the change.</summary>
/// <param name="Id">Name, stable from one derivation to the next, for example <c>OPEN-BELLY-1</c>.</param>
/// <param name="Kind">What kind of work it is.</param>
/// <param name="Title">What is done.</param>
/// <param name="Zone">Zone it takes room in; empty for the bench or the desk.</param>
/// <param name="Time">How long it takes its crew.</param>
/// <param name="Crew">The skill of each person it takes; the first leads.</param>
/// <param name="Source">Where in the job's files it comes from.</param>
public sealed record JobTask(string Id, TaskKind Kind, string Title, string Zone, TaskTime Time, Sequence<string> Crew, string Source)
{
    /// <summary>Authorisation its signature needs; empty for any.</summary>
    public string Authorisation { get; init; } = "";

    /// <summary>Panels that stay open until it is done.</summary>
    public Sequence<string> Panels { get; init; }

    /// <summary>Zones it reaches into beside its own.</summary>
    public Sequence<string> Passes { get; init; }

    /// <summary>Tools and instruments it needs while it is done.</summary>
    public Sequence<string> Tools { get; init; }

    /// <summary>Parts and materials it takes.</summary>
    public Sequence<string> Parts { get; init; }

    /// <summary>The item that comes out in it; empty where none does.</summary>
    public string Removes { get; init; } = "";

    /// <summary>The item that goes in and is plugged in it; empty where none is.</summary>
    public string Fits { get; init; } = "";

    /// <summary>The task that undoes it, as switching on does to switching off; empty where none does.</summary>
    public string UndoneBy { get; init; } = "";

    /// <summary>What must be finished first.</summary>
    public Sequence<Wait> After { get; init; }

    /// <summary>What can hurt someone, and what to do about it.</summary>
    public Sequence<string> Cautions { get; init; }

    /// <summary>Whether it is inspected by a person who had no part in it.</summary>
    public bool Independent { get; init; }

    /// <summary>Stages at which it is held until a second person has signed.</summary>
    public Sequence<StageInspection> Stages { get; init; }

    /// <summary>The test card that is worked through; null where the task is no test. Both have one id.</summary>
    public TestCard? Card { get; init; }

    /// <summary>Whether it is done only with a photograph in the log.</summary>
    public bool Photographs { get; init; }

    /// <summary>Whether nothing may stand open when it is done: the general verification.</summary>
    public bool Clear { get; init; }

    /// <summary>What the job itself says against finishing it; empty when nothing.</summary>
    public string Against { get; init; } = "";

    /// <summary>Number of the work order that it releases; empty where it releases none.</summary>
    public string Releases { get; init; } = "";

    /// <summary>Whether the aircraft stands outside for it.</summary>
    public bool Outside { get; init; }

    /// <summary>Whether a hole is drilled in it beside what its kind tells: the hole of a ground stud.</summary>
    public bool Drilled { get; init; }

    /// <summary>Whether it has to be done without a pause, as sealant that has been mixed sets.</summary>
    public bool Unbroken { get; init; }

    /// <summary>Whether coaxial cables are terminated in it.</summary>
    public bool Coax { get; init; }

    /// <summary>Whether nothing but coaxial cables is terminated in it.</summary>
    public bool CoaxOnly { get; init; }

    /// <summary>Whether wires are terminated in it at a stud, breaker, board or splice, and not in a connector.</summary>
    public bool AtPoint { get; init; }

    /// <summary>Whether it is a look at the work of others, before that is covered.</summary>
    public bool LooksBehind => Kind == TaskKind.Inspect && Card is null && !Clear;

    /// <summary>How many people it takes.</summary>
    public int People => Crew.Count;
}
