using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Records;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The photographs that the log names: each by name and hash, and the picture itself where it is small enough to print.</summary>
internal static class PhotographSection
{
    // A photograph of the pages of the work has some hundred kilobytes, and one that came otherwise at most Pictures.MostBytes; a pack of some hundred can still be sent.
    private const int MostTogether = 48 * 1024 * 1024;
    private const double LongSide = 110;

    public static IEnumerable<Block> Of(Assessment assessment, ReleaseRecord record, IEnumerable<Entry> entries)
    {
        var named = entries.Where(e => Pictures.Hash(e).Length > 0).ToArray();
        if (named.Length == 0)
        {
            yield break;
        }

        var printed = Printed(record, named);
        yield return new Heading(2, "Photographs");
        yield return new Paragraph($"Each is kept in the log under its SHA-256: in an export of the job as '{JobArchive.ContentFolder}' and that hash, which stands below.");
        yield return new Table(
            [new("Name"), new("Of"), new("By"), new("When"), new("Picture"), new("Entry", Right: true)],
            named.Select(e => (Sequence<Cell>)[
                new Cell(Name(record, e), e.Payload.Text("caption"), Strong: true), new Cell(e.Subject, Title(record, e.Subject)), new Cell(e.Who, assessment.Job.Order.People?.Find(e.Who)?.Name ?? ""), Instant.Text(e.At),
                printed.ContainsKey(e.Sequence) ? "printed below" : record.Pictures.ContainsKey(Pictures.Hash(e)) ? "not printed; in the log" : "the picture itself is not kept in the log",
                e.Sequence.ToString(CultureInfo.InvariantCulture),
            ]).ToSequence());
        yield return new KeyValues(named.Select(e => new KeyValue(Name(record, e), Pictures.Hash(e))).ToSequence());
        foreach (var entry in named.Where(e => printed.ContainsKey(e.Sequence)))
        {
            yield return new Figure(printed[entry.Sequence], $"{Name(record, entry)}: {(entry.Payload.Text("caption") is { Length: > 0 } caption ? caption + ", " : "")}{entry.Subject}, {entry.Who}, {Instant.Text(entry.At)}");
        }
    }

    private static Dictionary<long, Picture> Printed(ReleaseRecord record, IEnumerable<Entry> entries)
    {
        var (printed, together) = (new Dictionary<long, Picture>(), 0);

        // As many as can be: few great ones do not keep the small ones out.
        foreach (var (entry, bytes) in entries.Where(e => record.Pictures.ContainsKey(Pictures.Hash(e))).Select(e => (e, record.Pictures[Pictures.Hash(e)])).OrderBy(p => p.Item2.Length))
        {
            if (bytes.Length <= Pictures.MostBytes && together + bytes.Length <= MostTogether && Photographs.Size(bytes) is var (width, height))
            {
                var scale = LongSide / Math.Max(width, height);
                together += bytes.Length;
                printed.Add(entry.Sequence, new Picture(width * scale, height * scale, Name(record, entry), entry.Payload.Text("caption"), [new Photograph(new Point(0, 0), width * scale, height * scale, bytes)]));
            }
        }

        return printed;
    }

    private static string Name(ReleaseRecord record, Entry entry) => Pictures.Name(entry, record.Pictures.TryGetValue(Pictures.Hash(entry), out var bytes) ? bytes.AsSpan() : []);

    private static string Title(ReleaseRecord record, string subject) => Kinds.ClassOf(subject) switch
    {
        "task" => record.Required.Tasks.FirstOrDefault(t => t.Id == Kinds.IdOf(subject))?.Name,
        "test" => record.Required.Tests.FirstOrDefault(t => t.Id == Kinds.IdOf(subject))?.Name,
        _ => null,
    }
    ?? "";
}
