using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Drawings;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Records;
using Fairlead.Substantiation;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;

namespace Fairlead.Tests.Documents;

public sealed class ReleasePackTests
{
    private static readonly Assessment Assessment = SampleJob.Assessment;
    private static readonly Document Pack = ReleasePack.Of(Assessment, SampleJob.Options);
    private static readonly byte[] File = ReleasePack.Write(Assessment, SampleJob.Options);
    private static readonly string[] Sections =
        ["Contents", "Change summary", "Findings and concessions", "The change on the aircraft", "Weight and balance", "Load analysis", "Circuits", "Drawings", "Kit", "Cutting plan", "Job cards and test cards", "Sheets with working", "Sources"];

    [Fact]
    public void The_sections_stand_in_the_order_in_which_a_release_is_read()
    {
        Assert.Equal(Sections, Pack.Blocks.OfType<Heading>().Where(h => h.Level == 1).Select(h => h.Text));
        using var pdf = PdfDocument.Open(File);
        Assert.True(pdf.TryGetBookmarks(out var bookmarks));
        Assert.Equal(Sections, bookmarks.Roots.Select(b => b.Title));
        Assert.All(bookmarks.GetNodes().OfType<DocumentBookmarkNode>(), b => Assert.InRange(b.PageNumber, 1, pdf.NumberOfPages));
    }

