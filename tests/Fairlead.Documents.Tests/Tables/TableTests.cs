using System.Runtime.CompilerServices;
using System.Text;
using CsCheck;
using Fairlead.Calculations;
using Fairlead.Documents.Tables;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Tests.Documents.Tables;

/// <summary>Tables to files and back; stock from tables; nothing in a table is computed by the spreadsheet that opens it.</summary>
public sealed class TableTests
{
    private static readonly PartsCatalog Parts = new(
        Contacts: new([new("C20", "20", Gauge.Read("24"), Gauge.Read("20"), Current.Of(7.5, "A"))]),
        Coax: new([new("RF", "Coax", Length.Of(0.2, "in"), LinearMass.Of(50, "lb/1000ft"), Resistance.Of(50, "ohm"), Fraction.Of(70, "%"))]));

    private static readonly Gen<string> Text = Gen.Char[" ab0,;\"'=+-@\n\té"].Array[0, 12].Select(c => new string(c));

    [Fact]
    public void Comma_separated_values_come_back_as_they_were() => Gen.Select(Text, Text).Sample((a, b) =>
    {
        var table = new DataTable("T", ["One", "Two"], [[a, b], ["end", 1.5]]);
        var rows = CsvFile.Read(new MemoryStream(CsvFile.Write(table)));
        Assert.Equal([a, b], rows[1].Cells);
        Assert.Equal(["end", "1.5"], rows[2].Cells);
    });

    [Fact]
    public void A_row_is_where_it_begins_in_the_file_whatever_line_breaks_cells_before_it_hold()
    {
        var rows = Rows("part,remark\nC20,\"one\r\ntwo\nthree\"\nC21,plain\n\"C\r22\",x\nC23,x\n");
        Assert.Equal([1, 2, 5, 6, 8], rows.Select(r => r.Line));
    }

