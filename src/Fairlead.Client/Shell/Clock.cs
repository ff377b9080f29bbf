using System.Globalization;

namespace Fairlead.Client.Shell;

/// <summary>Times as a page says them, by the tablet's own zone.</summary>
/// <param name="clock">The clock of the tablet.</param>
public sealed class Clock(TimeProvider clock)
{
    /// <summary>The time of day, with the date unless it is today's.</summary>
    public string Said(DateTimeOffset time)
    {
        var local = TimeZoneInfo.ConvertTime(time, clock.LocalTimeZone);
        return local.ToString(local.Date == clock.GetLocalNow().Date ? "HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }
}
