using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>The parts catalogue: all files of <c>parts/</c> together.</summary>
public sealed record PartsCatalog(
    [Doc("boxes, sensors, displays")] Catalog<EquipmentPart>? Equipment = null,
    [Doc("single wires")] Catalog<WirePart>? Wires = null,
    [Doc("shielded and multi-core cables")] Catalog<CablePart>? Cables = null,
    [Doc("coaxial cables")] Catalog<CoaxPart>? Coax = null,
    [Doc("contacts")] Catalog<ContactPart>? Contacts = null,
    [Doc("connectors")] Catalog<ConnectorPart>? Connectors = null,
    [Doc("circuit breakers")] Catalog<BreakerPart>? Breakers = null,
    [Doc("screws, bolts, nuts, washers")] Catalog<FastenerPart>? Fasteners = null,
    [Doc("rivets")] Catalog<RivetPart>? Rivets = null,
    [Doc("anchor nuts")] Catalog<AnchorNutPart>? AnchorNuts = null,
    [Doc("clamps")] Catalog<ClampPart>? Clamps = null,
    [Doc("antennas")] Catalog<AntennaPart>? Antennas = null,
    [Doc("sealants")] Catalog<SealantPart>? Sealants = null,
    [Doc("ties, sleeves, labels and the like")] Catalog<ConsumablePart>? Consumables = null,
    [Doc("materials of structure, by the name that structure sheets give")] Catalog<Material>? Materials = null)
{
    /// <summary>Several files as one catalogue. Their ids are unique together.</summary>
    internal static PartsCatalog Join(IReadOnlyList<PartsCatalog> files)
    {
        Catalog<T> All<T>(Func<PartsCatalog, Catalog<T>?> section)
            where T : class, IEntity =>
            files.Select(f => section(f) ?? Catalog<T>.Empty).Where(c => c.Count > 0).ToArray() is var filled && filled is [] or [_] ? filled.FirstOrDefault(Catalog<T>.Empty) : new(filled.SelectMany(c => c));
        return new(
            All(f => f.Equipment), All(f => f.Wires), All(f => f.Cables), All(f => f.Coax), All(f => f.Contacts), All(f => f.Connectors), All(f => f.Breakers),
            All(f => f.Fasteners), All(f => f.Rivets), All(f => f.AnchorNuts), All(f => f.Clamps), All(f => f.Antennas), All(f => f.Sealants), All(f => f.Consumables), All(f => f.Materials));
    }
}

/// <summary>A box, sensor or display.</summary>
public sealed record EquipmentPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("mass", Min = "0.001 kg", Max = "500 kg")] Mass Mass,
    [Doc("connectors by designator")] Catalog<ConnectorUse>? Connectors = null,
    [Doc("contacts in use by pin, for example P1-12")] Catalog<ContactUse>? Contacts = null,
    [Doc("power inputs")] Catalog<PowerInput>? Power = null,
    [Doc("centre of gravity from the reference corner of the mounting face, as the item stands in the aircraft")] Place? Cg = null,
    [Doc("outside size, as the item stands in the aircraft")] Size? Size = null,
    [Doc("mounting holes, from the same corner")] Sequence<MountingHole> Holes = default,
    [Doc("heat given off")] Wattage? Heat = null,
    [Doc("qualification categories")] Sequence<Category> Qualification = default,
    [Doc("compass-safe distance")] Length? CompassSafe = null,
    [Doc("software part number")] string Software = "",
    [Doc("thickness of the mounting flange or tray that the screws clamp")] Length? Flange = null,
    [Doc("transmitters and receivers behind its radio-frequency contacts")] Catalog<RadioPort>? Radios = null,
    [Doc("what it takes in and how it tells, where it is a traffic sensor")] TrafficSensor? Traffic = null) : IEntity;

