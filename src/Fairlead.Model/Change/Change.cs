using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>The change: <c>change.yaml</c>.</summary>
public sealed record Change(
    [Doc("what changes, in one line")] string Title,
    [Doc("choices used where a circuit makes none")] WiringDefaults Wiring,
    [Doc("what comes out")] Catalog<Removal>? Remove = null,
    [Doc("what goes in")] Catalog<FittedItem>? Fit = null,
    [Doc("antennas that go in")] Catalog<FittedAntenna>? Antennas = null,
    [Doc("breakers that go in")] Catalog<Breaker>? Breakers = null,
    [Doc("ground studs that go in")] Catalog<GroundStud>? Grounds = null,
    [Doc("splices, terminals and disconnects that go in")] Catalog<Joint>? Joints = null,
    [Doc("circuits, end to end")] Catalog<Circuit>? Circuits = null,
    [Doc("where each new power input is fed from")] Catalog<PowerFeed>? Power = null,
    [Doc("software and straps to verify")] Catalog<Setting>? Settings = null,
    [Doc("tests beyond those derived")] Catalog<ExtraTest>? Tests = null,
    [Doc("tasks beyond those derived")] Catalog<ExtraTask>? Tasks = null,
    [Doc("findings accepted, by whom and why")] Catalog<Concession>? Concessions = null,
    [Doc("levels and delays to work out for the test of radios on the ramp")] Catalog<RampCheck>? Ramp = null,
    [Doc("isolation of antennas as it was measured; goes before what follows from their spacing")] Catalog<MeasuredIsolation>? Isolations = null,
    [Doc("simulated traffic for the test of traffic sensors on the ramp")] Catalog<Scenario>? Scenarios = null);

/// <summary>Wiring choices for the whole change.</summary>
public sealed record WiringDefaults(
    [Doc("wire family for circuits whose wire is 'auto'")] string Family,
    [Doc("slack added to each wire's route, as a share of it", Min = "0 %", Max = "100 %")] Fraction Slack,
    [Doc("length at each end for termination, re-termination and drip loop", Min = "0 in", Max = "10 ft")] Length Termination,
    [Doc("loop behind a box so that it can be drawn out", Min = "0 in", Max = "10 ft")] Length ServiceLoop,
    [Doc("drip loop at each end, where the termination does not hold it already", Min = "0 in", Max = "10 ft")] Length DripLoop = default,
    [Doc("length at a box for drawing it out of its tray, where the service loop does not hold it already", Min = "0 in", Max = "10 ft")] Length Withdrawal = default,
    [Doc("what is cut on top of each wire's length and trimmed off at the aircraft", Min = "0 in", Max = "10 ft")] Length CutAllowance = default,
    [Doc("separation classes of circuits and segments that stay apart; classes not named together may share a segment")] Sequence<ClassPair> KeepApart = default,
    [Doc("wire mass that is worth one hour of opening and closing panels; when left out, panels do not count in choosing ways", Min = "0 kg", Max = "100 kg")] Mass? AccessHour = null,
    [Doc("least share of the cavities of each new connector of several cavities that stays free for later use")] Fraction? Spares = null,
    [Doc("breakers, ground studs and joints whose circuits may be drawn from one box to the next: 'fairlead route' then holds them against one shared tree; nothing is drawn anew by itself")][Ref(typeof(Breaker), typeof(GroundStud), typeof(Joint))] Sequence<string> Redraw = default);

/// <summary>Two separation classes that stay apart.</summary>
public sealed record ClassPair([Doc("one class")] string One, [Doc("the other class")] string Other);

/// <summary>An item that comes out.</summary>
public sealed record Removal(
    [Key] string Id,
    [Doc("item of the equipment list or antenna")][Ref(typeof(InstalledItem), typeof(InstalledAntenna))] string Item,
    [Doc("load of the load analysis that goes with it")][Ref(typeof(ExistingLoad))] Sequence<string> Loads = default,
    [Doc("mass of wire taken out with it")] Mass Wire = default,
    [Doc("centre of that wire")] Place? WirePlace = null,
    [Doc("panels that give access")][Ref(typeof(Panel))] Sequence<string> Panels = default) : IEntity;

