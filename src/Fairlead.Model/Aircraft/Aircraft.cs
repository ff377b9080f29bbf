using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>The aircraft record: <c>aircraft.yaml</c>.</summary>
public sealed record Aircraft(
    [Doc("registration")] string Registration,
    [Doc("type")] string Type,
    [Doc("serial number")] string Serial,
    [Doc("certification basis; load factors follow from it")] Certification Certification,
    [Doc("greatest operating altitude", Min = "0 ft", Max = "60000 ft")] Length Ceiling,
    [Doc("zones of the aircraft")] Catalog<Zone> Zones,
    [Doc("weighing record and present empty weight")] WeighingRecord Weighing,
    [Doc("mass limits and centre of gravity envelope")] Envelope Envelope,
    [Doc("whether the cabin is pressurised")] bool Pressurised = false,
    [Doc("design speeds")] DesignSpeeds? Speeds = null,
    [Doc("load factors of the approved data, where they take the place of those that follow from the basis")] LoadFactors? LoadFactors = null,
    [Doc("panels and furnishings that must be opened to reach a place")] Catalog<Panel>? Panels = null,
    [Doc("points of the raceways")] Catalog<RacewayNode>? Nodes = null,
    [Doc("ways between two points, in which wires run")] Catalog<RacewaySegment>? Segments = null,
    [Doc("skins, webs and shelves that carry fixings")] Catalog<StructureSheet>? Structures = null,
    [Doc("ground studs")] Catalog<GroundStud>? Grounds = null,
    [Doc("generators, alternators and external power")] Catalog<PowerSource>? Sources = null,
    [Doc("buses")] Catalog<Bus>? Buses = null,
    [Doc("main power wires from sources and batteries to buses, and between buses")] Catalog<Feeder>? Feeders = null,
    [Doc("circuit breakers fitted")] Catalog<Breaker>? Breakers = null,
    [Doc("batteries")] Catalog<Battery>? Batteries = null,
    [Doc("operating conditions of the load analysis")] Catalog<OperatingCondition>? Conditions = null,
    [Doc("loads fitted before the change")] Catalog<ExistingLoad>? Loads = null,
    [Doc("equipment fitted before the change")] Catalog<InstalledItem>? Equipment = null,
    [Doc("antennas fitted before the change")] Catalog<InstalledAntenna>? Antennas = null,
    [Doc("position of the magnetic compass")] Place? Compass = null,
    [Doc("loading stations: seats, baggage, cargo")] Catalog<LoadingStation>? Stations = null,
    [Doc("limits shared by several loading stations")] Catalog<StationGroup>? StationGroups = null,
    [Doc("fuel tanks")] Catalog<Tank>? Tanks = null,
    [Doc("test instruments, with calibration dates")] Catalog<Instrument>? Instruments = null,
    [Doc("controlled tools")] Catalog<Tool>? Tools = null,
    [Doc("cross-sections of the fuselage from nose to tail, for the outline on drawings")] Sequence<FuselageSection> Sections = default,
    [Doc("circuit function letters of this aircraft's wiring manual; when given, every circuit's letters must stand here")] Catalog<CircuitLetters>? CircuitLetters = null);

/// <summary>Circuit function letters with their meaning. Tables differ between operators and types, so each aircraft has its own.</summary>
public sealed record CircuitLetters([Key] string Id, [Doc("what they stand for")] string Meaning) : IEntity;

/// <summary>A cross-section of the fuselage, for the outline on drawings.</summary>
public sealed record FuselageSection(
    [Doc("fuselage station", Min = "-2000 in", Max = "5000 in")] Length Fs,
    [Doc("distance of the side from the centre line")] Length HalfWidth,
    [Doc("waterline of the lowest point", Min = "-1000 in", Max = "1000 in")] Length Bottom,
    [Doc("waterline of the highest point", Min = "-1000 in", Max = "1000 in")] Length Top);

/// <summary>The certification basis.</summary>
public sealed record Certification(
    [Doc("rule, for example '14 CFR 23'")] string Rule,
    [Doc("amendment or edition")] string Edition,
    [Doc("category, for example normal, utility, commuter")] string Category);

/// <summary>Design speeds.</summary>
public sealed record DesignSpeeds([Doc("design cruise speed")] Speed Cruise, [Doc("design dive speed")] Speed Dive, [Doc("flap speed")] Speed? Flaps = null);

/// <summary>Load factors of the approved data.</summary>
public sealed record LoadFactors(
    [Doc("positive limit load factor, the greater of manoeuvre and gust", Min = "1", Max = "15")] double? Positive = null,
    [Doc("size of the negative limit load factor", Min = "0", Max = "15")] double? Negative = null,
    [Doc("ultimate inertia factor of items upward", Min = "0", Max = "100")] double? Up = null,
    [Doc("ultimate inertia factor forward", Min = "0", Max = "100")] double? Forward = null,
    [Doc("ultimate inertia factor to either side", Min = "0", Max = "100")] double? Side = null,
    [Doc("ultimate inertia factor downward", Min = "0", Max = "100")] double? Down = null,
    [Doc("ultimate inertia factor aft", Min = "0", Max = "100")] double? Aft = null);

/// <summary>Where a zone lies to the people on board.</summary>
public enum CabinSide
{
    /// <summary>In the cabin, or anywhere not named otherwise.</summary>
    Inside,