/// <summary>A mounting hole. In a horizontal face x lies along BL and y along FS; in a face across the fuselage x along BL and y along WL; in a side face x along FS and y along WL.</summary>
public sealed record MountingHole([Doc("across: along BL, in a side face along FS", Min = "-200 in", Max = "200 in")] Length X, [Doc("along: along FS in a horizontal face, along WL in an upright one", Min = "-200 in", Max = "200 in")] Length Y, [Doc("diameter", Min = "0.01 in", Max = "20 in")] Length Diameter);

/// <summary>A connector of an item, as the harness half that mates with it.</summary>
public sealed record ConnectorUse(
    [Key] string Id,
    [Doc("harness half that mates with it")][Ref(typeof(ConnectorPart))] string Part,
    [Doc("the half on the item itself, from its installation manual")] ConnectorHalf? Own = null) : IEntity;

/// <summary>The kind of signal at a contact.</summary>
public enum SignalKind
{
    /// <summary>Power input.</summary>
    PowerIn,

    /// <summary>Power output.</summary>
    PowerOut,

    /// <summary>Power or signal ground.</summary>
    Ground,

    /// <summary>Discrete input.</summary>
    DiscreteIn,

    /// <summary>Discrete output.</summary>
    DiscreteOut,

    /// <summary>Serial data bus, transmitter.</summary>
    BusOut,

    /// <summary>Serial data bus, receiver.</summary>
    BusIn,

    /// <summary>Serial data bus, both ways.</summary>
    BusBoth,

    /// <summary>Analogue input.</summary>
    AnalogIn,

    /// <summary>Analogue output.</summary>
    AnalogOut,

    /// <summary>Audio.</summary>
    Audio,

    /// <summary>Radio frequency.</summary>
    Rf,

    /// <summary>Mutual suppression.</summary>
    Suppression,

    /// <summary>Configuration strap.</summary>
    Strap,

    /// <summary>Lighting.</summary>
    Lighting,

    /// <summary>Shield ground.</summary>
    Shield,

    /// <summary>Must stay unconnected.</summary>
    Reserved,
}

/// <summary>A contact in use.</summary>
public sealed record ContactUse(
    [Key] string Id,
    [Doc("signal")] string Signal,
    [Doc("kind of signal")] SignalKind Kind,
    [Doc("standard of the signal, for example 'ARINC 429 low' or 'RS-422'")] string Standard = "",
    [Doc("polarity or leg, for example A, B, high, low")] string Leg = "",
    [Doc("active sense of a discrete, for example ground/open")] string Sense = "",
    [Doc("whether it must be wired")] bool Required = false) : IEntity;

/// <summary>A power input of an item.</summary>
public sealed record PowerInput(
    [Key] string Id,
    [Doc("pins of the positive side, sharing the current")] Sequence<string> Plus,
    [Doc("pins of the return side, sharing the current")] Sequence<string> Minus,
    [Doc("currents by state")] Catalog<PowerState> States,
    [Doc("least voltage at the box", Min = "0 V", Max = "300 V")] Voltage MinVoltage,
    [Doc("greatest voltage at the box", Min = "0 V", Max = "300 V")] Voltage MaxVoltage,
    [Doc("greatest breaker rating the maker allows")] Current? MaxBreaker = null) : IEntity;

/// <summary>A state of a power input.</summary>
public sealed record PowerState([Key] string Id, [Doc("current", Min = "0 A", Max = "500 A")] Current Current, [Doc("time it lasts; continuous when left out")] Duration? On = null) : IEntity;

/// <summary>Conductor material.</summary>
public enum Conductor
{
    /// <summary>Copper, tin-coated.</summary>
    TinnedCopper,

    /// <summary>Copper, silver-coated.</summary>
    SilveredCopper,

    /// <summary>Copper, nickel-coated.</summary>
    NickeledCopper,

    /// <summary>High-strength copper alloy.</summary>
    CopperAlloy,

    /// <summary>Aluminium.</summary>
    Aluminium,
}

