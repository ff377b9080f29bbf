using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

public sealed class LayoutTests
{
    private static readonly Composition Sample = Composition.Of(SampleDocument.Document);

    [Fact]
    public void No_two_texts_overlap_and_all_lie_between_the_margins() => Pages.AssertClear(Sample);

    [Fact]
    public void A_table_repeats_its_header_on_every_page_and_prints_every_row_once()
    {
        var pages = Sample.Pages.Select(Words).ToArray();
        var rows = Enumerable.Range(1, 90).Select(i => $"34-{i:000}A22").ToArray();
        Assert.Equal(rows, pages.SelectMany(p => p).Where(w => w.StartsWith("34-", StringComparison.Ordinal)));
        Assert.All(pages.Where(p => p.Any(w => w.StartsWith("34-", StringComparison.Ordinal))), p => Assert.Contains("Identification", p));
    }

    [Fact]
    public void No_heading_stands_alone_at_the_foot_of_a_page()
    {
        foreach (var heading in Sample.Headings)
        {
            var below = Sample.Pages[heading.Page].Shapes.OfType<Text>().Where(t => t.At.Y > heading.Y + 8 && t.At.Y < PageFormat.Bottom);
            Assert.NotEmpty(below);
        }
    }

    [Fact]
    public void Sheets_in_narrow_columns_are_clear_lose_no_word_and_need_at_most_half_the_pages()
    {
        Block[] sheets = [.. Enumerable.Range(1, 24).SelectMany(i => SheetBlocks.Of(SampleDocument.Sheet, 2, subject: $"circuit/C{i}"))];
        var wide = Composition.Of(SampleDocument.Document with { Blocks = [new Heading(1, "Sheets"), .. sheets] });
        var narrow = Composition.Of(SampleDocument.Document with { Blocks = [new Heading(1, "Sheets"), new NarrowColumns(), .. sheets, new FullWidth(), new Heading(1, "After")] });
        Pages.AssertClear(narrow);
        Assert.True((narrow.Pages.Count - 1) * 2 <= wide.Pages.Count, $"{narrow.Pages.Count} against {wide.Pages.Count}");
        var words = string.Join(' ', narrow.Pages.SelectMany(Words));
        Assert.All(Enumerable.Range(1, 24), i => Assert.Contains($"circuit/C{i} ", words + " ", StringComparison.Ordinal));
        Assert.Equal(narrow.Pages.Count - 1, narrow.Headings[^1].Page);
        Assert.Equal(PageFormat.Top, narrow.Headings[^1].Y);
    }

    // Between the columns lies the middle of the page: no text of one reaches into the other.
    [Fact]
    public void No_text_of_a_narrow_column_reaches_into_the_next()
    {
        var narrow = Composition.Of(SampleDocument.Document with { Blocks = [new NarrowColumns(), .. Enumerable.Range(1, 12).SelectMany(i => SheetBlocks.Of(SampleDocument.Sheet, 2, subject: $"circuit/C{i}"))] });
        const double middle = (PageFormat.Left + PageFormat.Right) / 2;
        Assert.All(narrow.Pages.SelectMany(p => p.Shapes.OfType<Text>()).Where(t => t.At.Y > PageFormat.Top && t.At.Y < PageFormat.Bottom), t =>
        {
            var width = Typesetting.Width(t.Words, t.Size, t.Bold);
            var left = t.At.X - (t.Anchor switch { Anchor.End => width, Anchor.Middle => width / 2, _ => 0 });
            Assert.True(left + width <= middle || left >= middle, t.Words);
        });
    }

    [Fact]
    public void Numbers_of_a_crowded_table_stay_with_their_units()
    {
        var table = new Table(
            [new("Symbol"), new("Given"), new("Value", Right: true), new("From")],
            Enumerable.Range(1, 12).Select(i => (Sequence<Cell>)[$"s{i}", "allowed voltage drop from the bus to the input, hot", "0.869928 V", "a long account of where this value was taken from, and why"]).ToSequence());
        Assert.Equal(12, Words(Composition.Of(SampleDocument.Document with { Blocks = [new NarrowColumns(), table] }).Pages[0]).Count(w => w == "0.869928 V"));
    }

