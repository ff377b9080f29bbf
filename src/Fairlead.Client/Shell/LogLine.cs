namespace Fairlead.Client.Shell;

/// <summary>An entry of the log as it is shown.</summary>
/// <param name="Sequence">Its number.</param>
/// <param name="At">When, by the server's clock.</param>
/// <param name="Who">Who.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Subject">To what.</param>
/// <param name="Payload">What else it tells.</param>
public sealed record LogLine(long Sequence, DateTimeOffset At, string Who, string Kind, string Subject, Dictionary<string, string> Payload)
{
    /// <summary>The id of the entry on the tablet it was made on; empty when it was made on none.</summary>
    public string TabletEntry => Payload.GetValueOrDefault("tablet-entry", "");

    /// <summary>Hash of the photograph that the entry is of; empty when it is of none.</summary>
    public string Photograph => Kind == "photographed" ? Payload.GetValueOrDefault("sha256", "") : "";

    /// <summary>What the photograph is called, on paper too.</summary>
    public string PhotographName => $"photograph-{Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)}";

    /// <summary>What a person told, in words.</summary>
    public string Told => string.Join(", ", Payload.Where(p => !p.Key.StartsWith("tablet", StringComparison.Ordinal)).Select(p => $"{p.Key} {p.Value}"));

    /// <summary>What the tablet's clock said, where it differs from the server's or the entry was sent later; empty where it is as one expects.</summary>
    public string Tablet => TabletEntry.Length == 0 ? "" : string.Join(", ", new[] { Late, Payload.GetValueOrDefault("tablet-clock", "") is { Length: > 0 } clock ? "its clock " + clock : "", Payload.GetValueOrDefault("tablet-moved", "") is { Length: > 0 } moved ? "its clock " + moved : "" }.Where(w => w.Length > 0));

    private string Late => DateTimeOffset.TryParse(Payload.GetValueOrDefault("tablet-time"), System.Globalization.CultureInfo.InvariantCulture, out var made) && (At - made).Duration() > TimeSpan.FromMinutes(1)
        ? $"made {made:yyyy-MM-dd HH:mm:ss} UTC by the clock of {Payload.GetValueOrDefault("tablet", "")}" : "";
}
