using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Output;

/// <summary>A check of a job for other programs. The verdict is null when the job's files have problems.</summary>
internal sealed record ReportJson(string? Verdict, string JobHash, IReadOnlyList<FindingJson> Findings, IReadOnlyList<ProblemJson> Problems)
{
    public static ReportJson Of(LoadResult read, Assessment? assessment) => new(
        assessment is null ? null : Words.Kebab(assessment.Verdict.ToString()), read.Hash,
        [.. (assessment?.Findings ?? []).Select(f => FindingJson.Of(f, read.Sources))], [.. read.Problems.Select(ProblemJson.Of)]);
}

/// <summary>One finding; file, line and column are null where it stands nowhere in the files.</summary>
internal sealed record FindingJson(
    string Rule, string Severity, string Subject, string Message, string Figures, string Source, string Remedy, string? File, int? Line, int? Column, AcceptedJson? Accepted)
{
    public static FindingJson Of(Finding finding, SourceMap sources)
    {
        var at = sources.Find(finding.Path);
        return new FindingJson(
            finding.Rule, Words.Kebab(finding.Severity.ToString()), finding.Subject, finding.Message, finding.Figures, finding.Source.ToString(), finding.Remedy,
            at?.File, at?.Line, at?.Column, finding.Accepted is { } c ? new AcceptedJson(c.Id, c.By, c.Reason, c.Until) : null);
    }
}

/// <summary>The concession that accepts a finding.</summary>
internal sealed record AcceptedJson(string Concession, string By, string Reason, DateOnly? Until);

/// <summary>One problem in the text of the job.</summary>
internal sealed record ProblemJson(string Code, string File, int Line, int Column, string Message, string Found, string Expected, string Fix)
{
    public static ProblemJson Of(Problem p) => new(p.Code, p.Location.File, p.Location.Line, p.Location.Column, p.Message, p.Found, p.Expected, p.Fix);
}
