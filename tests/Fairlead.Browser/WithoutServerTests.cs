using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>Editing goes on when the server does not answer, with the same verdicts, and no edit is lost.</summary>
public sealed class WithoutServerTests(Workbench served)
{
    private const string Twin = "without";
    private const string Item = "job/" + Twin + "/edit/change/fit/XPD1";
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task With_the_network_gone_an_edit_is_judged_as_by_the_server_and_is_kept_when_it_is_back()
    {
        Workbench.Require();
        await using var here = await workbench.Open("/" + Item, away: true);
        await here.Installed();
        await here.Page.Context.SetOfflineAsync(true);
        await Mount(here, "90 kg");
        await Assertions.Expect(here.Page.Locator(".bar .place")).ToHaveTextAsync("Working here, without the server");
        await using var there = await workbench.Open("/" + Item);
        await Mount(there, "90 kg");
        Assert.Equal(await Said(there), await Said(here));
        await Assertions.Expect(there.Page.Locator(".bar .place")).ToHaveCountAsync(0);

        await here.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(here.Page.Locator(".bar .place")).ToHaveCountAsync(0);
        await Assertions.Expect(Mounting(here)).ToHaveValueAsync("90 kg");
        await Keep(here, "made without the network");
        await Assertions.Expect(here.Page.Locator(".tools")).ToContainTextAsync("Kept");
        await Keep(there, "made with it");
        await Assertions.Expect(there.Page.Locator(".tools")).ToContainTextAsync("Kept");
        there.Sound();
    }

    [Fact]
    public async Task What_somebody_else_kept_while_the_network_was_gone_is_shown_and_not_merged()
    {
        Workbench.Require();
        await using var here = await workbench.Open("/job/" + Twin + "/edit/change", away: true);
        await here.Installed();
        await here.Page.Context.SetOfflineAsync(true);
        await Title(here, "Mine, made without the network");
        await using var there = await workbench.Open("/job/" + Twin + "/edit/change");
        await Title(there, "Theirs, kept meanwhile");
        await Keep(there, "meanwhile");
        await Assertions.Expect(there.Page.Locator(".tools")).ToContainTextAsync("Kept");

        await here.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(here.Page.GetByLabel("Changes of others")).ToContainTextAsync("You have edited it too");
        await Assertions.Expect(here.Page.Locator(".bar .title")).ToHaveTextAsync("Mine, made without the network");
        await Keep(here, "mine");
        await Assertions.Expect(here.Page.Locator(".versions")).ToContainTextAsync("Theirs, kept meanwhile");
        await Assertions.Expect(here.Page.Locator(".versions")).ToContainTextAsync("Mine, made without the network");
    }

    [Fact]
    public async Task Edits_of_a_page_that_went_without_keeping_them_are_put_back_or_dropped()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/" + Item);
        await Mount(visit, "7 kg");
        await visit.Again(Item);
        await Assertions.Expect(Left(visit)).ToContainTextAsync("1 edit from");
        await Assertions.Expect(Left(visit)).ToContainTextAsync("change/fit/XPD1/mounting 7 kg");
        await Mounting(visit).FillAsync("8 kg");
        await Mounting(visit).BlurAsync();
        await Assertions.Expect(visit.Page.Locator("main .note.error")).ToContainTextAsync("put back or dropped");
        await Left(visit).GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
        await Assertions.Expect(Left(visit)).ToHaveCountAsync(0);
        await Assertions.Expect(Mounting(visit)).ToHaveValueAsync("7 kg");

        await visit.Again(Item);
        await Left(visit).GetByRole(AriaRole.Button, new() { Name = "Drop it" }).ClickAsync();
        await Assertions.Expect(Left(visit)).ToHaveCountAsync(0);
        await visit.Again(Item);
        await Assertions.Expect(Mounting(visit)).Not.ToHaveValueAsync("7 kg");
        await Assertions.Expect(Left(visit)).ToHaveCountAsync(0);
        visit.Sound();
    }

    [Fact]
    public async Task An_edit_made_with_the_network_gone_outlives_the_page()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/" + Item, away: true);
        await visit.Installed();
        await visit.Page.Context.SetOfflineAsync(true);
        await Mount(visit, "6 kg");
        await visit.Again(Item);
        await Left(visit).GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
        await Assertions.Expect(Mounting(visit)).ToHaveValueAsync("6 kg");
        await Assertions.Expect(visit.Page.Locator(".bar .place")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Whoever_chooses_to_works_without_the_server_and_takes_edits_back_there()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/" + Item);
        var before = await Mounting(visit).InputValueAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Work without the server" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".bar .place")).ToHaveCountAsync(1);
        await Mount(visit, "5 kg");
        await Mount(visit, "5 bananas");
        await Assertions.Expect(visit.Page.Locator(".field.wrong .problem")).ToContainTextAsync("5 bananas");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(Mounting(visit)).ToHaveValueAsync("5 kg");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Work with the server again" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".bar .place")).ToHaveCountAsync(0);
        await Assertions.Expect(Mounting(visit)).ToHaveValueAsync("5 kg");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(Mounting(visit)).ToHaveValueAsync(before);
        visit.Sound();
    }

    private static ILocator Left(Visit visit) => visit.Page.GetByLabel("Edits not kept");

    private static ILocator Mounting(Visit visit) => visit.Page.GetByLabel("mounting", new() { Exact = true });

    private static async Task Mount(Visit visit, string words)
    {
        await Mounting(visit).FillAsync(words);
        await Mounting(visit).BlurAsync();
        await visit.Idle();
        await Assertions.Expect(visit.Page.GetByLabel("What the last edit changed")).ToBeVisibleAsync();
    }

    private static async Task Title(Visit visit, string words)
    {
        var field = visit.Page.GetByLabel("title", new() { Exact = false }).First;
        await field.FillAsync(words);
        await field.BlurAsync();
        await Assertions.Expect(visit.Page.Locator(".bar .title")).ToHaveTextAsync(words);
    }

    // All that follows from the edit: the verdict, the figures, every finding.
    // All that the page says but that the network is away.
    private static async Task<string> Page(Visit visit) =>
        await visit.Page.Locator("main").EvaluateAsync<string>("main => { const copy = main.innerText; const note = main.querySelector('.note.away'); return (note ? copy.replace(note.innerText, '') : copy).replace(/\\n+/g, '\\n').trim(); }");

    private static async Task<string> Said(Visit visit)
    {
        var standing = await visit.Page.Locator(".bar .standing").InnerTextAsync();
        var change = await visit.Page.GetByLabel("What the last edit changed").InnerTextAsync();
        await visit.Go("job/" + Twin + "/proof/Balance");
        await visit.Still();
        var balance = await Page(visit);
        await visit.Go("job/" + Twin);
        await visit.Still();
        var overview = await Page(visit);
        await visit.Go(Item);
        return string.Join('\n', standing, change, balance, overview);
    }

    private static async Task Keep(Visit visit, string why)
    {
        await visit.Go("job/" + Twin + "/keep");
        await visit.Page.Locator("main select").First.SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await visit.Page.GetByLabel("Why").FillAsync(why);
        await visit.Page.Locator("main form button[type=submit]").ClickAsync();
    }
}