    [Fact]
    public void A_part_goes_on_below_another_where_half_a_page_is_left_and_begins_a_page_where_less_is()
    {
        Composition With(int lines) => Composition.Of(SampleDocument.Document with
        {
            Blocks = [.. Enumerable.Range(0, lines).Select(i => (Block)new Paragraph("A line of text.")), PageBreak.Soft, new Heading(1, "Next")],
        });
        Assert.Single(With(10).Pages);
        Assert.Equal(2, With(30).Pages.Count);
    }

    [Fact]
    public void A_picture_stays_with_its_heading()
    {
        Block[] filler = [.. Enumerable.Range(0, 22).Select(i => (Block)new Paragraph("A line of text."))];
        var page = Composition.Of(SampleDocument.Document with { Blocks = [.. filler, new Heading(2, "Balance"), new Figure(EnvelopePlot.Draw(Samples.Envelope))] });
        Assert.Equal(2, page.Pages.Count);
        Assert.Equal(1, page.Headings[0].Page);
    }

    [Fact]
    public void The_contents_name_the_pages_where_headings_stand()
    {
        var printed = Sample.Pages[0].Shapes.OfType<Text>().ToArray();
        Assert.All(Sample.Headings.Skip(1).Where(h => h.Level < 3), h =>
        {
            var line = printed.First(t => t.Words == h.Text && t.Size == TypeSize.Body);
            Assert.Contains(printed, t => t.At.Y == line.At.Y && t.Anchor == Anchor.End && t.Words == (h.Page + 1).ToString(System.Globalization.CultureInfo.InvariantCulture));
        });
    }

    [Fact]
    public void Headings_of_the_third_level_run_on_below_their_second()
    {
        Block[] blocks = [new Contents(), new Heading(1, "Sheets"), new Heading(2, "Circuits"), .. Enumerable.Range(1, 40).SelectMany(i => new Block[] { new PageBreak(), new Heading(3, $"C{i}"), new Heading(4, "Drop") })];
        var printed = Composition.Of(SampleDocument.Document with { Blocks = [.. blocks] }).Pages[0].Shapes.OfType<Text>().Select(t => t.Words).ToArray();
        var running = string.Join(' ', printed);
        Assert.All(Enumerable.Range(1, 40), i => Assert.Contains($"C{i},\u00a0{i + 1}", running, StringComparison.Ordinal));
        Assert.DoesNotContain("Drop", printed);
    }

    [Fact]
    public void The_last_row_of_a_table_does_not_stand_alone()
    {
        foreach (var count in Enumerable.Range(30, 40))
        {
            var table = new Table([new("n")], Enumerable.Range(1, count).Select(i => (Sequence<Cell>)[$"row {i}"]).ToSequence());
            var last = Composition.Of(SampleDocument.Document with { Blocks = [table] }).Pages[^1];
            Assert.True(Words(last).Count(w => w.StartsWith("row ", StringComparison.Ordinal)) >= 2, $"{count} rows");
        }
    }

    [Fact]
    public void A_row_taller_than_a_page_is_broken_and_nothing_is_lost()
    {
        var words = Enumerable.Range(1, 900).Select(i => $"w{i}x").ToArray();
        var table = new Table([new("Key"), new("Long text")], [[new Cell("row"), new Cell(string.Join('\n', words))]]);
        var set = Composition.Of(SampleDocument.Document with { Blocks = [table] });
        Assert.Equal(words, set.Pages.SelectMany(Words).Where(w => w.EndsWith('x')));
        Assert.True(set.Pages.Count > 10);
    }

    [Fact]
    public void A_row_with_cells_missing_is_refused() =>
        Assert.Contains("has 2 columns, but a row has 1 cells", Assert.Throws<InvalidOperationException>(() =>
            Composition.Of(SampleDocument.Document with { Blocks = [new Table([new("a"), new("b")], [[new Cell("x")]], "T")] })).Message, StringComparison.Ordinal);

    private static IEnumerable<string> Words(Picture page) => page.Shapes.OfType<Text>().Select(t => t.Words);
}
