using System.Security.Cryptography;
using Fairlead.Client.Shell;
using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>Readings taken with big keys on a tablet.</summary>
public sealed class ReadingTests(Workbench served)
{
    // A gloved finger needs 15 mm and more; 64 CSS pixels are 17 mm at the 96 to the inch that CSS counts with.
    private const double Finger = 56;
    private const string Twin = "readings";
    private const string Log = "jobs/" + Twin + "/log";
    private const string Pin = "a-long-secret";
    private const string Card = "job/" + Twin + "/tests/BOND-XPD1";
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task A_reading_is_keyed_in_with_a_thumb_in_the_unit_of_the_display_and_judged()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/" + Card, width: 800);
        await Ready(visit);
        var found = visit.Page.Locator("#found-0");
        await found.ClickAsync();
        var pad = visit.Page.GetByLabel("Keys for the reading");
        foreach (var key in await pad.GetByRole(AriaRole.Button).AllAsync())
        {
            var shape = (await key.BoundingBoxAsync())!;
            Assert.True(shape.Width >= Finger && shape.Height >= Finger, $"{await key.InnerTextAsync()} is {shape.Width} by {shape.Height}");
            Assert.InRange(shape.Y + shape.Height, 0, 900);
        }

        foreach (var key in new[] { "Point", "0", "0", "9", "Delete the last", "1" })
        {
            await pad.GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).ClickAsync();
        }

        await pad.GetByRole(AriaRole.Button, new() { Name = "Ω", Exact = true }).ClickAsync();
        await Assertions.Expect(pad.Locator("output")).ToHaveTextAsync("0.001 Ω");
        await Assertions.Expect(found).ToBeFocusedAsync();
        await pad.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await Assertions.Expect(Verdict(visit)).ToContainTextAsync("Holds");
        var log = await (await visit.Page.APIRequest.GetAsync("/api/jobs/" + Twin + "/log")).TextAsync();
        Assert.Contains("\"value\":\"1\"", log, StringComparison.Ordinal);
        Assert.Contains("\"unit\":\"mΩ\"", System.Text.RegularExpressions.Regex.Unescape(log), StringComparison.Ordinal);
        visit.Sound();
    }

    [Fact]
    public async Task The_keyboard_enters_too_open_is_told_and_words_are_no_reading()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/" + Card.Replace("XPD1", "TS1", StringComparison.Ordinal));
        await Ready(visit);
        var found = visit.Page.Locator("#found-0");
        await found.ClickAsync();
        await visit.Page.Keyboard.TypeAsync("good");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(visit.Page.Locator(".pad .problem")).ToContainTextAsync("'good' is no reading");
        await found.FillAsync("O.L");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Verdict(visit)).ToContainTextAsync("Fails");
        await found.ClickAsync();
        await visit.Page.Keyboard.TypeAsync("0.9");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Verdict(visit)).ToContainTextAsync("Holds");
        visit.Sound();
    }

    // The log answers when the network lets it, and a thumb does not wait.
    [Fact]
    public async Task Keys_that_are_pressed_while_an_entry_is_on_its_way_are_not_lost()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/" + Card.Replace("XPD1", "RA1", StringComparison.Ordinal));
        await Ready(visit);
        var answered = new TaskCompletionSource();
        await visit.Page.RouteAsync("**/diagnosis", async route =>
        {
            await answered.Task;
            await route.ContinueAsync();
        });
        var found = visit.Page.Locator("#found-0");
        await found.ClickAsync();
        await visit.Page.Keyboard.TypeAsync("1");
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Page.Keyboard.TypeAsync("2");
        answered.SetResult();
        await Assertions.Expect(Verdict(visit)).ToContainTextAsync("Holds");
        await visit.Page.Keyboard.TypeAsync("3");
        await Assertions.Expect(found).ToHaveValueAsync("123");
        visit.Sound();
    }

    // Resistances are measured with the battery off, and that is for when the aircraft is seen and tested as found, with kit and approval: the log is told so directly, as it is no
    // matter of these tests.
    private static async Task Ready(Visit visit)
    {
        if (!(await visit.Ask<LogLine[]>(Log)).Any(l => l is { Kind: "signed", Subject: "task/BATTERY-OFF" }))
        {
            foreach (var who in new[] { "AV1", "IN1" })
            {
                await visit.Tell("jobs/" + Twin + "/pin", new { who, present = "", next = Pin });
            }

            var photograph = await visit.Page.ScreenshotAsync();
            await visit.Tell(Log, new { who = "AV1", kind = "photographed", subject = "task/SURVEY", payload = new { sha256 = Convert.ToHexStringLower(SHA256.HashData(photograph)) }, photograph });
            await Worked(visit, "AV1", "task/SURVEY", "avionics");
            await visit.Tell(Log, new { who = "AV1", kind = "observed", subject = "test/TEST-T1", payload = new { found = "as expected" } });
            await Signed(visit, "AV1", "test/TEST-T1", "avionics");
            await Worked(visit, "IN1", "task/KIT", "inspection");
            await Worked(visit, "IN1", "task/APPROVAL", "inspection");
            await Worked(visit, "AV1", "task/BATTERY-OFF", "electrical");
        }

        await visit.Page.Locator("main select").First.SelectOptionAsync("AV1");
    }

    private static async Task Worked(Visit visit, string who, string subject, string scope)
    {
        await visit.Tell(Log, new { who, kind = "started", subject });
        await visit.Tell(Log, new { who, kind = "done", subject });
        await Signed(visit, who, subject, scope);
    }

    private static Task<string> Signed(Visit visit, string who, string subject, string scope) => visit.Tell(Log, new { who, kind = "signed", subject, payload = new { role = "work", scope }, secret = Pin });

    private static ILocator Verdict(Visit visit) => visit.Page.Locator("table.rows tbody tr").First.Locator("td").Last;
}
