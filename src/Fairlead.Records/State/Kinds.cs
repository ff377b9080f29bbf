using System.Collections.Frozen;
using Fairlead.Calculations;

namespace Fairlead.Records;

/// <summary>What an entry does to its subject.</summary>
public enum Effect
{
    /// <summary>It tells something and leaves nothing to be done.</summary>
    Tells,

    /// <summary>It leaves the subject open: something has to follow.</summary>
    Opens,

    /// <summary>It ends what was open.</summary>
    Shuts,
}

/// <summary>What a field holds.</summary>
public enum FieldForm
{
    /// <summary>Any text.</summary>
    Text,

    /// <summary>A number.</summary>
    Number,

    /// <summary>A time, RFC 3339.</summary>
    Time,

    /// <summary>A SHA-256 in hexadecimal.</summary>
    Hash,
}

/// <summary>A field of a kind of entry.</summary>
public sealed record Field(string Name, string Doc, bool Needed = false, FieldForm Form = FieldForm.Text);

/// <summary>A kind of entry.</summary>
/// <param name="Name">Its name, as the log and the command line have it.</param>
/// <param name="Class">The class of subject it is about; empty for any.</param>
/// <param name="Effect">What it does to the subject.</param>
/// <param name="Doc">What it says, in one line.</param>
/// <param name="Fields">What it tells.</param>
public sealed record EntryKind(string Name, string Class, Effect Effect, string Doc, params Sequence<Field> Fields);

/// <summary>All kinds of entries: the words of the log.</summary>
public static class Kinds
{
    /// <summary>The kind that says that a wrong clock was set right.</summary>
    internal const string ClockSet = "clock-set";

    private static readonly Field Fasteners = new("fasteners", "how many fasteners", Form: FieldForm.Number);
    private static readonly Field Behind = new("behind", "panel behind which it is, where there is one");
    private static readonly Field Why = new("why", "why");
    private static readonly Field Photo = new("photo", "SHA-256 of a photograph", Form: FieldForm.Hash);
    private static readonly Field Value = new("value", "what was measured", Needed: true, FieldForm.Number);
    private static readonly Field Unit = new("unit", "its unit", Needed: true);
    private static readonly Field Line = new("line", "line of the test card; left out where the card has one");
    private static readonly Field Outside = new("outside", "who watched outside, on the ramp");
    private static readonly Field Instrument = new("instrument", "instrument or tool it was measured with", Needed: true);

