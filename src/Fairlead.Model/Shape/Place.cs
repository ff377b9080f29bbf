namespace Fairlead.Model;

/// <summary>A point of the aircraft: fuselage station (+ aft), buttock line (+ right), waterline (+ up).</summary>
/// <param name="Fs">Fuselage station.</param>
/// <param name="Bl">Buttock line.</param>
/// <param name="Wl">Waterline.</param>
public sealed record Place(
    [Doc("fuselage station, positive aft", Min = "-2000 in", Max = "5000 in")] Length Fs,
    [Doc("buttock line, positive right", Min = "-2000 in", Max = "2000 in")] Length Bl,
    [Doc("waterline, positive up", Min = "-1000 in", Max = "1000 in")] Length Wl)
{
    /// <summary>Straight distance to another point.</summary>
    public Length To(Place other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var (x, y, z) = (Fs.Si - other.Fs.Si, Bl.Si - other.Bl.Si, Wl.Si - other.Wl.Si);
        return new Length(Math.Sqrt((x * x) + (y * y) + (z * z)));
    }
}

/// <summary>A box by its three sides.</summary>
public sealed record Size([Doc("along FS")] Length Length, [Doc("along BL")] Length Width, [Doc("along WL")] Length Height);

/// <summary>A three-point time: least, likely, most.</summary>
public sealed record ThreePoint([Doc("shortest time")] Duration Low, [Doc("likely time")] Duration Likely, [Doc("longest time")] Duration High);
