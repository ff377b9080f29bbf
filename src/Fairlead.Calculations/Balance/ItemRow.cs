namespace Fairlead.Calculations.Balance;

/// <summary>An item with its place.</summary>
/// <param name="Name">Name.</param>
/// <param name="Mass">Mass, 0 lb to 100,000 lb.</param>
/// <param name="Fs">Fuselage station, aft positive.</param>
/// <param name="Bl">Buttock line, right positive; needed for the lateral axis only.</param>
/// <param name="Wl">Waterline, up positive; needed for the vertical axis only.</param>
public sealed record ItemRow(
    [In("name", "item")] string Name,
    [In("m", "mass", "lb", Min = 0, Max = 100000)] Mass Mass,
    [In("FS", "fuselage station", "in", Min = -2000, Max = 5000)] Length Fs,
    [In("BL", "buttock line", "in", Min = -2000, Max = 2000, Default = "not known")] Length? Bl = null,
    [In("WL", "waterline", "in", Min = -2000, Max = 2000, Default = "not known")] Length? Wl = null);
