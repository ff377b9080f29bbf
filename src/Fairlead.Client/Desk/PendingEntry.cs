using System.Text.Json.Serialization;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <summary>An entry made on this tablet that the log does not have yet.</summary>
/// <param name="Key">Its key in the storage: in the order in which entries were made.</param>
/// <param name="Job">The job.</param>
/// <param name="Who">Who made it.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Subject">To what.</param>
/// <param name="Payload">What else it tells.</param>
/// <param name="Note">What the tablet tells: id, times, sealed secret.</param>
public sealed record PendingEntry(string Key, string Job, string Who, string Kind, string Subject, IReadOnlyDictionary<string, string> Payload, TabletNote Note)
{
    /// <summary>Why the log did not take it; empty while it was not refused.</summary>
    public IReadOnlyList<string> Refused { get; init; } = [];

    /// <summary>Why the person withdrew it; empty when they did not.</summary>
    public string Withdrawn { get; init; } = "";

    /// <summary>Whether a photograph lies beside it under the same key.</summary>
    public bool HasPhotograph { get; init; }

    /// <summary>Whether it still is to be sent.</summary>
    [JsonIgnore]
    public bool Waits => Withdrawn.Length == 0;

    /// <summary>What it says, in words.</summary>
    [JsonIgnore]
    public string Words => $"{Kind} {Subject}" + string.Concat(Payload.Where(p => p.Value.Length > 0).Select(p => $", {p.Key} {p.Value}"));
}

/// <summary>What became of an entry.</summary>
public enum FateKind
{
    /// <summary>It stands in the log.</summary>
    Taken,

    /// <summary>It is on this tablet's storage and waits to be sent.</summary>
    Waits,

    /// <summary>It was not taken, and nothing of it is kept.</summary>
    Refused,
}

/// <summary>What became of an entry, with the reason where it was not taken.</summary>
public sealed record Fate(FateKind Kind, string Why = "");
