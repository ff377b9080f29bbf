using System.Net;
using System.Security.Cryptography;
using Fairlead.Server.Records;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Server;

/// <summary>What a tablet sends that was without the network: once, for one entry, and to the log that it knew.</summary>
public sealed class TabletTests
{
    private const string Log = "/api/jobs/demo/log";
    private const string Pin = "271828";
    private const string One = "task/LOADS", Two = "task/KIT";
    private static readonly Dictionary<string, string> Work = new() { ["role"] = "work", ["scope"] = "avionics" };
    private static readonly byte[] Dot = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");

    [Fact]
    public async Task An_entry_that_is_sent_again_stands_in_the_log_once_and_after_a_restart_too()
    {
        var data = Directory.CreateTempSubdirectory("fairlead-server").FullName;
        var entry = Note("seen") with { Tablet = Tablet() };
        LogLine first;
        await using (var server = await RunningServer.Start(lan: false, data))
        {
            using var tablet = server.Anybody();
            first = await Taken(tablet, entry);
            Assert.Equal(first.Hash, (await Taken(tablet, entry with { Tablet = entry.Tablet! with { SentAt = DateTimeOffset.UtcNow } })).Hash);
        }

        await using (var again = await RunningServer.Start(lan: false, data))
        {
            using var tablet = again.Anybody();
            Assert.Equal(first.Hash, (await Taken(tablet, entry)).Hash);
            Assert.Single((await tablet.GetFromJsonAsync<LogLine[]>(Log))!);
            Assert.Contains("another entry under the id", await Refused(tablet, Note("other") with { Tablet = entry.Tablet }), StringComparison.Ordinal);
        }

        Directory.Delete(data, recursive: true);
    }

