using System.Text.Json;

namespace Fairlead.Tests.Cli;

/// <summary>Job cards and the entering of test results, from the command line on the starter job.</summary>
public sealed class CardTests : IDisposable
{
    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void Cards_are_listed_shown_printed_and_unknown_ones_refused()
    {
        var job = workshop.Job();
        Assert.Contains("CLOSE-AFT", CommandLine.Run("card", job).Out);
        var shown = CommandLine.Run("card", job, "CLOSE-AFT").Out;
        Assert.StartsWith("CLOSE-AFT  Close", shown);
        Assert.Contains("log panel/AFT", shown);
        using var data = JsonDocument.Parse(CommandLine.Run("card", job, "CLOSE-AFT", "--format", "json").Out);
        Assert.Equal("panel/AFT", data.RootElement[0].GetProperty("subject").GetString());
        foreach (var size in new[] { "a4", "pocket" })
        {
            Assert.Equal(0, CommandLine.Run("card", job, "--all", "--size", size, "-o", workshop[size + ".pdf"]).Code);
            Assert.True(File.ReadAllBytes(workshop[size + ".pdf"]).AsSpan().StartsWith("%PDF-"u8));
        }

        var unknown = CommandLine.Run("card", job, "CLOSE-AFFT");
        Assert.Equal(2, unknown.Code);
        Assert.Contains("CLOSE-AFT", unknown.Error);
        Assert.Equal(2, CommandLine.Run("card", job, "--size", "a3").Code);
    }

    [Fact]
    public void The_card_of_a_test_task_is_its_test_card()
    {
        var job = workshop.Job();
        using var cards = JsonDocument.Parse(CommandLine.Run("test", job, "--format", "json").Out);
        Assert.All(cards.RootElement.EnumerateArray().Select(c => (Id: c.GetProperty("id").GetString()!, Lines: c.GetProperty("lines").GetArrayLength())), c =>
        {
            using var card = JsonDocument.Parse(CommandLine.Run("card", job, c.Id, "--format", "json").Out);
            Assert.Equal(c.Lines, card.RootElement[0].GetProperty("tables")[0].GetProperty("rows").GetArrayLength());
        });
    }

    [Fact]
    public void Results_go_into_the_log_line_by_line_and_the_log_refuses_what_may_not_be_tested_yet()
    {
        var job = workshop.Job();
        var read = Fairlead.Model.Storage.JobFolder.Load(job).Job!;
        var (who, meter) = (read.Order.People![0].Id, read.Aircraft.Instruments!.First(i => i.CalibrationDue > new DateOnly(2027, 1, 1)).Id);
        using var cards = JsonDocument.Parse(CommandLine.Run("test", job, "--format", "json").Out);
        var card = cards.RootElement.EnumerateArray().First(c => c.GetProperty("kind").GetString() == "continuity");
        var (id, line) = (card.GetProperty("id").GetString()!, card.GetProperty("lines")[0].GetProperty("id").GetString()!);
        File.WriteAllText(workshop["results.csv"], $"card,line,value,unit,instrument,by\n{id},{line},300,mohm,{meter},{who}\n{id},{line},0.3,ohm,NONE,{who}\n");
        var moment = new Moment(new DateTimeOffset(2027, 1, 5, 8, 0, 0, TimeSpan.Zero));
        var early = CommandLine.Run(t => t with { Clock = moment }, "test", job, "--results", workshop["results.csv"], "--log");
        Assert.Equal(1, early.Code);
        Assert.Contains("waits for task/BATTERY-OFF", early.Error);
        Assert.Contains("'NONE' is not an instrument or tool of this job", early.Error);
        Assert.Contains("entered 0 results", early.Error);
        Assert.Equal(2, CommandLine.Run("test", job, "--log").Code);

        // What comes before continuity is a long way; the first bond waits for the battery alone.
        var visual = cards.RootElement.EnumerateArray().First(c => c.GetProperty("kind").GetString() == "visual").GetProperty("id").GetString()!;
        Assert.Contains($"test/{visual} waits for", CommandLine.Run(t => t with { Clock = moment }, "log", "add", job, "observed", "test/" + visual, "line=security", "found=as expected", "--who", who).Out);
    }

    private sealed class Moment(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
