using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace Fairlead.Documents;

/// <summary>A written PDF file taken apart into its objects, so that some can be replaced, and put together again.
/// It reads only what the PDF library writes: a classical cross-reference table and direct stream lengths.</summary>
internal sealed partial class PdfFile
{
    private const RegexOptions Plain = RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture;

    // PDF is bytes; this encoding maps each to the character of the same number and back.
    private static readonly Encoding Bytes = Encoding.Latin1;
    private readonly string header;
    private readonly string trailer;
    private readonly SortedDictionary<int, string> objects = [];

    private PdfFile(string header, string trailer)
    {
        this.header = header;
        this.trailer = trailer;
    }

    /// <summary>Takes a file apart.</summary>
    /// <exception cref="InvalidOperationException">The file is not laid out as the library of the pinned version writes it.</exception>
    public static PdfFile Read(byte[] file)
    {
        var text = Bytes.GetString(file);
        var table = int.Parse(Required(StartOfTable().Match(text), "startxref").Groups["at"].ValueSpan, CultureInfo.InvariantCulture);
        var trailerAt = text.IndexOf("trailer", table, StringComparison.Ordinal);
        var starts = Entry().Matches(text[table..trailerAt]).Select(m => int.Parse(m.Groups["at"].ValueSpan, CultureInfo.InvariantCulture)).Order().ToArray();
        var result = new PdfFile(text[..starts[0]], text[(trailerAt + 7)..text.LastIndexOf("startxref", StringComparison.Ordinal)].Trim());
        for (var i = 0; i < starts.Length; i++)
        {
            var slice = text[starts[i]..(i + 1 < starts.Length ? starts[i + 1] : table)];
            var begin = Required(ObjectHeader().Match(slice), "obj");
            result.objects.Add(int.Parse(begin.Groups["number"].ValueSpan, CultureInfo.InvariantCulture), slice[begin.Length..slice.LastIndexOf("endobj", StringComparison.Ordinal)].Trim('\r', '\n', ' '));
        }

        return result;
    }

    /// <summary>Replaces an object.</summary>
    public void Replace(int number, byte[] body) => objects[number] = Bytes.GetString(body);

    /// <summary>Gives font subsets, which the library tags at random, tags by their order in the file.</summary>
    /// <param name="rename">The name a font shall have in place of the library's.</param>
    public void NameSubsets(Func<string, string> rename)
    {
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (number, body) in objects.ToArray())
        {
            var dictionary = body[..DictionaryEnd(body)];
            objects[number] = Subset().Replace(dictionary, m => "/" + Tag(m.Groups["tag"].Value) + "+" + rename(m.Groups["name"].Value.Replace("#20", " ", StringComparison.Ordinal))) + body[dictionary.Length..];
        }

        string Tag(string random)
        {
            if (!tags.TryGetValue(random, out var tag))
            {
                var n = tags.Count;
                tag = string.Create(6, n, static (span, value) =>
                {
                    for (var i = 5; i >= 0; i--, value /= 26)
                    {
                        span[i] = (char)('A' + (value % 26));
                    }
                });
                tags.Add(random, tag);
            }

            return tag;
        }
    }

    /// <summary>Compresses the streams that are not, except some, and anew those that the library compressed, which it leaves without their end.</summary>
    public void Compress(params int[] except)
    {
        foreach (var (number, body) in objects.ToArray())
        {
            var end = DictionaryEnd(body);
            var open = Flate().IsMatch(body[..end]);
            if (end == body.Length || except.Contains(number) || (!open && body[..end].Contains("/Filter", StringComparison.Ordinal)))
            {
                continue;
            }

            var length = Required(Length().Match(body[..end]), "/Length");
            var data = Bytes.GetBytes(body).AsSpan(end + StreamKeyword(body, end), int.Parse(length.Groups["length"].ValueSpan, CultureInfo.InvariantCulture));
            var packed = Deflated(open ? Inflated(data) : data);
            var dictionary = body[..length.Index] + string.Create(CultureInfo.InvariantCulture, $"/Length {packed.Length}{(open ? "" : "/Filter/FlateDecode")}") + body[(length.Index + length.Length)..end];
            objects[number] = dictionary + "stream\n" + Bytes.GetString(packed) + "\nendstream";
        }
    }

    /// <summary>The file put together, with a new cross-reference table.</summary>
    public byte[] Write()
    {
        var text = new StringBuilder(header);
        var starts = new Dictionary<int, int>();
        foreach (var (number, body) in objects)
        {
            starts[number] = text.Length;
            text.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{body}\nendobj\n");
        }

        var table = text.Length;
        var count = objects.Keys.Max() + 1;
        text.Append(CultureInfo.InvariantCulture, $"xref\n0 {count}\n0000000000 65535 f \n");
        for (var number = 1; number < count; number++)
        {
            text.Append(starts.TryGetValue(number, out var start)
                ? string.Create(CultureInfo.InvariantCulture, $"{start:D10} 00000 n \n")
                : throw new InvalidOperationException("The PDF library left out object " + number.ToString(CultureInfo.InvariantCulture) + "."));
        }

        return Bytes.GetBytes(text.Append(CultureInfo.InvariantCulture, $"trailer\n{trailer}\nstartxref\n{table}\n%%EOF\n").ToString());
    }

    // Where the dictionary of a stream ends; the whole of an object that is no stream.
    private static int DictionaryEnd(string body) => StreamStart().Match(body) is { Success: true } m ? m.Groups["keyword"].Index : body.Length;

    private static int StreamKeyword(string body, int at) => body[at + 6] == '\r' ? 8 : 7;

    private static byte[] Deflated(ReadOnlySpan<byte> data)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            zlib.Write(data);
        }

        return packed.ToArray();
    }

    // Without the two bytes of its header: whether its end is there is not looked at (RFC 1950 and 1951).
    private static byte[] Inflated(ReadOnlySpan<byte> data)
    {
        using var unpacked = new MemoryStream();
        using (var deflate = new DeflateStream(new MemoryStream(data[2..].ToArray()), CompressionMode.Decompress))
        {
            deflate.CopyTo(unpacked);
        }

        return unpacked.ToArray();
    }

    private static Match Required(Match match, string what) =>
        match.Success ? match : throw new InvalidOperationException($"The PDF library wrote a file without a readable '{what}'.");

    [GeneratedRegex(@"startxref\s+(?<at>\d+)\s+%%EOF\s*$", Plain | RegexOptions.RightToLeft, 10_000)]
    private static partial Regex StartOfTable();

    [GeneratedRegex(@"(?<at>\d{10}) \d{5} n", Plain, 10_000)]
    private static partial Regex Entry();

    [GeneratedRegex(@"\A\s*(?<number>\d+) 0 obj\s*", Plain, 10_000)]
    private static partial Regex ObjectHeader();

    [GeneratedRegex(@"\A<<(?:[^s]|s(?!tream\r?\n))*?>>\s*(?<keyword>stream\r?\n)", Plain, 10_000)]
    private static partial Regex StreamStart();

    [GeneratedRegex(@"/Filter\s*/FlateDecode\b", Plain, 10_000)]
    private static partial Regex Flate();

    [GeneratedRegex(@"/Length (?<length>\d+)", Plain, 10_000)]
    private static partial Regex Length();

    [GeneratedRegex(@"/(?<tag>[A-Z]{6})\+(?<name>[A-Za-z0-9#\-]+)", Plain, 10_000)]
    private static partial Regex Subset();
}
