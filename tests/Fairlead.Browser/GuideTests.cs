using System.Text.RegularExpressions;
using Fairlead.Workbench.Views;
using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>The guide of docs/workbench.md, step by step: each step can be done as it is told, and its picture is taken to artifacts/guide, from where it is copied to docs/pictures.</summary>
public sealed partial class GuideTests(OwnWorkbench served) : IClassFixture<OwnWorkbench>
{
    private const string Twin = "job/survey-twin";
    private const string Pin = "a-long-secret";
    private static readonly string Root = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", "..", ".."));
    private readonly List<string> taken = [];
    private readonly Workbench workbench = served.With("survey-twin");

    [Fact]
    public async Task Every_step_of_the_guide_can_be_done_and_has_its_picture()
    {
        Workbench.Require();
        await using (var desk = await workbench.Open("/", width: 1280, height: 800))
        {
            await Described(desk);
            await Proved(desk);
            desk.Sound();
        }

        await using (var tablet = await workbench.Open("/" + Twin + "/work", width: 800, height: 1000, away: true))
        {
            await Worked(tablet);
            tablet.Sound();
        }

        string[] shown = [.. Pictures().Matches(await File.ReadAllTextAsync(Path.Combine(Root, "docs", "workbench.md"), TestContext.Current.CancellationToken)).Select(m => m.Groups["name"].Value)];
        Assert.Equal(taken, shown);
        Assert.Equal(taken.Order(StringComparer.Ordinal), Directory.EnumerateFiles(Path.Combine(Root, "docs", "pictures")).Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal));
    }

    private async Task Described(Visit visit)
    {
        await visit.Page.GetByLabel("Name", new() { Exact = true }).FillAsync("first-job");
        await Take(visit, "jobs");
        await visit.Go(Twin);
        await Assertions.Expect(visit.Page.Locator(".map svg").First).ToBeVisibleAsync();
        await Take(visit, "overview");
        await visit.Page.Locator(".findings button.link").First.ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Working", new() { Exact = true })).ToContainTextAsync("Sources");
        await Take(visit, "sheet");
        await visit.Page.Keyboard.PressAsync("Escape");
        await visit.Page.Locator(".map select").SelectOptionAsync("change/fit/RA1");
        await Assertions.Expect(visit.Page.Locator(".about h3").First).ToContainTextAsync("RA1");
        await Take(visit, "map", visit.Page.Locator(".map"));
        await visit.Go(Twin + "/edit/aircraft/stations");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Paste rows" }).ClickAsync();
        await visit.Page.Locator(".paste textarea").FillAsync("id\tname\tfs\tmax\nNOSE-2\tNose locker (invented)\t1.1 m\t40 lb\nTAIL-2\tTail locker (invented)\t7.1 bananas\t30 lb");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take over" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("TAIL-2 fs", new() { Exact = true })).ToHaveAttributeAsync("aria-invalid", "true");
        await Take(visit, "grid");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await visit.Idle();
    }

    private async Task Proved(Visit visit)
    {
        await visit.Go(Twin + "/connectors");
        await Take(visit, "connectors");
        await visit.Go(Twin + "/proof/Balance");
        await Take(visit, "balance", visit.Page.GetByLabel("Move a weight and see"));
        await visit.Go(Twin + "/proof/Radio");
        await Take(visit, "radio", visit.Page.GetByText("Antennas against each other"));
        foreach (var title in new[] { "First title", "Second title" })
        {
            await visit.Go(Twin + "/edit/change");
            var field = visit.Page.GetByLabel("title", new() { Exact = false }).First;
            await field.FillAsync(title);
            await field.PressAsync("Enter");
            await Assertions.Expect(visit.Page.Locator(".bar .title")).ToHaveTextAsync(title);
            await visit.Go(Twin + "/keep");
            await visit.Page.GetByLabel("Who").SelectOptionAsync("AV1");
            await visit.Page.GetByLabel("Why").FillAsync("clearer title");
            await visit.Page.Locator("main form button[type=submit]").ClickAsync();
            await Assertions.Expect(visit.Page.Locator(".tools")).ToContainTextAsync("Kept");
        }

        await visit.Go(Twin + "/revisions");
        await Assertions.Expect(visit.Page.Locator("pre")).ToContainTextAsync("Second title");
        await Take(visit, "revisions");
        // The first plan of a job takes longest: it is asked for before the page is, whose patience ends sooner on a busy machine.
        await visit.Ask<PlanSummaryView>("jobs/survey-twin/plan");
        await visit.Go(Twin + "/plan");
        await Assertions.Expect(visit.Page.Locator("main .drawing svg").First).ToBeVisibleAsync();
        await Take(visit, "plan");
    }

    private async Task Worked(Visit visit)
    {
        await visit.Page.Locator("main .who select").SelectOptionAsync("IN1");
        await visit.Page.GetByLabel("New PIN or password").FillAsync(Pin);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Set", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("New PIN or password")).ToHaveCountAsync(0);
        await Take(visit, "work");
        await visit.Go(Twin + "/work/APPROVAL");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("main .state").First).ToContainTextAsync("done");
        await Take(visit, "card");
        await visit.Go(Twin + "/tests/BOND-XPD1");
        await visit.Page.Locator("#found-0").ClickAsync();
        foreach (var key in new[] { "1", "Point", "4" })
        {
            await visit.Page.GetByLabel("Keys for the reading").GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).ClickAsync();
        }

        await Take(visit, "reading", visit.Page.Locator("table.rows"));
        await visit.Go(Twin + "/tests/SCEN-SC2");
        await visit.Page.GetByLabel("Second", new() { Exact = true }).FillAsync("60");
        await Take(visit, "scenario", visit.Page.Locator("details").First);
        await visit.Go(Twin + "/work");
        await visit.TakeAlong();
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Go(Twin + "/work/KIT");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await visit.Go(Twin + "/waiting");
        await Assertions.Expect(visit.Page.Locator(".waiting")).ToContainTextAsync("Waits to be sent");
        await Take(visit, "waiting");
        await visit.Page.Context.SetOfflineAsync(false);
        await visit.Go(Twin + "/release");
        await Assertions.Expect(visit.Page.GetByText("waits to be sent")).ToHaveCountAsync(0);
        await Take(visit, "release");
    }

    private async Task Take(Visit visit, string name, ILocator? at = null)
    {
        await visit.Still();
        await (at is null ? visit.Page.EvaluateAsync("() => scrollTo(0, 0)") : at.EvaluateAsync("e => { e.scrollIntoView(); scrollBy(0, -90); }"));
        await visit.Page.ScreenshotAsync(new() { Path = Path.Combine(Directory.CreateDirectory(Path.Combine(Root, "artifacts", "guide")).FullName, name + ".png"), Animations = ScreenshotAnimations.Disabled });
        taken.Add(name);
    }

    [GeneratedRegex(@"\(pictures/(?<name>[a-z-]+)\.png\)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Pictures();
}
