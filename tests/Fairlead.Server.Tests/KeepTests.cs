using System.Net;
using System.Text;
using Fairlead.Model.Storage;
using Fairlead.Server.Desks;
using Fairlead.Workbench;

namespace Fairlead.Tests.Server;

/// <summary>Edits that are kept.</summary>
public sealed class KeepTests
{
    // Some editors begin a file with a mark, which is the same text on the desk and in the folder.
    [Fact]
    public async Task A_file_that_begins_with_a_mark_is_edited_and_kept_like_any_other()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        var file = Path.Combine(server.Job, "change.yaml");
        await File.WriteAllTextAsync(file, await File.ReadAllTextAsync(file), new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        var who = JobFolder.Load(server.Job).Job!.Order.People![0].Id;
        var opened = await (await browser.PostAsJsonAsync("/api/jobs/demo/desk", new { })).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<OpenedDesk>();
        Assert.Equal("[]", await browser.GetStringAsync($"/api/desks/{opened!.Desk}/others"));
        JobEdit[] edits = [new(EditKind.Set, "change/title", "Another title")];
        (await browser.PostAsJsonAsync($"/api/desks/{opened.Desk}/edits", edits)).EnsureSuccessStatusCode();
        Assert.Equal("[]", await browser.GetStringAsync($"/api/desks/{opened.Desk}/others"));
        var kept = await browser.PostAsJsonAsync($"/api/desks/{opened.Desk}/keep", new { who, why = "better said" });
        Assert.Equal((HttpStatusCode.OK, true), (kept.StatusCode, (await kept.Content.ReadAsStringAsync()).Contains("Another title", StringComparison.Ordinal)));
        Assert.Equal("Another title", JobFolder.Load(server.Job).Job!.Change.Title);
    }
}
