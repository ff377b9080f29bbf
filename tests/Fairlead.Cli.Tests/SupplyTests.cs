using System.Text;
using System.Text.Json;
using Fairlead.Documents.Tables;

namespace Fairlead.Tests.Cli;

/// <summary>Kit, cutting plan, marks and stock from the command line, on the starter job with what it leaves open stated.</summary>
public sealed class SupplyTests : IDisposable
{
    private const string Table = "part,quantity,batch,remnant\nW24,5 m,B-1,\nW24,1.6 m,B-2,yes\nRECORDER,1,,\nC20,7,,\nCONN9,1,,\nBR3,1,,\nCL4,8,,\nSCREW8,14,,\n";

    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void Without_stock_the_kit_is_listed_and_the_aircraft_stays_closed()
    {
        var ran = Wide("kit", workshop.Job());
        Assert.Equal(1, ran.Code);
        Assert.Equal(1, CommandLine.Run("cut", workshop["job"]).Code);
        Assert.StartsWith("Do not open the aircraft yet.\n", ran.Out, StringComparison.Ordinal);
        Assert.Contains("no stock file is named in job.yaml", ran.Out);
        Assert.Matches(@"RECORDER +1 +stock not told", ran.Out);
    }

    [Fact]
    public void Stock_from_a_table_goes_into_kit_and_cutting_plan()
    {
        var job = Stocked(Table);
        using var kit = JsonDocument.Parse(CommandLine.Run("kit", job, "--format", "json").Out);
        var lines = kit.RootElement.GetProperty("lines").EnumerateArray().ToDictionary(l => l.GetProperty("part").GetString() ?? l.GetProperty("name").GetString()!);
        Assert.Equal(("covered", 6.6), (lines["W24"].GetProperty("state").GetString(), lines["W24"].GetProperty("onHand").GetDouble()));
        Assert.Equal(("covered", 1.0), (lines["RECORDER"].GetProperty("state").GetString(), lines["RECORDER"].GetProperty("onHand").GetDouble()));
        Assert.False(kit.RootElement.GetProperty("complete").GetBoolean());
        Assert.Equal(1, CommandLine.Run("kit", job).Code);

        // By hand: C1 has 100 in of way and 10 % slack, two terminations of 3 in and a service loop of 6 in: 122 in, 3099 mm; the remnant of 1.6 m takes C2, a tenth of it.
        var text = Wide("cut", job);
        Assert.Equal(0, text.Code);
        Assert.Matches(@"ROW2 +P1A24 3099; 1901 left", text.Out);
        Assert.Matches(@"ROW3 +P2A24N 305; 1295 left", text.Out);
        using var cut = JsonDocument.Parse(CommandLine.Run("cut", job, "--format", "json").Out);
        var plan = cut.RootElement[0].GetProperty("plan");
        Assert.Equal((1, 1, true), (plan.GetProperty("newReels").GetInt32(), plan.GetProperty("newReelsBound").GetInt32(), plan.GetProperty("proved").GetBoolean()));
    }

    [Fact]
    public void What_is_too_short_or_absent_leaves_the_cutting_open()
    {
        var shortage = Wide("cut", Stocked(Table.Replace("5 m", "3 m", StringComparison.Ordinal)));
        Assert.Equal(1, shortage.Code);
        Assert.Contains("Longer than any reel on hand: P1A24 (3099 mm).", shortage.Out);
        Directory.Delete(workshop["job"], recursive: true);
        var none = Wide("cut", Stocked("part,quantity\nRECORDER,1\n"));
        Assert.Equal(1, none.Code);
        Assert.Contains("Nothing of it can be cut from what is on hand.", none.Out);
    }

    [Fact]
    public void Without_any_length_a_circuit_is_a_finding_and_nothing_is_cut_for_it()
    {
        var job = Stocked(Table, ("change.yaml", "slack: 10 %\n  termination: 3 in\n  service-loop: 6 in", "slack: 0 %\n  termination: 0 in\n  service-loop: 0 in"), ("change.yaml", "to: G1, function: P", "to: REC1 P1-3, function: P"));
        Assert.Contains("C2 has no length: both its ends stand at N3", Wide("check", job).Out);
        var ran = Wide("cut", job);
        Assert.Equal(1, ran.Code);
        Assert.Contains("Length not known: C2.", ran.Out);
    }

    [Fact]
    public void Marks_are_listed_as_text_and_as_data()
    {
        var job = workshop.Job();
        Assert.Matches(@"P1A24 +3 x +sleeve, wire +C1: CB2 to REC1 P1-1\n", Wide("mark", job).Out);
        using var json = JsonDocument.Parse(CommandLine.Run("mark", job, "--format", "json").Out);
        var first = json.RootElement[0];
        Assert.Equal(("P1A24", 3, 3), (first.GetProperty("text").GetString(), first.GetProperty("copies").GetInt32(), first.GetProperty("places").GetArrayLength()));
    }

