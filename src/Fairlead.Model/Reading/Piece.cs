namespace Fairlead.Model.Reading;

/// <summary>A stretch of a file that is read by itself: the whole file, a key at the margin with what it holds, or one entry below such a key.
/// What was made of it is kept for as long as its text stands, wherever the lines around it move it.</summary>
/// <param name="text">The text.</param>
/// <param name="line">The line it began at when it was read; places in it go by that.</param>
/// <param name="entry">The key with its value.</param>
/// <param name="before">The piece that stood there before its text was changed.</param>
internal sealed class Piece(string text, int line, Entry entry, Piece? before = null)
{
    /// <summary>No pieces.</summary>
    public static readonly IReadOnlyDictionary<string, Piece> None = new Dictionary<string, Piece>(StringComparer.Ordinal);

    private object? last = before?.Bound?.Value ?? before?.last;

    public string Text { get; } = text;

    public int Line { get; } = line;

    public Entry Entry { get; } = entry;

    /// <summary>The pieces it is put together from, by key.</summary>
    public IReadOnlyDictionary<string, Piece> Pieces { get; init; } = None;

    /// <summary>What was made of it; null until then.</summary>
    public Bound? Bound { get; private set; }

    /// <summary>The entry as it stands when the piece begins at a line.</summary>
    public Entry At(int now) => Entry with { Down = now - Line, Piece = this };

    /// <summary>Keeps what was made of it. What is equal to what was made before stays the very same object, so that nobody need compare it again.</summary>
    public Bound Keep(object? value, Facts facts, bool whole)
    {
        var old = Bound?.Value ?? last;
        last = null;
        return Bound = new Bound(old is not null && old.Equals(value) ? old : value, facts, whole);
    }
}

/// <summary>What was made of a piece.</summary>
/// <param name="Value">The value.</param>
/// <param name="Facts">What was met on the way.</param>
/// <param name="Whole">Whether there was no problem in it, so that binding it again would give the same and tell nothing.</param>
internal sealed record Bound(object? Value, Facts Facts, bool Whole);

/// <summary>What binding met besides values: places, ids and uses of ids. Those of pieces that were bound before are taken over whole.</summary>
/// <param name="down">How many lines further down the piece stood, when it was bound, than its places say.</param>
internal sealed class Facts(int down)
{
    private readonly List<(string Path, Location At)> places = [];
    private readonly List<(Type Type, string Id)> ids = [];
    private readonly List<Reference> uses = [];
    private readonly List<(Facts Facts, int Shift)> inner = [];

    public void Place(string path, Location at) => places.Add((path, at));

    public void Id(Type type, string id) => ids.Add((type, id));

    public void Use(Reference use) => uses.Add(use);

    /// <summary>Takes over the facts of a piece that stands so many lines further down than its places say.</summary>
    public void Add(Facts facts, int now) => inner.Add((facts, now - facts.Down));

    public int Down => down;

    /// <summary>Where each part stands.</summary>
    public Dictionary<string, Location> Places()
    {
        var all = new Dictionary<string, Location>(StringComparer.Ordinal);
        Each((facts, shift) => facts.places.ForEach(p => all.TryAdd(p.Path, p.At.Below(shift))));
        return all;
    }

    /// <summary>Every id that stands for something.</summary>
    public HashSet<(Type Type, string Id)> Ids()
    {
        var all = new HashSet<(Type, string)>();
        Each((facts, _) => facts.ids.ForEach(id => all.Add(id)));
        return all;
    }

    /// <summary>Every use of an id, and how many lines further down it stands than it says.</summary>
    public void Uses(Action<Reference, int> see) => Each((facts, shift) => facts.uses.ForEach(use => see(use, shift)));

    private void Each(Action<Facts, int> see, int shift = 0)
    {
        see(this, shift);
        inner.ForEach(i => i.Facts.Each(see, shift + i.Shift));
    }
}
