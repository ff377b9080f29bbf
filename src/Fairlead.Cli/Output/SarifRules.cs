using System.Text.Json.Nodes;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Output;

/// <summary>The rules of a SARIF log: what each is about, with help.</summary>
internal static class SarifRules
{
    public static JsonArray Of(IEnumerable<Finding> findings, IEnumerable<Problem> problems) =>
    [
        .. findings.DistinctBy(f => f.Rule).Select(Rule).Concat(problems.Select(p => p.Code).Distinct(StringComparer.Ordinal).Select(Rule))
            .OrderBy(r => (string?)r["id"], StringComparer.Ordinal),
    ];

    private static JsonObject Rule(Finding example)
    {
        var rule = Rules.Find(example.Rule)!;
        var more = CalculationCatalog.Find(rule.Id)?.Info is { } info
            ? $"'fairlead calc {rule.Id} --help' tells more. Sources: {string.Join("; ", info.Sources)}." : $"Source: {example.Source}.";
        return Rule(rule.Id, $"{rule.Title}.", $"{rule.Checks}. To mend: {rule.Mend} {more}");
    }

    private static JsonObject Rule(string code) => Rule(
        code, Sentence(code), $"The text of a job file cannot be used: {code.Replace('-', ' ')}. With the schemas that 'fairlead schema' writes, an editor shows this while you type.");

    private static JsonObject Rule(string id, string brief, string help) => new() { ["id"] = id, ["shortDescription"] = SarifLog.Message(brief), ["help"] = SarifLog.Message(help) };

    private static string Sentence(string id) => char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ') + ".";
}
