using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Records;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The log at release: how things stand in it, by what it is judged, and the log itself.</summary>
/// <param name="State">How things stand.</param>
/// <param name="Required">What the job requires.</param>
/// <param name="Head">Number of entries and root.</param>
/// <param name="Log">The log as a file: it is attached.</param>
public sealed record ReleaseRecord(HangarState State, Required Required, Witness Head, ImmutableArray<byte> Log)
{
    /// <summary>The photographs that the log holds, by hash.</summary>
    public ImmutableDictionary<string, ImmutableArray<byte>> Pictures { get; init; } = NoPictures;

    /// <summary>No photographs.</summary>
    public static ImmutableDictionary<string, ImmutableArray<byte>> NoPictures => ImmutableDictionary<string, ImmutableArray<byte>>.Empty;
}

/// <summary>What was done, as the log has it: the statement to certify, results, signatures, parts, defects and concessions.</summary>
internal static class RecordSection
{
    // What else is told of a part that came out or went in.
    private static readonly string[] Particulars = ["batch", "condition", "weight"];

    public static IEnumerable<Block> Of(Assessment assessment, ReleaseRecord record)
    {
        var entries = record.State.Subjects.SelectMany(s => record.State.Story(s)).OrderBy(e => e.Sequence).ToArray();
        yield return new PageBreak();
        yield return new Heading(1, "Record of the work");
        yield return new Paragraph($"The log leaves nothing open. Its number of entries and its root: {record.Head}. Hash of its last entry: {record.State.Head}. The log is attached as {ReleasePack.LogFile}; 'fairlead log verify {ReleasePack.LogFile}' recomputes it.");
        foreach (var block in Statement(assessment, record, entries))
        {
            yield return block;
        }

        yield return new Heading(2, "Results of tests");
        yield return new Table([new("Test"), new("Line"), new("Limits"), new("Found"), new("Instrument"), new("By"), new("Entry", Right: true)], record.Required.Tests.SelectMany(t => t.Lines.Select(l => Result(record.State, t, l))).ToSequence());
        yield return new Heading(2, "Signatures");
        yield return new Table(
            [new("For"), new("Who"), new("As"), new("Under"), new("Authorisation"), new("When"), new("Entry", Right: true)],
            entries.Where(e => e.Kind == "signed").Select(e => (Sequence<Cell>)[e.Subject, new Cell(e.Who, assessment.Job.Order.People?.Find(e.Who)?.Name ?? "", Strong: true), e.Payload.Text("role"), e.Payload.Text("scope"), new Cell(e.Payload.Text("authorisation"), Until(e, "valid-until")), Instant.Text(e.At), Number(e)]).ToSequence());
        yield return new Heading(2, "Parts");
        yield return new Table(
            [new("Item"), new("What"), new("Part number"), new("Serial number"), new("Batch, condition, weight"), new("Entry", Right: true)],
            entries.Where(e => e.Kind is "removed" or "fitted").Select(e => (Sequence<Cell>)[Kinds.IdOf(e.Subject), e.Kind, Said(e, "part"), Said(e, "serial"), string.Join(", ", Particulars.Select(e.Payload.Text).Where(t => t.Length > 0)), Number(e)]).ToSequence());
        foreach (var block in PhotographSection.Of(assessment, record, entries))
        {
            yield return block;
        }

        yield return new Heading(2, "Defects");
        yield return entries.Where(e => e.Kind is "raised" or "cleared").ToArray() is { Length: > 0 } defects
            ? new Table([new("Defect"), new("What"), new("In words"), new("By"), new("Entry", Right: true)], defects.Select(e => (Sequence<Cell>)[Kinds.IdOf(e.Subject), e.Kind, Said(e, e.Kind == "raised" ? "text" : "action"), e.Who, Number(e)]).ToSequence())
            : new Paragraph("None was raised.");
        if (entries.Where(e => e.Kind is "conceded" or "clock-set").ToArray() is { Length: > 0 } accepted)
        {
            yield return new Heading(2, "Accepted in the log");
            yield return new Table([new("What"), new("In words"), new("By"), new("When"), new("Entry", Right: true)], accepted.Select(e => (Sequence<Cell>)[e.Subject, Said(e, "reason"), e.Who, Instant.Text(e.At), Number(e)]).ToSequence());
        }

        if (record.State.Struck.Count > 0)
        {
            yield return new Heading(2, "Struck out");
            yield return new Paragraph("These entries count no more. They stand in the log as they were entered.");
            yield return new Table([new("Entry", Right: true), new("Why"), new("By"), new("When"), new("Entry", Right: true)], record.State.Struck.Select(s => (Sequence<Cell>)[s.Key.ToString(CultureInfo.InvariantCulture), Said(s.Value, "reason"), s.Value.Who, Instant.Text(s.Value.At), Number(s.Value)]).ToSequence());
        }
    }