/// <summary>An item that goes in.</summary>
public sealed record FittedItem(
    [Key] string Id,
    [Doc("what it is")][Ref(typeof(EquipmentPart))] string Part,
    [Doc("zone")][Ref(typeof(Zone))] string Zone,
    [Doc("centre of gravity in the aircraft")] Place Place,
    [Doc("raceway point where its wires join the way")][Ref(typeof(RacewayNode))] string Node,
    [Doc("what it is fixed to")][Ref(typeof(StructureSheet))] string? Structure = null,
    [Doc("how it is fixed")] Fixing? Fixing = null,
    [Doc("category in the equipment list")] EquipmentCategory Category = EquipmentCategory.Optional,
    [Doc("items of one name back each other up")] string Redundant = "",
    [Doc("mass of tray, brackets and fixings")] Mass Mounting = default,
    [Doc("panels that give access")][Ref(typeof(Panel))] Sequence<string> Panels = default) : IEntity;

/// <summary>A direction in the aircraft.</summary>
public enum Direction
{
    /// <summary>Up.</summary>
    Up,

    /// <summary>Down.</summary>
    Down,

    /// <summary>Forward.</summary>
    Forward,

    /// <summary>Aft.</summary>
    Aft,

    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,
}

/// <summary>How an item is fixed.</summary>
public sealed record Fixing(
    [Doc("screw or bolt")][Ref(typeof(FastenerPart))] string Fastener,
    [Doc("how many", Min = "1", Max = "200")] int Count,
    [Doc("anchor nut")][Ref(typeof(AnchorNutPart))] string? AnchorNut = null,
    [Doc("edge distance")] Length? EdgeDistance = null,
    [Doc("greatest bonding resistance", Min = "0.01 mohm", Max = "100 ohm")] Resistance? Bond = null,
    [Doc("which way it stands off what it is fixed to")] Direction Stands = Direction.Up,
    [Doc("thickness of washers, and of shims under the anchor nuts")] Length Washers = default,
    [Doc("bonding strap in series with the joint")] BondStrap? Strap = null,
    [Doc("whether it is taken out often, so that its attachments wear")] bool RemovedOften = false,
    [Doc("washer")][Ref(typeof(FastenerPart))] string? Washer = null);

/// <summary>A bonding strap.</summary>
public sealed record BondStrap(
    [Doc("length", Min = "0.1 in", Max = "1000 in")] Length Length,
    [Doc("section of its metal", Min = "0.0001 in2", Max = "10 in2")] Area Section,
    [Doc("whether it is of copper; else of aluminium")] bool Copper = false);

/// <summary>An antenna that goes in.</summary>
public sealed record FittedAntenna(
    [Key] string Id,
    [Doc("what it is")][Ref(typeof(AntennaPart))] string Part,
    [Doc("position")] Place Place,
    [Doc("raceway point where its coax joins the way")][Ref(typeof(RacewayNode))] string Node,
    [Doc("skin it stands on")][Ref(typeof(StructureSheet))] string? Structure = null,
    [Doc("sealant")][Ref(typeof(SealantPart))] string? Sealant = null,
    [Doc("mass of doubler and fixings")] Mass Doubler = default,
    [Doc("greatest bonding resistance", Min = "0.01 mohm", Max = "100 ohm")] Resistance? Bond = null,
    [Doc("panels that give access")][Ref(typeof(Panel))] Sequence<string> Panels = default,
    [Doc("how it is fixed")] Fixing? Fixing = null,
    [Doc("doubler around its cut-out")] DoublerPlate? Plate = null,
    [Doc("distance to the nearest edge of conducting skin, for an antenna that needs a ground plane", Min = "0.1 in", Max = "5000 in")] Length? GroundPlane = null,
    [Doc("zone whose environment it stands in, as a rule one outside the skin")][Ref(typeof(Zone))] string? Zone = null) : IEntity;

