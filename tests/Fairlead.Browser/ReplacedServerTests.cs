using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>The workbench when the log of the server is another than the tablet knew.</summary>
public sealed class ReplacedServerTests(Workbench served)
{
    private const string Twin = "replaced";
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task A_server_whose_log_is_another_is_sent_nothing_until_the_person_says_so()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/job/" + Twin + "/log", away: true);
        await Note(visit, "before");
        await Assertions.Expect(visit.Page.Locator("main table")).ToContainTextAsync("before");
        await visit.Go("job/" + Twin + "/work");
        await visit.TakeAlong();
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Go("job/" + Twin + "/log");
        await Note(visit, "meanwhile");
        await Assertions.Expect(visit.Page.GetByText("1 entry")).ToBeVisibleAsync();
        workbench.LoseLog(Twin);
        await visit.Page.Context.SetOfflineAsync(false);
        await visit.Go("job/" + Twin + "/waiting");
        await Assertions.Expect(visit.Page.Locator("main section.note.error")).ToContainTextAsync("Nothing is sent");
        var saved = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save as a file" }).ClickAsync());
        Assert.Contains("meanwhile", await File.ReadAllTextAsync((await saved.PathAsync())!, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal("[]", await (await visit.Page.APIRequest.GetAsync("/api/jobs/" + Twin + "/log")).TextAsync());
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Send to this log all the same" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByText("Nothing waits")).ToBeVisibleAsync();
        Assert.Contains("meanwhile", await (await visit.Page.APIRequest.GetAsync("/api/jobs/" + Twin + "/log")).TextAsync(), StringComparison.Ordinal);
        visit.Sound();
    }

    private static async Task Note(Visit visit, string text)
    {
        await visit.Page.Locator("main select").First.SelectOptionAsync("AV1");
        await visit.Page.Locator("form.line select").SelectOptionAsync("noted");
        await visit.Page.GetByLabel("About").FillAsync("zone/NOSE");
        await visit.Page.GetByLabel("text", new() { Exact = true }).FillAsync(text);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }).ClickAsync();
    }
}