/// <summary>A single wire.</summary>
public sealed record WirePart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("family: wires of one family differ only in size, and 'auto' picks among them")] string Family,
    [Doc("gauge")] Gauge Gauge,
    [Doc("conductor")] Conductor Conductor,
    [Doc("temperature rating", Min = "60 degC", Max = "260 degC")] Temperature Rating,
    [Doc("finished diameter", Min = "0.01 in", Max = "2 in")] Length Diameter,
    [Doc("finished mass per length")] LinearMass Mass,
    [Doc("resistance at 20 degC; the table's value for the gauge when left out")] LinearResistance? Resistance = null) : IEntity;

/// <summary>A shielded or multi-core cable.</summary>
public sealed record CablePart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("core wire")][Ref(typeof(WirePart))] string Core,
    [Doc("number of cores", Min = "1", Max = "100")] int Cores,
    [Doc("finished diameter", Min = "0.01 in", Max = "20 in")] Length Diameter,
    [Doc("finished mass per length")] LinearMass Mass,
    [Doc("whether it has a shield")] bool Shielded = true,
    [Doc("whether the cores are twisted")] bool Twisted = true) : IEntity;

/// <summary>A coaxial cable.</summary>
public sealed record CoaxPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("finished diameter", Min = "0.01 in", Max = "20 in")] Length Diameter,
    [Doc("finished mass per length")] LinearMass Mass,
    [Doc("impedance")] Resistance Impedance,
    [Doc("signal speed as a fraction of that of light", Min = "0.3", Max = "1")] Fraction Velocity,
    [Doc("loss by frequency")] Sequence<CoaxLoss> Loss = default,
    [Doc("least bend radius")] Length? BendRadius = null) : IEntity;

/// <summary>A point of a cable's loss curve, in decibel per 100 ft.</summary>
public sealed record CoaxLoss([Doc("frequency")] Frequency At, [Doc("loss in dB per 100 ft", Min = "0", Max = "1000")] double DecibelPer100Ft);

/// <summary>A contact.</summary>
public sealed record ContactPart(
    [Key] string Id,
    [Doc("size, for example 22D, 20, 16, 12")] string Size,
    [Doc("thinnest wire")] Gauge Thinnest,
    [Doc("thickest wire")] Gauge Thickest,
    [Doc("current rating", Min = "0.1 A", Max = "500 A")] Current Rating,
    [Doc("crimp tool")] string Tool = "",
    [Doc("positioner or die")] string Positioner = "",
    [Doc("mass")] Mass? Mass = null,
    [Doc("insertion and extraction tool")] string Insertion = "",
    [Doc("plug that seals its empty cavity")][Ref(typeof(ConsumablePart), Or = "none")] string? Plug = null) : IEntity;

/// <summary>A connector half for the harness.</summary>
public sealed record ConnectorPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("contact that fits its cavities")][Ref(typeof(ContactPart))] string Contact,
    [Doc("names of the cavities")] Sequence<string> Cavities,
    [Doc("mass with backshell, without contacts")] Mass? Mass = null,
    [Doc("connector it mates with")] string Mate = "",
    [Doc("keying")] string Keying = "",
    [Doc("cavities of another contact size, by name")] Sequence<SpecialCavity> SpecialCavities = default,
    [Doc("where its cavities lie, seen from the rear, which is the wire side")] Sequence<CavityRow> Layout = default,
    [Doc("whether its shell is round")] bool Round = false,
    [Doc("backshell, where it is a part of its own")][Ref(typeof(ConsumablePart), Or = "none")] string? Backshell = null,
    [Doc("plug or receptacle")] ConnectorForm? Form = null,
    [Doc("shell size")] string Shell = "",
    [Doc("insert arrangement")] string Insert = "",
    [Doc("contacts it carries")] ContactGender? Gender = null,
    [Doc("torque of its coupling, for one that is screwed on")] Torque? Torque = null) : IEntity;

/// <summary>A row of cavities with equal spacing, from left to right as seen from the rear.</summary>
public sealed record CavityRow(
    [Doc("names of the cavities")] Sequence<string> Cavities,
    [Doc("place of the first to the right of the centre", Min = "-6 in", Max = "6 in")] Length X,
    [Doc("height above the centre", Min = "-6 in", Max = "6 in")] Length Y,
    [Doc("distance from one cavity to the next", Min = "0.02 in", Max = "3 in")] Length Pitch);

