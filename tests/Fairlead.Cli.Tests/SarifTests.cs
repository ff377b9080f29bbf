using System.Text.Json;

namespace Fairlead.Tests.Cli;

/// <summary>What SARIF 2.1.0 (OASIS Standard, 27 March 2020) requires of the parts we write; paragraph numbers are of that document, from memory.</summary>
public sealed class SarifTests : IDisposable
{
    private static readonly string[] Levels = ["none", "note", "warning", "error"];

    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void A_job_that_fails_gives_a_valid_log_with_an_error()
    {
        var results = Valid(CommandLine.Run("check", workshop.Job(Faults.GreatBreaker), "--format", "sarif"), 1);
        var error = results.First(r => r.GetProperty("ruleId").GetString() == "breaker-wire");
        Assert.Equal("error", error.GetProperty("level").GetString());
        Assert.Equal("change.yaml", Place(error).GetProperty("artifactLocation").GetProperty("uri").GetString());
        Assert.Contains("found 40 A, limit at most", error.GetProperty("message").GetProperty("text").GetString());
        Assert.False(error.TryGetProperty("suppressions", out _));
    }

    [Fact]
    public void A_job_that_holds_gives_a_valid_log_without_results() => Assert.Empty(Valid(CommandLine.Run("check", workshop.Job(), "--format", "sarif"), 0));

    [Fact]
    public void Problems_in_the_text_are_results_too()
    {
        var results = Valid(CommandLine.Run("check", workshop.Job(Faults.Text), "--format", "sarif"), 2).ToArray();
        Assert.Equal(3, results.Length);
        Assert.All(results, r => Assert.Equal("error", r.GetProperty("level").GetString()));
        Assert.Contains(results, r => r.GetProperty("ruleId").GetString() == "unknown-key");
    }

    [Fact]
    public void An_accepted_finding_is_suppressed_with_its_reason()
    {
        var found = Valid(CommandLine.Run("check", workshop.Job(Faults.GreatBreaker), "--format", "sarif"), 1)
            .Select(r => (r.GetProperty("ruleId").GetString()!, r.GetProperty("message").GetProperty("text").GetString()!.Split(": ")[0])).ToArray();
        Directory.Delete(workshop["job"], recursive: true);
        var results = Valid(CommandLine.Run("check", workshop.Job(Faults.Accepted(found)), "--format", "sarif"), 0);
        var suppression = Assert.Single(results.First(r => r.GetProperty("ruleId").GetString() == "breaker-wire").GetProperty("suppressions").EnumerateArray());
        Assert.Equal("external", suppression.GetProperty("kind").GetString());
        Assert.Equal("accepted", suppression.GetProperty("status").GetString());
        Assert.Contains("Inspector One: shown by test", suppression.GetProperty("justification").GetString());
    }

    private static JsonElement.ArrayEnumerator Valid(Ran ran, int code)
    {
        Assert.Equal(code, ran.Code);
        using var log = JsonDocument.Parse(ran.Out);
        var root = log.RootElement.Clone();

        // 3.13 sarifLog: version and runs; 3.14 run: tool; 3.18 and 3.19: driver with a name.
        Assert.Equal("2.1.0", root.GetProperty("version").GetString());
        Assert.EndsWith("sarif-schema-2.1.0.json", root.GetProperty("$schema").GetString());
        var run = Assert.Single(root.GetProperty("runs").EnumerateArray());
        var driver = run.GetProperty("tool").GetProperty("driver");
        Assert.Equal("fairlead", driver.GetProperty("name").GetString());
        Assert.NotEmpty(driver.GetProperty("version").GetString()!);

        // 3.20 invocation: executionSuccessful is required. 3.14.14: a base may have a description instead of a URI.
        Assert.Equal(code != 2, Assert.Single(run.GetProperty("invocations").EnumerateArray()).GetProperty("executionSuccessful").GetBoolean());
        var rules = driver.GetProperty("rules").EnumerateArray().Select(r => r.GetProperty("id").GetString()).ToArray();
        Assert.Equal(rules.Distinct(), rules);
        Assert.All(driver.GetProperty("rules").EnumerateArray(), r =>
        {
            Assert.NotEmpty(r.GetProperty("shortDescription").GetProperty("text").GetString()!);
            Assert.NotEmpty(r.GetProperty("help").GetProperty("text").GetString()!);
        });
        Assert.All(run.GetProperty("results").EnumerateArray(), r => Valid(r, rules, run.GetProperty("originalUriBaseIds")));
        return run.GetProperty("results").EnumerateArray();
    }

    // 3.27 result: message is required, ruleId names a rule; 3.4: a relative URI, percent-encoded; 3.30: lines and columns count from 1.
    private static void Valid(JsonElement result, string?[] rules, JsonElement bases)
    {
        Assert.Contains(result.GetProperty("ruleId").GetString(), rules);
        Assert.Contains(result.GetProperty("level").GetString(), Levels);
        Assert.NotEmpty(result.GetProperty("message").GetProperty("text").GetString()!);
        var place = Place(result);
        var artifact = place.GetProperty("artifactLocation");
        Assert.True(Uri.TryCreate(artifact.GetProperty("uri").GetString(), UriKind.Relative, out _));
        Assert.True(bases.TryGetProperty(artifact.GetProperty("uriBaseId").GetString()!, out _));
        Assert.True(place.GetProperty("region").GetProperty("startLine").GetInt32() >= 1);
        Assert.True(place.GetProperty("region").GetProperty("startColumn").GetInt32() >= 1);
    }

    private static JsonElement Place(JsonElement result) => Assert.Single(result.GetProperty("locations").EnumerateArray()).GetProperty("physicalLocation");
}
