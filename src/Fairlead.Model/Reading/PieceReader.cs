using System.Collections.Immutable;

namespace Fairlead.Model.Reading;

/// <summary>Reads a file piece by piece, so that after an edit only the pieces with another text are read again. A text that is not plainly made
/// of keys at the margin, or in which a piece cannot be read by itself, is read whole.</summary>
/// <param name="file">The name of the file.</param>
/// <param name="whole">Whether every text is read whole.</param>
internal sealed class PieceReader(string file, bool whole)
{
    private byte[] bytes = [];
    private Piece? last;

    /// <summary>The file as it stands; null when it cannot be read.</summary>
    public Piece? Read(byte[] contents, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(contents);
        if (last is not null && bytes.AsSpan().SequenceEqual(contents))
        {
            return last;
        }

        var before = problems.Count;
        if (YamlReader.Decode(file, contents, problems) is not { } text)
        {
            return null;
        }

        var sections = Sections(text);
        if ((sections is null ? YamlReader.Read(file, text, problems) : Join(sections)) is not { } node)
        {
            return null;
        }

        var piece = new Piece(text, 1, new Entry("", node.At, node), last) { Pieces = sections is null ? last?.Pieces ?? Piece.None : ByKey(sections) };
        if (problems.Count == before)
        {
            (bytes, last) = (contents, piece);
        }

        return piece;
    }

    /// <summary>Another reader of the same file.</summary>
    public PieceReader Another() => new(file, whole) { bytes = bytes, last = last };

    private static MapNode Join(List<(Piece Piece, int Line)> pieces)
    {
        ImmutableArray<Entry> entries = [.. pieces.Select(p => p.Piece.At(p.Line))];
        return new MapNode(entries[0].KeyAt.Below(entries[0].Down), entries);
    }

    private static Dictionary<string, Piece> ByKey(List<(Piece Piece, int Line)> pieces)
    {
        var byKey = new Dictionary<string, Piece>(pieces.Count, StringComparer.Ordinal);
        pieces.ForEach(p => byKey.TryAdd(p.Piece.Entry.Key, p.Piece));
        return byKey;
    }

    // Each key at the margin with all that stands below it; null when the text has to be read whole.
    private List<(Piece Piece, int Line)>? Sections(string text)
    {
        var sections = whole ? null : Stretch.Of(text);
        return sections is null ? null : Pieces(text, sections, last?.Pieces ?? Piece.None, Section);
    }

    private static List<(Piece Piece, int Line)>? Pieces(string text, List<Stretch> stretches, IReadOnlyDictionary<string, Piece> known, Func<Stretch, string, Piece?, Piece?> read)
    {
        var pieces = new List<(Piece Piece, int Line)>(stretches.Count);
        foreach (var stretch in stretches)
        {
            var before = known.GetValueOrDefault(stretch.Key);
            var own = text.AsSpan(stretch.Start, stretch.Length);
            if ((before is not null && own.SequenceEqual(before.Text) ? before : read(stretch, own.ToString(), before)) is not { } piece)
            {
                return null;
            }

            pieces.Add((piece, stretch.Line));
        }

        return pieces;
    }

    private Piece? Section(Stretch at, string text, Piece? before)
    {
        if (Stretch.Below(text, at.Line) is not { } stretches)
        {
            return Single(at, text, before, depth: 0);
        }

        if (Pieces(text, stretches, before?.Pieces ?? Piece.None, (stretch, own, known) => Single(stretch, own, known, depth: 1)) is not { } entries)
        {
            return null;
        }

        return new Piece(text, at.Line, new Entry(at.Key, new Location(file, at.Line, 1), Join(entries)), before) { Pieces = ByKey(entries) };
    }

    // A piece that is one key with its value and nothing else, read by itself.
    private Piece? Single(Stretch at, string text, Piece? before, int depth)
    {
        var problems = new ProblemList();
        return YamlReader.Read(file, text, problems, at.Line - 1, depth) is MapNode { Entries: [var entry] } && !problems.Any && entry.Key == at.Key && entry.KeyAt == new Location(file, at.Line, at.Margin + 1)
            ? new Piece(text, at.Line, entry, before) : null;
    }
}
