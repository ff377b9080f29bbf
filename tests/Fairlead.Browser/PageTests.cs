using System.Reflection;
using Deque.AxeCore.Playwright;
using Fairlead.Client;
using Microsoft.AspNetCore.Components;

namespace Fairlead.Tests.Browser;

/// <summary>What every page promises.</summary>
public sealed class PageTests(Workbench served)
{
    private const string Twin = "pages";
    private static readonly string[] Routes =
    [
        "", "account", "bench", "bench/conductor-temperature", "help", "people", "sign-in", "not-found", $"job/{Twin}", $"job/{Twin}/edit/change", $"job/{Twin}/edit/change/fit/XPD1", $"job/{Twin}/edit/change/circuits",
        $"job/{Twin}/proof/Power", $"job/{Twin}/proof/Balance", $"job/{Twin}/proof/Radio", $"job/{Twin}/connectors", $"job/{Twin}/connectors/XPD1/P1", $"job/{Twin}/drawings", $"job/{Twin}/drawings/Wiring",
        $"job/{Twin}/kit", $"job/{Twin}/cutting", $"job/{Twin}/papers", $"job/{Twin}/plan", $"job/{Twin}/work", $"job/{Twin}/work/APPROVAL", $"job/{Twin}/tests", $"job/{Twin}/tests/VIS-XPD1",
        $"job/{Twin}/release", $"job/{Twin}/log", $"job/{Twin}/revisions", $"job/{Twin}/waiting", $"job/{Twin}/keep",
    ];
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public void Every_route_of_the_router_is_among_those_that_are_looked_at()
    {
        var templates = typeof(App).Assembly.GetTypes().SelectMany(t => t.GetCustomAttributes<RouteAttribute>()).Select(r => r.Template).ToArray();
        Assert.NotEmpty(templates);
        Assert.All(templates, t => Assert.Contains(Routes, r => Serves(t, r)));
    }

    [Fact]
    public async Task Every_page_can_be_used_by_all_fits_a_tablet_and_asks_nobody_else()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/", width: 800);
        var shots = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "screenshots")).FullName;
        var faults = new List<string>();
        foreach (var route in Routes)
        {
            if (route.Length > 0)
            {
                await visit.Go(route);
            }

            await visit.Page.ScreenshotAsync(new() { Path = Path.Combine(shots, (route.Length == 0 ? "jobs" : route.Replace('/', '-')) + ".png") });
            var found = await visit.Page.RunAxe();
            faults.AddRange(found.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{route}: {v.Id}, {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
            if (await visit.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth > innerWidth + 1"))
            {
                faults.Add($"{route}: scrolls sideways");
            }
        }

        Assert.Empty(faults);
        visit.Sound();
    }

    private static bool Serves(string template, string route)
    {
        var (parts, given) = (template.Trim('/').Split('/'), route.Split('/'));
        var fits = parts[^1].StartsWith("{*", StringComparison.Ordinal) ? given.Length >= parts.Length - 1 : given.Length == parts.Length;
        return fits && parts.Zip(given).All(p => p.First.StartsWith('{') || p.First == p.Second);
    }
}
