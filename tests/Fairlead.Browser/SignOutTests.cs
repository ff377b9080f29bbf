using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>One tablet and several people.</summary>
public sealed class SignOutTests(HangarWorkbench workbench) : IClassFixture<HangarWorkbench>
{
    private const string Password = "brown ladder by the river";

    [Fact]
    public async Task Signing_out_with_the_network_gone_leaves_nothing_to_the_next_person_and_ends_the_session_once_it_is_back()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/sign-in");
        await visit.Page.GetByLabel("Key from the console").FillAsync(workbench.FirstKey);
        await visit.Page.GetByLabel("Your name here").FillAsync("keeper.one");
        await visit.Page.GetByLabel("Password").FillAsync(Password);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make the first keeper" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" })).ToBeVisibleAsync();
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
        Assert.Contains("keeper.one", await Me(visit), StringComparison.Ordinal);

        await visit.Page.Context.SetOfflineAsync(false);
        await visit.Page.ReloadAsync();
        await visit.Page.WaitForURLAsync("**/sign-in**");
        Assert.DoesNotContain("keeper.one", await Me(visit), StringComparison.Ordinal);
        await visit.Page.GetByLabel("Name").FillAsync("keeper.one");
        await visit.Page.GetByLabel("Password").FillAsync(Password);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" })).ToBeVisibleAsync();
        visit.Sound();
    }

    private static async Task<string> Me(Visit visit) => await (await visit.Page.APIRequest.GetAsync("/api/me")).TextAsync();

    private static Task<string[]> Kept(Visit visit, string store) =>
        visit.Page.EvaluateAsync<string[]>("async store => await (await import('/js/store.js')).all(store)", store);
}
