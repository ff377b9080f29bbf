using System.Globalization;

namespace Fairlead.Records;

/// <summary>What a tablet tells of an entry that was made on it, perhaps with the network gone. The time of the entry is the server's; what the
/// tablet's clock said stands beside it, and where the two differ everybody sees it.</summary>
/// <param name="Id">The id the tablet gave the entry: it is taken once, however often it is sent.</param>
/// <param name="Tablet">The tablet.</param>
/// <param name="At">When the entry was made, by the tablet's clock.</param>
/// <param name="SentAt">When it was sent, by the tablet's clock.</param>
/// <param name="Ahead">How much the server's clock was ahead of the tablet's when both were compared last before the entry; null when they never were.</param>
public sealed record TabletStamp(string Id, string Tablet, DateTimeOffset At, DateTimeOffset SentAt, TimeSpan? Ahead)
{
    // Networks delay, and servers tell their time by the second.
    private static readonly TimeSpan Slack = TimeSpan.FromMinutes(1);

    /// <summary>The payload with what the tablet told.</summary>
    internal Payload AddTo(Payload payload, DateTimeOffset now)
    {
        var behind = now - SentAt;
        var stamped = payload.With("tablet", Tablet).With("tablet-entry", Id).With("tablet-time", At);
        stamped = behind.Duration() > Slack ? stamped.With("tablet-clock", $"{Words(behind)} {(behind > TimeSpan.Zero ? "behind" : "ahead of")} the server's") : stamped;
        return Moved(behind) is { Length: > 0 } moved ? stamped.With("tablet-moved", moved) : stamped;
    }

    // A clock that is set leaves two differences from the server's: the one before the entry and the one at sending.
    private string Moved(TimeSpan behind) => (SentAt < At ? At - SentAt : behind - (Ahead ?? behind)) switch
    {
        var back when back > Slack => $"set back by {Words(back)} between the entry and its sending",
        var forward when forward < -Slack => $"set forward by {Words(forward)} between the entry and its sending",
        _ => "",
    };

    private static string Words(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(time.Duration().TotalMinutes)} min");
}
