using Fairlead.Model.Storage;
using Fairlead.Workbench.Views;
using Microsoft.Extensions.Time.Testing;

namespace Fairlead.Tests.Server;

/// <summary>A better plan is searched for while somebody waits for it: the search takes the whole machine.</summary>
public sealed class PlanTests
{
    private const string Plan = "/api/jobs/demo/plan";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task To_read_the_plan_begins_no_search()
    {
        await using var server = await Demonstration(new FakeTimeProvider(DateTimeOffset.UtcNow));
        using var browser = server.Anybody();
        for (var i = 0; i < 2; i++)
        {
            var plan = await browser.GetFromJsonAsync<PlanSummaryView>(Plan, Cancel);
            Assert.Equal(("", false, false), (plan!.Why, plan.Working, plan.Searched));
            Assert.NotEmpty(plan.Rows);
        }
    }

    [Fact]
    public async Task A_search_that_nobody_waits_for_ends_and_begins_again_when_somebody_does()
    {
        var clock = new FakeTimeProvider(DateTimeOffset.UtcNow);
        await using var server = await Demonstration(clock);
        using var browser = server.Anybody();
        Assert.True((await Begin(browser)).Working);
        for (var i = 0; i < 4; i++)
        {
            clock.Advance(TimeSpan.FromSeconds(10));
            Assert.True((await browser.GetFromJsonAsync<PlanSummaryView>(Plan, Cancel))!.Working);
        }

        clock.Advance(TimeSpan.FromSeconds(20));
        Assert.False((await Rest(browser)).Searched);
        Assert.True((await Begin(browser)).Working);
    }

    [Fact]
    public async Task Whoever_keeps_the_plan_ends_the_search_for_good()
    {
        await using var server = await Demonstration(new FakeTimeProvider(DateTimeOffset.UtcNow));
        using var browser = server.Anybody();
        Assert.True((await Begin(browser)).Working);
        (await browser.DeleteAsync(Plan, Cancel)).EnsureSuccessStatusCode();
        Assert.True((await Rest(browser)).Searched);
        Assert.False((await Begin(browser)).Working);
    }

    private static Task<RunningServer> Demonstration(TimeProvider clock) =>
        RunningServer.Start(lan: false, clock: clock, files: new FolderFiles(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")));

    private static async Task<PlanSummaryView> Begin(HttpClient browser)
    {
        using var answer = await browser.PostAsync(Plan, null, Cancel);
        return (await answer.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<PlanSummaryView>(Cancel))!;
    }

    // The search looks up from its work some moments after it was told to end.
    private static async Task<PlanSummaryView> Rest(HttpClient browser)
    {
        for (; ; await Task.Delay(50, Cancel))
        {
            if (await browser.GetFromJsonAsync<PlanSummaryView>(Plan, Cancel) is { Working: false } plan)
            {
                return plan;
            }
        }
    }
}
