namespace Fairlead.Model;

/// <summary>What lies in the stores for this job: <c>stock.yaml</c>, a file that may be left out.</summary>
public sealed record Stock(
    [Doc("the day the aircraft is opened, by which everything must be at hand; the promised day when left out")] DateOnly? Use = null,
    [Doc("reels and remnants of wire, cable and coax")] Catalog<Reel>? Reels = null,
    [Doc("everything that is counted")] Catalog<Lot>? Lots = null,
    [Doc("how long parts take to come")] Catalog<Delivery>? Deliveries = null,
    [Doc("how much more than the job uses is put into the kit")] SpareRules? Spares = null,
    [Doc("a length of wire left over goes back to store from here on, and is scrap below; 12 in when left out", Min = "0 in", Max = "100 ft")] Length? Keep = null);

/// <summary>Wire, cable or coax in one length.</summary>
public sealed record Reel(
    [Key] string Id,
    [Doc("what it is")][Ref(typeof(WirePart), typeof(CablePart), typeof(CoaxPart))] string Part,
    [Doc("length on it", Min = "0.5 in", Max = "20000 ft")] Length Length,
    [Doc("batch")] string Batch = "",
    [Doc("whether it is a remnant, which is used up first")] bool Remnant = false) : IEntity;

/// <summary>Parts of one batch.</summary>
public sealed record Lot(
    [Key] string Id,
    [Doc("what it is")]
    [Ref(typeof(EquipmentPart), typeof(AntennaPart), typeof(ContactPart), typeof(ConnectorPart), typeof(BreakerPart), typeof(FastenerPart), typeof(RivetPart), typeof(AnchorNutPart), typeof(ClampPart), typeof(SealantPart), typeof(ConsumablePart))]
    string Part,
    [Doc("how many", Min = "0", Max = "1000000")] double Quantity,
    [Doc("batch or serial number")] string Batch = "",
    [Doc("day it was made")] DateOnly? Made = null,
    [Doc("last day it may be used; from the day it was made and the shelf life of the part when left out")] DateOnly? Expires = null) : IEntity;

/// <summary>How long a part takes to come.</summary>
public sealed record Delivery(
    [Key] string Id,
    [Doc("what it is")]
    [Ref(typeof(WirePart), typeof(CablePart), typeof(CoaxPart), typeof(EquipmentPart), typeof(AntennaPart), typeof(ContactPart), typeof(ConnectorPart), typeof(BreakerPart), typeof(FastenerPart), typeof(RivetPart), typeof(AnchorNutPart), typeof(ClampPart), typeof(SealantPart), typeof(ConsumablePart))]
    string Part,
    [Doc("time from order to receipt", Min = "0 day", Max = "2000 day")] Duration Lead) : IEntity;

/// <summary>The rules for spares. What is left out follows common practice.</summary>
public sealed record SpareRules(
    [Doc("wire, cable and coax, by kind; 15 % when left out")] SpareRule? Wire = null,
    [Doc("contacts of each kind; 20 %, at least 5, when left out")] SpareRule? Contacts = null,
    [Doc("terminals, splices and shield terminations of each kind; 20 %, at least 5, when left out")] SpareRule? Terminations = null,
    [Doc("screws, bolts, nuts and washers of each kind; 20 %, at least 10, when left out")] SpareRule? Fasteners = null,
    [Doc("rivets of each kind, for scrap; 20 %, at least 10, when left out")] SpareRule? Rivets = null,
    [Doc("anchor nuts of each kind; 10 %, at least 2, when left out")] SpareRule? AnchorNuts = null,
    [Doc("sleeves, labels, ties and other consumables of each kind; 20 %, at least 5, when left out")] SpareRule? Consumables = null,
    [Doc("packs of each sealant; 1 pack when left out")] SpareRule? Sealants = null);

/// <summary>A rule for spares: a share of what is used, and no fewer than some number.</summary>
public sealed record SpareRule(
    [Doc("share of what the job uses", Min = "0 %", Max = "1000 %")] Fraction Share,
    [Doc("no fewer than this many", Min = "0", Max = "10000")] int Least = 0);
