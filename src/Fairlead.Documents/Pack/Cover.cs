using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The first pages: what, for which aircraft, where it stands, what to beware of, and where to find the rest.</summary>
internal static class Cover
{
    private const string Pending = "pending";

    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        var (order, aircraft) = (assessment.Job.Order, assessment.Job.Aircraft);
        yield return new Title("Release pack", order.Title);
        yield return new VerdictLine(assessment.Verdict, Status(assessment), Large: true);
        foreach (var caution in Cautions(assessment))
        {
            yield return new Paragraph(caution, Voice.Caution);
        }

        yield return new Gap(3);
        yield return new KeyValues(
        [
            new("Aircraft", $"{aircraft.Registration}, {aircraft.Type}, serial number {aircraft.Serial}"),
            new("Certification", $"{aircraft.Certification.Rule}, {aircraft.Certification.Edition}, {aircraft.Certification.Category} category"),
            new("Work order", $"{order.Number}, revision {order.Revision}"),
            new("Operator", order.Operator),
            new("Site", order.Site.Name),
            new("Approval", $"{Words.Kebab(order.Approval.Basis.ToString()).Replace('-', ' ')}, reference {order.Approval.Reference}"),
            new("Findings", Tally(assessment)),
            new("Date of this pack", Figures.Day(DateOnly.FromDateTime(options.Date.UtcDateTime))),
            new("Job", $"SHA-256 {options.JobHash}; attached to this file as {ReleasePack.JobFile}"),
        ]);
        if (order.Approval.Data.Count > 0)
        {
            yield return new Table(
                [new("Document followed"), new("Revision")],
                order.Approval.Data.Select(d => (Sequence<Cell>)[d.Document, d.Revision]).ToSequence());
        }

        yield return new Table(
            [new("To be completed"), new("Name", Least: 35), new("Licence or authorisation", Least: 35), new("Date", Least: 20), new("Signature", Least: 35)],
            [Blank("Prepared"), Blank("Checked independently"), Blank("Accepted for release")]);
        yield return new PageBreak();
        yield return new Heading(1, "Contents");
        yield return new Contents();
        yield return new PageBreak();
    }

    private static Sequence<Cell> Blank(string role) => [new Cell(role + "\n "), "", "", "", ""];

    // What the verdict means for the release, in words.
    private static string Status(Assessment assessment) => assessment.Verdict switch
    {
        Verdict.Holds => "Every check made here is met.",
        Verdict.Caution => $"Holds, with {Figures.Count(assessment.Findings.Length, "caution", "cautions")}; whatever fails has been accepted by a concession. A person must look at each caution.",
        Verdict.CannotTell => $"Not for release: {Open(assessment, Verdict.CannotTell, "is without", "are without")} conclusion.",
        _ => $"Not for release: {Open(assessment, Verdict.Fails, "is a failure", "are failures")}.",
    };

    private static string Open(Assessment assessment, Verdict severity, string one, string many) =>
        Figures.Count(assessment.Findings.Count(f => f.Accepted is null && f.Severity == severity), "finding " + one, "findings " + many);

    private static string Tally(Assessment assessment)
    {
        string[] counts =
        [
            .. new[] { Verdict.Fails, Verdict.CannotTell, Verdict.Caution }
                .Select(v => (Verdict: v, Count: assessment.Findings.Count(f => f.Accepted is null && f.Severity == v))).Where(v => v.Count > 0)
                .Select(v => $"{NumberFormat.Text(v.Count)} {VerdictMark.Word(v.Verdict).ToLowerInvariant()}"),
            .. assessment.Findings.Count(f => f.Accepted is not null) is > 0 and var accepted ? [$"{NumberFormat.Text(accepted)} accepted by concession"] : Array.Empty<string>(),
        ];
        return counts.Length == 0 ? "none" : string.Join(", ", counts);
    }

    private static IEnumerable<string> Cautions(Assessment assessment)
    {
        yield return "This pack supports the approved data and the release by the certifying person, and replaces neither: it approves nothing. "
            + "It defers to the approved data, to the aircraft's own manuals, to the local authority and to licensed staff.";
        yield return "Its figures follow from the attached job. Where the aircraft differs from its description there, they do not hold.";
        if (string.Equals(assessment.Job.Order.Approval.Reference, Pending, StringComparison.OrdinalIgnoreCase))
        {
            yield return "The approval is pending: nothing may be released on it.";
        }

        var unread = SourceList.Used(assessment).Count(s => s.Source.Basis is Basis.Memory or Basis.CommonPractice);
        if (unread > 0)
        {
            yield return $"{Figures.Count(unread, "source is", "sources are")} from memory or common practice. They are marked wherever they are used and listed under Sources: confirm each before relying on it.";
        }
    }
}
