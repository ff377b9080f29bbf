using System.Net;
using Fairlead.Records;
using Fairlead.Server.Records;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Server;

/// <summary>A job whose text has problems.</summary>
public sealed class UnreadableTests
{
    private const string Route = "/api/jobs/demo/";

    [Fact]
    public async Task The_log_its_handover_and_its_export_stay_while_the_text_of_the_job_has_problems()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        server.Enter("opened", "panel/AFT");
        server.Enter("noted", "zone/COCKPIT", "a clip is missing");
        var file = Path.Combine(server.Job, "change.yaml");
        var sound = await File.ReadAllTextAsync(file);
        await File.WriteAllTextAsync(file, sound + "\nnonsense: [\n");

        Assert.Equal(["opened", "noted"], (await browser.GetFromJsonAsync<LogLine[]>(Route + "log"))!.Select(l => l.Kind));
        Assert.Equal(2, (await browser.GetFromJsonAsync<LogMark>(Route + "log/head"))!.Sequence);
        Assert.Equal(("", 2), await browser.GetFromJsonAsync<LogCheck>(Route + "log/check") is { } check ? (check.Fault, check.Entries) : default);
        Assert.Null(Proof.Read(CanonicalJson.FromBytes(await browser.GetByteArrayAsync(Route + "log/1/proof"))).Fault());
        Assert.Equal("[]", await browser.GetStringAsync(Route + "photographs"));
        Assert.Equal("[]", await browser.GetStringAsync(Route + "revisions"));

        var handover = (await browser.GetFromJsonAsync<HandoverView>(Route + "handover"))!;
        Assert.Contains("text of the job has problems", handover.LeftOut, StringComparison.Ordinal);
        Assert.Collection(
            handover.Parts.Where(p => !p.Lines.IsEmpty).SelectMany(p => p.Lines),
            note => Assert.Contains("a clip is missing", note, StringComparison.Ordinal),
            panel => Assert.StartsWith("Panel AFT is open (entry 1", panel, StringComparison.Ordinal));

        using var zip = new ByteArrayContent(await browser.GetByteArrayAsync(Route + "zip")) { Headers = { { "Content-Type", "application/zip" } } };
        Assert.Equal(HttpStatusCode.Created, (await browser.PutAsync("/api/jobs/copy/zip", zip)).StatusCode);
        Assert.Equal(2, (await browser.GetFromJsonAsync<LogLine[]>("/api/jobs/copy/log"))!.Length);

        // What needs the job says why it is not there.
        var refused = await browser.PostAsJsonAsync(Route + "log", new { who = "P1", kind = "closed", subject = "panel/AFT" });
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("The text of the job has problems", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await browser.GetAsync(Route + "tasks")).StatusCode);

        await File.WriteAllTextAsync(file, sound);
        handover = (await browser.GetFromJsonAsync<HandoverView>(Route + "handover"))!;
        Assert.Equal("", handover.LeftOut);
        Assert.Contains(handover.Parts, p => p.Title == "Not begun" && !p.Lines.IsEmpty);
    }
}
