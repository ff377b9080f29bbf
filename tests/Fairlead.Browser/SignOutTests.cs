using System.Text.Json;
using Fairlead.Client.Desk;
using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>One tablet and several people.</summary>
public sealed class SignOutTests(HangarWorkbench served) : IClassFixture<HangarWorkbench>
{
    private const string Password = "brown ladder by the river";
    private readonly Workbench workbench = served.With("survey-twin");

    [Fact]
    public async Task Signing_out_with_the_network_gone_leaves_nothing_to_the_next_person_and_ends_the_session_once_it_is_back()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/sign-in", away: true);
        await BeKeeper(visit);
        await visit.Go("job/survey-twin/work");
        await visit.TakeAlong();
        Assert.NotEmpty(await Kept(visit, "kept"));

        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/sign-in");
        await visit.Settle();
        Assert.Empty(await Kept(visit, "kept"));
        Assert.Empty(await Kept(visit, "texts"));
        await visit.Page.EvaluateAsync("() => Blazor.navigateTo('job/survey-twin/work')");
        await Assertions.Expect(visit.Page.Locator("main .note.error").First).ToContainTextAsync("does not answer");
        await Assertions.Expect(visit.Page.GetByText("On this tablet as of")).ToHaveCountAsync(0);
        await Assertions.Expect(visit.Page.Locator(".tasks li")).ToHaveCountAsync(0);
        Assert.Contains("keeper.one", await SignedIn(visit), StringComparison.Ordinal);

        await visit.Page.Context.SetOfflineAsync(false);
        await visit.Page.ReloadAsync();
        await visit.Page.WaitForURLAsync("**/sign-in**");
        Assert.DoesNotContain("keeper.one", await SignedIn(visit), StringComparison.Ordinal);
        await SignIn(visit, "keeper.one");
        visit.Sound();
    }

    [Fact]
    public async Task What_one_person_entered_on_a_tablet_the_next_sees_and_cannot_withdraw()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/sign-in");
        await BeKeeper(visit);
        await Add(visit, "other", "AV2");
        await Add(visit, "one", "AV1");
        await visit.Page.Context.RouteAsync("**/api/jobs/survey-twin/log", route => route.Request.Method == "POST" ? route.AbortAsync() : route.ContinueAsync());
        await Another(visit, "one");
        await visit.Go("job/survey-twin/log");
        await visit.Page.Locator("form.line select").SelectOptionAsync("noted");
        await visit.Page.GetByLabel("About").FillAsync("zone/NOSE");
        await visit.Page.GetByLabel("text", new() { Exact = true }).FillAsync("seen");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByText("1 entry")).ToBeVisibleAsync();

        var entry = visit.Page.Locator("section.waiting");
        await Another(visit, "other");
        await visit.Go("job/survey-twin/waiting");
        await Assertions.Expect(entry).ToContainTextAsync("AV1 made this entry");
        await Assertions.Expect(entry.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);

        await Another(visit, "one");
        await visit.Go("job/survey-twin/waiting");
        await entry.GetByLabel("Why").FillAsync("a slip");
        await entry.GetByRole(AriaRole.Button, new() { Name = "Withdraw" }).ClickAsync();
        await Assertions.Expect(entry).ToContainTextAsync("Withdrawn: a slip");
        visit.Sound();
    }

    [Theory]
    [InlineData(true, "AV1", "technician", true, true)]
    [InlineData(true, "AV2", "certifier", false, false)]
    [InlineData(true, "AV2", "keeper", false, true)]
    [InlineData(true, "", "keeper", false, true)]
    [InlineData(true, "", "viewer", false, false)]
    [InlineData(false, "", "keeper", true, true)]
    public void Who_made_an_entry_sends_it_again_and_withdraws_it_and_a_keeper_withdraws_it(bool signsIn, string person, string role, bool sends, bool withdraws)
    {
        var me = new Me(signsIn, "somebody", person, [role], NeedsFirst: false);
        Assert.Equal((sends, withdraws), (me.Is("AV1"), me.Withdraws("AV1")));
    }

    private async Task BeKeeper(Visit visit)
    {
        if (!(await visit.Ask<Me>("me")).NeedsFirst)
        {
            await SignIn(visit, "keeper.one");
            return;
        }

        await visit.Page.GetByLabel("Key from the console").FillAsync(workbench.FirstKey);
        await visit.Page.GetByLabel("Your name here").FillAsync("keeper.one");
        await visit.Page.GetByLabel("Password").FillAsync(Password);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make the first keeper" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" })).ToBeVisibleAsync();
    }

    // Somebody whom the keeper adds, with the password in place of the code.
    private async Task Add(Visit visit, string name, string person)
    {
        var handed = JsonSerializer.Deserialize<Handed>(await visit.Tell("people", new { name, person, roles = new[] { "technician" } }), JsonSerializerOptions.Web)!;
        await workbench.Tell("sign-in", new { name, password = handed.Code, next = Password });
    }

    private static async Task Another(Visit visit, string name)
    {
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/sign-in**");
        await visit.Settle();
        await SignIn(visit, name);
    }

    private static async Task SignIn(Visit visit, string name)
    {
        await visit.Page.GetByLabel("Name").FillAsync(name);
        await visit.Page.GetByLabel("Password").FillAsync(Password);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" })).ToBeVisibleAsync();
    }

    private static async Task<string> SignedIn(Visit visit) => await (await visit.Page.APIRequest.GetAsync("/api/me")).TextAsync();

    private static Task<string[]> Kept(Visit visit, string store) =>
        visit.Page.EvaluateAsync<string[]>("async store => await (await import('/js/store.js')).all(store)", store);

    private sealed record Handed(string Code);
}
