using System.Text;
using System.Text.RegularExpressions;

namespace Fairlead.Model.Editing;

/// <summary>Changes single values of a YAML text and leaves every other character of it as it was.</summary>
internal static partial class YamlEdit
{
    private const string Step = "  ";

    /// <summary>Puts a value, given as YAML, under some keys; what is missing on the way there is made.</summary>
    /// <exception cref="FormatException">The text cannot be read, or a single value or a list stands where keys are needed.</exception>
    public static string Set(string text, ReadOnlySpan<string> keys, string value)
    {
        var at = Outline.Of(text);
        if (at is null)
        {
            return text.Trim().Length == 0 ? Nested(keys, value) + "\n" : throw new FormatException("The file cannot be read as YAML: mend its text first.");
        }

        for (var i = 0; i < keys.Length; i++)
        {
            if (at.Entry(keys[i]) is not { } entry)
            {
                return Insert(text, at, keys[i..], value);
            }

            if (entry.Value is { Form: OutlineForm.Scalar, Brackets: false } empty && empty.Start == empty.End && i < keys.Length - 1)
            {
                return Splice(text, entry.KeyEnd + 1, entry.KeyEnd + 1, " { " + Nested(keys[(i + 1)..], value) + " }");
            }

            at = entry.Value;
        }

        return at.Start == at.End ? Splice(text, at.Start, at.End, " " + value) : Splice(text, at.Start, at.End, value);
    }

    /// <summary>Puts an empty entry at the end of the list under some keys; where there is none it is made.</summary>
    /// <exception cref="FormatException">The text cannot be read, or something else than a list stands there.</exception>
    public static string Append(string text, ReadOnlySpan<string> keys)
    {
        const string empty = "{}";
        var at = Outline.Of(text)?.Find(keys);
        if (at is not { Form: OutlineForm.List, Entries.IsEmpty: false })
        {
            return at is null or { Form: OutlineForm.List } || at.Start == at.End ? Set(text, keys, $"[{empty}]") : throw new FormatException($"'{keys[^1]}' is no list: mend its text first.");
        }

        var last = at.Entries[^1].Value;
        if (at.Brackets)
        {
            return Splice(text, last.End, last.End, ", " + empty);
        }

        var line = "\n" + new string(' ', Column(text, at.Start)) + "- " + empty;
        var end = text.IndexOf('\n', Math.Max(0, last.End - 1));
        return end < 0 ? text + line + "\n" : Splice(text, end, end, line);
    }

    /// <summary>Takes out what stands under some keys. A map that would be left without entries goes too.</summary>
    public static string Remove(string text, ReadOnlySpan<string> keys)
    {
        var parent = Outline.Of(text)?.Find(keys[..^1]);
        if (parent?.Entry(keys[^1]) is not { } entry)
        {
            return text;
        }

        if (parent.Entries.Length == 1 && keys.Length > 1)
        {
            return Remove(text, keys[..^1]);
        }

        return parent.Brackets ? RemoveInBrackets(text, parent, entry) : RemoveLines(text, entry);
    }

    /// <summary>Gives an entry another key.</summary>
    public static string Rename(string text, ReadOnlySpan<string> keys, string key) =>
        Outline.Of(text)?.Find(keys[..^1])?.Entry(keys[^1]) is { } entry ? Splice(text, entry.KeyStart, entry.KeyEnd, Scalar(key)) : text;

    /// <summary>Words as one YAML value, in quotes where they need them.</summary>
    public static string Scalar(string words)
    {
        if (Plain().IsMatch(words) && words[^1] is not (' ' or ':') && !words.Contains(" #", StringComparison.Ordinal) && !words.Contains(": ", StringComparison.Ordinal))
        {
            return words;
        }

        var quoted = new StringBuilder("\"");
        foreach (var c in words)
        {
            _ = c switch { '"' => quoted.Append("\\\""), '\\' => quoted.Append("\\\\"), '\n' => quoted.Append("\\n"), '\t' => quoted.Append("\\t"), '\r' => quoted, _ => quoted.Append(c) };
        }

        return quoted.Append('"').ToString();
    }

    private static string Insert(string text, Outline map, ReadOnlySpan<string> keys, string value)
    {
        if (map.Form != OutlineForm.Map)
        {
            throw new FormatException($"'{keys[0]}' cannot be put here: a {(map.Form == OutlineForm.List ? "list" : "single value")} stands where keys with values are needed.");
        }

        var line = Nested(keys, value);
        if (map.Entries.IsEmpty)
        {
            return Splice(text, map.Start, map.End, "{ " + line + " }");
        }

        var last = map.Entries[^1];
        if (map.Brackets)
        {
            return Splice(text, last.Value.End, last.Value.End, ", " + line);
        }

        var indent = Column(text, map.Entries[0].KeyStart);
        var end = text.IndexOf('\n', Math.Max(0, last.Value.End - 1));
        return end < 0 ? text + "\n" + new string(' ', indent) + line + "\n" : Splice(text, end, end, "\n" + new string(' ', indent) + line);
    }

    private static string Nested(ReadOnlySpan<string> keys, string value) =>
        keys.Length == 1 ? $"{Scalar(keys[0])}: {value}" : $"{Scalar(keys[0])}: {{ {Nested(keys[1..], value)} }}";

    private static string RemoveInBrackets(string text, Outline parent, OutlineEntry entry)
    {
        var index = parent.Entries.IndexOf(entry);
        return index > 0 ? Splice(text, parent.Entries[index - 1].Value.End, entry.Value.End, "")
            : parent.Entries.Length > 1 ? Splice(text, entry.KeyStart, parent.Entries[1].KeyStart, "")
            : Splice(text, entry.KeyStart, entry.Value.End, "");
    }

    private static string RemoveLines(string text, OutlineEntry entry)
    {
        var start = text.LastIndexOf('\n', Math.Max(0, entry.KeyStart - 1)) + 1;
        var end = text.IndexOf('\n', Math.Max(entry.KeyStart, entry.Value.End - 1));
        return Splice(text, start, end < 0 ? text.Length : end + 1, "");
    }

    private static int Column(string text, int at) => at - (text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1);

    private static string Splice(string text, int start, int end, string with) => string.Concat(text.AsSpan(0, start), with, text.AsSpan(end));

    [GeneratedRegex(@"^(-(?=[0-9.])|[A-Za-z0-9_.+/(<=])[^\[\]{},#&*!|'""%@`\t\r\n]*$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Plain();
}
