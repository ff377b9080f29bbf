using System.Buffers;

namespace Fairlead.Model.Reading;

/// <summary>Lines of a text that begin with a key and go on to the next key at the same margin.</summary>
/// <param name="Key">The key.</param>
/// <param name="Start">The first character.</param>
/// <param name="Length">How many characters.</param>
/// <param name="Line">The line of the file it begins at.</param>
/// <param name="Margin">The spaces before the key.</param>
internal readonly record struct Stretch(string Key, int Start, int Length, int Line, int Margin)
{
    private static readonly SearchValues<char> Word = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_.-");

    // With these, lines are not what they seem: a tab stands for no known number of spaces, and the others end lines too.
    private static readonly SearchValues<char> Odd = SearchValues.Create("\t\u0085\u2028\u2029\uFEFF");

    /// <summary>The stretches of a whole file; null when it is not plainly made of keys at the margin.</summary>
    public static List<Stretch>? Of(string text) =>
        text.AsSpan().ContainsAny(Odd) || text.AsSpan().Count('\r') != text.AsSpan().Count("\r\n") ? null : All(text, from: 0, line: 1, margin: 0);

    /// <summary>The stretches of a text from a line on; null when something else than a plain key stands at the margin, or anything left of it.</summary>
    public static List<Stretch>? All(string text, int from, int line, int margin)
    {
        var all = new List<Stretch>();
        for (var start = from; start < text.Length; line++)
        {
            var rest = text.AsSpan(start);
            var length = rest.IndexOf('\n') + 1 is > 0 and var end ? end : rest.Length;
            var words = Words(rest[..length], out var indent);
            if (words.IsEmpty || indent > margin || IsItem(words, margin))
            {
                if (!words.IsEmpty && all.Count == 0)
                {
                    return null;
                }
            }
            else if (indent < margin || Named(words) is not { } key)
            {
                return null;
            }
            else
            {
                Close(all, start);
                all.Add(new Stretch(key, start, 0, line, margin));
            }

            start += length;
        }

        Close(all, text.Length);
        return all.Count == 0 ? null : all;
    }

    /// <summary>The entries below a key that nothing stands beside; null when what stands below is something else.</summary>
    public static List<Stretch>? Below(string text, int line)
    {
        var head = text.IndexOf('\n', StringComparison.Ordinal) + 1;
        if (head == 0 || !Words(text.AsSpan(..head)[(text.IndexOf(':', StringComparison.Ordinal) + 1)..], out _).IsEmpty)
        {
            return null;
        }

        foreach (var first in text.AsSpan(head).EnumerateLines())
        {
            var words = Words(first, out var indent);
            if (!words.IsEmpty)
            {
                return indent == 0 ? null : All(text, head, line + 1, indent);
            }
        }

        return null;
    }

    private static void Close(List<Stretch> all, int end)
    {
        if (all.Count > 0)
        {
            all[^1] = all[^1] with { Length = end - all[^1].Start };
        }
    }

    // What a line says, and after how many spaces; nothing when it is empty or a remark.
    private static ReadOnlySpan<char> Words(ReadOnlySpan<char> line, out int indent)
    {
        var words = line.TrimStart(' ');
        indent = line.Length - words.Length;
        return words.StartsWith('#') ? [] : words.TrimEnd("\r\n ");
    }

    // The items of a list may stand at the margin below their key.
    private static bool IsItem(ReadOnlySpan<char> words, int margin) => margin == 0 && (words is "-" || words.StartsWith("- "));

    private static string? Named(ReadOnlySpan<char> words)
    {
        var length = words.IndexOfAnyExcept(Word);
        return length > 0 && words[0] is not ('-' or '.') && words[length] == ':' && (words.Length == length + 1 || words[length + 1] == ' ') ? words[..length].ToString() : null;
    }
}
