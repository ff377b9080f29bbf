using System.Globalization;

namespace Fairlead.Client.Shell;

/// <summary>Times as a page says them, by the tablet's own zone.</summary>
public static class Clock
{
    /// <summary>The time of day, with the date unless it is today's.</summary>
    public static string Said(DateTimeOffset time)
    {
        var local = time.ToLocalTime();
        return local.ToString(local.Date == DateTimeOffset.Now.Date ? "HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }
}
