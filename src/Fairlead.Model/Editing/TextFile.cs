using System.Text;
using Fairlead.Model.Reading;

namespace Fairlead.Model.Editing;

/// <summary>Changes the text below some keys.</summary>
internal delegate string TextEdit(string text, ReadOnlySpan<string> keys);

/// <summary>The text of one file, with what follows from it: worked out when it is asked for, and kept for as long as the text stands.</summary>
internal sealed class TextFile
{
    private readonly Lazy<byte[]> bytes;
    private readonly Lazy<Outline?> outline;
    private bool? plain;

    public TextFile(string text)
    {
        Text = text;
        bytes = new(() => Encoding.UTF8.GetBytes(text));
        outline = new(() => Outline.Of(text));
    }

    private TextFile(string text, bool plain)
        : this(text) => this.plain = plain;

    public string Text { get; }

    public byte[] Bytes => bytes.Value;

    public Outline? Outline => outline.Value;

    /// <summary>The file after an edit. Of a file that is plainly made of keys and entries only the piece is read in which the keys stand: the result is the same.</summary>
    public TextFile Edit(string[] keys, TextEdit edit)
    {
        if ((plain ??= IsPlain()) && Around(keys) is var (piece, depth))
        {
            var now = edit(Text.Substring(piece.Start, piece.Length), keys.AsSpan(depth));
            if (now.Length == 0 || (Stretch.All(now, from: 0, line: 1, piece.Margin) is { } stretches && Holds(stretches, Outline.Of(now))))
            {
                return new TextFile(string.Concat(Text.AsSpan(0, piece.Start), now, Text.AsSpan(piece.Start + piece.Length)), plain: true);
            }
        }

        return new TextFile(edit(Text, keys));
    }

    // The piece in which keys stand or will stand, and how many keys lead to it; null where the file as a whole would change.
    private (Stretch Piece, int Depth)? Around(string[] keys)
    {
        if (Stretch.Of(Text) is not { Count: > 1 } sections || keys.Length == 0 || sections.FindIndex(s => s.Key == keys[0]) is var at && at < 0)
        {
            return null;
        }

        var section = sections[at];
        if (keys.Length == 1 || Stretch.Below(Text.Substring(section.Start, section.Length), section.Line) is not { Count: > 1 } entries)
        {
            return (section, 0);
        }

        var entry = entries.FindIndex(e => e.Key == keys[1]) is >= 0 and var found ? entries[found] : entries[^1];
        return (entry with { Start = section.Start + entry.Start }, 1);
    }

    // Whether the keys and entries are where they seem to be by the beginnings of the lines.
    private bool IsPlain() => Stretch.Of(Text) is { } sections && Holds(sections, Outline) && sections.Zip(Outline!.Entries).All(s =>
        Stretch.Below(Text.Substring(s.First.Start, s.First.Length), s.First.Line) is not { } entries || Holds(entries, s.Second.Value, s.First.Start));

    private static bool Holds(List<Stretch> stretches, Outline? map, int offset = 0) =>
        map is { Form: OutlineForm.Map, Brackets: false } && map.Entries.Length == stretches.Count && map.Entries.Zip(stretches).All(p => p.First.KeyStart == offset + p.Second.Start + p.Second.Margin);
}
