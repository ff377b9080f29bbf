using Fairlead.Calculations;
using Fairlead.Documents;

namespace Fairlead.Tests.Documents;

public sealed class SheetBlocksTests
{
    private static readonly Sheet Sheet = SampleDocument.Sheet;

    [Fact]
    public void Every_step_shows_formula_numbers_and_value()
    {
        var steps = SheetBlocks.Of(Sheet).OfType<WorkingStep>().ToArray();
        Assert.Equal(Sheet.Steps.Select(s => (s.Symbol, s.Formula, Sheet.Substituted(s), s.Value.ToString())), steps.Select(s => (s.Symbol, s.Formula, s.Numbers, s.Value)));
        Assert.Equal("20 A / 26 A", steps[0].Numbers);
        Assert.Contains("11-66 d", steps[1].Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_given_line_shows_where_it_came_from()
    {
        var sheet = Sheet.WithOrigins(new Dictionary<string, string> { ["I"] = "power input VT1 P1" });
        var rows = SheetBlocks.Of(sheet).OfType<Table>().Single(t => t.Title == "Given").Rows;
        Assert.Equal(sheet.Given.Select(g => (g.Symbol, g.Value.ToString(), g.Origin)), rows.Select(r => (r[0].Words, r[2].Words, r[3].Words)));
    }

    [Fact]
    public void A_check_shows_demand_limit_margin_rule_and_verdict()
    {
        // 200 °C allowed less the 182 °C (181.6 before rounding) of the worked example, AC 43.13-1B page 11-27.
        var row = SheetBlocks.Of(Sheet).OfType<Table>().Single(t => t.Title == "Checks").Rows[0];
        Assert.StartsWith("181.5", row[1].Words, StringComparison.Ordinal);
        Assert.Equal("≤ 200 °C", row[2].Words);
        Assert.StartsWith("+18.4", row[3].Words, StringComparison.Ordinal);
        Assert.Equal((Verdict.Holds, "Holds"), (row[4].Mark!.Value, row[4].Words));
        Assert.Contains("FAA AC 43.13-1B", row[0].Note, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_from_memory_and_a_common_practice_are_marked_wherever_their_source_is_printed()
    {
        var memory = new Source("Invented standard", "1", "4", Basis.Memory);
        var practice = new Source("Trade", "", "", Basis.CommonPractice);
        var sheet = Sheet with
        {
            Checks = [new Check("c", Measure.Number(1), Sense.AtLeast, Measure.Number(2), "rule", memory)],
            Steps = [new Step("x", "m", "1 + 1", Measure.Number(2), practice)],
            Sources = [memory, practice],
        };
        var blocks = SheetBlocks.Of(sheet).ToArray();
        Assert.EndsWith("[from memory: confirm]", blocks.OfType<Table>().Single(t => t.Title == "Checks").Rows[0][0].Note, StringComparison.Ordinal);
        Assert.EndsWith("[common practice]", blocks.OfType<WorkingStep>().Single().Source, StringComparison.Ordinal);
        Assert.Equal("Sources: Invented standard, 1, 4 [from memory: confirm]. Trade [common practice].", blocks.OfType<Paragraph>().Single(p => p.Voice == Voice.Remark).Words);
    }

    [Fact]
    public void A_broken_check_is_named_beside_the_verdict()
    {
        var sheet = Sheet with { Verdict = Verdict.Fails, Checks = [Sheet.Checks[0] with { Name = "too hot", Limit = Temperature.Of(100, "°C").As("°C") }] };
        Assert.Equal("Not met: too hot.", SheetBlocks.Of(sheet).OfType<VerdictLine>().Single().Words);
    }

    [Fact]
    public void Where_nothing_can_be_told_the_reason_stands_first_and_barred()
    {
        var blocks = SheetBlocks.Of(SampleDocument.CannotTell).ToArray();
        Assert.Equal(Verdict.CannotTell, ((VerdictLine)blocks[1]).Verdict);
        Assert.Equal(new Paragraph("Cannot tell: " + SampleDocument.CannotTell.CannotTell[0], Voice.Caution), blocks[2]);
    }

    [Fact]
    public void A_column_that_no_row_fills_is_left_out_and_an_empty_table_says_so()
    {
        var sheet = Sheet with { Tables = [new SheetTable("items", ["name", "mass", "arm"], [["box", "", Measure.Number(2)], ["tray", "", Measure.Number(3)]]), new SheetTable("items out", ["name"], [])] };
        var blocks = SheetBlocks.Of(sheet).ToArray();
        Assert.Equal(["name", "arm"], blocks.OfType<Table>().Single(t => t.Title == "Items").Columns.Select(c => c.Header));
        Assert.Contains(blocks.OfType<Paragraph>(), p => p.Words == "Items out: none.");
    }

    [Fact]
    public void Places_in_one_document_stand_together()
    {
        var sheet = Sheet with { Sources = [new("A", "1", "p 1"), new("B", "", "", Basis.Memory), new("A", "1", "p 2", Basis.Memory), new("A", "1", "p 1", Basis.Derived)] };
        Assert.Equal("Sources: A, 1, p 1; p 2 [from memory: confirm]. B [from memory: confirm].", SheetBlocks.Of(sheet).OfType<Paragraph>().Single(p => p.Voice == Voice.Remark).Words);
    }

    [Fact]
    public void A_long_table_that_stands_on_an_earlier_sheet_in_the_same_words_is_referred_to_and_one_that_differs_is_printed()
    {
        SheetTable Lines(int first) => new("branches", ["branch", "resistance"], [.. Enumerable.Range(first, 10).Select(i => (System.Collections.Immutable.ImmutableArray<SheetValue>)["wire", Measure.Number(i)])]);
        Dictionary<string, string> printed = new(StringComparer.Ordinal);
        Block[] Blocks(int first, string subject) => [.. SheetBlocks.Of(Sheet with { Tables = [Lines(first)] }, subject: subject, printed: printed)];
        Assert.Contains(Blocks(0, "network/taxi").OfType<Table>(), t => t.Title == "Branches");
        var again = Blocks(0, "network/climb");
        Assert.DoesNotContain(again.OfType<Table>(), t => t.Title == "Branches");
        Assert.Contains(again.OfType<Paragraph>(), p => p.Words == "Branches: the same 10 lines as on sheet network/taxi.");
        Assert.Contains(Blocks(1, "network/land").OfType<Table>(), t => t.Title == "Branches");
    }

    [Fact]
    public void A_table_of_one_column_is_a_list_on_a_line() => Assert.Contains(
        SheetBlocks.Of(Sheet with { Tables = [new SheetTable("wires to choose from", ["gauge"], [["22"], ["20"]])] }).OfType<Paragraph>(), p => p.Words == "Wires to choose from (gauge): 22; 20.");
}
