using System.Text.Json;

namespace Fairlead.Tests.Cli;

public sealed class TestCommandTests : IDisposable
{
    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void Cards_are_listed_shown_and_unknown_ones_refused()
    {
        var job = workshop.Job();
        using var cards = JsonDocument.Parse(CommandLine.Run("test", job, "--format", "json").Out);
        var first = cards.RootElement[0].GetProperty("id").GetString()!;
        Assert.Contains(first, CommandLine.Run("test", job).Out);
        var shown = CommandLine.Run("test", job, "--card", first);
        Assert.Equal(0, shown.Code);
        Assert.StartsWith(first, shown.Out);
        Assert.Equal(2, CommandLine.Run("test", job, "--card", "NONE").Code);
    }

    [Fact]
    public void Results_are_judged_and_the_release_gate_names_tests_not_done()
    {
        var job = workshop.Job();
        using var cards = JsonDocument.Parse(CommandLine.Run("test", job, "--format", "json").Out);
        var card = cards.RootElement.EnumerateArray().First(c => c.GetProperty("kind").GetString() == "continuity");
        var (id, line) = (card.GetProperty("id").GetString()!, card.GetProperty("lines")[0].GetProperty("id").GetString()!);
        File.WriteAllText(workshop["results.csv"], $"card,line,value,unit,instrument,by\n{id},{line},open,,M1,T1\n");
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "test", job, "--results", workshop["results.csv"]);
        Assert.Equal(1, ran.Code);
        Assert.Contains($"FAILS  {id} {line}: open", ran.Out);
        Assert.Contains("is open", ran.Out);
        Assert.Contains($"Test {id} has no result: ", CommandLine.Run(t => t with { Width = 1000 }, "release", job).Out);
        File.WriteAllText(workshop["results.csv"], "card,value\n");
        Assert.Equal(2, CommandLine.Run("test", job, "--results", workshop["results.csv"]).Code);
        Assert.Equal(2, CommandLine.Run("test", job, "--results", workshop["none.csv"]).Code);
    }
}
