using System.Globalization;
using System.Text.RegularExpressions;
using Fairlead.Workbench.Views;
using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>Works a card through on its page, as a person does: what it asks for is entered, what it has to show is keyed in, what is due is signed.</summary>
internal sealed partial class Hands(Visit visit, string job, string pin, byte[] picture)
{
    private IPage Page => visit.Page;

    /// <summary>Who a signature may be of: the first of some people who has the authorisation and, as a second person, has not worked on it.</summary>
    public static string Signer(SignatureView due, string worker, (string Id, string[] Scopes)[] people) =>
        people.First(p => (due.Scope.Length == 0 || p.Scopes.Contains(due.Scope)) && (due.Role == "work" ? p.Scopes.Contains(due.Scope) || p.Id == worker : p.Id != worker)).Id;

    /// <summary>A value that is within the limits as the page shows them.</summary>
    public static string Within(TestLineView line)
    {
        decimal[] numbers = [.. Numbers().Matches(line.Limits).Select(m => decimal.Parse(m.Value, CultureInfo.InvariantCulture))];
        var value = line.Limits switch
        {
            var l when l.StartsWith("at most", StringComparison.Ordinal) => numbers[0] / 2,
            var l when l.StartsWith("at least", StringComparison.Ordinal) => numbers[0] + 1,
            var l when l.Contains(" to ", StringComparison.Ordinal) && numbers.Length > 1 => (numbers[0] + numbers[1]) / 2,
            var l when l.StartsWith("in ", StringComparison.Ordinal) => 1,
            _ => numbers[0],
        };
        return Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);
    }

    public async Task Be(string who)
    {
        var select = Page.Locator("main .who select");
        await select.SelectOptionAsync(who);
        await Assertions.Expect(select).ToHaveValueAsync(who);
    }

    public async Task Enter(IReadOnlyList<CardEntryView> entries, string worker)
    {
        await Be(worker);
        foreach (var (entry, at) in entries.Select((e, i) => (e, i)))
        {
            var item = Page.Locator(".toenter > li").Nth(at);
            if (entry.Kind == "photographed")
            {
                await Page.Locator("input[type=file]").Last.SetInputFilesAsync(new FilePayload { Name = "seen.png", MimeType = "image/png", Buffer = picture });
                await Page.GetByLabel("What it shows").FillAsync(entry.Words);
                await Page.GetByRole(AriaRole.Button, new() { Name = "Attach" }).ClickAsync();
                await Assertions.Expect(Page.Locator(".photographs img")).ToHaveCountAsync(1);
            }
            else
            {
                foreach (var ask in entry.Asks.Where(a => a is { Needed: true, Name: "serial" or "weight", Value: "" }))
                {
                    await item.GetByLabel(ask.Words).FillAsync(ask.Name == "serial" ? "none" : "0.4 lb");
                }

                await item.GetByRole(AriaRole.Button, new() { Name = entry.Words, Exact = true }).ClickAsync();
            }

            await Assertions.Expect(item).ToHaveClassAsync("made");
        }
    }

    public async Task Find(TestView card, string worker)
    {
        await Be(worker);
        if (card.Kind == "ramp")
        {
            await Page.GetByLabel("Who watches outside").FillAsync("the other one");
        }

        foreach (var (line, at) in card.Lines.Select((l, i) => (l, i)))
        {
            var row = Page.Locator(".lines tbody tr").Nth(at);
            if (line.Unit.Length > 0)
            {
                await Measure(card, line, at);
            }
            else if (card.Kind == "settings")
            {
                await row.Locator("input").FillAsync(line.Limits);
                await row.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
            }
            else
            {
                await row.GetByRole(AriaRole.Button, new() { Name = "As expected" }).ClickAsync();
            }

            await Assertions.Expect(row.Locator(".verdict")).ToHaveTextAsync("Holds");
        }
    }

    public async Task Sign(IEnumerable<(SignatureView Due, string Who)> signatures)
    {
        var made = Page.GetByLabel("Signatures").Locator("ul.plain > li");
        foreach (var (due, who) in signatures)
        {
            await Be(who);
            var before = await made.CountAsync();
            await Page.GetByLabel("PIN", new() { Exact = true }).FillAsync(pin);
            await Page.GetByRole(AriaRole.Button, new() { Name = "Sign", Exact = true }).ClickAsync();
            await Assertions.Expect(made).ToHaveCountAsync(before + 1);
            await Assertions.Expect(made.Nth(before)).ToContainTextAsync($"{due.Words}: {who}");
        }
    }

    public Task Open(string page) => visit.Go($"job/{job}/{page}");

    private async Task Measure(TestView card, TestLineView line, int at)
    {
        if (line.Unit != "contacts" && await Page.GetByLabel("Instrument").InputValueAsync() is "")
        {
            await Page.GetByLabel("Instrument").SelectOptionAsync(card.Instruments[0].Id);
        }

        await Page.Locator($"#found-{at.ToString(CultureInfo.InvariantCulture)}").ClickAsync();
        var pad = Page.GetByLabel("Keys for the reading");
        foreach (var key in Within(line))
        {
            await pad.GetByRole(AriaRole.Button, new() { Name = key switch { '.' => "Point", '-' => "Below nothing", _ => key.ToString() }, Exact = true }).ClickAsync();
        }

        await pad.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }).ClickAsync();
    }

    [GeneratedRegex(@"-?\d+(\.\d+)?", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();
}