    [Fact]
    public void The_text_of_a_code_names_job_mark_and_ends_and_stands_there_only_when_asked_for()
    {
        PrintLine[] lines = [new("P1A24", 3, "sleeve, wire", "C1: CB1 to BOX/J1.2", null, [])];
        Assert.Equal("W-7; P1A24; C1: CB1 to BOX/J1.2", SupplyTables.Print([.. lines], "W-7").Rows[0][^1].Text);
        Assert.Equal(SupplyTables.Print([.. lines]).Headings.Append("QR code"), SupplyTables.Print([.. lines], "W-7").Headings);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1+2")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    public void A_text_that_a_spreadsheet_would_compute_is_written_as_text(string text)
    {
        var file = Encoding.UTF8.GetString(CsvFile.Write(new DataTable("T", ["One"], [[text]])));
        Assert.Contains("'" + text, file, StringComparison.Ordinal);
        var cell = XlsxFile.Read(new MemoryStream(XlsxFile.Write(new DataTable("T", ["One"], [[text]]))))[1].Cells[0];
        Assert.Equal(text, cell);
    }

    [Fact]
    public void A_workbook_comes_back_as_it_was()
    {
        var table = new DataTable("T", ["One", "Two"], [["a", 1.5], ["=b", -2.0], ["é, \"x\"", 1e6]]);
        var rows = XlsxFile.Read(new MemoryStream(XlsxFile.Write(table, table with { Name = "U" })));
        Assert.Equal([["One", "Two"], ["a", "1.5"], ["=b", "-2"], ["é, \"x\"", "1000000"]], rows.Select(r => r.Cells.ToArray()));
    }

    [Fact]
    public async Task The_same_tables_are_the_same_workbook_whenever_it_is_written()
    {
        var table = new DataTable("T", ["One"], [["a"]]);
        var first = XlsxFile.Write(table, table with { Name = "U" });
        await Task.Delay(TimeSpan.FromSeconds(2.1), TestContext.Current.CancellationToken); // A zip tells times to two seconds.
        Assert.Equal(first, XlsxFile.Write(table, table with { Name = "U" }));
    }

    [Fact]
    public void A_file_that_is_no_workbook_is_told() => Assert.Throws<InvalidDataException>(() => XlsxFile.Read(new MemoryStream([1, 2, 3])));

    [Fact]
    public void Stock_is_read_by_the_headings_that_the_caller_names()
    {
        var rows = StockImport.Read(Rows("Part no,On shelf,unit,Batch\nC20,100,,B-1\nRF,25,m,B-2\nBOLT,1,,\n"), "s.csv", new Dictionary<string, string> { ["part"] = "part NO", ["quantity"] = "On shelf" }, Parts);
        Assert.Empty(rows.Problems);
        Assert.Equal(new Lot("ROW2", "C20", 100, "B-1"), Assert.Single(rows.Lots));
        Assert.Equal(new Reel("ROW3", "RF", Length.Of(25, "m"), "B-2"), Assert.Single(rows.Reels));
        Assert.Equal(["BOLT"], rows.Strange);
    }

    [Fact]
    public void Every_cell_that_cannot_be_read_is_told_with_its_row_and_column()
    {
        var rows = StockImport.Read(Rows("part,quantity,made,remnant\nC20,many,\nRF,25,,\nRF,3 m,,perhaps\nC20,-1,2027-02-30\n"), "s.csv", new Dictionary<string, string>(), Parts);
        Assert.Equal(["s.csv:2:2", "s.csv:3:2", "s.csv:4:4", "s.csv:5:2", "s.csv:5:3"], rows.Problems.Select(p => p.Location.ToString()));
    }

    [Fact]
    public void A_column_that_is_not_there_is_told_with_the_nearest_heading()
    {
        var problem = Assert.Single(StockImport.Read(Rows("part,quantty\nC20,1\n"), "s.csv", new Dictionary<string, string>(), Parts).Problems);
        Assert.Equal(("missing-column", "did you mean 'quantty'?"), (problem.Code, problem.Fix));
    }

    [Fact]
    public void A_table_without_rows_or_with_a_column_twice_takes_nothing_over()
    {
        Assert.Equal("no-rows", Assert.Single(StockImport.Read(Rows("part,quantity\n,\n"), "s.csv", new Dictionary<string, string>(), Parts).Problems).Code);
        var twice = Assert.Single(StockImport.Read(Rows("part,quantity,Part\nC20,1,C16\n"), "s.csv", new Dictionary<string, string>(), Parts).Problems);
        Assert.Equal(("column-twice", "s.csv:1:3"), (twice.Code, twice.Location.ToString()));
    }

    [Fact]
    public void Pieces_are_not_taken_from_a_length_or_a_mass()
    {
        var rows = StockImport.Read(Rows("part,quantity,unit\nC20,5,m\nC20,5,kg\nC20,5,EA\nC20,5,\n"), "s.csv", new Dictionary<string, string>(), Parts);
        Assert.Equal(["s.csv:2:3", "s.csv:3:3"], rows.Problems.Select(p => p.Location.ToString()));
        Assert.Equal(["ROW4", "ROW5"], rows.Lots.Select(l => l.Id));
    }

    [Fact]
    public void Rows_that_say_the_same_are_counted_and_named()
    {
        var rows = StockImport.Read(Rows("part,quantity,batch\nC20,5,A\nC20,5,B\nC20,5,A\n"), "s.csv", new Dictionary<string, string>(), Parts);
        Assert.Equal((2, 4), Assert.Single(rows.Twice));
        Assert.Equal(15, rows.Lots.Sum(l => l.Quantity));
    }

    [Fact]
    public void A_stock_file_that_was_written_reads_as_the_same_stock()
    {
        var files = new FolderFiles(Twin());
        var folder = JobReader.Read(files);
        var stock = folder.Job!.Stock! with { Keep = Length.Of(0.5, "m"), Lots = new([.. folder.Job.Stock!.Lots!, new("Q", "C20", 3, "a \"b\" \\ : #c\nsecond\tline é", new(2027, 1, 2), new(2028, 1, 2))]) };
        var again = JobReader.Read(new MemoryFiles(files.All.Select(f => KeyValuePair.Create(f, f == "stock.yaml" ? Encoding.UTF8.GetBytes(StockText.Write(stock)) : files.Read(f)))));
        Assert.Empty(again.Problems);
        Assert.Equal(stock, again.Job!.Stock);
    }

    private static string Twin([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "../../../demo/survey-twin");

    private static System.Collections.Immutable.ImmutableArray<TextRow> Rows(string csv) => CsvFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(csv)));
}
