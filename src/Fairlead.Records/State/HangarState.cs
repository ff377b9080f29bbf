using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Records;

/// <summary>How things stand: the log, folded entry by entry. Each subject has its story, the entries about it that count; what is open
/// follows from the last of them that opens or shuts it.</summary>
public sealed record HangarState
{
    private static readonly ImmutableDictionary<string, ImmutableList<Entry>> NoStories = ImmutableDictionary.Create<string, ImmutableList<Entry>>(StringComparer.Ordinal);

    private HangarState()
    {
    }

    /// <summary>A log without entries.</summary>
    public static HangarState Empty { get; } = new();

    /// <summary>Number of the last entry; 0 when there is none.</summary>
    public long Sequence { get; private init; }

    /// <summary>Hash of the last entry.</summary>
    public string Head { get; private init; } = Entry.Origin;

    /// <summary>The latest time any entry carries: the day does not go back though a clock does.</summary>
    public DateTimeOffset Latest { get; private init; } = DateTimeOffset.MinValue;

    /// <summary>Subjects that stand open, in order.</summary>
    public ImmutableSortedSet<string> Open { get; private init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <summary>Subjects with a story, in order.</summary>
    public ImmutableSortedSet<string> Subjects { get; private init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <summary>Entries struck out, with the entry that did.</summary>
    public ImmutableSortedDictionary<long, Entry> Struck { get; private init; } = ImmutableSortedDictionary<long, Entry>.Empty;

    /// <summary>Entries of a kind this version does not know: of them nothing can be told.</summary>
    public ImmutableList<Entry> Unknown { get; private init; } = [];

    /// <summary>The work order the log is that of; empty where no entry says.</summary>
    public string Job { get; private init; } = "";

    /// <summary>The last entry that handed the work over, or null.</summary>
    public Entry? HandedOver { get; private init; }

    private ImmutableDictionary<string, ImmutableList<Entry>> Stories { get; init; } = NoStories;

    private ImmutableDictionary<string, Entry> Sent { get; init; } = ImmutableDictionary.Create<string, Entry>(StringComparer.Ordinal);

    private ImmutableDictionary<long, string> Strikeable { get; init; } = ImmutableDictionary<long, string>.Empty;

    /// <summary>The state after some entries.</summary>
    public static HangarState Of(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return entries.Aggregate(Empty, (state, entry) => state.After(entry));
    }

    /// <summary>All entries that count, in order: what was struck out is left out.</summary>
    public IEnumerable<Entry> Counted => Stories.Values.SelectMany(s => s).OrderBy(e => e.Sequence);

    /// <summary>The entries about a subject that count, in order.</summary>
    public IReadOnlyList<Entry> Story(string subject) => Stories.GetValueOrDefault(subject) ?? [];

    /// <summary>The entry that a tablet sent under an id, struck out or not; null when there is none.</summary>
    public Entry? SentAs(string id) => Sent.GetValueOrDefault(id);

    /// <summary>The last entry of some kinds about a subject, or null.</summary>
    public Entry? Last(string subject, params ReadOnlySpan<string> kinds)
    {
        var story = Story(subject);
        for (var i = story.Count - 1; i >= 0; i--)
        {
            if (kinds.Contains(story[i].Kind))
            {
                return story[i];
            }
        }

        return null;
    }

    /// <summary>The last entry that opened or shut a subject, or null.</summary>
    public Entry? Standing(string subject)
    {
        var story = Story(subject);
        for (var i = story.Count - 1; i >= 0; i--)
        {
            if (Kinds.Find(story[i].Kind)!.Effect != Effect.Tells)
            {
                return story[i];
            }
        }

        return null;
    }

    /// <summary>Whether a subject stands open.</summary>
    public bool IsOpen(string subject) => Open.Contains(subject);

    /// <summary>Whether an entry can be struck out, and what it is about: what opens or shuts cannot be, because the aircraft does not change with it.</summary>
    public string? CanStrike(long sequence) => Strikeable.GetValueOrDefault(sequence);

    /// <summary>The signatures that hold for a subject: those after whatever last happened to it.</summary>
    public IReadOnlyList<Entry> Signatures(string subject)
    {
        var since = Changed(subject);
        return [.. Story(subject).Where(e => e.Kind == "signed" && e.Sequence > since)];
    }

    /// <summary>The state after one more entry.</summary>
    /// <exception cref="ArgumentException">The entry does not follow.</exception>
    public HangarState After(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        if (entry.Sequence != Sequence + 1 || entry.Previous != Head)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Entry {entry.Sequence} does not follow entry {Sequence}."), nameof(entry));
        }

        return Passed(entry);
    }

    /// <summary>The state after one more entry, though others before it may have been left out.</summary>
    internal HangarState Passed(Entry entry)
    {
        var next = this with
        {
            Sequence = entry.Sequence,
            Head = entry.Hash,
            Latest = entry.At > Latest || entry.Kind == Kinds.ClockSet ? entry.At : Latest,
            Job = Job.Length > 0 ? Job : entry.Payload.Text(Evidence.Job),
            Sent = entry.Payload.Text("tablet-entry") is { Length: > 0 } id ? Sent.SetItem(id, entry) : Sent,
        };
        return Kinds.Find(entry.Kind) switch
        {
            null => next with { Unknown = Unknown.Add(entry) },
            { Name: "struck" } => next.Strike(entry),
            { Effect: Effect.Tells } kind => next.Told(entry) with { HandedOver = kind.Name == "handed-over" ? entry : HandedOver, Strikeable = Strikeable.Add(entry.Sequence, entry.Subject) },
            var kind => next.Told(entry) with { Open = kind.Effect == Effect.Opens ? Open.Add(entry.Subject) : Open.Remove(entry.Subject) },
        };
    }

    // A check of controls lapses when its panel is opened again; a held stage is signed for the time it was last reached.
    private long Changed(string subject)
    {
        var id = Kinds.IdOf(subject);
        return Kinds.ClassOf(subject) switch
        {
            "controls" => Standing("panel/" + id)?.Sequence ?? 0,
            "stage" => Stage(id)?.Sequence ?? long.MaxValue,
            _ => Story(subject).LastOrDefault(e => e.Kind is not ("signed" or "noted" or "photographed"))?.Sequence ?? 0,
        };
    }

    /// <summary>The entry that last reached a stage, named <c>TASK/STAGE</c>, or null.</summary>
    public Entry? Stage(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var slash = id.LastIndexOf('/');
        return slash < 0 ? null : Story("task/" + id[..slash]).LastOrDefault(e => e.Kind == "staged" && e.Payload.Text("stage") == id[(slash + 1)..]);
    }

    private HangarState Told(Entry entry) => this with
    {
        Stories = Stories.SetItem(entry.Subject, (Stories.GetValueOrDefault(entry.Subject) ?? []).Add(entry)),
        Subjects = Subjects.Add(entry.Subject),
    };

    private HangarState Strike(Entry entry)
    {
        if (!long.TryParse(Kinds.IdOf(entry.Subject), NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) || CanStrike(sequence) is not { } subject)
        {
            return this with { Unknown = Unknown.Add(entry) };
        }

        return this with
        {
            Struck = Struck.SetItem(sequence, entry),
            Strikeable = Strikeable.Remove(sequence),
            Stories = Stories.SetItem(subject, Stories[subject].RemoveAll(e => e.Sequence == sequence)),
        };
    }
}
