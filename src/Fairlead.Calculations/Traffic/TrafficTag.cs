using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>What a traffic display writes beside another aircraft: relative altitude in hundreds of feet, an arrow for a vertical rate, and the symbol.</summary>
/// <remarks>Check values: 1,100 ft above and descending is +11 with an arrow down; 900 ft below and level is -09 without one (TCAS II introduction booklet 7.1, display).</remarks>
public static class TrafficTag
{
    /// <summary>Vertical rate from which an arrow is shown.</summary>
    public static Speed ArrowRate { get; } = Speed.Of(500, "ft/min");

    /// <summary>Range within which traffic is proximate.</summary>
    public static Length ProximateRange { get; } = Length.Of(6, "nmi");

    /// <summary>Relative altitude within which traffic is proximate.</summary>
    public static Length ProximateAltitude { get; } = Length.Of(1200, "ft");

    /// <summary>The relative altitude tag; halves round away from zero, and zero is written +00.</summary>
    public static string Altitude(Length above)
    {
        var hundreds = (int)Math.Round(Math.Round(above.In("ft"), 6) / 100, MidpointRounding.AwayFromZero);
        return string.Create(CultureInfo.InvariantCulture, $"{(hundreds < 0 ? '-' : '+')}{Math.Abs(hundreds):00}");
    }

    /// <summary>The trend arrow of the other aircraft's own vertical rate.</summary>
    public static string Arrow(Speed climb) => Math.Abs(climb.Si) < ArrowRate.Si * (1 - 1e-9) ? "none" : climb.Si > 0 ? "up" : "down";

    /// <summary>The symbol of traffic that is under no advisory.</summary>
    public static string Symbol(Encounter e, bool reportsAltitude) => Symbol(Proximate(e, reportsAltitude) ? TrafficMark.Proximate : TrafficMark.Other);

    /// <summary>The symbol of a mark.</summary>
    public static string Symbol(TrafficMark mark) => mark switch
    {
        TrafficMark.Resolution => "filled red square (resolution advisory)",
        TrafficMark.Traffic => "filled amber circle (traffic advisory)",
        TrafficMark.Proximate => "filled diamond (proximate)",
        _ => "open diamond (other)",
    };

    /// <summary>Whether traffic is proximate.</summary>
    public static bool Proximate(Encounter e, bool reportsAltitude) => e.Range <= ProximateRange.Si && (!reportsAltitude || Math.Abs(e.H) <= ProximateAltitude.Si);
}