    [Fact]
    public async Task Two_that_send_one_entry_at_once_make_one_entry()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        var entry = Note("seen") with { Tablet = Tablet() };
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Taken(tablet, entry)));
        Assert.Single(answers.Select(a => a.Hash).Distinct());
        Assert.Single((await tablet.GetFromJsonAsync<LogLine[]>(Log))!);
    }

    [Fact]
    public async Task A_sealed_pin_signs_the_entry_it_was_sealed_for_and_no_other()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        await Done(tablet, One);
        await Done(tablet, Two);
        var signature = await Signature(tablet, One, Pin);

        Assert.Contains("another entry", await Refused(tablet, signature with { Subject = Two }), StringComparison.Ordinal);
        Assert.Contains("another entry", await Refused(tablet, signature with { Tablet = signature.Tablet! with { Id = Guid.NewGuid().ToString("D") } }), StringComparison.Ordinal);
        Assert.Contains("another entry", await Refused(tablet, signature with { Tablet = signature.Tablet! with { At = signature.Tablet.At.AddSeconds(1) } }), StringComparison.Ordinal);
        Assert.Contains("another entry", await Refused(tablet, signature with { Payload = new Dictionary<string, string> { ["role"] = "inspection", ["scope"] = "avionics" } }), StringComparison.Ordinal);
        Assert.Contains("cannot be opened", await Refused(tablet, signature with { Tablet = signature.Tablet! with { Sealed = Convert.ToBase64String(new byte[384]) } }), StringComparison.Ordinal);
        var taken = await Taken(tablet, signature);
        Assert.Equal(taken.Sequence, (await Taken(tablet, signature)).Sequence);
        Assert.Single((await tablet.GetFromJsonAsync<LogLine[]>(Log))!, l => l.Kind == "signed");
        Assert.DoesNotContain(Directory.EnumerateFiles(server.Data, "*", SearchOption.AllDirectories), f => Latin(f).Contains(Pin, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_wrong_pin_and_a_seal_for_another_server_are_refused_with_words()
    {
        await using var server = await RunningServer.Start(lan: false);
        await using var other = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        using var elsewhere = other.Anybody();
        await Done(tablet, One);

        Assert.Contains("not the PIN", await Refused(tablet, await Signature(tablet, One, "314159")), StringComparison.Ordinal);
        Assert.Contains("another server", await Refused(tablet, await Signature(elsewhere, One, Pin)), StringComparison.Ordinal);
        Assert.DoesNotContain((await tablet.GetFromJsonAsync<LogLine[]>(Log))!, l => l.Kind == "signed");
        var key = Path.Combine(server.Data, "seal.pem");
        Assert.True(OperatingSystem.IsWindows() || File.GetUnixFileMode(key) == (UnixFileMode.UserRead | UnixFileMode.UserWrite));
    }

    [Fact]
    public async Task Of_many_pins_guessed_at_once_five_are_looked_at_and_no_more()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        await Done(tablet, One);
        var guesses = await Task.WhenAll(Enumerable.Range(0, 50).Select(i => Refused(tablet, new NewEntry("P1", "signed", One, Work, $"guess-{i}"))));
        Assert.Equal(5, guesses.Count(g => g.Contains("not the PIN", StringComparison.Ordinal)));
        Assert.Equal(45, guesses.Count(g => g.Contains("wrong entries in a row", StringComparison.Ordinal)));
        Assert.Contains("wait until", await Refused(tablet, new NewEntry("P1", "signed", One, Work, Pin)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task That_a_pin_was_set_the_log_writes_and_nobody_else_does_nor_a_revision_without_its_text()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        (await tablet.PostAsJsonAsync("/api/jobs/demo/pin", new NewPin("P1", "", Pin))).EnsureSuccessStatusCode();
        Assert.Equal("person/P1", Assert.Single((await tablet.GetFromJsonAsync<LogLine[]>(Log))!, l => l.Kind == "pin-set").Subject);
        Assert.Contains("writes itself", await Refused(tablet, new NewEntry("P1", "pin-set", "person/P2")), StringComparison.Ordinal);
        Assert.Contains("together with its text", await Refused(tablet, new NewEntry("P1", "revised", "document/change.yaml", new Dictionary<string, string> { ["base"] = "0", ["sha256"] = new string('a', 64) })), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await tablet.PostAsJsonAsync("/api/jobs/demo/pin", new NewPin("P1", Pin, new string('x', 300)))).StatusCode);
    }

    [Fact]
    public async Task An_entry_about_something_the_job_does_not_know_is_refused_with_the_nearest()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        Assert.Contains($"Did you mean '{One}'?", await Refused(tablet, new NewEntry("P1", "started", One + "X") { Tablet = Tablet() }), StringComparison.Ordinal);
        Assert.Contains("Did you mean 'panel/GLARE'?", await Refused(tablet, new NewEntry("P1", "opened", "panel/GLAER")), StringComparison.Ordinal);
        Assert.Contains("serial number", await Refused(tablet, new NewEntry("P1", "fitted", "part/REC1")), StringComparison.Ordinal);
        Assert.Empty((await tablet.GetFromJsonAsync<LogLine[]>(Log))!);
    }

    [Fact]
    public async Task An_authorisation_that_ended_before_the_tablet_came_back_signs_nothing()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        await Done(tablet, One);
        var signature = await Signature(tablet, One, Pin);
        var file = Path.Combine(server.Data, "jobs", "demo", "job.yaml");
        await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file)).Replace("EX-001, until: 2030-12-31", "EX-001, until: 2020-12-31", StringComparison.Ordinal));

        Assert.Contains("ended on 2020-12-31", await Refused(tablet, signature), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_log_that_does_not_hold_what_the_tablet_saw_is_sent_nothing()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        var line = await Taken(tablet, Note("one"));

        Assert.Equal(HttpStatusCode.Conflict, (await Send(tablet, Note("two") with { Tablet = Tablet() with { Seen = new LogMark(2, line.Hash) } })).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Send(tablet, Note("two") with { Tablet = Tablet() with { Seen = new LogMark(1, new string('a', 64)) } })).StatusCode);
        Assert.Single((await tablet.GetFromJsonAsync<LogLine[]>(Log))!);
        var head = await tablet.GetFromJsonAsync<LogMark>(Log + "/head");
        Assert.Equal(new LogMark(line.Sequence, line.Hash), head);
        Assert.Equal(2, (await Taken(tablet, Note("two") with { Tablet = Tablet() with { Seen = head } })).Sequence);
    }

    [Fact]
    public async Task A_photograph_is_what_its_bytes_say_and_is_kept_under_their_hash()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        var page = "<html><script>alert(1)</script></html>"u8.ToArray();

        Assert.Contains("no whole JPEG or PNG", await Refused(tablet, Photograph(page)), StringComparison.Ordinal);
        Assert.Contains("no whole JPEG or PNG", await Refused(tablet, Photograph(Dot[..^4])), StringComparison.Ordinal);
        Assert.Contains("at most", await Refused(tablet, Photograph([.. Dot, .. new byte[Fairlead.Records.Pictures.MostBytes]])), StringComparison.Ordinal);
        Assert.Contains("does not have the SHA-256", await Refused(tablet, Photograph(Dot) with { Payload = new Dictionary<string, string> { ["sha256"] = new string('0', 64) } }), StringComparison.Ordinal);
        Assert.Empty((await tablet.GetFromJsonAsync<LogLine[]>(Log))!);

        await Taken(tablet, Photograph(Dot));
        var listed = Assert.Single((await tablet.GetFromJsonAsync<PhotographView[]>("/api/jobs/demo/photographs"))!);
        Assert.Equal((One, true), (listed.Subject, listed.Kept));
        using var answer = await tablet.GetAsync($"/api/jobs/demo/photographs/{listed.Hash}");
        Assert.Equal(Dot, await answer.Content.ReadAsByteArrayAsync());
        Assert.Equal("image/png", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(["nosniff"], answer.Headers.GetValues("X-Content-Type-Options"));
        Assert.Equal(["default-src 'none'; sandbox"], answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Equal(HttpStatusCode.NotFound, (await tablet.GetAsync($"/api/jobs/demo/photographs/{new string('0', 64)}")).StatusCode);
    }

    [Fact]
    public async Task The_log_says_what_the_clock_of_the_tablet_said_and_that_it_was_set()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        var now = DateTimeOffset.UtcNow;

        var right = await Taken(tablet, Note("right") with { Tablet = Tablet(now) });
        Assert.False(right.Payload.ContainsKey("tablet-clock") || right.Payload.ContainsKey("tablet-moved"));
        var late = await Taken(tablet, Note("late") with { Tablet = Tablet(now.AddHours(-3)) with { SentAt = now.AddHours(-1), Ahead = 3600 } });
        Assert.Equal("60 min behind the server's", late.Payload["tablet-clock"]);
        Assert.False(late.Payload.ContainsKey("tablet-moved"));
        Assert.True((late.At - now).Duration() < TimeSpan.FromMinutes(5));
        var back = await Taken(tablet, Note("back") with { Tablet = Tablet(now.AddHours(-1)) with { SentAt = now.AddHours(-2), Ahead = 0 } });
        Assert.StartsWith("set back by 60 min", back.Payload["tablet-moved"], StringComparison.Ordinal);
        var set = await Taken(tablet, Note("set") with { Tablet = Tablet(now.AddHours(-4)) with { SentAt = now, Ahead = 7200 } });
        Assert.StartsWith("set forward by 120 min", set.Payload["tablet-moved"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_log_writes_itself_nobody_else_writes()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var tablet = server.Anybody();
        foreach (var name in new[] { "tablet-entry", "tablet-time", "authorisation", "valid-until" })
        {
            Assert.Contains("written by the log itself", await Refused(tablet, Note("x") with { Payload = new Dictionary<string, string> { ["text"] = "x", [name] = "x" } }), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.BadRequest, (await Send(tablet, Note("x") with { Tablet = Tablet() with { Id = "1" } })).StatusCode);
    }

    private static NewEntry Note(string text) => new("P1", "noted", One, new Dictionary<string, string> { ["text"] = text });

    private static NewEntry Photograph(byte[] bytes) =>
        new("P1", "photographed", One, new Dictionary<string, string> { ["sha256"] = Convert.ToHexStringLower(SHA256.HashData(bytes)), ["caption"] = "the tray" }) { Photograph = bytes, Tablet = Tablet() };

    private static TabletNote Tablet(DateTimeOffset? at = null) => new(Guid.NewGuid().ToString("D"), "tablet-one", at ?? DateTimeOffset.UtcNow, at ?? DateTimeOffset.UtcNow);

    private static async Task<NewEntry> Signature(HttpClient client, string subject, string pin)
    {
        var key = (await client.GetFromJsonAsync<SealKey>("/api/seal-key"))!;
        using var rsa = RSA.Create();
        rsa.ImportSubjectPublicKeyInfo(Convert.FromBase64String(key.Spki), out _);
        var note = Tablet();
        var text = SealText.Of(SealText.Digest("demo", "P1", "signed", subject, Work, note), pin);
        return new NewEntry("P1", "signed", subject, Work) { Tablet = note with { Key = key.Id, Sealed = Convert.ToBase64String(rsa.Encrypt(text, RSAEncryptionPadding.OaepSHA256)) } };
    }

    private static async Task Done(HttpClient client, string subject)
    {
        await client.PostAsJsonAsync("/api/jobs/demo/pin", new NewPin("P1", "", Pin));
        await Taken(client, new NewEntry("P1", "started", subject));
        await Taken(client, new NewEntry("P1", "done", subject));
    }

    private static Task<HttpResponseMessage> Send(HttpClient client, NewEntry entry) => client.PostAsJsonAsync(Log, entry);

    private static async Task<LogLine> Taken(HttpClient client, NewEntry entry)
    {
        using var answer = await Send(client, entry);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (await answer.Content.ReadFromJsonAsync<LogLine>())!;
    }

    private static async Task<string> Refused(HttpClient client, NewEntry entry)
    {
        using var answer = await Send(client, entry);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return string.Join(' ', (await answer.Content.ReadFromJsonAsync<Refused>())!.Reasons);
    }

    private static string Latin(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
        return reader.ReadToEnd();
    }
}
