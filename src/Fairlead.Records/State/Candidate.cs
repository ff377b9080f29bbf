namespace Fairlead.Records;

/// <summary>An entry that somebody wants to add, with all it is judged by.</summary>
internal sealed record Candidate(HangarState State, Register Register, Entry Entry)
{
    /// <summary>The time it is judged at: never before anything in the log, so that a clock set back renews nothing that has run out.</summary>
    public DateTimeOffset Now => Entry.At > State.Latest ? Entry.At : State.Latest;

    /// <summary>The day it is judged at, UTC.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Now.UtcDateTime);

    /// <summary>The last entry that opened or shut its subject.</summary>
    public Entry? Standing => State.Standing(Entry.Subject);
}