    /// <summary>Every kind, in the order of a job.</summary>
    public static IReadOnlyList<EntryKind> All { get; } =
    [
        new("opened", "panel", Effect.Opens, "a panel or furnishing is opened or taken off", Fasteners, Photo),
        new("closed", "panel", Effect.Shuts, "it is back and fast, with as many fasteners", Fasteners, Photo),
        new("unplugged", "connector", Effect.Opens, "a connector is parted", Behind),
        new("plugged", "connector", Effect.Shuts, "it is mated again", Behind),
        new("loosened", "fastening", Effect.Opens, "a screw, nut or clamp is loose, or fitted and not yet torqued", Behind),
        new("torqued", "fastening", Effect.Shuts, "it is fast, and torqued as measured", Value, Unit, Instrument),
        new("pulled", "breaker", Effect.Opens, "a breaker is pulled and tagged", Why),
        new("reset", "breaker", Effect.Shuts, "its tag is off and it is set"),
        new("removed", "part", Effect.Tells, "a part came out", new Field("part", "part number"), new("serial", "serial number, 'none' where its plate shows none; needed of what the job takes out"), new("weight", "its weight as on the scales, with its unit; needed of what the job takes out"), new("condition", "in which condition")),
        new("fitted", "part", Effect.Tells, "a part went in", new Field("part", "part number, as on its plate; needed of what the job fits"), new("serial", "serial number, as on its plate; 'none' where it shows none"), new("batch", "batch"), new("sealant", "sealant mix it was bedded in")),
        new("carried-in", "tool", Effect.Opens, "a tool goes to the aircraft", Behind, new("what", "what it is; needed of a tool that the job does not know")),
        new("carried-out", "tool", Effect.Shuts, "it is back in its place"),
        new("started", "task", Effect.Opens, "work on a task begins, or begins again", Behind),
        new("staged", "task", Effect.Opens, "a stage of it is reached", new Field("stage", "which", Needed: true), new("hold", "'yes' where nothing may follow before it is signed")),
        new("stopped", "task", Effect.Opens, "work on it is left half done", new Field("where", "where it was left", Needed: true), new("next", "the next step", Needed: true), new("loose", "what is loose or not torqued"), Why),
        new("done", "task", Effect.Shuts, "its work is finished", new Field("sealant", "sealant mix it was done with")),
        new("measured", "", Effect.Tells, "a value was measured", Value, Unit, Instrument, Line, new("beyond", "'yes' where the value is only known to be greater"), Outside, new("condition", "under which condition")),
        new("observed", "", Effect.Tells, "what was found where no number is due", new Field("found", "what was found", Needed: true), Line, Outside),
        new("parted", "line", Effect.Opens, "a pipe or hose is opened: static, pitot, fuel, oxygen", Behind),
        new("joined", "line", Effect.Shuts, "it is joined again", Behind),
        new("signed", "", Effect.Tells, "a person answers for it", new Field("role", "'work' by who did it, 'inspection' by a second person", Needed: true), new("scope", "authorisation used", Needed: true)),
        new("raised", "defect", Effect.Opens, "a defect was found", new Field("text", "what is wrong", Needed: true), Photo),
        new("cleared", "defect", Effect.Shuts, "it was put right", new Field("action", "what was done", Needed: true)),
        new("conceded", "finding", Effect.Tells, "a finding, or 'ENTRY-n' for an entry out of its order, is accepted; it counts once it is signed", new Field("reason", "why", Needed: true), new("until", "until when", Form: FieldForm.Time)),
        new("mixed", "sealant", Effect.Tells, "sealant was mixed", new Field("batch", "batch", Needed: true), new("part", "sealant of the parts catalogue", Needed: true), new("temperature", "temperature of the structure, degC", Needed: true, FieldForm.Number), new("humidity", "relative humidity, per cent", Form: FieldForm.Number), new("expires", "end of its shelf life", Form: FieldForm.Time), new("when", "when it was mixed; now when left out", Form: FieldForm.Time), new("until", "end of its application life; by the data of the part when left out", Form: FieldForm.Time), new("cured", "when it is cured; by the data of the part when left out", Form: FieldForm.Time)),
        new("photographed", "", Effect.Tells, "a photograph was taken", new Field("sha256", "its SHA-256", Needed: true, FieldForm.Hash), new("caption", "what it shows")),
        new("permitted", "radiation", Effect.Opens, "a permit to radiate is given", new Field("until", "until when, within 12 h", Needed: true, FieldForm.Time), new("told", "air traffic unit told, and what", Needed: true), new("outside", "who watches outside and keeps people clear", Needed: true), new("covered", "which antennas are covered or coupled", Needed: true), new("what", "what radiates")),
        new("silenced", "radiation", Effect.Shuts, "radiating has ended"),
        new("noted", "", Effect.Tells, "something worth knowing", new Field("text", "what", Needed: true)),
        new("revised", "document", Effect.Tells, "a document has a new revision", new Field("base", "number of the revision it was made from; 0 for the first", Needed: true, FieldForm.Number), new("sha256", "SHA-256 of the text", Needed: true, FieldForm.Hash), Why),
        new("handed-over", "shift", Effect.Tells, "the work went from one shift to the next", new Field("to", "who took over", Needed: true), new("watch", "what to watch out for")),
        new(ClockSet, "clock", Effect.Tells, "a clock that was wrong was set right: from here on its time counts, though earlier entries have a later one", new Field("reason", "how it came, and how the right time was known", Needed: true)),
        new("struck", "entry", Effect.Tells, "an entry is struck out: it stays, and counts no more", new Field("reason", "why", Needed: true)),
        new("pin-set", "person", Effect.Tells, "a person's PIN or password was set"),
    ];

    private static readonly FrozenDictionary<string, EntryKind> ByName = All.ToFrozenDictionary(k => k.Name, StringComparer.Ordinal);

    /// <summary>The kind of a name, or null.</summary>
    public static EntryKind? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The class of a subject, <c>panel</c> of <c>panel/P1</c>; empty when it has none.</summary>
    public static string ClassOf(string subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.IndexOf('/', StringComparison.Ordinal) is > 0 and var slash ? subject[..slash] : "";
    }

    /// <summary>The id of a subject, <c>P1</c> of <c>panel/P1</c>.</summary>
    public static string IdOf(string subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject[(subject.IndexOf('/', StringComparison.Ordinal) + 1)..];
    }
}
