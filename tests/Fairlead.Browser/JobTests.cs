using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>What a person does with a job, in a real browser over the built product.</summary>
public sealed class JobTests(Workbench served)
{
    private const string Twin = "jobs";
    private const string Job = "job/" + Twin;
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task An_edit_changes_the_figures_at_once_and_is_taken_back_by_keyboard()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/edit/change/fit/XPD1");
        var mounting = visit.Page.GetByLabel("mounting", new() { Exact = true });
        await mounting.FillAsync("9 kg");
        await mounting.BlurAsync();
        await Assertions.Expect(visit.Page.GetByLabel("What the last edit changed")).ToContainTextAsync("Empty weight");
        await mounting.FillAsync("9 bananas");
        await mounting.BlurAsync();
        await Assertions.Expect(visit.Page.Locator(".standing")).ToContainTextAsync("Text to mend");
        await Assertions.Expect(visit.Page.Locator(".field.wrong .problem")).ToContainTextAsync("9 bananas");
        await visit.Page.Locator("h1").ClickAsync();
        await visit.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(mounting).ToHaveValueAsync("9 kg");
        await visit.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(mounting).ToHaveValueAsync("0.42 kg");
        visit.Sound();
    }

    [Fact]
    public async Task A_finding_leads_to_its_sheet_and_the_input_that_drives_it()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}");
        await visit.Page.Locator(".findings button.link").First.ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Working", new() { Exact = true })).ToContainTextAsync("Sources");
        await visit.Page.GetByLabel("Working", new() { Exact = true }).GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
        await visit.Page.Locator(".findings a").First.ClickAsync();
        await visit.Page.WaitForURLAsync("**/edit/**");
        visit.Sound();
    }

    [Fact]
    public async Task A_job_begins_from_the_starter_and_an_edit_is_kept_as_a_revision_unless_somebody_else_was_first()
    {
        Workbench.Require();
        await using var one = await workbench.Open("/");
        await one.Page.GetByLabel("Name", new() { Exact = true }).FillAsync("first-job");
        await one.Page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await one.Page.WaitForURLAsync("**/job/first-job");
        await one.Settle();
        await using var other = await workbench.Open("/job/first-job/edit/change");
        await Retitle(one, "Mine");
        await Retitle(other, "Theirs");
        await Keep(one, "mine first");
        await Assertions.Expect(one.Page.Locator(".tools")).ToContainTextAsync("Kept");
        await Keep(other, "theirs second");
        await Assertions.Expect(other.Page.Locator(".versions")).ToContainTextAsync("title: Mine");
        await Assertions.Expect(other.Page.Locator(".versions")).ToContainTextAsync("title: Theirs");
        await other.Page.GetByRole(AriaRole.Button, new() { Name = "Keep mine over theirs" }).ClickAsync();
        await Assertions.Expect(other.Page.Locator(".tools")).ToContainTextAsync("Kept");
        one.Sound();
        other.Sound();
    }

    [Fact]
    public async Task The_handover_and_the_log_are_shown_while_the_text_of_the_job_has_problems()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/");
        await visit.Tell("jobs", new { name = "unreadable", from = Twin });
        await visit.Tell("jobs/unreadable/log", new { who = "AV1", kind = "noted", subject = "zone/NOSE", payload = new { text = "a clip is missing" } });
        await Mount(visit, "9 bananas", "Text to mend");
        await Keep(visit, "for the next shift to mend", "unreadable");
        await Assertions.Expect(visit.Page.Locator(".tools")).ToContainTextAsync("Kept");
        await visit.Go("job/unreadable/work");
        await Assertions.Expect(visit.Page.Locator("main .note.error").First).ToContainTextAsync("9 bananas");
        await Assertions.Expect(visit.Page.Locator("main .note.caution")).ToContainTextAsync("what the log says by itself");
        await Assertions.Expect(visit.Page.Locator("main details")).ToContainTextAsync(["a clip is missing"]);
        await visit.Go("job/unreadable/log");
        await Assertions.Expect(visit.Page.Locator("table.rows tbody tr", new() { HasText = "a clip is missing" })).ToHaveCountAsync(1);

        // What is mended on the desk is kept, though nobody can be read from the folder.
        await Mount(visit, "0.42 kg", "finding");
        await Keep(visit, "mended", "unreadable");
        await Assertions.Expect(visit.Page.Locator(".tools")).ToContainTextAsync("Kept");
        await visit.Go("job/unreadable/work");
        await Assertions.Expect(visit.Page.Locator(".tasks li").First).ToBeVisibleAsync();
        visit.Sound();
    }

    [Fact]
    public async Task A_task_is_begun_done_and_signed_and_the_gate_says_what_still_stands_open()
    {
        Workbench.Require();
        await using var visit = await workbench.Open($"/{Job}/work/APPROVAL");
        await visit.Page.Locator("main select").First.SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await visit.Page.GetByLabel("New PIN or password").FillAsync("a-long-secret");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Set" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Done" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("main .state").First).ToContainTextAsync("done");
        await visit.Page.GetByLabel("PIN", new() { Exact = true }).FillAsync("wrong-secret");
        await visit.Page.GetByLabel("Authorisation").FillAsync("inspection");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".note.error")).ToContainTextAsync("not the PIN");
        await visit.Go($"{Job}/release");
        await Assertions.Expect(visit.Page.Locator("main .note").First).ToContainTextAsync("shut");
        await visit.Go($"{Job}/log");
        await Assertions.Expect(visit.Page.Locator("main table")).ToContainTextAsync("task/APPROVAL");
        visit.Sound();
    }

    private static async Task Retitle(Visit visit, string title)
    {
        await visit.Go("job/first-job/edit/change");
        var field = visit.Page.GetByLabel("title", new() { Exact = false }).First;
        await field.FillAsync(title);
        await field.BlurAsync();
        await Assertions.Expect(visit.Page.Locator(".bar .title")).ToHaveTextAsync(title);
    }

    private static async Task Mount(Visit visit, string words, string then)
    {
        await visit.Go("job/unreadable/edit/change/fit/XPD1");
        var mounting = visit.Page.GetByLabel("mounting", new() { Exact = true });
        await mounting.FillAsync(words);
        await mounting.BlurAsync();
        await Assertions.Expect(visit.Page.Locator(".standing")).ToContainTextAsync(then);
    }

    private static async Task Keep(Visit visit, string why, string job = "first-job")
    {
        await visit.Go($"job/{job}/keep");
        await visit.Page.Locator("main select").First.SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await visit.Page.GetByLabel("Why").FillAsync(why);
        await visit.Page.Locator("main form button[type=submit]").ClickAsync();
    }
}
