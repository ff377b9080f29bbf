using System.Text.Json;
using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>The workbench with the network gone.</summary>
public sealed class AwayTests(Workbench served)
{
    private const string Twin = "away";
    private const string Job = "job/" + Twin;
    private const string Pin = "a-long-secret";
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task A_job_taken_along_is_read_with_the_network_gone_and_says_how_old_it_is()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work", away: true);
        await visit.TakeAlong();
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Page.ReloadAsync();
        await visit.Settle();
        await Assertions.Expect(visit.Page.Locator(".note.away")).ToContainTextAsync("As of");
        await Assertions.Expect(visit.Page.Locator(".tasks li").First).ToBeVisibleAsync();
        await Assertions.Expect(visit.Page.Locator(".map svg").First).ToBeVisibleAsync();
        foreach (var (page, sign) in new[] { ("kit", "table.rows tbody tr"), ("tests/VIS-XPD1", "table.rows tbody tr"), ("log", "select option"), ("release", "main .note"), ("plan", "main .drawing svg, main .note"), ("work/APPROVAL", "main .keys button") })
        {
            await visit.Go($"{Job}/{page}");
            await Assertions.Expect(visit.Page.Locator(sign).First).ToBeAttachedAsync();
            await Assertions.Expect(visit.Page.GetByText("could not be shown")).ToHaveCountAsync(0);
        }

