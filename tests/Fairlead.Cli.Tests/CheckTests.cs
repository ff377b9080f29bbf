using System.Text.Json;

namespace Fairlead.Tests.Cli;

public sealed class CheckTests : IDisposable
{
    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void The_starter_job_holds()
    {
        var ran = CommandLine.Run("check", workshop.Job());
        Assert.Equal(0, ran.Code);
        Assert.Empty(ran.Error);
        Assert.Contains("Verdict: HOLDS", ran.Out);
    }

    [Fact]
    public void A_breaker_too_great_for_its_wire_fails_with_figures_source_mend_and_place()
    {
        var job = workshop.Job(Faults.GreatBreaker);
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "check", job);
        Assert.Equal(1, ran.Code);
        Assert.Contains("FAILS  circuit/C1  [breaker-wire]", ran.Out);
        Assert.Contains("figures  found 40 A, limit at most", ran.Out);
        Assert.Contains("source   FAA AC 43.13-1B", ran.Out);
        Assert.Contains("mend     Fit a breaker of at most", ran.Out);
        Assert.Contains($"at       {Path.Combine(job, "change.yaml")}:{Line(job, "  C1: {")}:3", ran.Out);
        Assert.EndsWith("licensed staff decide.\n", ran.Out);
    }

    [Fact]
    public void A_broken_rule_reads_as_a_sentence_and_the_summary_counts_in_the_words_of_the_verdicts()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "check", workshop.Job(Faults.GreatBreaker));
        Assert.Contains("what     Not met: the breaker ", ran.Out);
        Assert.Matches(@"\n\d+ findings?: \d+ FAILS[,.]", ran.Out);
    }

    [Fact]
    public void The_most_serious_comes_first()
    {
        var severities = Findings(workshop.Job(Faults.GreatBreaker)).Select(f => f.GetProperty("severity").GetString()).ToArray();
        string?[] order = ["fails", "cannot-tell", "caution"];
        Assert.NotEmpty(severities);
        Assert.Equal(severities.OrderBy(s => Array.IndexOf(order, s)), severities);
    }

    [Fact]
    public void A_finding_accepted_by_concession_is_shown_as_such_and_no_longer_fails()
    {
        var findings = Findings(workshop.Job(Faults.GreatBreaker)).Select(f => (f.GetProperty("rule").GetString()!, f.GetProperty("subject").GetString()!)).ToArray();
        Directory.Delete(workshop["job"], recursive: true);
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "check", workshop.Job(Faults.Accepted(findings)));
        Assert.Equal(0, ran.Code);
        Assert.Contains("Verdict: CAUTION", ran.Out);
        Assert.Contains("[breaker-wire]  accepted by concession", ran.Out);
        Assert.Contains("by Inspector One: shown by test, report 7 (until 2028-06-30)", ran.Out);
    }

    [Fact]
    public void All_problems_in_the_text_are_listed_with_place_and_mend()
    {
        var job = workshop.Job(Faults.Text);
        var ran = CommandLine.Run("check", job);
        var change = Path.Combine(job, "change.yaml");
        Assert.Equal(2, ran.Code);
        Assert.Empty(ran.Out);
        Assert.Contains($"{change}:{Line(job, "service-lop")}:3: ", ran.Error);
        Assert.Contains("'service-loop'", ran.Error);
        Assert.Contains($"{change}:{Line(job, "3 volts")}:16: ", ran.Error);
        Assert.Contains("'3 volts'", ran.Error);
        Assert.Contains($"{change}:{Line(job, "TALE")}:11: ", ran.Error);
        Assert.Contains("'TAIL'", ran.Error);
        Assert.Contains("nothing was assessed", ran.Error);
    }

    [Fact]
    public void The_json_has_exactly_these_properties_also_when_the_text_has_problems()
    {
        using var good = JsonDocument.Parse(CommandLine.Run("check", workshop.Job(Faults.GreatBreaker), "--format", "json").Out);
        Assert.Equal(["verdict", "jobHash", "findings", "problems"], Keys(good.RootElement));
        Assert.Equal("fails", good.RootElement.GetProperty("verdict").GetString());
        Assert.All(good.RootElement.GetProperty("findings").EnumerateArray(), f => Assert.Equal(
            ["rule", "severity", "subject", "message", "figures", "source", "remedy", "file", "line", "column", "accepted"], Keys(f)));
        Directory.Delete(workshop["job"], recursive: true);
        var bad = CommandLine.Run("check", workshop.Job(Faults.Text), "--format", "json");
        Assert.Equal(2, bad.Code);
        using var json = JsonDocument.Parse(bad.Out);
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("verdict").ValueKind);
        Assert.All(json.RootElement.GetProperty("problems").EnumerateArray(), p => Assert.Equal(["code", "file", "line", "column", "message", "found", "expected", "fix"], Keys(p)));
        Assert.Equal(3, json.RootElement.GetProperty("problems").GetArrayLength());
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    public void A_file_gets_what_the_terminal_would(string format)
    {
        var job = workshop.Job(Faults.GreatBreaker);
        var shown = CommandLine.Run("check", job, "--format", format);
        var written = CommandLine.Run("check", job, "--format", format, "-o", workshop["result"]);
        Assert.Equal(1, written.Code);
        Assert.Empty(written.Out);
        Assert.Equal(shown.Out, File.ReadAllText(workshop["result"]));
    }

    [Fact]
    public void Where_there_is_no_job_it_says_what_to_do()
    {
        var folder = Directory.CreateDirectory(workshop["empty"]).FullName;
        File.WriteAllText(workshop["file"], "");
        Assert.All([workshop["absent"], folder, workshop["file"]], path =>
        {
            var ran = CommandLine.Run("check", path);
            Assert.Equal(2, ran.Code);
            Assert.Empty(ran.Out);
            Assert.Contains(path, ran.Error);
        });
        Assert.Contains("There is no folder", CommandLine.Run("check", workshop["absent"]).Error);
        Assert.Contains("is a file", CommandLine.Run("check", workshop["file"]).Error);
        Assert.Contains("holds no job.yaml", CommandLine.Run("check", folder).Error);
    }

    [Fact]
    public void A_result_never_replaces_a_file_of_the_job()
    {
        var job = workshop.Job();
        var before = workshop.Everything().ToArray();
        Assert.Equal(2, CommandLine.Run("check", job, "-o", Path.Combine(job, "job.yaml")).Code);
        Assert.Equal(before, workshop.Everything());
    }

    private static JsonElement.ArrayEnumerator Findings(string job)
    {
        using var json = JsonDocument.Parse(CommandLine.Run("check", job, "--format", "json").Out);
        return json.RootElement.GetProperty("findings").Clone().EnumerateArray();
    }

    private static int Line(string job, string text) => 1 + Array.FindIndex(File.ReadAllLines(Path.Combine(job, "change.yaml")), l => l.Contains(text, StringComparison.Ordinal));

    private static IEnumerable<string> Keys(JsonElement element) => element.EnumerateObject().Select(p => p.Name);
}
