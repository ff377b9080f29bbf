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

    [Fact]
    public void The_release_gate_requires_the_derived_tasks()
    {
        using var workshop = new Workshop();
        Assert.Contains("Task MOUNT-REC1 (", CommandLine.Run(t => t with { Width = 1000 }, "release", workshop.Job()).Out);
    }
}
