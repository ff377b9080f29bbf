using System.Security.Cryptography;
using Fairlead.Workbench.Views;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Fairlead.Tests.Browser;

/// <summary>The whole job as people would do it: begun in the page, its text edited, worked through card by card, released, and its pack taken away.</summary>
public sealed class WholeJobTests(Workbench workbench)
{
    private const string Job = "whole-job";
    private const string Pin = "a-long-secret";
    private static readonly (string Id, string[] Scopes)[] People = [("P1", ["avionics", "electrical", "structure"]), ("P2", ["inspection", "release to service"])];

    [Fact]
    public async Task A_job_begun_in_the_page_is_worked_through_by_two_people_until_its_pack_is_released()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/");
        await Begin(visit);
        var picture = await visit.Page.ScreenshotAsync();
        var hands = new Hands(visit, Job, Pin, picture);
        foreach (var (id, _) in People)
        {
            await hands.Open("work");
            await hands.Be(id);
            await visit.Page.GetByLabel("New PIN or password").FillAsync(Pin);
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Set", Exact = true }).ClickAsync();
            await Assertions.Expect(visit.Page.GetByLabel("New PIN or password")).ToHaveCountAsync(0);
        }

        await hands.Open("release");
        await Assertions.Expect(visit.Page.Locator("main .note").Nth(0)).ToContainTextAsync("shut");