/// <summary>A doubler riveted around a cut-out.</summary>
public sealed record DoublerPlate(
    [Doc("thickness", Min = "0.005 in", Max = "2 in")] Length Thickness,
    [Doc("width of the cut-out across the load, screw holes in its line included")] Length CutOut,
    [Doc("width of the doubler across the load")] Length Width,
    [Doc("rivet")][Ref(typeof(RivetPart))] string Rivet,
    [Doc("rivet pitch")] Length Pitch,
    [Doc("edge distance of the rivets")] Length EdgeDistance,
    [Doc("rivets on each side of the cut-out, along the load", Min = "1", Max = "500")] int Rivets,
    [Doc("length of the doubler along the load; for the bending of the skin as its width when left out", Min = "0.5 in", Max = "200 in")] Length? Length = null,
    [Doc("sheet it is cut from")][Ref(typeof(ConsumablePart))] string? Sheet = null);

/// <summary>What kind of joint.</summary>
public enum JointKind
{
    /// <summary>Splice.</summary>
    Splice,

    /// <summary>Terminal of a terminal board.</summary>
    Terminal,

    /// <summary>Disconnect.</summary>
    Disconnect,
}

/// <summary>A point where circuits join.</summary>
public sealed record Joint([Key] string Id, [Doc("kind")] JointKind Kind, [Doc("raceway point; when left out, the one that takes the least mass of wire")][Ref(typeof(RacewayNode))] string? Node = null,
    [Doc("connector it is a contact of, where it is one of a disconnect or bulkhead connector")] string Connector = "") : IEntity;

/// <summary>Whether a current flows all the time.</summary>
public enum Duty
{
    /// <summary>Continuous.</summary>
    Continuous,

    /// <summary>Intermittent.</summary>
    Intermittent,
}

/// <summary>Where a shield is grounded.</summary>
public enum ShieldEnds
{
    /// <summary>No shield.</summary>
    None,

    /// <summary>At both ends.</summary>
    Both,

    /// <summary>At the 'from' end.</summary>
    From,

    /// <summary>At the 'to' end.</summary>
    To,
}

/// <summary>A circuit: one wire from end to end.</summary>
public sealed record Circuit(
    [Key] string Id,
    [Doc("one end")] Endpoint From,
    [Doc("other end")] Endpoint To,
    [Doc("wire, cable or coax of the parts catalogue, or 'auto' for the smallest wire that serves")][Ref(typeof(WirePart), typeof(CablePart), typeof(CoaxPart), Or = "auto")] string Wire = "auto",
    [Doc("circuit function letters")] string Function = "",
    [Doc("signal")] string Signal = "",
    [Doc("circuits of one name are twisted together")] string Twist = "",
    [Doc("where the shield is grounded")] ShieldEnds Shield = ShieldEnds.None,
    [Doc("circuits of one cable share this name")] string Cable = "",
    [Doc("bundle it is tied into")] string Bundle = "main",
    [Doc("current, where it does not follow from a power input", Min = "0 A", Max = "500 A")] Current? Current = null,
    [Doc("duty")] Duty Duty = Duty.Continuous,
    [Doc("length, where it is known and not to be taken from the raceways", Min = "0.5 in", Max = "500 ft")] Length? Length = null,
    [Doc("raceway segments it may not use")][Ref(typeof(RacewaySegment))] Sequence<string> Avoid = default,
    [Doc("raceway points it must pass, in order")][Ref(typeof(RacewayNode))] Sequence<string> Via = default,
    [Doc("identification, where it does not follow from function, number and gauge")] string Mark = "",
    [Doc("whether its wire may be made up of two pieces with a splice")] bool Splice = false,
    [Doc("separation class")] string Separation = "",
    [Doc("circuits of one name back each other up and take different segments")] string Redundant = "") : IEntity;

/// <summary>Where a power input is fed from.</summary>
public sealed record PowerFeed(
    [Key] string Id,
    [Doc("item")][Ref(typeof(FittedItem))] string Item,
    [Doc("power input of its part")] string Input,
    [Doc("breaker")][Ref(typeof(Breaker))] string Breaker,
    [Doc("state in each operating condition; a condition left out means off")] Sequence<ConditionState> Conditions,
    [Doc("time after the loss of all generators when it is switched off")] Duration? ShedAt = null) : IEntity;

/// <summary>The state of a power input in a condition.</summary>
public sealed record ConditionState([Doc("operating condition")][Ref(typeof(OperatingCondition))] string Condition, [Doc("state of the power input")] string State);

