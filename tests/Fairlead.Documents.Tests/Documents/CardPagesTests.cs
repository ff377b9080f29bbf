using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Drawings;
using Fairlead.Planning.Cards;
using UglyToad.PdfPig;

namespace Fairlead.Tests.Documents;

public sealed class CardPagesTests
{
    private static readonly Sequence<JobCard> Cards = JobCards.Of(SampleJob.Assessment);

    public static TheoryData<string> Sizes => [.. CardFormat.All.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_card_is_whole_and_within_its_page(string size)
    {
        var format = CardFormat.All.Single(f => f.Name == size);
        var pages = CardPages.Of(SampleJob.Job, SampleDocument.JobHash, Long(Cards), format, level: 1).Cast<DrawingSheet>().ToArray();
        Assert.Equal(Cards.Select(c => c.Id), pages.SelectMany(p => p.Headings).Select(h => h.Brief));
        Assert.All(pages.SelectMany(p => p.Picture.Shapes), s => Assert.True(Inside(s, format), s.ToString()));
        using var pdf = PdfDocument.Open(CardPages.Write(SampleJob.Job, SampleDocument.JobHash, Cards, format, SampleJob.Options.Date));
        var text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.All(Cards, c => Assert.Contains(c.Id, text));
        Assert.Contains("licensed staff decide", text);
        Assert.Equal(format.Width, pdf.GetPage(1).Width * 25.4 / 72, 0.01);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void No_page_of_the_cards_is_empty_and_each_counts_them_all(string size)
    {
        var format = CardFormat.All.Single(f => f.Name == size);
        using var pdf = PdfDocument.Open(CardPages.Write(SampleJob.Job, SampleDocument.JobHash, Cards, format, SampleJob.Options.Date));
        Assert.All(pdf.GetPages(), p =>
        {
            var words = p.GetWords().Select(w => w.Text).ToArray();
            Assert.Contains(words, w => Cards.Any(c => c.Id == w));
            Assert.EndsWith($"page {p.Number} of {pdf.NumberOfPages}", string.Join(' ', words), StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_code_of_a_card_reads_as_its_work_order_and_task()
    {
        if (!Tool.IsThere("zbarimg"))
        {
            Assert.Skip("'zbarimg' is not installed: run eng/install-test-tools");
        }

        foreach (var format in CardFormat.All)
        {
            var pdf = CardPages.Write(SampleJob.Job, SampleDocument.JobHash, [Cards[0]], format, SampleJob.Options.Date);
            var page = Tool.Bytes("pdftoppm", pdf, "-r", "150", "-gray", "-f", "1", "-l", "1");
            Assert.Equal($"fairlead:WO-0147/{Cards[0].Id}", Tool.Run("zbarimg", page, "-q", "--raw").Trim());
        }
    }

    [Theory]
    [InlineData("https://hangar.local/jobs/demo/work/", "https://hangar.local/jobs/demo/work/")]
    [InlineData("https://hangar.local/a b?x=1&y=%20\n/", "https://hangar.local/a%20b?x=1&y=%20%0A/")]
    [InlineData("https://hangar.local/Größe \"2\"/", "https://hangar.local/Gr%C3%B6%C3%9Fe%20%222%22/")]
    public void The_address_in_the_code_of_a_card_holds_nothing_that_an_address_may_not(string link, string read)
    {
        if (!Tool.IsThere("zbarimg"))
        {
            Assert.Skip("'zbarimg' is not installed: run eng/install-test-tools");
        }

        var page = Tool.Bytes("pdftoppm", CardPages.Write(SampleJob.Job, SampleDocument.JobHash, [Cards[0]], CardFormat.A4, SampleJob.Options.Date, link), "-r", "200", "-gray", "-f", "1", "-l", "1");
        Assert.Equal(read + Cards[0].Id, Tool.Run("zbarimg", page, "-q", "--raw").Trim());
    }

    [Fact]
    public void Numbers_of_cards_never_reach_into_the_code()
    {
        foreach (var format in CardFormat.All)
        {
            var card = Cards[0] with { Task = Cards[0].Task with { Id = "CONTINUITY-OF-A-VERY-LONG-CONNECTOR-NAME-P1" } };
            var page = CardPages.Of(SampleJob.Job, SampleDocument.JobHash, [card], format, level: 1).Cast<DrawingSheet>().Single().Picture;
            var number = page.Shapes.OfType<Text>().First();
            Assert.True(number.At.X + Typesetting.Width(number.Words, number.Size, number.Bold) <= format.Right - format.Square, format.Name);
        }
    }

    // A table that runs over several pages, with rows that have to be filled in.
    private static Sequence<JobCard> Long(Sequence<JobCard> cards) =>
        [cards[0] with { Tables = [new CardTable("Long", ["First", "Second of the columns", "Found", "By"], Enumerable.Range(0, 120).Select(i => (Sequence<string>)[$"row {NumberFormat.Text(i)}", "limits of this row", "", ""]).ToSequence())] }, .. cards.Skip(1)];

    private static bool Inside(Shape shape, CardFormat format) => shape switch
    {
        Text t => t.At.Y > 0 && t.At.Y < format.Height && t.At.X >= 0 && t.At.X + (t.Anchor == Anchor.Start ? Typesetting.Width(t.Words, t.Size, t.Bold) : 0) <= format.Width,
        Rect r => r.Corner.X >= 0 && r.Corner.Y >= 0 && r.Corner.X + r.Width <= format.Width && r.Corner.Y + r.Height <= format.Height - 3,
        _ => true,
    };
}
