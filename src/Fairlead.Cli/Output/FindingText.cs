using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Output;

/// <summary>Findings as text, most serious first.</summary>
internal static class FindingText
{
    public static void Write(Terminal terminal, string directory, Assessment assessment, SourceMap sources)
    {
        foreach (var finding in assessment.Findings)
        {
            terminal.Out.WriteLine($"{terminal.Word(finding.Severity)}  {finding.Subject}  [{finding.Rule}]{(finding.Accepted is null ? "" : "  accepted by concession")}");
            Wrapping.Columns(terminal.Out, [.. Lines(finding, directory, sources)], terminal.Width, 2);
            terminal.Out.WriteLine();
        }

        terminal.Print(Summary(assessment));
        terminal.Out.WriteLine("Verdict: " + terminal.Word(assessment.Verdict));
        terminal.Print(SheetText.Advice);
    }

    /// <summary>A concession in words.</summary>
    public static string Acceptance(Concession concession) =>
        $"concession {concession.Id} by {concession.By}: {concession.Reason}{(concession.Until is { } until ? $" (until {until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)})" : "")}";

    private static IEnumerable<string[]> Lines(Finding finding, string directory, SourceMap sources)
    {
        yield return ["what", finding.Message];
        if (finding.Figures.Length > 0)
        {
            yield return ["figures", finding.Figures];
        }

        yield return ["source", finding.Source.ToString()];
        yield return ["mend", finding.Remedy];
        if (sources.Find(finding.Path) is { } at)
        {
            yield return ["at", at.In(directory).ToString()];
        }

        if (finding.Accepted is { } concession)
        {
            yield return ["accepted", Acceptance(concession)];
        }
    }

    private static string Summary(Assessment assessment)
    {
        if (assessment.Findings.IsEmpty)
        {
            return "No findings: every check holds.";
        }

        var accepted = assessment.Findings.Count(f => f.Accepted is not null);
        Verdict[] kinds = [Verdict.Fails, Verdict.CannotTell, Verdict.Caution];
        var words = kinds.Select(k => (Count: assessment.Findings.Count(f => f.Severity == k), Word: VerdictWord.Of(k))).Where(k => k.Count > 0)
            .Select(k => string.Create(CultureInfo.InvariantCulture, $"{k.Count} {k.Word}"));
        return $"{Counted.Of(assessment.Findings.Length, "finding")}: {string.Join(", ", words)}{(accepted > 0 ? $"; {Counted.Of(accepted, "finding")} accepted by concession" : "")}.";
    }
}
