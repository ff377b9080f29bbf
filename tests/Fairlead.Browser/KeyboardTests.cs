using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>The keyboard alone: whatever a person does in a job, without a pointer, and the focus is always to be seen.</summary>
public sealed class KeyboardTests(Workbench served)
{
    // A page has a few dozen stops, and a grid a few hundred; more means that what is looked for is never reached.
    private const int MostStops = 400;
    private const string Twin = "keys";
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task A_job_is_opened_edited_looked_into_and_worked_on_without_a_pointer()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/");
        await Press(visit, Twin);
        await visit.Page.WaitForURLAsync("**/job/" + Twin);
        await visit.Settle();

        // A finding, its sheet, and back to where one was.
        await TabTo(visit, visit.Page.Locator(".findings button.link").First);
        await visit.Page.Keyboard.PressAsync("Enter");
        var sheet = visit.Page.GetByLabel("Working", new() { Exact = true });
        await Assertions.Expect(sheet).ToContainTextAsync("Sources");
        await Assertions.Expect(sheet.Locator("h2")).ToBeFocusedAsync();
        await Seen(visit);
        await TabTo(visit, sheet.GetByRole(AriaRole.Button, new() { Name = "Close" }));
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet).ToHaveCountAsync(0);
        await Assertions.Expect(visit.Page.Locator(".findings button.link").First).ToBeFocusedAsync();
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet).ToContainTextAsync("Sources");
        await visit.Page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(sheet).ToHaveCountAsync(0);

        // The input that drives it.
        await TabTo(visit, visit.Page.Locator(".findings a").First);
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Page.WaitForURLAsync("**/edit/**");

        // A value, taken back and made again.
        await visit.Go("job/" + Twin + "/edit/change/fit/XPD1");
        var mounting = visit.Page.GetByLabel("mounting", new() { Exact = true });
        await TabTo(visit, mounting);
        await visit.Page.Keyboard.PressAsync("Control+a");
        await visit.Page.Keyboard.TypeAsync("9 kg");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(visit.Page.GetByLabel("What the last edit changed")).ToContainTextAsync("Empty weight");
        await Assertions.Expect(mounting).ToBeFocusedAsync();
        var (undo, redo) = (visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }), visit.Page.GetByRole(AriaRole.Button, new() { Name = "Redo" }));
        await TabTo(visit, undo, back: true);
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(mounting).ToHaveValueAsync("0.42 kg");
        await visit.Idle();
        await Assertions.Expect(undo).ToBeFocusedAsync();
        await visit.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(redo).ToBeFocusedAsync();
        await visit.Page.Keyboard.PressAsync("Space");
        await Assertions.Expect(mounting).ToHaveValueAsync("9 kg");
        await visit.Idle();
        await Assertions.Expect(redo).ToBeFocusedAsync();
        await visit.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(mounting).ToHaveValueAsync("0.42 kg");
        await visit.Idle();

        // A task, begun and done.
        await Press(visit, "Work");
        await visit.Page.WaitForURLAsync("**/work");
        await visit.Settle();
        await TabTo(visit, visit.Page.Locator("main select").First);
        await visit.Page.Keyboard.TypeAsync("Avionics");
        await Assertions.Expect(visit.Page.GetByLabel("New PIN or password")).ToBeVisibleAsync();
        await TabTo(visit, visit.Page.Locator(".tasks a[href$='/work/KIT']"));
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Page.WaitForURLAsync("**/work/KIT");
        await visit.Settle();
        await TabTo(visit, visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }));
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(visit.Page.Locator("main .state").First).ToContainTextAsync("begun");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true })).ToBeFocusedAsync();
        await Seen(visit);
        visit.Sound();
    }

    private static async Task Press(Visit visit, string link)
    {
        await TabTo(visit, visit.Page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }));
        await visit.Page.Keyboard.PressAsync("Enter");
    }

    // Every stop on the way has to be seen too.
    private static async Task TabTo(Visit visit, ILocator target, bool back = false)
    {
        await target.WaitForAsync();
        for (var stops = 0; !await target.EvaluateAsync<bool>("e => e === document.activeElement"); stops++)
        {
            Assert.True(stops < MostStops, $"{target} is not reached by the keyboard");
            await visit.Page.Keyboard.PressAsync(back ? "Shift+Tab" : "Tab");
            await Seen(visit);
        }
    }

    private static async Task Seen(Visit visit) => Assert.Equal("", await visit.Page.EvaluateAsync<string>("""
        () => {
            const e = document.activeElement;
            if (!e || e === document.body || e === document.documentElement) return document.hasFocus() && e === document.body ? '' : 'the focus is lost';
            const shape = e.getBoundingClientRect(), style = getComputedStyle(e), label = e.closest('label');
            const marked = (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || (e instanceof SVGElement && style.outlineStyle !== 'none') || (label && getComputedStyle(label).outlineStyle !== 'none');
            const inside = shape.width > 0 && shape.height > 0 && shape.bottom > 0 && shape.top < innerHeight && shape.right > 0 && shape.left < innerWidth;
            return marked && (inside || label) ? '' : (marked ? 'out of sight: ' : 'not marked: ') + e.outerHTML.slice(0, 160);
        }
        """));
}