        // The first card that asks for what no other did is worked through on its page. The others differ by nothing but their names, and a browser would
        // be minutes at them: for those the same entries are told to the API that the page tells them to.
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var id in (await visit.Ask<TaskView[]>($"jobs/{Job}/tasks")).Where(t => t.Kind != "release").Select(t => t.Id))
        {
            var task = (await visit.Ask<TaskView[]>($"jobs/{Job}/tasks")).Single(t => t.Id == id);
            var test = task.IsTest ? (await visit.Ask<TestView[]>($"jobs/{Job}/tests")).Single(t => t.Id == id) : null;
            var parts = Parts(task, test).ToArray();
            await (parts.All(known.Contains) ? Told(visit, task, test, picture) : Worked(hands, task, test));
            known.UnionWith(parts);
        }

        Assert.True(known.Count > 12);
        await hands.Open("release");
        await Assertions.Expect(visit.Page.Locator("main .note").Nth(0)).ToContainTextAsync("The release gate is open");
        var release = (await visit.Ask<ReleaseView>($"jobs/{Job}/release")).Signatures.Single();
        await hands.Sign([(release, "P2")]);
        await AssertPacked(visit);
        visit.Sound();
    }

    private static async Task Begin(Visit visit)
    {
        await visit.Page.GetByLabel("Name", new() { Exact = true }).FillAsync(Job);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/job/" + Job);
        await visit.Settle();
        await Set(visit, "edit/job", "reference", "CHG-77 issue 1 (invented)");
        await Set(visit, "edit/parts/equipment/RECORDER", "mass", "1.9 lb");
        await Assertions.Expect(visit.Page.GetByLabel("What the last edit changed")).ToContainTextAsync("margin to the envelope");
        await Rows(visit, "P1", "electrical\tEX-003\t2030-12-31\nstructure\tEX-004\t2030-12-31");
        await Rows(visit, "P2", "release to service\tEX-005\t2030-12-31");
        await Assertions.Expect(visit.Page.Locator(".standing .verdict")).ToContainTextAsync("Holds");
        await visit.Go($"job/{Job}/keep");
        await visit.Page.GetByLabel("Who").SelectOptionAsync("P1");
        await visit.Page.GetByLabel("Why").FillAsync("as it is in this hangar");
        await visit.Page.Locator("main form button[type=submit]").ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".tools")).ToContainTextAsync("Kept");
    }

    private static async Task Set(Visit visit, string page, string field, string words)
    {
        await visit.Go($"job/{Job}/{page}");
        var input = visit.Page.Locator("main").GetByLabel(field, new() { Exact = false }).First;
        await input.FillAsync(words);
        await input.PressAsync("Enter");
        await visit.Idle();
        await Assertions.Expect(input).ToHaveValueAsync(words);
    }

    private static async Task Rows(Visit visit, string person, string rows)
    {
        await visit.Go($"job/{Job}/edit/job/people/{person}/authorisations");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Paste rows" }).ClickAsync();
        await visit.Page.Locator(".paste textarea").FillAsync("scope\tnumber\tuntil\n" + rows);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take over" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".paste")).ToHaveCountAsync(0);
    }

    // What a card asks of a person, by kind.
    private static IEnumerable<string> Parts(TaskView task, TestView? test) =>
        task.Entries.Select(e => e.Kind).Concat(task.Signatures.Select(s => "signed " + s.Role)).Concat(test is null ? [] : test.Lines.Select(l => l.Unit.Length > 0 ? l.Unit : test.Kind == "settings" ? "settings" : "words"));

    private static string Worker(TaskView task) => People.FirstOrDefault(p => p.Scopes.Contains(task.Authorisation)).Id ?? "P1";

    private static (SignatureView Due, string Who)[] Signers(TaskView task) => [.. task.Signatures.Select(s => (s, Hands.Signer(s, Worker(task), People)))];

    private static async Task Worked(Hands hands, TaskView task, TestView? test)
    {
        await hands.Open(test is null ? $"work/{task.Id}" : $"tests/{task.Id}");
        await (test is null ? hands.Enter(task.Entries, Worker(task)) : hands.Find(test, Worker(task)));
        await hands.Sign(Signers(task));
    }

    private static async Task Told(Visit visit, TaskView task, TestView? test, byte[] picture)
    {
        var (log, who) = ($"jobs/{Job}/log", Worker(task));
        foreach (var e in task.Entries)
        {
            var payload = new Dictionary<string, string>(e.Payload);
            foreach (var ask in e.Asks)
            {
                payload[ask.Name] = ask.Value;
            }

            var photograph = e.Kind == "photographed" ? picture : null;
            if (photograph is not null)
            {
                payload["sha256"] = Convert.ToHexStringLower(SHA256.HashData(photograph));
            }

            await visit.Tell(log, new { who, e.Kind, e.Subject, payload, photograph });
        }

        foreach (var l in test?.Lines ?? [])
        {
            await visit.Tell(log, l.Unit.Length > 0 && l.Unit != "contacts"
                ? new { who, kind = "measured", subject = "test/" + task.Id, payload = new Dictionary<string, string> { ["line"] = l.Id, ["value"] = Hands.Within(l), ["unit"] = l.Unit, ["instrument"] = test!.Instruments[0].Id, ["outside"] = "the other one" } }
                : new { who, kind = "observed", subject = "test/" + task.Id, payload = new Dictionary<string, string> { ["line"] = l.Id, ["found"] = l.Unit.Length > 0 ? Hands.Within(l) : test!.Kind == "settings" ? l.Limits : "as expected", ["outside"] = "the other one" } });
        }

        foreach (var (due, signer) in Signers(task))
        {
            await visit.Tell(log, new { who = signer, kind = "signed", due.Subject, payload = new { role = due.Role, scope = due.Scope.Length > 0 ? due.Scope : People.Single(p => p.Id == signer).Scopes[0] }, secret = Pin });
        }
    }

    // The pack names the head of the log, and holds the log itself.
    private static async Task AssertPacked(Visit visit)
    {
        var saved = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Release pack, PDF" }).ClickAsync());
        using var pack = PdfDocument.Open((await saved.PathAsync())!);
        var check = await visit.Ask<Check>($"jobs/{Job}/log/check");
        Assert.Equal("", check.Fault);
        var root = check.Head.Split(':')[^1];
        Assert.Equal(64, root.Length);
        Assert.Contains(root, string.Concat(pack.GetPages().Select(p => p.Text)).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.True(pack.Advanced.TryGetEmbeddedFiles(out var files));

        // A line for each entry, and the seal.
        Assert.Equal(check.Entries + 1, System.Text.Encoding.UTF8.GetString(files!.Single(f => f.Name.EndsWith("jsonl", StringComparison.Ordinal)).Bytes.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    private sealed record Check(string Head, int Entries, string Fault);
}
