using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>The present empty weight and where it comes from.</summary>
public sealed record WeighingRecord(
    [Doc("day of the weighing or last amendment")] DateOnly Date,
    [Doc("report number")] string Reference,
    [Doc("empty weight", Min = "1 kg", Max = "100000 kg")] Mass Mass,
    [Doc("centre of gravity when empty: fuselage station", Min = "-2000 in", Max = "5000 in")] Length Fs,
    [Doc("centre of gravity when empty: buttock line", Min = "-2000 in", Max = "2000 in")] Length? Bl = null,
    [Doc("centre of gravity when empty: waterline", Min = "-1000 in", Max = "1000 in")] Length? Wl = null,
    [Doc("the scales' readings, if the record holds them")] Sequence<WeighingPoint> Points = default,
    [Doc("fluids and items added or taken off after weighing")] Sequence<WeighingAdjustment> Adjustments = default);

/// <summary>A point at which the aircraft was weighed.</summary>
public sealed record WeighingPoint(
    [Doc("name")] string Name,
    [Doc("reading of the scale")] Mass Scale,
    [Doc("fuselage station of the point", Min = "-2000 in", Max = "5000 in")] Length Fs,
    [Doc("chocks and stands")] Mass Tare = default,
    [Doc("buttock line of the point", Min = "-2000 in", Max = "2000 in")] Length? Bl = null);

/// <summary>A correction after weighing.</summary>
public sealed record WeighingAdjustment([Doc("what")] string Name, [Doc("mass; negative when taken off", Min = "-10000 kg", Max = "10000 kg")] Mass Mass, [Doc("fuselage station", Min = "-2000 in", Max = "5000 in")] Length Fs, [Doc("buttock line", Min = "-2000 in", Max = "2000 in")] Length Bl = default);

/// <summary>Mass limits and envelope.</summary>
public sealed record Envelope(
    [Doc("greatest take-off mass", Min = "1 kg", Max = "100000 kg")] Mass MaxTakeOff,
    [Doc("corners of the envelope, in order around it")] Sequence<EnvelopePoint> Points,
    [Doc("greatest landing mass")] Mass? MaxLanding = null,
    [Doc("greatest mass without fuel")] Mass? MaxZeroFuel = null,
    [Doc("mean aerodynamic chord")] MeanChord? Mac = null,
    [Doc("buttock line limit to the left, if there is one", Min = "-2000 in", Max = "2000 in")] Length? LateralLeft = null,
    [Doc("buttock line limit to the right, if there is one", Min = "-2000 in", Max = "2000 in")] Length? LateralRight = null);

/// <summary>A corner of the envelope.</summary>
public sealed record EnvelopePoint([Doc("mass")] Mass Mass, [Doc("fuselage station of the limit", Min = "-2000 in", Max = "5000 in")] Length Fs);

/// <summary>The mean aerodynamic chord.</summary>
public sealed record MeanChord([Doc("fuselage station of its leading edge", Min = "-2000 in", Max = "5000 in")] Length LeadingEdge, [Doc("its length", Min = "1 in", Max = "1000 in")] Length Length);

/// <summary>A place that takes load.</summary>
public sealed record LoadingStation(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("fuselage station", Min = "-2000 in", Max = "5000 in")] Length Fs,
    [Doc("greatest mass", Min = "0 kg", Max = "50000 kg")] Mass Max,
    [Doc("least mass: a pilot is always there", Min = "0 kg", Max = "50000 kg")] Mass Min = default,
    [Doc("buttock line", Min = "-2000 in", Max = "2000 in")] Length Bl = default,
    [Doc("waterline", Min = "-1000 in", Max = "1000 in")] Length? Wl = null) : IEntity;

/// <summary>A limit shared by loading stations.</summary>
public sealed record StationGroup(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("loading stations")][Ref(typeof(LoadingStation))] Sequence<string> Stations,
    [Doc("greatest mass on all of them together")] Mass Max) : IEntity;

/// <summary>A fuel tank. Tanks of equal burn order empty together, in proportion.</summary>
public sealed record Tank(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("fuselage station of its contents", Min = "-2000 in", Max = "5000 in")] Length Fs,
    [Doc("usable volume", Min = "0.1 gal", Max = "20000 gal")] Volume Usable,
    [Doc("density of the fuel", Min = "0.5 kg/L", Max = "1.2 kg/L")] Density Density,
    [Doc("which empties first: 1, then 2 ...", Min = "1", Max = "20")] int BurnOrder = 1,
    [Doc("buttock line", Min = "-2000 in", Max = "2000 in")] Length Bl = default) : IEntity;

/// <summary>A test instrument.</summary>
public sealed record Instrument(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("what it measures")] Sequence<string> Measures,
    [Doc("last day of its calibration")] DateOnly CalibrationDue) : IEntity;

/// <summary>A controlled tool.</summary>
public sealed record Tool(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("last day of its calibration, if it has one")] DateOnly? CalibrationDue = null) : IEntity;

/// <summary>Whether an item must be fitted.</summary>
public enum EquipmentCategory
{
    /// <summary>Required for certification.</summary>
    Required,

    /// <summary>Optional.</summary>
    Optional,

    /// <summary>Special: not in the aircraft's specification.</summary>
    Special,
}

/// <summary>An item of the equipment list before the change.</summary>
public sealed record InstalledItem(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("mass", Min = "0 kg", Max = "5000 kg")] Mass Mass,
    [Doc("centre of gravity")] Place Place,
    [Doc("category")] EquipmentCategory Category = EquipmentCategory.Optional,
    [Doc("what it is in the parts catalogue, if it is there")][Ref(typeof(EquipmentPart))] string? Part = null,
    [Doc("raceway point where its wires join the way")][Ref(typeof(RacewayNode))] string? Node = null,
    [Doc("zone")][Ref(typeof(Zone))] string? Zone = null,
    [Doc("what it is fixed to")][Ref(typeof(StructureSheet))] string? Structure = null) : IEntity;

/// <summary>An antenna fitted before the change.</summary>
public sealed record InstalledAntenna(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("position")] Place Place,
    [Doc("what it is in the parts catalogue")][Ref(typeof(AntennaPart))] string? Part = null,
    [Doc("mass")] Mass Mass = default,
    [Doc("box it is connected to, whose part says what it transmits and receives")][Ref(typeof(InstalledItem), typeof(FittedItem))] string? Item = null) : IEntity;