    [Theory]
    [InlineData("kit")]
    [InlineData("cut")]
    [InlineData("mark")]
    public void Tables_hold_the_same_as_csv_and_as_workbook_each_time(string command)
    {
        var job = Stocked(Table);
        foreach (var file in new[] { "a.csv", "b.csv", "a.xlsx", "b.xlsx" })
        {
            Assert.Contains($"wrote {workshop[file]}", CommandLine.Run(command, job, "-o", workshop[file]).Error);
        }

        Assert.Equal(File.ReadAllBytes(workshop["a.csv"]), File.ReadAllBytes(workshop["b.csv"]));
        Assert.Equal(File.ReadAllBytes(workshop["a.xlsx"]), File.ReadAllBytes(workshop["b.xlsx"]));
        using var csv = File.OpenRead(workshop["a.csv"]);
        using var workbook = File.OpenRead(workshop["a.xlsx"]);
        var rows = CsvFile.Read(csv);
        Assert.Equal(rows.Select(r => r.Cells.ToArray()), XlsxFile.Read(workbook).Select(r => r.Cells.ToArray()));
        Assert.True(rows.Length > 2);
    }

    [Theory]
    [InlineData("kit")]
    [InlineData("cut")]
    [InlineData("mark")]
    public void Bad_input_is_told_apart_and_leaves_no_file(string command)
    {
        var job = workshop.Job();
        Assert.Equal(2, CommandLine.Run(command, workshop["none"]).Code);
        Assert.Equal(2, CommandLine.Run(command, job, "--format", "yaml").Code);
        Assert.Equal(2, CommandLine.Run(command, job, "-o", workshop["list.txt"]).Code);
        Assert.Equal(2, CommandLine.Run(command, job, "-o", Path.Combine(job, "change.yaml")).Code);
        Assert.False(File.Exists(workshop["list.txt"]));
    }

    [Theory]
    [InlineData("part,quantity\nW24,-5 m\n", "stock.csv:2:2: 'quantity' cannot be read; found '-5 m'")]
    [InlineData("part,quantity\nC20,5\nC20,many\n", "stock.csv:3:2: 'quantity' cannot be read; found 'many'")]
    [InlineData("part,quantity,expires\nC20,5,31/03/2027\n", "stock.csv:2:3: 'expires' cannot be read; found '31/03/2027'")]
    [InlineData("part,number\nC20,5\n", "no column is headed 'quantity'")]
    [InlineData("part,quantity\n", "no row stands below the headings")]
    [InlineData("", "no column is headed 'part'")]
    public void A_table_that_cannot_be_read_changes_nothing(string table, string told)
    {
        var job = Stocked(Table);
        var before = File.ReadAllText(Path.Combine(job, "stock.yaml"));
        File.WriteAllText(workshop["stock.csv"], table);
        var ran = CommandLine.Run("stock", workshop["stock.csv"], job, "--replace");
        Assert.Equal(2, ran.Code);
        Assert.Contains(told, ran.Error);
        Assert.Equal(before, File.ReadAllText(Path.Combine(job, "stock.yaml")));
    }

    [Fact]
    public void Stock_there_is_replaced_only_when_that_is_said_and_columns_may_bear_other_names()
    {
        var job = Stocked(Table);
        File.WriteAllBytes(workshop["shelf.xlsx"], XlsxFile.Write(new DataTable("S", ["Item", "On shelf", "Best before"], [["C20", 9.0, "2029-01-31"], ["BOLT", 4.0, ""]])));
        Assert.Contains("--replace", CommandLine.Run("stock", workshop["shelf.xlsx"], job).Error);
        Assert.Equal(2, CommandLine.Run("stock", workshop["shelf.xlsx"], job, "--replace", "--column", "colour=Item").Code);
        var ran = Wide("stock", workshop["shelf.xlsx"], job, "--replace", "--column", "part=Item", "--column", "quantity=On shelf", "--column", "expires=Best before");
        Assert.Equal(0, ran.Code);
        Assert.Contains("does not have them: BOLT.", ran.Out);
        Assert.Contains("{ part: C20, quantity: 9, expires: 2029-01-31 }", File.ReadAllText(Path.Combine(job, "stock.yaml")));
    }

    [Fact]
    public void A_batch_of_several_lines_leaves_a_job_that_can_be_read()
    {
        var job = Stocked("part,quantity,batch\nC20,5,\"one: # {\nand \"\"two\"\"\"\n");
        Assert.Equal(1, CommandLine.Run("kit", job).Code);
    }

    private static Ran Wide(params string[] args) => CommandLine.Run(t => t with { Width = 1000 }, args);

    private string Stocked(string table, params (string File, string Old, string New)[] edits)
    {
        var job = workshop.Job([("job.yaml", "files:\n", "files:\n  stock: stock.yaml\n"), .. edits]);
        File.WriteAllText(Path.Combine(job, "stock.yaml"), "use: 2028-01-31\n", Encoding.UTF8);
        File.WriteAllText(workshop["table.csv"], table);
        Assert.Equal(0, CommandLine.Run("stock", workshop["table.csv"], job, "--replace").Code);
        return job;
    }
}