    // Facts for the person who certifies; the words of the certificate are those of the authority's form.
    private static IEnumerable<Block> Statement(Assessment assessment, ReleaseRecord record, Entry[] entries)
    {
        var (order, aircraft) = (assessment.Job.Order, assessment.Job.Aircraft);
        yield return new Heading(2, "Draft for the person who certifies");
        yield return new Paragraph("This is no certificate. Whoever certifies decides, by the approved data and with their own eyes, and uses the form and words of the authority.", Voice.Caution);
        yield return new KeyValues(
        [
            new("Aircraft", $"{aircraft.Registration}, {aircraft.Type}, serial number {aircraft.Serial}"),
            new("Work", $"{order.Title}; work order {order.Number}, revision {order.Revision}"),
            new("Approval", $"{Words.Kebab(order.Approval.Basis.ToString()).Replace('-', ' ')}, {order.Approval.Reference}"),
            new("Data followed", string.Join("; ", order.Approval.Data.Select(d => $"{d.Document}, {d.Revision}"))),
            new("Done", entries.Length == 0 ? "" : $"from {Minute(entries[0])} to {Minute(entries[^1])}, {Figures.Count(record.Required.Tasks.Count, "task", "tasks")} and {Figures.Count(record.Required.Tests.Count, "test", "tests")}, each signed in the log"),
            new("Limitations", string.Join("; ", assessment.Job.Change.Concessions?.Select(c => $"{c.Rule} {c.Subject}: {c.Reason}{(c.Until is { } until ? $", until {Figures.Day(until)}" : "")}") ?? []) is { Length: > 0 } limits ? limits : "none by the job"),
            new("Weight and balance", "amended in this pack, with the equipment list"),
            new("Log", record.Head.ToString()),
        ]);
        yield return new Table([new("Certified by"), new("Licence or authorisation", Least: 40), new("Date, time", Least: 30), new("Signature", Least: 45)], [[new Cell(" \n "), "", "", ""]]);
    }

    private static Sequence<Cell> Result(HangarState state, RequiredTest test, RequiredLine line)
    {
        var limits = line.Unit.Length == 0 ? line.Expected : string.Join(" ", new[] { line.Least is { } least ? $"at least {NumberFormat.Text(least)}" : "", line.Most is { } most ? $"at most {NumberFormat.Text(most)}" : "", line.Unit }.Where(w => w.Length > 0));
        return Results.Last(state, test, line) is not { } e ? [new Cell(test.Id, Strong: true), line.Id, limits, "", "", "", ""]
            : [
                new Cell(test.Id, Strong: true), line.Id, limits,
                e.Kind == "observed" ? e.Payload.Text("found") : $"{(e.Payload.Text("beyond") == "yes" ? "more than " : "")}{e.Payload.Text("value")} {e.Payload.Text("unit")}",
                new Cell(e.Payload.Text("instrument"), Until(e, "calibrated-until")), e.Who, Number(e),
            ];
    }

    private static string Minute(Entry entry) => entry.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);

    private static string Until(Entry entry, string field) => entry.Payload.Text(field) is { Length: > 0 } day ? $"until {day}" : "";

    private static string Said(Entry entry, string field) => entry.Payload.Text(field) is { Length: > 0 } text ? text : "–";

    private static string Number(Entry entry) => entry.Sequence.ToString(CultureInfo.InvariantCulture);
}
