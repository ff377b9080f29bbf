using System.IO.Compression;
using System.Net;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Tests.Server;

/// <summary>What is printed or taken away of a job, and what comes in as a table.</summary>
public sealed class PaperTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Cards_tables_and_drawings_are_given_out_in_the_forms_that_are_offered()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        foreach (var (file, begins) in new[] { ("cards.pdf", "%PDF"), ("cards.pdf?size=pocket", "%PDF"), ("kit.xlsx", "PK"), ("kit.csv", "\uFEFFKind,"), ("cutting.csv", "\uFEFFPart,"), ("marks.xlsx", "PK"), ("drawings.zip", "PK") })
        {
            var bytes = await browser.GetByteArrayAsync("/api/jobs/demo/" + file, Stop);
            Assert.StartsWith(begins, System.Text.Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        }

        foreach (var file in new[] { "cards.pdf?size=poster", "cards.pdf?task=NONE", "kit.doc", "cutting.pdf" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync("/api/jobs/demo/" + file, Stop)).StatusCode);
        }
    }

    [Fact]
    public async Task The_drawings_that_leave_are_all_that_the_job_has()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        using var zip = new ZipArchive(new MemoryStream(await browser.GetByteArrayAsync("/api/jobs/demo/drawings.zip", Stop)));
        var read = JobFolder.Load(server.Job);
        var assessed = new Fairlead.Substantiation.Assessor().Assess(read.Job!);
        var all = Enum.GetValues<Fairlead.Drawings.DrawingKind>().SelectMany(k => Fairlead.Drawings.DrawingSet.Of(assessed, read.Hash, k, Fairlead.Drawings.Harness.TilePaper.A4)).Count();
        Assert.NotEqual(0, all);
        Assert.Equal(all, zip.Entries.Count);
    }

    [Fact]
    public async Task The_proof_of_an_entry_is_given_out_and_holds_until_a_letter_of_it_is_changed()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        server.Enter("noted", "zone/NOSE", "the canopy was scratched before");
        var proof = await browser.GetByteArrayAsync("/api/jobs/demo/log/1/proof", Stop);
        var sound = await Check(browser, proof);
        Assert.Equal(("", 1), (sound.Fault, sound.Entry!.Sequence));
        Assert.Null(Proof.Read(CanonicalJson.FromBytes(proof)).Fault());
        var altered = System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.UTF8.GetString(proof).Replace("scratched", "scrutched", StringComparison.Ordinal));
        Assert.NotEmpty((await Check(browser, altered)).Fault);
        Assert.NotEmpty((await Check(browser, "[]"u8.ToArray())).Fault);
        Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync("/api/jobs/demo/log/2/proof", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync("/api/jobs/demo/log/0/proof", Stop)).StatusCode);
    }

    [Fact]
    public async Task Results_of_a_table_are_entered_by_who_measured_them_and_what_is_wrong_is_told_by_its_row()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        var who = JobFolder.Load(server.Job).Job!.Order.People![0].Id;
        var unread = await browser.PostAsJsonAsync("/api/jobs/demo/results", new { who, table = "card,line\nX,1" }, Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, unread.StatusCode);
        Assert.Contains("value", await unread.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        var card = (await browser.GetFromJsonAsync<Card[]>("/api/jobs/demo/tests", Stop))!.First(c => c.Kind == "visual");
        var entered = await (await browser.PostAsJsonAsync("/api/jobs/demo/results", new { who, table = $"card,line,value,by\n{card.Id},{card.Lines[0].Id},as expected,\n{card.Id},{card.Lines[0].Id},as expected,SOMEBODY" }, Stop)).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<Entered>(Stop);
        Assert.Equal(0, entered!.Count);
        Assert.Collection(
            entered.Refused.Order(StringComparer.Ordinal),
            held => Assert.Contains("row 2, " + card.Id + " " + card.Lines[0].Id + ": test/" + card.Id + " waits for task/BATTERY-OFF", held, StringComparison.Ordinal),
            others => Assert.Contains("row 3: measured by SOMEBODY", others, StringComparison.Ordinal));
        Assert.Empty((await browser.GetFromJsonAsync<object[]>("/api/jobs/demo/log", Stop))!);
    }

    private static async Task<Checked> Check(HttpClient browser, byte[] proof)
    {
        using var body = new ByteArrayContent(proof) { Headers = { { "Content-Type", "application/octet-stream" } } };
        return (await (await browser.PostAsync("/api/proofs", body, Stop)).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<Checked>(Stop))!;
    }

    private sealed record Checked(CheckedEntry? Entry, string Log, string Fault);

    private sealed record CheckedEntry(long Sequence);

    private sealed record Card(string Id, string Kind, CardLine[] Lines);

    private sealed record CardLine(string Id);

    private sealed record Entered([property: System.Text.Json.Serialization.JsonPropertyName("entered")] int Count, string[] Refused);
}