/// <summary>A cavity whose contact differs.</summary>
public sealed record SpecialCavity([Doc("cavity")] string Cavity, [Doc("contact")][Ref(typeof(ContactPart))] string Contact);

/// <summary>A circuit breaker as a part.</summary>
public sealed record BreakerPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("rating", Min = "0.1 A", Max = "500 A")] Current Rating,
    [Doc("trip times by multiple of the rating")] Sequence<TripPoint> Trip = default,
    [Doc("resistance")] Resistance? Resistance = null,
    [Doc("mass")] Mass? Mass = null) : IEntity;

/// <summary>A point of a trip curve.</summary>
public sealed record TripPoint([Doc("multiple of the rating", Min = "1", Max = "1000")] double Multiple, [Doc("shortest trip time")] Duration Shortest, [Doc("longest trip time")] Duration Longest);

/// <summary>A screw, bolt, nut or washer.</summary>
public sealed record FastenerPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("diameter", Min = "0.01 in", Max = "20 in")] Length Diameter,
    [Doc("grip")] Length? Grip = null,
    [Doc("shear strength")] Force? Shear = null,
    [Doc("tension strength")] Force? Tension = null,
    [Doc("mass")] Mass? Mass = null,
    [Doc("length under the head")] Length? Length = null,
    [Doc("threads per inch", Min = "4", Max = "100")] double? Threads = null,
    [Doc("thickness of a washer")] Length? Thickness = null,
    [Doc("drill for its hole, for example No. 19")] string Drill = "",
    [Doc("countersink for its head, for example 100 degrees, or 'none'")] string Countersink = "") : IEntity;

/// <summary>A rivet.</summary>
public sealed record RivetPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("diameter", Min = "0.01 in", Max = "20 in")] Length Diameter,
    [Doc("length")] Length Length,
    [Doc("material")] string Material,
    [Doc("shear strength")] Force? Shear = null,
    [Doc("whether it is countersunk")] bool Countersunk = false,
    [Doc("drill for its hole, for example No. 30")] string Drill = "",
    [Doc("countersink for its head, for example 100 degrees")] string Countersink = "") : IEntity;

/// <summary>An anchor nut.</summary>
public sealed record AnchorNutPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("thread diameter", Min = "0.01 in", Max = "20 in")] Length Thread,
    [Doc("rivet spacing")] Length? RivetSpacing = null,
    [Doc("its rivets")][Ref(typeof(RivetPart))] string? Rivet = null,
    [Doc("tension strength")] Force? Tension = null,
    [Doc("greatest torque on it: installation, or the torque that breaks a stuck screw")] Torque? Torque = null,
    [Doc("height of its thread")] Length? Height = null,
    [Doc("thickness of its rivet lugs", Min = "0.005 in", Max = "0.5 in")] Length? Lug = null) : IEntity;

/// <summary>A cushioned clamp.</summary>
public sealed record ClampPart([Key] string Id, [Doc("name")] string Name, [Doc("bundle diameter it holds", Min = "0.01 in", Max = "20 in")] Length Diameter, [Doc("mass")] Mass? Mass = null) : IEntity;