/// <summary>A software part or strap to verify.</summary>
public sealed record Setting(
    [Key] string Id,
    [Doc("item")][Ref(typeof(FittedItem))] string Item,
    [Doc("what is set")] string Name,
    [Doc("expected value")] string Expected,
    [Doc("pin, if it is a strap")] string Pin = "") : IEntity;

/// <summary>A test beyond those derived.</summary>
public sealed record ExtraTest([Key] string Id, [Doc("what is tested")] string Name, [Doc("expected result")] string Expected, [Doc("source of the limit")] string Source = "",
    [Doc("boxes whose reception it shows while the other transmitters are keyed")][Ref(typeof(FittedItem), typeof(InstalledItem))] Sequence<string> Receivers = default,
    [Doc("test gear; [none] when it takes none")][Ref(typeof(Instrument), typeof(Tool), Or = "none")] Sequence<string> Instruments = default,
    [Doc("when it is done")] WorkStage Stage = WorkStage.Tests,
    [Doc("tests raised by what the change disturbs, whose place it takes")] Sequence<SideTest> Covers = default) : IEntity;

/// <summary>A test raised by what was disturbed.</summary>
public enum SideTest
{
    /// <summary>Compass swing, after electrical work or ferrous parts near the compass.</summary>
    CompassSwing,

    /// <summary>Altitude reported against the altimeter, after work on a transponder.</summary>
    AltitudeCorrespondence,

    /// <summary>Suppression pulses at every box on the line, after work on it.</summary>
    Suppression,
}

/// <summary>When in the course of a job something is done.</summary>
public enum WorkStage
{
    /// <summary>Before anything is opened.</summary>
    Before,

    /// <summary>While panels are open.</summary>
    Work,

    /// <summary>When everything is connected, configured and powered.</summary>
    Tests,

    /// <summary>Outside, when everything is closed.</summary>
    Outside,

    /// <summary>In the hangar, when everything is closed.</summary>
    Closed,
}

/// <summary>A test of a radio with a test set on the ramp: either a level wanted at the antenna, or a target simulated at a range.</summary>
public sealed record RampCheck(
    [Key] string Id,
    [Doc("antenna tested")][Ref(typeof(FittedAntenna), typeof(InstalledAntenna))] string Antenna,
    [Doc("distance of the test antenna", Min = "0.1 ft", Max = "1000 ft")] Length Distance,
    [Doc("level wanted at the antenna in dBm", Min = "-120", Max = "10")] double? Level = null,
    [Doc("range of the simulated target", Min = "0.01 nmi", Max = "300 nmi")] Length? Range = null,
    [Doc("gain of the test antenna in dBi", Min = "-40", Max = "30")] double TestGain = 0,
    [Doc("loss of the test cable in dB", Min = "0", Max = "60")] double TestLoss = 0,
    [Doc("what a transponder is set to, for the replies it must give")] ExpectedReplies? Replies = null) : IEntity;

/// <summary>A task beyond those derived.</summary>
public sealed record ExtraTask(
    [Key] string Id,
    [Doc("what is done")] string Name,
    [Doc("zone")][Ref(typeof(Zone))] string Zone,
    [Doc("time")] ThreePoint Time,
    [Doc("skill")] string Skill = "",
    [Doc("tasks that come first")][Ref(typeof(ExtraTask))] Sequence<string> After = default,
    [Doc("panels that must be open")][Ref(typeof(Panel))] Sequence<string> Panels = default,
    [Doc("parts and materials it takes")] Sequence<Take> Takes = default,
    [Doc("when it is done")] WorkStage Stage = WorkStage.Work) : IEntity;

/// <summary>What a task takes from the stores.</summary>
public sealed record Take(
    [Doc("part")][Ref(typeof(FastenerPart), typeof(RivetPart), typeof(AnchorNutPart), typeof(ClampPart), typeof(SealantPart), typeof(ConsumablePart))] string Part,
    [Doc("how many, in the unit of the part", Min = "0", Max = "100000")] double Quantity);

/// <summary>A finding that somebody accepts.</summary>
public sealed record Concession(
    [Key] string Id,
    [Doc("rule of the finding")] string Rule,
    [Doc("subject of the finding")] string Subject,
    [Doc("who accepts it")] string By,
    [Doc("why")] string Reason,
    [Doc("until when, if not for good")] DateOnly? Until = null) : IEntity;
