using System.Text.Json.Nodes;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Output;

/// <summary>Findings and problems as a SARIF 2.1.0 log (OASIS), for editors and code hosts. Paths are relative to the job folder.</summary>
internal static class SarifLog
{
    private const string Base = "JOB";

    public static string Text(LoadResult read, Assessment? assessment)
    {
        var findings = assessment?.Findings ?? [];
        var driver = new JsonObject { ["name"] = "fairlead", ["version"] = Product.Version, ["rules"] = SarifRules.Of(findings, read.Problems) };
        var run = new JsonObject
        {
            ["tool"] = new JsonObject { ["driver"] = driver },
            ["invocations"] = new JsonArray(new JsonObject { ["executionSuccessful"] = read.Job is not null }),
            ["originalUriBaseIds"] = new JsonObject { [Base] = new JsonObject { ["description"] = Message("The folder of the job.") } },
            ["columnKind"] = "utf16CodeUnits",
            ["results"] = new JsonArray([.. findings.Select(f => Result(f, read.Sources)).Concat(read.Problems.Select(Result))]),
        };
        var log = new JsonObject
        {
            ["$schema"] = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
            ["version"] = "2.1.0",
            ["runs"] = new JsonArray(run),
        };
        return log.ToJsonString(Json.Options) + "\n";
    }

    /// <summary>A message object.</summary>
    public static JsonObject Message(string text) => new() { ["text"] = text };

    private static JsonObject Result(Finding finding, SourceMap sources)
    {
        var figures = finding.Figures.Length > 0 ? $" ({finding.Figures})" : "";
        var result = Result(finding.Rule, Level(finding.Severity), $"{finding.Subject}: {finding.Message}{figures} To mend: {finding.Remedy} Source: {finding.Source}.", sources.Find(finding.Path));
        if (finding.Accepted is { } concession)
        {
            result["suppressions"] = new JsonArray(new JsonObject { ["kind"] = "external", ["status"] = "accepted", ["justification"] = FindingText.Acceptance(concession) });
        }

        return result;
    }

    private static JsonObject Result(Problem problem)
    {
        var found = problem.Found.Length > 0 ? $"; found {problem.Found}" : "";
        var expected = problem.Expected.Length > 0 ? $"; expected {problem.Expected}" : "";
        return Result(problem.Code, "error", problem.Message + found + expected + (problem.Fix.Length > 0 ? "; " + problem.Fix : ""), problem.Location);
    }

    private static JsonObject Result(string rule, string level, string text, Location? at)
    {
        var result = new JsonObject { ["ruleId"] = rule, ["level"] = level, ["message"] = Message(text) };
        if (at is not null)
        {
            var place = new JsonObject
            {
                ["artifactLocation"] = new JsonObject { ["uri"] = string.Join('/', at.File.Split('/').Select(Uri.EscapeDataString)), ["uriBaseId"] = Base },
                ["region"] = new JsonObject { ["startLine"] = at.Line, ["startColumn"] = at.Column },
            };
            result["locations"] = new JsonArray(new JsonObject { ["physicalLocation"] = place });
        }

        return result;
    }

    private static string Level(Verdict severity) => severity switch
    {
        Verdict.Fails => "error",
        Verdict.CannotTell => "warning",
        _ => "note",
    };
}