/// <summary>An antenna as a part.</summary>
public sealed record AntennaPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("mass")] Mass Mass,
    [Doc("lowest frequency")] Frequency From,
    [Doc("highest frequency")] Frequency To,
    [Doc("system")] string System,
    [Doc("frontal area")] Area? Frontal = null,
    [Doc("gain in dBi", Min = "-20", Max = "40")] double Gain = 0,
    [Doc("whether it transmits")] bool Transmits = false,
    [Doc("mounting holes, from its centre")] Sequence<MountingHole> Holes = default,
    [Doc("greatest voltage standing wave ratio", Min = "1", Max = "20")] double Vswr = 1.5,
    [Doc("apparent side area")] Area? Side = null,
    [Doc("drag coefficient by the frontal area; that of a flat plate when left out", Min = "0", Max = "3")] double? Drag = null,
    [Doc("height of its centre of pressure above the base")] Length? Height = null,
    [Doc("largest dimension", Min = "0.01 in", Max = "1000 in")] Length? Size = null,
    [Doc("least distance from any antenna that transmits")] Length? Clearance = null,
    [Doc("qualification categories")] Sequence<Category> Qualification = default,
    [Doc("compass-safe distance")] Length? CompassSafe = null,
    [Doc("harness plug that mates with each of its connectors")][Ref(typeof(ConnectorPart))] string? Plug = null) : IEntity;

/// <summary>A sealant.</summary>
public sealed record SealantPart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("working time after mixing")] Duration ApplicationLife,
    [Doc("cure times by temperature")] Sequence<CurePoint> Cure,
    [Doc("shelf life")] Duration ShelfLife,
    [Doc("area that one pack seals", Min = "0.1 in2", Max = "10000 in2")] Area? Covers = null) : IEntity;

/// <summary>A cure time at a temperature.</summary>
public sealed record CurePoint([Doc("temperature")] Temperature At, [Doc("time to cure")] Duration Time);

/// <summary>What a consumable is for, where a kit picks it by its use.</summary>
public enum ConsumableUse
{
    /// <summary>Something else.</summary>
    Other,

    /// <summary>Marker sleeve.</summary>
    Sleeve,

    /// <summary>Label.</summary>
    Label,

    /// <summary>Tie.</summary>
    Tie,

    /// <summary>Terminal.</summary>
    Terminal,

    /// <summary>Splice.</summary>
    Splice,

    /// <summary>Terminal board.</summary>
    Board,

    /// <summary>Termination of a shield.</summary>
    Shield,

    /// <summary>Ground stud with its hardware.</summary>
    Stud,

    /// <summary>Disconnect.</summary>
    Disconnect,
}

/// <summary>A tie, sleeve, label or the like.</summary>
public sealed record ConsumablePart(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("how it is counted, for example each, m, kg")] string Unit = "each",
    [Doc("what the kit takes it for")] ConsumableUse Use = ConsumableUse.Other,
    [Doc("least diameter of wire or bundle it goes around", Min = "0 in", Max = "20 in")] Length? From = null,
    [Doc("greatest diameter of wire or bundle it goes around", Min = "0.01 in", Max = "20 in")] Length? To = null,
    [Doc("thinnest wire")] Gauge? Thinnest = null,
    [Doc("thickest wire")] Gauge? Thickest = null,
    [Doc("crimp tool")] string Tool = "",
    [Doc("die")] string Die = "",
    [Doc("shelf life")] Duration? ShelfLife = null,
    [Doc("thread of a stud, for example 10-32")] string Thread = "",
    [Doc("drill for the hole of a stud, for example No. 10")] string Drill = "",
    [Doc("torque of the nuts of a stud")] Torque? Torque = null) : IEntity
{
    /// <summary>Whether it takes wire of a gauge; any where it states no limit.</summary>
    public bool Takes(Gauge gauge) => (Thinnest?.CompareTo(gauge) ?? 0) <= 0 && (Thickest?.CompareTo(gauge) ?? 0) >= 0;
}

/// <summary>A material of structure: design values of the approved data.</summary>
public sealed record Material(
    [Key] string Id,
    [Doc("ultimate tensile strength")] Pressure? Tension = null,
    [Doc("ultimate bearing strength at an edge distance of twice the diameter")] Pressure? Bearing = null,
    [Doc("Young's modulus", Min = "10 ksi", Max = "100000 ksi")] Pressure? Modulus = null,
    [Doc("density")] Density? Density = null,
    [Doc("ultimate shear strength")] Pressure? Shear = null,
    [Doc("ultimate bearing strength at an edge distance of 1.5 times the diameter")] Pressure? BearingNear = null) : IEntity;