    /// <summary>Above or behind the cabin.</summary>
    AboveOrBehind,
}

/// <summary>A zone.</summary>
public sealed record Zone(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("highest ambient temperature in service", Min = "-60 degC", Max = "300 degC")] Temperature Hottest,
    [Doc("lowest ambient temperature in service", Min = "-90 degC", Max = "100 degC")] Temperature? Coldest = null,
    [Doc("whether the zone has cabin pressure")] bool Pressurised = false,
    [Doc("how many people can work in it at once", Min = "1", Max = "100")] int People = 1,
    [Doc("whether flight controls run through it")] bool Controls = false,
    [Doc("environment by qualification section, for example vibration: S")] Sequence<Category> Environment = default,
    [Doc("surface through which the heat of its equipment leaves")] Area? Surface = null,
    [Doc("where it lies to the people on board: the load factors of rotorcraft follow from it")] CabinSide Cabin = CabinSide.Inside) : IEntity;

/// <summary>A qualification category by section of the environmental standard.</summary>
public sealed record Category([Doc("section, for example temperature-altitude")] string Section, [Doc("category letter and number")] string Code);

/// <summary>What kind of thing must be opened.</summary>
public enum PanelKind
{
    /// <summary>Access panel of the skin.</summary>
    Access,

    /// <summary>Floor panel.</summary>
    Floor,

    /// <summary>Seat.</summary>
    Seat,

    /// <summary>Carpet.</summary>
    Carpet,

    /// <summary>Side or head lining.</summary>
    Trim,

    /// <summary>Cover, glareshield or instrument panel section.</summary>
    Cover,
}

/// <summary>A panel or furnishing that must be opened or removed.</summary>
public sealed record Panel(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("kind")] PanelKind Kind,
    [Doc("zone")][Ref(typeof(Zone))] string Zone,
    [Doc("time to open")] ThreePoint Open,
    [Doc("time to close")] ThreePoint Close,
    [Doc("what must be opened first")][Ref(typeof(Panel))] Sequence<string> After = default,
    [Doc("number of fasteners", Min = "0", Max = "2000")] int Fasteners = 0,
    [Doc("kind of fastener")] string Fastener = "",
    [Doc("whether flight controls lie behind it")] bool Controls = false,
    [Doc("mass")] Mass? Mass = null,
    [Doc("centre")] Place? Place = null,
    [Doc("lengths of its fasteners, and which goes where")] string Lengths = "") : IEntity;

/// <summary>A point of the raceways.</summary>
public sealed record RacewayNode([Key] string Id, [Doc("zone")][Ref(typeof(Zone))] string Zone, [Doc("position")] Place Place) : IEntity;

/// <summary>A way between two raceway points.</summary>
public sealed record RacewaySegment(
    [Key] string Id,
    [Doc("one end")][Ref(typeof(RacewayNode))] string From,
    [Doc("other end")][Ref(typeof(RacewayNode))] string To,
    [Doc("length along the way; the straight distance when left out", Min = "0.1 in", Max = "500 ft")] Length? Length = null,
    [Doc("greatest bundle diameter that fits", Min = "0.05 in", Max = "20 in")] Length? Capacity = null,
    [Doc("bundle already there")] ExistingBundle? Existing = null,
    [Doc("highest ambient temperature, where it differs from the zone", Min = "-60 degC", Max = "300 degC")] Temperature? Hottest = null,
    [Doc("separation class")] string Separation = "",
    [Doc("number of clamps", Min = "0", Max = "1000")] int Clamps = 0,
    [Doc("panels that give access")][Ref(typeof(Panel))] Sequence<string> Panels = default,
    [Doc("clearance from the nearest fuel, hydraulic or oxygen line")] Length? FluidClearance = null,
    [Doc("clearance from the nearest moving control")] Length? ControlClearance = null) : IEntity;

/// <summary>Wires that were in a way before the change.</summary>
public sealed record ExistingBundle(
    [Doc("number of wires", Min = "0", Max = "2000")] int Wires,
    [Doc("sum of their actual currents")] Current Current,
    [Doc("their gauge, the thinnest if mixed")] Gauge Gauge,
    [Doc("their temperature rating")] Temperature Rating,
    [Doc("diameter of the bundle", Min = "0.01 in", Max = "20 in")] Length Diameter,
    [Doc("name of the bundle that new wires join when they name none")] string Bundle = "main");

/// <summary>A skin, web or shelf.</summary>
public sealed record StructureSheet(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("zone")][Ref(typeof(Zone))] string Zone,
    [Doc("material; a name of the materials of the parts catalogue gives its strength")] string Material,
    [Doc("thickness", Min = "0.005 in", Max = "2 in")] Length Thickness,
    [Doc("frame pitch")] Length? FramePitch = null,
    [Doc("stringer pitch")] Length? StringerPitch = null,
    [Doc("equipment mass it carries before the change")] Mass? Carries = null,
    [Doc("greatest equipment mass it may carry, by placard or approved data")] Mass? Capacity = null) : IEntity;

/// <summary>A ground stud or ground block.</summary>
public sealed record GroundStud(
    [Key] string Id,
    [Doc("raceway point where its wires leave the way")][Ref(typeof(RacewayNode))] string Node,
    [Doc("terminals already on it", Min = "0", Max = "16")] int Terminals = 0,
    [Doc("resistance from the stud to the source's ground")] Resistance? Return = null) : IEntity;
