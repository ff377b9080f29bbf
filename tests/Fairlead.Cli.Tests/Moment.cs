namespace Fairlead.Tests.Cli;

/// <summary>A clock that stands.</summary>
internal sealed class Moment(DateTimeOffset now) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => now;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
}
