using System.Text.Json;

namespace Fairlead.Tests.Cli;

public sealed class RouteTests : IDisposable
{
    // The wire from the breaker to the recorder has this one segment only.
    private const string Room = "    capacity: 1 in\n    clamps: 8";

    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void The_text_shows_every_way_every_segment_and_the_bound()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "route", workshop.Job());
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Matches(@"C1 +100 in +100 in .* S2\n", ran.Out);
        Assert.Matches(@"S2 +[0-9.]+ in +1 in\n", ran.Out);
        Assert.Contains("this is the least there is.", ran.Out);
        Assert.DoesNotContain("shared tree", ran.Out);
    }

    [Fact]
    public void The_json_has_the_lengths_in_metres()
    {
        var ran = CommandLine.Run("route", workshop.Job(), "--format", "json");
        Assert.Equal(0, ran.Code);
        using var json = JsonDocument.Parse(ran.Out);
        var circuit = json.RootElement.GetProperty("circuits")[0];
        Assert.Equal(("C1", 2.54), (circuit.GetProperty("id").GetString(), circuit.GetProperty("way").GetDouble()));
        Assert.Equal("S2", Assert.Single(circuit.GetProperty("segments").EnumerateArray()).GetString());
        Assert.Equal(json.RootElement.GetProperty("mass").GetDouble(), json.RootElement.GetProperty("bound").GetDouble());
        Assert.Empty(json.RootElement.GetProperty("nets").EnumerateArray());
    }

    [Fact]
    public void A_segment_that_is_too_full_leaves_the_routes_open()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "route", workshop.Job(("aircraft.yaml", Room, Room.Replace("1 in", "0.21 in", StringComparison.Ordinal))));
        Assert.Equal(1, ran.Code);
        Assert.Contains("none keeps every rule", ran.Out);
    }

    [Fact]
    public void A_circuit_that_may_not_use_the_only_segment_has_no_way()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "route", workshop.Job(("change.yaml", "signal: power }", "signal: power, avoid: [S2] }")));
        Assert.Equal(1, ran.Code);
        Assert.Matches(@"C1 +.* no way\n", ran.Out);
    }

    // From the terminal at N2 two wires run by N1: one tree runs that segment once.
    [Fact]
    public void A_net_that_one_tree_would_save_enough_of_is_noted()
    {
        var job = workshop.Job(
            ("change.yaml", "to: G1, function: P, signal: power return }", "to: TB1, function: P, signal: power return }\n  C3: { from: TB1, to: G1, function: P }\n  C4: { from: TB1, to: CB2, function: P }\n\njoints:\n  TB1: { kind: terminal, node: N2 }"));
        var quiet = CommandLine.Run(t => t with { Width = 1000 }, "route", job, "--saving", "100");
        var told = CommandLine.Run(t => t with { Width = 1000 }, "route", job);
        Assert.DoesNotContain("shared tree", quiet.Out);
        Assert.StartsWith(quiet.Out, told.Out);
        Assert.Matches(@"C2 C3 C4 .* least +- +none\n", told.Out);
        Assert.Contains("On one shared tree", told.Out);
        Assert.Equal(quiet.Code, told.Code);
    }

    [Fact]
    public void Bad_input_is_told_apart_from_open_routes()
    {
        var job = workshop.Job();
        Assert.Equal(2, CommandLine.Run("route", workshop["none"]).Code);
        Assert.Equal(2, CommandLine.Run("route", job, "--saving", "101").Code);
        Assert.Equal(2, CommandLine.Run("route", job, "--format", "yaml").Code);
    }
}
