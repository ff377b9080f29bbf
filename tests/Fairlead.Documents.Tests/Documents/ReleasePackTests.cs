using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Drawings;
using Fairlead.Substantiation;
using UglyToad.PdfPig;

namespace Fairlead.Tests.Documents;

public sealed class ReleasePackTests
{
    private static readonly Assessment Assessment = SampleJob.Assessment;
    private static readonly Document Pack = ReleasePack.Of(Assessment, SampleJob.Options);
    private static readonly byte[] File = ReleasePack.Write(Assessment, SampleJob.Options);

    [Fact]
    public void The_sections_stand_in_the_order_in_which_a_release_is_read() => Assert.Equal(
        ["Contents", "Change summary", "Findings and concessions", "Weight and balance", "Load analysis", "Circuits", "Sheets with working", "Sources"],
        Pack.Blocks.OfType<Heading>().Where(h => h.Level == 1).Select(h => h.Text));

    [Fact]
    public void The_cover_says_the_verdict_and_defers_to_those_who_decide()
    {
        Assert.Equal(Assessment.Verdict, Pack.Blocks.OfType<VerdictLine>().First(v => v.Large).Verdict);
        var cautions = Pack.Blocks.OfType<Paragraph>().Where(p => p.Voice == Voice.Caution).Select(p => p.Words).ToArray();
        Assert.Contains(cautions, c => c.Contains("it approves nothing", StringComparison.Ordinal) && c.Contains("licensed staff", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.Contains("approval is pending", StringComparison.Ordinal));
    }

    [Fact]
    public void The_amendment_adds_up_to_the_empty_aircraft_after()
    {
        var rows = Table("Amendment to the empty weight").Rows;
        double Number(Sequence<Cell> row, int column) => double.Parse(row[column].Words, CultureInfo.InvariantCulture);
        foreach (var column in new[] { 1, 3 })
        {
            Assert.Equal(Number(rows[^1], column), rows.Take(rows.Count - 1).Sum(r => Number(r, column)), 0.06 * rows.Count);
        }

        Assert.Equal(4007.6 * 183.31, Number(rows[^1], 3), 0.051);
    }

    [Fact]
    public void A_loading_outside_the_envelope_is_drawn_and_said()
    {
        var plot = Pack.Blocks.OfType<Figure>().First().Picture;
        Assert.Contains(plot.Shapes.OfType<Text>(), t => t.Words == "most aft; heaviest: OUTSIDE");
        Assert.Equal(2, Table("Worst loadings that the limits allow").Rows.Count(r => r[5].Mark == Verdict.Fails));
    }

    [Fact]
    public void A_concession_that_is_over_is_said_to_be_over() =>
        Assert.Equal("over before the date of this pack", Table("Concessions").Rows[0][4].Note);

    [Fact]
    public void Every_item_circuit_and_condition_is_on_paper()
    {
        var text = Pages.Text(File);
        Assert.All(Assessment.Equipment, e => Assert.Contains(e.Id, text, StringComparison.Ordinal));
        Assert.All(Assessment.Circuits, c => Assert.Contains($"{c.Circuit.Id} {c.Circuit.From} {c.Circuit.To}", text, StringComparison.Ordinal));
        Assert.All(Assessment.SourceLoads, l => Assert.Contains(l.Condition.Name, text, StringComparison.Ordinal));
        Assert.Contains("Lasts 38 min; 30 min are required.", text, StringComparison.Ordinal);
    }

    // 62 A for 5 min, 31 A for 23 min, 44 A for 10 min: (310 + 713 + 440) A·min / 60 = 24.3833 A·h, none of it left at the end.
    [Fact]
    public void What_the_battery_drew_until_it_was_empty_is_what_it_had()
    {
        var picture = Pack.Blocks.OfType<Figure>().Last().Picture;
        Assert.Contains("0 A·h left", picture.Description, StringComparison.Ordinal);
        Assert.Contains("62 A from 0 min to 5 min, 19.2167 A·h left", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void The_pages_are_clear_and_the_file_is_sound()
    {
        Pages.AssertClear(Composition.Of(Pack));
        Assert.Contains("No syntax or stream encoding errors found", Tool.Run("qpdf", File, "--check"), StringComparison.Ordinal);
        Assert.Equal(File, ReleasePack.Write(Assessment, SampleJob.Options));
    }

    [Fact]
    public void The_job_is_inside()
    {
        using var pdf = PdfDocument.Open(File);
        Assert.True(pdf.Advanced.TryGetEmbeddedFiles(out var files));
        Assert.Equal(SampleJob.Options.JobZip.AsSpan(), Assert.Single(files).Bytes.ToArray());
    }

    [Fact]
    public void A_job_without_results_still_has_every_section()
    {
        var bare = new Assessor().Assess(SampleJob.Job with { Change = SampleJob.Job.Change with { Circuits = null, Power = null, Concessions = null } });
        var empty = ReleasePack.Of(bare with { Circuits = [], Batteries = [], SourceLoads = [], BusLoads = [], EmptyAfter = null }, SampleJob.Options);
        Assert.Equal(8, empty.Blocks.OfType<Heading>().Count(h => h.Level == 1));
        Assert.Contains(empty.Blocks.OfType<Paragraph>(), p => p.Words == "The change has no circuits.");
        Pages.AssertClear(Composition.Of(empty));
    }

    private static Table Table(string title) => Pack.Blocks.OfType<Table>().Single(t => t.Title == title);
}
