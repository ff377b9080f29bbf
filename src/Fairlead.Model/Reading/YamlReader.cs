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
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static Node? Read(string file, byte[] bytes, ProblemList problems)
    {
        var text = Decode(file, bytes, problems);
        if (text is null)
        {
            return null;
        }

        try
        {
            var parser = new Parser(new StringReader(text));
            parser.Consume<StreamStart>();
            if (parser.Accept<StreamEnd>(out _))
            {
                problems.Add("empty-file", new Location(file, 1, 1), "the file is empty");
                return null;
            }

            parser.Consume<DocumentStart>();
            var node = new Walk(file, parser, problems).Next(depth: 0);
            parser.Consume<DocumentEnd>();
            if (!parser.Accept<StreamEnd>(out _))
            {
                problems.Add("several-documents", Place(file, parser.Current!.Start), "a second document starts here", expected: "one document a file");
            }

            return node;
        }
        catch (YamlException exception)
        {
            problems.Add("syntax", Place(file, exception.Start), Plain(exception));
            return null;
        }
    }

    private static string? Decode(string file, byte[] bytes, ProblemList problems)
    {
        try
        {
            var text = Strict.GetString(bytes).TrimStart('\uFEFF');
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

    private static Location Place(string file, Mark mark) => new(file, (int)Math.Max(1, mark.Line), (int)Math.Max(1, mark.Column));

    private static string Plain(YamlException exception)
    {
        var message = (exception.InnerException?.Message ?? exception.Message).Split('\n')[0].TrimEnd('.', ' ');
        return "the file cannot be read as YAML: " + message;
    }

    private sealed class Walk(string file, IParser parser, ProblemList problems)
    {
        private bool tooDeep;

        public Node Next(int depth)
        {
            var at = Place(file, parser.Current!.Start);
            switch (parser.Current)
            {
                case AnchorAlias alias:
                    problems.Add("alias", at, "aliases are not used in job files", $"*{alias.Value}", fix: "write the value out");
                    parser.MoveNext();
                    return new ScalarNode(at, "");
                case Scalar scalar:
                    Refuse(scalar, at);
                    parser.MoveNext();
                    return new ScalarNode(at, scalar.Value);
                case SequenceStart list when !TooDeep(depth, at):
                    Refuse(list, at);
                    return new ListNode(at, Items(depth));
                case MappingStart map when !TooDeep(depth, at):
                    Refuse(map, at);
                    return new MapNode(at, Entries(depth));
                default:
                    parser.SkipThisAndNestedEvents();
                    return new ScalarNode(at, "");
            }
        }

        private ImmutableArray<Node> Items(int depth)
        {
            var items = ImmutableArray.CreateBuilder<Node>();
            parser.MoveNext();
            while (!parser.TryConsume<SequenceEnd>(out _))
            {
                items.Add(Next(depth + 1));
            }

            return items.ToImmutable();
        }

        private ImmutableArray<Entry> Entries(int depth)
        {
            var entries = ImmutableArray.CreateBuilder<Entry>();
            parser.MoveNext();
            while (!parser.TryConsume<MappingEnd>(out _))
            {
                var key = Next(depth + 1);
                var value = Next(depth + 1);
                if (key is ScalarNode { Text.Length: > 0 } name)
                {
                    entries.Add(new Entry(name.Text, key.At, value));
                }
                else
                {
                    problems.Add("bad-key", key.At, "a key is a word", key.Form);
                }
            }

            return entries.ToImmutable();
        }

        private bool TooDeep(int depth, Location at)
        {
            if (depth > Limits.Depth && !tooDeep)
            {
                tooDeep = true;
                problems.Add("too-deep", at, string.Create(CultureInfo.InvariantCulture, $"more than {Limits.Depth} levels of nesting"));
            }

            return depth > Limits.Depth;
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
