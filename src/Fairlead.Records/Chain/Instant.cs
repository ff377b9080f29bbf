using System.Globalization;

namespace Fairlead.Records;

/// <summary>Times in the log: RFC 3339, UTC, to the millisecond, always with as many digits, so that their order as text is their order in time
/// (RFC 3339 section 5.1).</summary>
public static class Instant
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    /// <summary>The text of a time: <c>2027-03-31T14:05:06.007Z</c>.</summary>
    public static string Text(DateTimeOffset time) => time.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    /// <summary>A time to the millisecond, as the log keeps it.</summary>
    public static DateTimeOffset Kept(DateTimeOffset time) => new(time.UtcTicks / TimeSpan.TicksPerMillisecond * TimeSpan.TicksPerMillisecond, TimeSpan.Zero);

    /// <summary>Reads exactly that form.</summary>
    public static bool TryRead(string text, out DateTimeOffset time) =>
        DateTimeOffset.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out time);

    /// <summary>Reads a time as a person gives it: any offset, with or without a fraction.</summary>
    public static bool TryReadAny(string text, out DateTimeOffset time) => DateTimeOffset.TryParseExact(
        text, ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mmK"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out time);
}