    [Fact]
    public void The_cover_says_the_verdict_and_defers_to_those_who_decide()
    {
        var verdict = Pack.Blocks.OfType<VerdictLine>().First(v => v.Large);
        Assert.Equal(Assessment.Verdict, verdict.Verdict);
        Assert.Equal(Verdict.Fails, verdict.Verdict);
        Assert.StartsWith("Not for release: ", verdict.Words, StringComparison.Ordinal);
        var cautions = Pack.Blocks.OfType<Paragraph>().Where(p => p.Voice == Voice.Caution).Select(p => p.Words).ToArray();
        Assert.Contains(cautions, c => c.Contains("it approves nothing", StringComparison.Ordinal) && c.Contains("replaces neither", StringComparison.Ordinal) && c.Contains("licensed staff", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.Contains("approval is pending", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_page_bears_the_job_and_its_number()
    {
        using var pdf = PdfDocument.Open(File);
        Assert.All(pdf.GetPages(), page =>
        {
            var text = string.Join(' ', page.GetWords().Select(w => w.Text));
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"page {page.Number} of {pdf.NumberOfPages}"), text, StringComparison.Ordinal);
            Assert.Contains(SampleDocument.JobHash, text, StringComparison.Ordinal);
        });
    }

    // Mass and moments in three axes: the sums of what is printed, within the rounding of each printed number.
    [Fact]
    public void The_amendment_adds_up_to_the_empty_aircraft_after()
    {
        var rows = Table("Amendment to the empty weight").Rows;
        double Number(Sequence<Cell> row, int column) => double.Parse(row[column].Words, CultureInfo.InvariantCulture);
        Assert.True(rows.Count >= 4);
        foreach (var column in new[] { 1, 3, 5, 7 })
        {
            Assert.Equal(Number(rows[^1], column), rows.Take(rows.Count - 1).Sum(r => Number(r, column)), (column == 1 ? 0.0051 : 0.051) * rows.Count);
        }

        Assert.Equal(4012 * 183.2, Number(rows[0], 3), 0.051);
        Assert.Equal(-9.4 * 98, Number(rows[1], 3), 0.051);
    }

    [Fact]
    public void The_amendment_says_which_record_it_supersedes() =>
        Assert.Contains(Pack.Blocks.OfType<Paragraph>(), p => p.Words.Contains("WB-031 of 2024-05-02", StringComparison.Ordinal) && p.Words.Contains("supersede", StringComparison.Ordinal));

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
        Assert.Contains("Lasts 38.0 min; 30 min are required.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_finding_sheet_and_source_is_on_paper()
    {
        var text = Pages.Text(File);
        var words = text.Split(' ').ToHashSet(StringComparer.Ordinal);
        Assert.NotEmpty(Assessment.Findings);
        Assert.All(Assessment.Findings, f => Assert.Superset(f.Message.Split(' ').ToHashSet(StringComparer.Ordinal), words));
        Assert.NotEmpty(Assessment.Sheets);
        Assert.All(Assessment.Sheets, s => Assert.Contains(s.Subject, text, StringComparison.Ordinal));
        Assert.All(Assessment.Sheets.SelectMany(s => s.Sheet.Sources), s => Assert.Superset(s.Document.Split(' ').ToHashSet(StringComparer.Ordinal), words));
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
    public void The_record_of_a_release_has_results_signatures_and_parts_on_clear_pages()
    {
        var state = HangarState.Empty;
        void Enter(string kind, string subject, params (string Name, string Text)[] fields) => state = state.After(Entry.After(
            state.Sequence, state.Head, SampleJob.Options.Date, "AV1", kind, subject, fields.Aggregate(Payload.Empty, (p, f) => p.With(f.Name, f.Text))));
        Enter("fitted", "part/XPD2", ("part", "TR-9"), ("serial", "0101"), ("batch", "B7"));
        Enter("observed", "test/SET", ("found", "F00A31"));
        Enter("signed", "test/SET", ("role", "work"), ("scope", "avionics"), ("authorisation", "INV-1"), ("valid-until", "2028-01-01"));
        Enter("raised", "defect/D1", ("text", string.Join(' ', Enumerable.Repeat("corrosion under the old antenna", 20))));
        var required = new Required(Tests: [new RequiredTest("SET", "Address", [new RequiredLine("address", "24-bit address", Expected: "F00A31")])]);
        var options = SampleJob.Options with { Record = new ReleaseRecord(state, required, new Witness(4, new string('a', 64)), []) };
        var pack = ReleasePack.Of(Assessment, options);
        Pages.AssertClear(Composition.Of(pack));
        var text = Pages.Text(PdfWriter.Write(pack));
        Assert.All(new[] { "Record of the work", "4:" + new string('a', 64), "F00A31", "INV-1", "0101", "corrosion", "This is no certificate" }, words => Assert.Contains(words, text));
    }

    // The photographs are a page of the pack itself, drawn by poppler, which tells its picture elements too; one that is clear in part; and files that are none, end early, or tell of a picture without end.
    [Fact]
    public void Photographs_of_the_log_are_named_with_their_hashes_and_printed_where_they_can_be()
    {
        var jpeg = Tool.Bytes("pdftoppm", File, "-jpeg", "-r", "40", "-f", "1", "-l", "1");
        byte[] broken = [0xFF, 0xD8, 0xFF, 0xE0, 0x00], clear = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");
        var (png, elements) = (Tool.Bytes("pdftoppm", File, "-png", "-r", "40", "-f", "1", "-l", "1"), Tool.Bytes("pdftoppm", File, "-r", "40", "-f", "1", "-l", "1"));
        byte[] cut = png[..(png.Length / 2)], endless = [.. clear[..16], 0x7F, 0xFF, 0xFF, 0xFF, 0x7F, 0xFF, 0xFF, 0xFF, .. clear[24..]];
        var state = HangarState.Empty;
        string Enter(string kind, string subject, string field, byte[] picture, params (string Name, string Text)[] more)
        {
            var hash = Convert.ToHexStringLower(SHA256.HashData(picture));
            state = state.After(Entry.After(state.Sequence, state.Head, SampleJob.Options.Date, "AV1", kind, subject, more.Aggregate(Payload.Empty.With(field, hash), (p, f) => p.With(f.Name, f.Text))));
            return hash;
        }

        string[] hashes =
        [
            Enter("photographed", "task/T1", "sha256", jpeg, ("caption", "the tray, bonded")), Enter("photographed", "task/T1", "sha256", broken), Enter("photographed", "defect/D1", "sha256", png),
            Enter("photographed", "defect/D1", "sha256", clear), Enter("photographed", "defect/D1", "sha256", cut), Enter("photographed", "defect/D1", "sha256", endless),
            Enter("raised", "defect/D1", "photo", "elsewhere"u8.ToArray(), ("text", "a scratch")),
        ];
        var record = new ReleaseRecord(state, new Required(Tasks: [new RequiredTask("T1", "Fit the tray")]), new Witness(4, new string('a', 64)), [])
        {
            Pictures = new[] { jpeg, broken, png, clear, cut, endless }.ToImmutableDictionary(b => Convert.ToHexStringLower(SHA256.HashData(b)), b => b.ToImmutableArray()),
        };
        var pack = ReleasePack.Of(Assessment, SampleJob.Options with { Record = record });
        Pages.AssertClear(Composition.Of(pack));
        var file = PdfWriter.Write(pack);
        Assert.Equal(file, PdfWriter.Write(pack));
        var text = Pages.Text(file).Replace(" ", "", StringComparison.Ordinal);
        Assert.All([.. hashes, "photograph-1.jpeg", "photograph-2.jpeg", "photograph-3.png", "photograph-5.png", "photograph-7", "thetray,bonded", "Fitthetray", "printedbelow", "notprinted;inthelog", "notkeptinthelog"], words => Assert.Contains(words, text, StringComparison.Ordinal));
        using var pdf = PdfDocument.Open(file);
        var images = pdf.GetPages().SelectMany(p => p.GetImages()).ToArray();
        Assert.Equal(3, images.Length);
        Assert.Equal(jpeg, images[0].RawBytes.ToArray());
        Assert.True(images[1].TryGetBytesAsMemory(out var drawn));
        Assert.Equal(elements[^drawn.Length..], drawn.ToArray());
        Assert.Equal((1, 1), (images[2].WidthInSamples, images[2].HeightInSamples));
        Assert.All(images, i => Assert.False(i.Interpolate));
        Assert.Contains("No syntax or stream encoding errors found", Tool.Run("qpdf", file, "--check"), StringComparison.Ordinal);
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
    public void A_job_without_results_still_has_every_section_and_says_what_is_not_there()
    {
        var job = SampleJob.Job with
        {
            Aircraft = SampleJob.Job.Aircraft with { Batteries = null, Equipment = null },
            Change = SampleJob.Job.Change with { Remove = null, Fit = null, Breakers = null, Circuits = null, Settings = null, Concessions = null },
        };
        var empty = ReleasePack.Of(new Assessor().Assess(job) with { Batteries = [], SourceLoads = [], BusLoads = [], EmptyAfter = null }, SampleJob.Options);
        Assert.Equal(Sections, empty.Blocks.OfType<Heading>().Where(h => h.Level == 1).Select(h => h.Text));
        var said = empty.Blocks.OfType<Paragraph>().Select(p => p.Words).ToArray();
        Assert.All(
            [
                "Comes out: nothing.", "Goes in: nothing.", "Antennas: nothing.", "Power: no new power input.", "Settings to verify: none.", "The change has no circuits.",
                "No breaker feeds new equipment.", "The aircraft record describes no battery.", "There is no concession.",
            ],
            words => Assert.Contains(words, said));
        Pages.AssertClear(Composition.Of(empty));
    }

    [Fact]
    public void Very_long_names_wrap()
    {
        var words = string.Concat(Enumerable.Repeat("a name without any end ", 12));
        var word = new string('W', 140);
        var job = SampleJob.Job with
        {
            Order = SampleJob.Job.Order with { Title = words, Number = word, Operator = words + word },
            Aircraft = SampleJob.Job.Aircraft with { Type = word, Equipment = new Catalog<InstalledItem>([.. SampleJob.Job.Aircraft.Equipment!.Select(i => i with { Name = words + word })]) },
            Change = SampleJob.Job.Change with { Title = word + words },
        };
        Pages.AssertClear(Composition.Of(ReleasePack.Of(new Assessor().Assess(job), SampleJob.Options)));
    }

    [Fact]
    public void Progress_runs_from_nothing_to_all_and_never_back()
    {
        var reports = new Reports();
        ReleasePack.Write(Assessment, SampleJob.Options, reports);
        Assert.Equal(reports.All.Order(), reports.All);
        Assert.Equal((0, 100), (reports.All[0], reports.All[^1]));
    }

    [Fact]
    public void Making_it_can_be_stopped() =>
        Assert.Throws<OperationCanceledException>(() => ReleasePack.Write(Assessment, SampleJob.Options, null, new CancellationToken(canceled: true)));

    [Fact]
    public void A_job_that_was_not_read_or_is_another_is_refused()
    {
        LoadResult Load(Job? job) => new(job, new SourceMap(), [], SampleDocument.JobHash);
        byte[] zip = [.. SampleJob.Options.JobZip];
        Assert.Equal(File, ReleasePack.Write(Load(Assessment.Job), Assessment, zip, SampleJob.Options.Date));
        Assert.Contains("could not be read", Assert.Throws<ArgumentException>(() => ReleasePack.Write(Load(null), Assessment, zip, SampleJob.Options.Date)).Message, StringComparison.Ordinal);
        Assert.Contains("not of the job", Assert.Throws<ArgumentException>(() => ReleasePack.Write(Load(Assessment.Job with { }), Assessment, zip, SampleJob.Options.Date)).Message, StringComparison.Ordinal);
    }

    private static Table Table(string title) => Pack.Blocks.OfType<Table>().Single(t => t.Title == title);

    private sealed class Reports : IProgress<int>
    {
        public List<int> All { get; } = [];

        public void Report(int value) => All.Add(value);
    }
}