        await visit.Page.Context.SetOfflineAsync(false);
        await visit.Go($"{Job}/kit");
        await Assertions.Expect(visit.Page.Locator(".note.away")).ToHaveCountAsync(0);
        visit.Sound();
    }

    [Fact]
    public async Task What_is_entered_with_the_network_gone_outlives_the_tab_and_stands_in_the_log_once_it_is_back()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work/APPROVAL", away: true);
        await Be(visit, "IN1", Pin);
        await visit.Go($"{Job}/work");
        await visit.TakeAlong();
        var picture = await visit.Page.ScreenshotAsync(new() { FullPage = true });
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Go($"{Job}/work/APPROVAL");
        await Press(visit, "Begin");
        await Press(visit, "Done");
        await visit.Page.GetByLabel("PIN", new() { Exact = true }).FillAsync(Pin);
        await visit.Page.GetByLabel("Authorisation").FillAsync("inspection");
        await Press(visit, "Sign");
        await visit.Page.Locator("input[type=file]").Last.SetInputFilesAsync(new FilePayload { Name = "tray.png", MimeType = "image/png", Buffer = picture });
        await visit.Page.GetByLabel("What it shows").FillAsync("the data plate");
        await Press(visit, "Attach");
        await Assertions.Expect(visit.Page.GetByLabel("Waiting to be sent").Locator("li")).ToHaveCountAsync(4);
        await visit.Go($"{Job}/tests/TEST-T1");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "As expected" }).First.ClickAsync();
        await Assertions.Expect(visit.Page.Locator("table.rows tbody tr").First).ToContainTextAsync("waiting to be sent");
        await Assertions.Expect(visit.Page.Locator("table.rows tbody tr .verdict.holds")).ToHaveCountAsync(1);
        var kept = await Kept(visit, "outbox");
        Assert.Equal(5, kept.Length);
        Assert.DoesNotContain(kept, t => t.Contains(Pin, StringComparison.Ordinal));

        await using var again = await visit.Crash($"/{Job}/work/APPROVAL");
        await Assertions.Expect(again.Page.GetByLabel("Waiting to be sent").Locator("li")).ToHaveCountAsync(4);
        await Assertions.Expect(again.Page.Locator(".photographs img")).ToHaveCountAsync(1);
        await Assertions.Expect(again.Page.Locator("main .state").First).Not.ToContainTextAsync("signed");
        await again.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(again.Page.GetByText("wait to be sent")).ToHaveCountAsync(0);
        await Assertions.Expect(again.Page.GetByText("waits to be sent")).ToHaveCountAsync(0);
        await Assertions.Expect(again.Page.Locator("main .state").First).ToContainTextAsync("signed");
        Assert.Empty(await Kept(again, "outbox"));
        Assert.Empty(await Kept(again, "photographs"));

        var lines = await Log(again);
        Assert.Equal(["started", "done", "signed", "photographed"], lines.Where(l => l.Subject == "task/APPROVAL").Select(l => l.Kind));
        Assert.Single(lines, l => l.Subject == "test/TEST-T1");
        Assert.Contains("\"fault\":\"\"", await (await again.Page.APIRequest.GetAsync("/api/jobs/" + Twin + "/log/check")).TextAsync(), StringComparison.Ordinal);
        var sides = await again.Page.Locator(".photographs img").EvaluateAsync<int[]>("async i => { await i.decode(); return [i.naturalWidth, i.naturalHeight]; }");
        Assert.InRange(sides.Max(), 800, 1600);
        again.Sound();
    }

    [Fact]
    public async Task Two_tablets_that_began_one_task_are_shown_both_and_nothing_is_merged()
    {
        Workbench.Require();
        await using var one = await workbench.Open($"/{Job}/work", away: true);
        await using var other = await workbench.Open($"/{Job}/work", away: true);
        foreach (var (visit, who) in new[] { (one, "AV1"), (other, "AV2") })
        {
            await visit.TakeAlong();
            await visit.Page.Context.SetOfflineAsync(true);
            await visit.Go($"{Job}/work/KIT");
            await visit.Page.Locator("main select").First.SelectOptionAsync(who);
            await Press(visit, "Begin");
            await Assertions.Expect(visit.Page.GetByLabel("Waiting to be sent").Locator("li")).ToHaveCountAsync(1);
        }

        await one.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(one.Page.GetByText("waits to be sent")).ToHaveCountAsync(0);
        await other.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(other.Page.GetByText("1 of them not taken")).ToBeVisibleAsync();
        await other.Go($"{Job}/waiting");
        var both = other.Page.Locator(".waiting");
        await Assertions.Expect(both).ToContainTextAsync("Not taken: It is being worked on already");
        await Assertions.Expect(both).ToContainTextAsync("started by AV1");
        Assert.Single(await Log(other), l => l.Subject == "task/KIT");
        await both.GetByLabel("Why").FillAsync("the other tablet was first");
        await both.GetByRole(AriaRole.Button, new() { Name = "Withdraw" }).ClickAsync();
        await Assertions.Expect(both).ToContainTextAsync("Withdrawn: the other tablet was first");
        await both.GetByRole(AriaRole.Button, new() { Name = "Delete from this tablet" }).ClickAsync();
        await Assertions.Expect(both).ToHaveCountAsync(0);
        other.Sound();
    }

    [Fact]
    public async Task An_entry_that_finds_the_storage_full_is_not_acknowledged_and_leaves_nothing()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work", away: true);
        await visit.TakeAlong();
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Go($"{Job}/log");
        await visit.Page.Locator("main select").First.SelectOptionAsync("AV1");
        await visit.Page.EvaluateAsync("() => { IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError'); }; }");
        await visit.Page.Locator("form.line select").SelectOptionAsync("noted");
        await visit.Page.GetByLabel("About").FillAsync("zone/NOSE");
        await visit.Page.GetByLabel("text", new() { Exact = true }).FillAsync("dust");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".note.error").First).ToContainTextAsync("storage of this tablet is full");
        await Assertions.Expect(visit.Page.Locator(".note.error").First).ToContainTextAsync("was not taken");
        Assert.Empty(await Kept(visit, "outbox"));
        visit.Sound();
    }

    // What answers may be another server, or the page of a network that wants to be paid for.
    [Fact]
    public async Task An_answer_that_is_not_of_the_log_takes_nothing_off_the_tablet()
    {
        (int Status, string Type, string Body)[] answers = [(200, "text/html", "<html>Welcome</html>"), (200, "application/json", "{}"), (200, "application/json", "[1]"), (204, "application/json", ""), (500, "text/plain", "x")];
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work", away: true);
        await visit.TakeAlong();
        await visit.Page.Context.SetOfflineAsync(true);
        await Note(visit, "zone/NOSE");
        var (given, all) = (0, new TaskCompletionSource());
        await visit.Page.Context.RouteAsync("**/api/jobs/" + Twin + "/log", async route =>
        {
            if (route.Request.Method != "POST" || given == answers.Length)
            {
                await route.ContinueAsync();
                return;
            }

            Assert.Single(await Kept(visit, "outbox"));
            var (status, type, body) = answers[given++];
            await route.FulfillAsync(new() { Status = status, ContentType = type, Body = body });
            if (given == answers.Length)
            {
                all.TrySetResult();
            }
        });
        await visit.Page.Context.SetOfflineAsync(false);
        await all.Task;
        await Assertions.Expect(visit.Page.GetByText("waits to be sent")).ToHaveCountAsync(0);
        Assert.Equal(answers.Length, given);
        Assert.Single(await Log(visit), l => l.Subject == "zone/NOSE");
        visit.Sound();
    }

    // For so long Chromium counts on the room that it found for a database before.
    private static readonly TimeSpan HoldsGood = TimeSpan.FromSeconds(31);

    // The browser's own limit, which it finds while the picture is being written.
    [Fact]
    public async Task A_photograph_that_finds_the_storage_full_is_not_acknowledged_and_leaves_neither_entry_nor_picture()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work", away: true);
        await visit.TakeAlong();
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Go($"{Job}/work/KIT");
        await visit.Page.Locator("main select").First.SelectOptionAsync("AV1");
        var noise = await visit.Page.EvaluateAsync<string>("""
            () => {
                const canvas = document.createElement('canvas'), pen = canvas.getContext('2d');
                canvas.width = canvas.height = 1600;
                const picture = pen.createImageData(1600, 1600);
                for (let i = 0; i < picture.data.length; i++) picture.data[i] = i % 4 === 3 ? 255 : Math.random() * 256;
                pen.putImageData(picture, 0, 0);
                return canvas.toDataURL('image/jpeg', 0.9).split(',')[1];
            }
            """);
        await visit.Page.Locator("input[type=file]").Last.SetInputFilesAsync(new FilePayload { Name = "noise.jpg", MimeType = "image/jpeg", Buffer = Convert.FromBase64String(noise) });
        await visit.Page.GetByLabel("What it shows").FillAsync("the kit");
        var tools = await visit.Page.Context.NewCDPSessionAsync(visit.Page);
        await tools.SendAsync("Storage.overrideQuotaForOrigin", new() { ["origin"] = workbench.Address, ["quotaSize"] = 1 });
        await Task.Delay(HoldsGood, TestContext.Current.CancellationToken);
        await Press(visit, "Attach");
        await Assertions.Expect(visit.Page.GetByLabel("Photographs").Locator(".note.error")).ToContainTextAsync("storage of this tablet is full");
        Assert.Empty(await Kept(visit, "outbox"));
        Assert.Empty(await Kept(visit, "photographs"));
        await tools.SendAsync("Storage.overrideQuotaForOrigin", new() { ["origin"] = workbench.Address });
        await Press(visit, "Attach");
        await Assertions.Expect(visit.Page.GetByLabel("Waiting to be sent").Locator("li")).ToHaveCountAsync(1);
        Assert.Single(await Kept(visit, "photographs"));
        visit.Sound();
    }

    [Fact]
    public async Task What_another_page_of_the_tablet_is_sending_is_not_withdrawn_once_the_log_has_it()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work", away: true);
        await visit.TakeAlong();
        var context = visit.Page.Context;
        await context.SetOfflineAsync(true);
        await Note(visit, "zone/TAIL");
        var second = new Visit(await context.NewPageAsync(), workbench.Address);
        await second.Page.GotoAsync($"/{Job}/waiting");
        var entry = second.Page.Locator("section.waiting");
        await entry.GetByLabel("Why").FillAsync("a slip");

        var (sending, answered) = (new TaskCompletionSource(), new TaskCompletionSource());
        await context.RouteAsync("**/api/jobs/" + Twin + "/log", async route =>
        {
            if (route.Request.Method == "POST")
            {
                sending.TrySetResult();
                await answered.Task;
            }

            await route.ContinueAsync();
        });
        await context.SetOfflineAsync(false);
        await sending.Task;
        await entry.GetByRole(AriaRole.Button, new() { Name = "Withdraw" }).ClickAsync();
        answered.SetResult();
        await Assertions.Expect(second.Page.GetByText("Nothing waits")).ToBeVisibleAsync();
        Assert.Empty(await Kept(second, "outbox"));
        Assert.Single(await Log(second), l => l.Subject == "zone/TAIL");
        visit.Sound();
    }

    [Fact]
    public async Task A_card_is_opened_by_its_square_code_or_its_number()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work", away: true);
        await Press(visit, "Scan a card");
        await visit.Page.WaitForURLAsync("**/work/KIT");
        await visit.Go($"{Job}/work");
        await visit.Page.GetByLabel("or its number").FillAsync("vis-xpd1");
        await Press(visit, "Open");
        await visit.Page.WaitForURLAsync("**/tests/VIS-XPD1");
        await visit.Go($"{Job}/work");
        await visit.Page.GetByLabel("or its number").FillAsync("fairlead:WO-9/KIT");
        await Press(visit, "Open");
        await Assertions.Expect(visit.Page.GetByText("That card is one of WO-9")).ToBeVisibleAsync();
        visit.Sound();
    }

    [Fact]
    public async Task Every_file_of_the_program_has_the_hash_it_was_built_with()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/help");
        var wrong = await visit.Page.EvaluateAsync<string[]>("""
            async () => {
                const text = await (await fetch('service-worker-assets.js')).text();
                const manifest = JSON.parse(text.slice(text.indexOf('{'), text.lastIndexOf('}') + 1)), wrong = [];
                for (const a of manifest.assets.filter(a => !/\.(pdb|map)$/.test(a.url))) {
                    try { if (!(await fetch(new Request(a.url, { integrity: a.hash, cache: 'no-cache' }))).ok) wrong.push(a.url); } catch { wrong.push(a.url); }
                }
                return wrong;
            }
            """);
        Assert.Empty(wrong);
    }

    private static Task Press(Visit visit, string name) => visit.Page.Locator("main").GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync();

    private static async Task Note(Visit visit, string about)
    {
        await visit.Go($"{Job}/log");
        await visit.Page.Locator("main select").First.SelectOptionAsync("AV1");
        await visit.Page.Locator("form.line select").SelectOptionAsync("noted");
        await visit.Page.GetByLabel("About").FillAsync(about);
        await visit.Page.GetByLabel("text", new() { Exact = true }).FillAsync("seen");
        await Press(visit, "Enter");
        await Assertions.Expect(visit.Page.GetByText("1 entry")).ToBeVisibleAsync();
    }

    private static async Task Be(Visit visit, string who, string pin)
    {
        await visit.Page.Locator("main select").First.SelectOptionAsync(who);
        await visit.Page.GetByLabel("New PIN or password").FillAsync(pin);
        await Press(visit, "Set");
        await Assertions.Expect(visit.Page.GetByLabel("New PIN or password")).ToHaveCountAsync(0);
    }

    private static Task<string[]> Kept(Visit visit, string store) =>
        visit.Page.EvaluateAsync<string[]>("async store => await (await import('/js/store.js')).all(store)", store);

    private static async Task<Line[]> Log(Visit visit) =>
        JsonSerializer.Deserialize<Line[]>(await (await visit.Page.APIRequest.GetAsync("/api/jobs/" + Twin + "/log")).TextAsync(), JsonSerializerOptions.Web)!;

    private sealed record Line(long Sequence, string Who, string Kind, string Subject);
}
