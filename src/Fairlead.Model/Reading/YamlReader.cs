using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Fairlead.Model.Reading;

/// <summary>Reads the text of a file into nodes with places. The subset is small on purpose: no anchors, aliases, tags or several documents,
/// so that a file means what it shows and cannot grow when it is read.</summary>
internal static class YamlReader
{
    /// <summary>The node of a text; null when it cannot be read.</summary>
    /// <param name="file">The name of the file.</param>
    /// <param name="text">The text.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="above">How many lines of the file stand above the text.</param>
    /// <param name="depth">How deep in the file the text stands.</param>
    public static Node? Read(string file, string text, ProblemList problems, int above = 0, int depth = 0)
    {
        var parser = new Parser(new StringReader(text));
        var walk = new Walk(file, above, parser, problems);
        try
        {
            parser.Consume<StreamStart>();
            if (parser.Accept<StreamEnd>(out _))
            {
                problems.Add("empty-file", new Location(file, 1, 1), "the file is empty");
                return null;
            }

            parser.Consume<DocumentStart>();
            var node = walk.Next(depth);
            parser.Consume<DocumentEnd>();
            if (!parser.Accept<StreamEnd>(out _))
            {
                problems.Add("several-documents", YamlFault.Place(file, parser.Current!.Start), "a second document starts here", expected: "one document a file");
            }

            return node;
        }
        catch (YamlException exception)
        {
            YamlFault.Report(file, text, exception, problems);
            return null;
        }
        catch (Exception exception) when (exception is InvalidOperationException or ArgumentException)
        {
            // The parser meets a bracket that is not closed, and a character that does not exist, with these.
            problems.Add("syntax", walk.OpenBracket ?? walk.Last, walk.OpenBracket is null ? "the file cannot be read as YAML after this" : "a bracket is opened here and not closed");
            return null;
        }
    }

    /// <summary>The text of some bytes; null when they are none.</summary>
    public static string? Decode(string file, byte[] bytes, ProblemList problems)
    {
        try
        {
            var text = StrictUtf8.Encoding.GetString(bytes).TrimStart('\uFEFF');
            var nul = text.IndexOf('\0', StringComparison.Ordinal);
            if (nul >= 0)
            {
                problems.Add("not-text", At(file, text, nul), "the file holds a zero byte, so it is not text");
                return null;
            }

            return text;
        }
        catch (DecoderFallbackException exception)
        {
            var before = Encoding.Latin1.GetString(bytes, 0, Math.Clamp(exception.Index, 0, bytes.Length));
            problems.Add("not-utf8", At(file, before, before.Length), "the file is not UTF-8 text", fix: "save it as UTF-8");
            return null;
        }
    }

    private static Location At(string file, string text, int index)
    {
        var line = text.AsSpan(0, index).Count('\n') + 1;
        return new Location(file, line, index - (text.LastIndexOf('\n', Math.Max(0, index - 1)) + 1) + 1);
    }

    private const int LongestKey = 200;

    private sealed class Walk(string file, int above, IParser parser, ProblemList problems)
    {
        // Where each list and map begins that is not at its end; null when it is written without brackets.
        private readonly Stack<Location?> open = [];

        /// <summary>The outermost bracket that is open: brackets within it find their ends first.</summary>
        public Location? OpenBracket => open.LastOrDefault(bracket => bracket is not null);

        /// <summary>The last thing read.</summary>
        public Location Last { get; private set; } = new(file, 1, 1);

        public Node Next(int depth)
        {
            var at = Last = Place();
            switch (parser.Current)
            {
                case AnchorAlias alias:
                    problems.Add("alias", at, "aliases are not used in job files", $"*{alias.Value}", fix: "write the value out");
                    parser.MoveNext();
                    return new UnreadNode(at);
                case Scalar scalar:
                    Refuse(scalar, at);
                    parser.MoveNext();
                    return new ScalarNode(at, scalar.Value);
                case NodeEvent deep and not Scalar when depth > Limits.Depth:
                    throw new YamlException(deep.Start, deep.End, string.Create(CultureInfo.InvariantCulture, $"more than {Limits.Depth} levels of nesting"));
                case SequenceStart list:
                    Refuse(list, at);
                    open.Push(list.Style == SequenceStyle.Flow ? at : null);
                    return new ListNode(at, Items(depth));
                case MappingStart map:
                    Refuse(map, at);
                    var bare = IsPairOfList(map);
                    open.Push(map.Style == MappingStyle.Flow && !bare ? at : null);
                    parser.MoveNext();
                    return new MapNode(bare ? Place() : at, Entries(depth));
                default:
                    throw new YamlException(parser.Current!.Start, parser.Current.End, "a value is needed here");
            }
        }

        private Location Place() => YamlFault.Place(file, parser.Current!.Start).Below(above);

        // Of a pair that stands in brackets without braces of its own, as in [a: b], the parser tells no place: it begins where its key does.
        private bool IsPairOfList(MappingStart map) => open.Count > 0 && map.Start.Equals(Mark.Empty);

        private void Close()
        {
            open.Pop();
            parser.MoveNext();
        }

        private ImmutableArray<Node> Items(int depth)
        {
            var items = ImmutableArray.CreateBuilder<Node>();
            parser.MoveNext();
            while (!parser.Accept<SequenceEnd>(out _))
            {
                items.Add(Next(depth + 1));
            }

            Close();
            return items.ToImmutable();
        }

        private ImmutableArray<Entry> Entries(int depth)
        {
            var entries = ImmutableArray.CreateBuilder<Entry>();
            while (!parser.Accept<MappingEnd>(out _))
            {
                var key = Next(depth + 1);
                var value = Next(depth + 1);
                if (key is ScalarNode { Text.Length: > 0 and <= LongestKey } name)
                {
                    entries.Add(new Entry(name.Text, key.At, value));
                }
                else if (key is not UnreadNode)
                {
                    problems.Add("bad-key", key.At, "a key is a word", key.Form);
                }
            }

            Close();
            return entries.ToImmutable();
        }

        private void Refuse(NodeEvent node, Location at)
        {
            if (!node.Anchor.IsEmpty)
            {
                problems.Add("anchor", at, "anchors are not used in job files", $"&{node.Anchor.Value}", fix: "write the value out where it is needed");
            }

            if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
            {
                problems.Add("tag", at, "tags are not used in job files", node.Tag.Value, fix: "leave the tag out");
            }
        }
    }
}
