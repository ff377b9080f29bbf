using System.Text.Json;

namespace Fairlead.Tests.Cli;

public sealed class PlanTests
{
    [Fact]
    public void The_starter_has_a_plan_as_text_as_data_and_as_a_chart()
    {
        using var workshop = new Workshop();
        var job = workshop.Job();
        var text = CommandLine.Run("plan", job, "--effort", "0");
        Assert.Contains("No day was promised.", text.Out);
        Assert.Contains("CLOSE-AFT", text.Out);
        var json = CommandLine.Run("plan", job, "--effort", "0", "--format", "json", "--chart", workshop["plan.svg"]);
        Assert.Equal(text.Code, json.Code);
        using var plan = JsonDocument.Parse(json.Out);
        Assert.Equal("RELEASE", plan.RootElement.GetProperty("tasks").EnumerateArray().Last().GetProperty("id").GetString());
        Assert.StartsWith("<svg", File.ReadAllText(workshop["plan.svg"]).Split("?>")[^1].TrimStart(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_effort_out_of_range_is_refused()
    {
        using var workshop = new Workshop();
        var ran = CommandLine.Run("plan", workshop.Job(), "--effort", "5000");
        Assert.Equal(2, ran.Code);
        Assert.Contains("--effort", ran.Error);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("1e9")]
    [InlineData("NaN")]
    public void A_limit_in_seconds_out_of_range_is_refused(string seconds)
    {
        using var workshop = new Workshop();
        var ran = CommandLine.Run("plan", workshop.Job(), "--seconds=" + seconds);
        Assert.Equal(2, ran.Code);
        Assert.Contains("--seconds", ran.Error);
    }

    // An effort of 1000 would search for many minutes; progress tells what is gone of what is allowed, the best finish, and the bound.
    [Fact]
    public void A_limit_in_seconds_ends_the_search_and_is_told_while_it_lasts_and_afterwards()
    {
        using var workshop = new Workshop();
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var ran = CommandLine.Run(t => t with { Interactive = true, Width = 1000 }, "plan", Demo(), "--effort", "1000", "--seconds", "3");
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 300);
        Assert.Contains("with a limit of 3 s for the search", ran.Out);
        Assert.Matches(@"planning \d+ of 3 s: finish \d\d-\d\d \d\d:\d\d, none before \d\d-\d\d \d\d:\d\d; Ctrl-C ends", ran.Error);
        Assert.Contains("the same plan each time", CommandLine.Run(t => t with { Width = 1000 }, "plan", workshop.Job(), "--effort", "0", "--seconds", "5").Out);
    }

    [Fact]
    public void The_release_gate_requires_the_derived_tasks()
    {
        using var workshop = new Workshop();
        Assert.Contains("Task MOUNT-REC1 (", CommandLine.Run(t => t with { Width = 1000 }, "release", workshop.Job()).Out);
    }

    private static string Demo([System.Runtime.CompilerServices.CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "demo", "survey-twin"));
}
