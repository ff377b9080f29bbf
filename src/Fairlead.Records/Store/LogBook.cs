using System.Security.Cryptography;

namespace Fairlead.Records;

/// <summary>An entry that somebody wants to add.</summary>
/// <param name="Who">Who.</param>
/// <param name="Kind">A name of <see cref="Kinds"/>.</param>
/// <param name="Subject">A class and an id.</param>
/// <param name="Payload">What else there is to tell.</param>
public sealed record Draft(string Who, string Kind, string Subject, Payload Payload)
{
    /// <summary>A draft that tells nothing else.</summary>
    public Draft(string who, string kind, string subject)
        : this(who, kind, subject, Payload.Empty)
    {
    }

    /// <summary>What the tablet told on which it was made; null when it was made on none.</summary>
    public TabletStamp? Stamp { get; init; }
}

/// <summary>What became of a draft.</summary>
/// <param name="Entry">The entry, which is on the disk; null when the draft was refused.</param>
/// <param name="Refused">Why it was refused; empty when it was taken.</param>
public sealed record Outcome(Entry? Entry, IReadOnlyList<string> Refused)
{
    internal static Outcome No(params IReadOnlyList<string> reasons) => new(null, reasons);
}

/// <summary>The log of a job: judges each draft by everything that was entered before, whoever entered it, and adds it.</summary>
/// <param name="store">Where the log is kept.</param>
/// <param name="register">Who and what it may name.</param>
/// <param name="clock">The clock.</param>
public sealed class LogBook(ILogStore store, Register register, TimeProvider clock)
{
    /// <summary>How things stand, as far as this book has read.</summary>
    public HangarState State { get; private set; } = HangarState.Empty;

    /// <summary>Reads what others have added.</summary>
    /// <exception cref="InvalidDataException">The log is not what it was: the first altered entry is named.</exception>
    public HangarState CatchUp()
    {
        foreach (var line in store.Lines(State.Sequence))
        {
            State = State.After(Checked(line));
        }

        return State;
    }

    /// <summary>Adds an entry, or says why not. A signature is added by <see cref="Sign"/>.</summary>
    /// <param name="draft">The entry.</param>
    /// <param name="photograph">The bytes of a photograph, kept under the SHA-256 that the entry tells; null for none.</param>
    public Outcome Append(Draft draft, ReadOnlyMemory<byte>? photograph = null)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return draft.Kind is "signed" ? Outcome.No("A signature needs the PIN or password of the person.")
            : draft.Kind is "revised" ? Outcome.No("A revision is kept together with its text: edit the document and keep it.")
            : photograph is { } bytes && (draft.Kind != "photographed" || draft.Payload.Text("sha256") != Hash(bytes)) ? Outcome.No("The photograph does not have the SHA-256 that its entry tells: it was altered or cut off on the way.")
            : Add(draft, photograph);
    }

    /// <summary>What became of an entry that a tablet has sent before; null when the log does not have it.</summary>
    public Outcome? Sent(Draft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return draft.Stamp is { } stamp && CatchUp().SentAs(stamp.Id) is { } there ? Again(draft, there) : null;
    }

    /// <summary>Adds a signature, if the person is who they say.</summary>
    public Outcome Sign(Draft draft, SignIns signIns, string secret)
    {
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(signIns);
        return signIns.Refusal(draft.Who, secret) is { } refusal ? Outcome.No(refusal) : Add(draft with { Kind = "signed" }, content: null);
    }

    /// <summary>Adds a revision of a document with its text. It is refused when it was not made from the present revision: whoever revises looks at both.</summary>
    /// <param name="who">Who.</param>
    /// <param name="document">Name of the document.</param>
    /// <param name="fromRevision">Number of the revision it was made from; 0 for the first.</param>
    /// <param name="content">The text.</param>
    /// <param name="why">Why.</param>
    public Outcome Revise(string who, string document, int fromRevision, ReadOnlyMemory<byte> content, string why) => Add(
        new Draft(who, "revised", "document/" + document, Payload.Empty
            .With("base", fromRevision)
            .With("sha256", Hash(content))
            .With("why", why)),
        content);

    /// <summary>The text of a revision of a document, with the entry that made it; null when there is none.</summary>
    /// <param name="document">Name of the document.</param>
    /// <param name="revision">Number of the revision, from 1.</param>
    public (Entry Entry, byte[] Content)? Revision(string document, int revision)
    {
        var entry = CatchUp().Story("document/" + document).Where(e => e.Kind == "revised").ElementAtOrDefault(revision - 1);
        return entry is null ? null : (entry, store.Content(entry.Payload.Text("sha256")) ?? throw new InvalidDataException($"The text of revision {revision.ToString(System.Globalization.CultureInfo.InvariantCulture)} of '{document}' is missing."));
    }

    private Outcome Add(Draft draft, ReadOnlyMemory<byte>? content)
    {
        if (draft.Payload.Names.FirstOrDefault(Evidence.Names.Contains) is { } own)
        {
            return Outcome.No($"'{own}' is written by the log itself.");
        }

        var payload = Evidence.Add(register, draft.Who, draft.Kind, draft.Payload, clock.GetUtcNow());
        payload = draft.Stamp?.AddTo(payload, clock.GetUtcNow()) ?? payload;
        while (true)
        {
            CatchUp();
            if (draft.Stamp is { } stamp && State.SentAs(stamp.Id) is { } there)
            {
                return Again(draft, there);
            }

            var entry = Entry.After(State.Sequence, State.Head, clock.GetUtcNow(), draft.Who, draft.Kind, draft.Subject, Evidence.Begin(State, register, draft.Kind, payload));
            if (Refusals.Of(State, register with { Zone = clock.LocalTimeZone }, entry) is { Count: > 0 } reasons)
            {
                return Outcome.No(reasons);
            }

            // Somebody else may have been first; then what they entered is judged too.
            if (store.TryAppend(entry, content))
            {
                State = State.After(entry);
                return new Outcome(entry, []);
            }
        }
    }

    // The log adds to what it is told; it takes nothing away.
    private static Outcome Again(Draft draft, Entry there) =>
        (there.Who, there.Kind, there.Subject) == (draft.Who, draft.Kind, draft.Subject) && draft.Payload.Names.All(n => there.Payload.Text(n) == draft.Payload.Text(n)) ? new Outcome(there, [])
        : Outcome.No($"The log has another entry under the id of this one: entry {there.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)}, {there.Kind} {there.Subject} by {there.Who}.");

    private static string Hash(ReadOnlyMemory<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes.Span));

    private Entry Checked(string line)
    {
        try
        {
            var entry = Entry.Read(line);
            return entry.Computed() == entry.Hash && entry.Sequence == State.Sequence + 1 && entry.Previous == State.Head ? entry : throw new FormatException("its hash or its place is not right");
        }
        catch (FormatException e)
        {
            throw new InvalidDataException($"Entry {(State.Sequence + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)} of the log was altered: {e.Message}. 'fairlead log verify' tells more.", e);
        }
    }
}
