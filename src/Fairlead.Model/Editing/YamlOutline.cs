using System.Collections.Immutable;
using System.Globalization;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Fairlead.Model.Editing;

/// <summary>What an outlined piece of text is.</summary>
internal enum OutlineForm
{
    Scalar,
    List,
    Map,
}

/// <summary>A child of a list or map: its key (the index in a list), where the key stands, and its value.</summary>
internal sealed record OutlineEntry(string Key, int KeyStart, int KeyEnd, Outline Value);

/// <summary>Where the pieces of a YAML text stand in it, by offset, so that one can be changed and all else, comments too, left as it is.</summary>
/// <param name="Start">First character.</param>
/// <param name="End">One past the last character.</param>
/// <param name="Form">What it is.</param>
/// <param name="Brackets">Whether it is written in brackets.</param>
/// <param name="Entries">What it holds.</param>
/// <param name="Words">What a single value says, without its quotes; empty for lists and maps.</param>
internal sealed record Outline(int Start, int End, OutlineForm Form, bool Brackets, ImmutableArray<OutlineEntry> Entries, string Words = "")
{
    private const int Few = 12;
    private Dictionary<string, OutlineEntry>? byKey;

    /// <summary>The outline of a text; null when it cannot be read or holds nothing.</summary>
    public static Outline? Of(string text)
    {
        try
        {
            var parser = new Parser(new StringReader(text));
            parser.Consume<StreamStart>();
            if (parser.Accept<StreamEnd>(out _))
            {
                return null;
            }

            parser.Consume<DocumentStart>();
            return Next(text, parser, depth: 0);
        }
        catch (Exception e) when (e is YamlException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The piece under some keys, or null.</summary>
    public Outline? Find(ReadOnlySpan<string> keys)
    {
        var at = this;
        foreach (var key in keys)
        {
            if (at.Entry(key) is not { } entry)
            {
                return null;
            }

            at = entry.Value;
        }

        return at;
    }

    /// <summary>The entry of a key, or null.</summary>
    public OutlineEntry? Entry(string key) => Entries.Length <= Few ? Entries.FirstOrDefault(e => e.Key == key)
        : (byKey ??= Entries.DistinctBy(e => e.Key, StringComparer.Ordinal).ToDictionary(e => e.Key, StringComparer.Ordinal)).GetValueOrDefault(key);

    private static Outline Next(string text, Parser parser, int depth)
    {
        if (depth > Limits.Depth)
        {
            throw new InvalidOperationException("The text is nested too deeply.");
        }

        var start = (int)parser.Current!.Start.Index;
        switch (parser.Current)
        {
            case Scalar scalar:
                parser.MoveNext();
                return new Outline(start, (int)scalar.End.Index, OutlineForm.Scalar, scalar.Style is ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted, [], scalar.Value);
            case SequenceStart list:
                parser.MoveNext();
                var items = Items(text, parser, depth);
                return Closed(text, parser, start, OutlineForm.List, list.Style == SequenceStyle.Flow, items);
            case MappingStart map:
                parser.MoveNext();
                var entries = Pairs(text, parser, depth);
                return Closed(text, parser, start, OutlineForm.Map, map.Style == MappingStyle.Flow, entries);
            default:
                throw new InvalidOperationException("A value is needed here.");
        }
    }

    // A map or list without brackets has no end of its own: the parser names the beginning of what follows it. Of one in brackets
    // the parser names the closing bracket, or the place after it.
    private static Outline Closed(string text, Parser parser, int start, OutlineForm form, bool brackets, ImmutableArray<OutlineEntry> entries)
    {
        var at = (int)parser.Current!.Start.Index;
        var end = !brackets && !entries.IsEmpty ? entries[^1].Value.End : at < text.Length && text[at] is (']' or '}') ? at + 1 : at;
        parser.MoveNext();
        return new Outline(start, end, form, brackets, entries);
    }

    private static ImmutableArray<OutlineEntry> Items(string text, Parser parser, int depth)
    {
        var items = ImmutableArray.CreateBuilder<OutlineEntry>();
        while (!parser.Accept<SequenceEnd>(out _))
        {
            var value = Next(text, parser, depth + 1);
            items.Add(new OutlineEntry(items.Count.ToString(CultureInfo.InvariantCulture), value.Start, value.Start, value));
        }

        return items.ToImmutable();
    }

    private static ImmutableArray<OutlineEntry> Pairs(string text, Parser parser, int depth)
    {
        var entries = ImmutableArray.CreateBuilder<OutlineEntry>();
        while (!parser.Accept<MappingEnd>(out _))
        {
            var key = parser.Consume<Scalar>();
            entries.Add(new OutlineEntry(key.Value, (int)key.Start.Index, (int)key.End.Index, Next(text, parser, depth + 1)));
        }

        return entries.ToImmutable();
    }
}
