namespace Fairlead.Records;

/// <summary>An entry that somebody wants to add, with all it is judged by.</summary>
internal sealed record Candidate(HangarState State, Register Register, Entry Entry)
{
    /// <summary>The time it is judged at: never before anything in the log, so that a clock set back renews nothing that has run out.</summary>
    public DateTimeOffset Now => Entry.At > State.Latest || Entry.Kind == Kinds.ClockSet ? Entry.At : State.Latest;

    /// <summary>The day it is judged at, by the calendar on the hangar's wall.</summary>
    public DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Now, Register.Zone).DateTime);

    /// <summary>The last entry that opened or shut its subject.</summary>
    public Entry? Standing => State.Standing(Entry.Subject);
}
