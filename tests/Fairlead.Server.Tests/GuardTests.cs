using System.Net;
using System.Net.Sockets;
using System.Text;
using Fairlead.Model.Storage;
using Fairlead.Server.Desks;
using Fairlead.Server.Jobs;
using Fairlead.Server.Records;
using Fairlead.Workbench;

namespace Fairlead.Tests.Server;

/// <summary>What is asked of the server that no page of ours would ask.</summary>
public sealed class GuardTests
{
    private const string Log = "/api/jobs/demo/log";

    // Every name that a request of ours has, without its value.
    private static readonly string Hollow = "{" + string.Join(',', new[]
    {
        "who", "kind", "subject", "payload", "secret", "tablet", "photograph", "name", "person", "roles", "password", "next", "present", "key", "credential", "from", "steps", "why", "over", "table",
    }.Select(n => $"\"{n}\":null")) + "}";

    private static readonly string[] Bodies =
    [
        "", "null", "{}", "[]", "[null]", "[[null]]", "0", "\"\"", "{", Hollow,
        "{\"from\":{\"job.yaml\":null}}", "{\"from\":{},\"steps\":[[null]]}", "{\"steps\":[null]}", "[{\"kind\":\"Set\",\"path\":null,\"words\":null}]", "[{\"kind\":7,\"path\":\"x\"}]",
        "{\"who\":\"P1\",\"kind\":\"noted\",\"subject\":\"zone/A\",\"payload\":{\"text\":null}}", "{\"who\":\"P1\",\"kind\":\"noted\",\"subject\":\"\",\"payload\":{}}",
        "{\"who\":\"P1\",\"kind\":\"noted\",\"subject\":\"zone/A\",\"photograph\":\"not base64\"}", "{\"who\":\"P1\",\"present\":\"\\ud800\\ud800\\ud800\",\"next\":\"\\ud800\\ud800\\ud800\"}",
    ];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_is_missing_in_a_request_is_refused_and_no_fault_of_the_server(bool lan)
    {
        await using var server = await RunningServer.Start(lan);
        using var browser = server.Anybody();
        var desk = lan ? "none" : (await (await browser.PostAsync("/api/jobs/demo/desk", null)).Content.ReadFromJsonAsync<OpenedDesk>())!.Desk;
        string[] routes = lan ? ["sign-in", "first-keeper", "sign-in/passkey", "sign-in/passkey/offer"]
            : ["jobs", "jobs/demo/desk", $"desks/{desk}/edits", $"desks/{desk}/keep", "jobs/demo/log", "jobs/demo/pin", "jobs/demo/results", "proofs", "people", "password", "passkeys", "passkeys/offer", "calculations/conductor-temperature"];
        foreach (var (route, body) in routes.SelectMany(_ => Bodies, (r, b) => (r, b)))
        {
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var answer = await browser.PostAsync("/api/" + route, content);
            Assert.True(answer.StatusCode < HttpStatusCode.InternalServerError, $"{route} answered {answer.StatusCode} to {body}: {await answer.Content.ReadAsStringAsync()}");
        }

        Assert.Equal(lan, server.FirstKey.Length > 0);
    }

    // Routes are found in capitals too (RFC 9110, 4.2.3 makes paths case-sensitive; the framework does not).
    [Fact]
    public async Task A_route_in_capitals_is_guarded_like_any_other()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var stranger = server.Anybody();
        stranger.DefaultRequestHeaders.Remove("X-Fairlead");
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.PostAsync("/API/jobs/demo/desk", null)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.PostAsync("/Api/sign-out", null)).StatusCode);
        using var answer = await stranger.GetAsync("/API/jobs");
        Assert.Equal(["no-store"], answer.Headers.GetValues("Cache-Control"));
    }

    // OWASP ASVS 4.0.3, 13.2.3 and 14.5.3: no other origin is let in.
    [Fact]
    public async Task No_answer_lets_another_origin_read_it()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        browser.DefaultRequestHeaders.Remove("Origin");
        browser.DefaultRequestHeaders.Add("Origin", "https://elsewhere.example");
        using var ask = new HttpRequestMessage(HttpMethod.Options, "/api/jobs") { Headers = { { "Access-Control-Request-Method", "POST" }, { "Access-Control-Request-Headers", "x-fairlead" } } };
        foreach (var answer in new[] { await browser.GetAsync("/api/jobs"), await browser.SendAsync(ask) })
        {
            Assert.DoesNotContain(answer.Headers, h => h.Key.StartsWith("Access-Control", StringComparison.OrdinalIgnoreCase));
            Assert.Equal(["same-origin"], answer.Headers.GetValues("Cross-Origin-Resource-Policy"));
            answer.Dispose();
        }
    }

    [Fact]
    public async Task A_damaged_log_is_told_in_words_and_the_answer_is_guarded_like_any_other()
    {
        await using var server = await RunningServer.Start(lan: false);
        await File.WriteAllTextAsync(Path.Combine(server.Data, "jobs", "demo", FolderFiles.Log), new string('x', 5000));
        using var browser = server.Anybody();
        using var answer = await browser.GetAsync(Log);
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains("damaged or is no log", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(["no-store"], answer.Headers.GetValues("Cache-Control"));
        Assert.Equal(["nosniff"], answer.Headers.GetValues("X-Content-Type-Options"));
        Assert.Contains("default-src 'self'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_edit_reaches_nothing_but_the_texts_of_its_job()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        (await browser.PostAsJsonAsync(Log, new NewEntry("P1", "noted", "zone/A", new Dictionary<string, string> { ["text"] = "seen" }))).EnsureSuccessStatusCode();
        var desk = (await (await browser.PostAsync("/api/jobs/demo/desk", null)).Content.ReadFromJsonAsync<OpenedDesk>())!.Desk;
        foreach (var file in new[] { FolderFiles.Log, "log.jsonl", "log-content/x", "../other.yaml", "/tmp/other.yaml", "..\\other.yaml", ".hidden.yaml", "page.html" })
        {
            using var edited = await browser.PostAsJsonAsync($"/api/desks/{desk}/edits", new[] { new JobEdit(EditKind.Replace, file, "x") });
            Assert.True(edited.StatusCode == HttpStatusCode.BadRequest, $"{file}: {edited.StatusCode}");
            using var opened = await browser.PostAsJsonAsync("/api/jobs/demo/desk", new DeskAsked(new Dictionary<string, string> { [file] = "x" }));
            Assert.True(opened.StatusCode == HttpStatusCode.BadRequest, $"{file}: {opened.StatusCode}");
        }

        (await browser.PostAsJsonAsync($"/api/desks/{desk}/keep", new KeepRequest("P1", "tried"))).Dispose();
        Assert.NotEmpty((await browser.GetFromJsonAsync<LogLine[]>(Log))!);

        // The job names the file that an edit goes to.
        (await browser.PostAsJsonAsync($"/api/desks/{desk}/edits", new[] { new JobEdit(EditKind.Set, "job/files/change", "../other.yaml") })).Dispose();
        using var beyond = await browser.PostAsJsonAsync($"/api/desks/{desk}/edits", new[] { new JobEdit(EditKind.Set, "change/title", "x") });
        Assert.Equal(HttpStatusCode.BadRequest, beyond.StatusCode);
        Assert.DoesNotContain(Directory.EnumerateFileSystemEntries(Path.Combine(server.Data, "jobs")), f => Path.GetFileName(f) != "demo");
    }

    [Fact]
    public async Task A_desk_is_open_to_who_opened_it_only()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var other = await server.Member(keeper, "tech.one", "P1", "technician");
        var desk = (await (await keeper.PostAsync("/api/jobs/demo/desk", null)).Content.ReadFromJsonAsync<OpenedDesk>())!.Desk;
        Assert.Equal(HttpStatusCode.OK, (await keeper.GetAsync($"/api/desks/{desk}")).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await other.GetAsync($"/api/desks/{desk}")).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await other.PostAsJsonAsync($"/api/desks/{desk}/keep", new KeepRequest("P1", "not mine"))).StatusCode);
    }

    [Theory]
    [InlineData("other\n")]
    [InlineData("../other")]
    [InlineData("con")]
    [InlineData("lpt1")]
    [InlineData("Other")]
    [InlineData("")]
    public async Task A_job_has_no_name_that_a_system_takes_for_something_else(string name)
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        Assert.Equal(HttpStatusCode.BadRequest, (await browser.PostAsJsonAsync("/api/jobs", new NewJob(name))).StatusCode);
        Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(server.Data, "jobs")));
    }

    [Fact]
    public async Task A_zip_that_unpacks_to_more_than_a_job_holds_is_refused_before_it_fills_the_memory()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        using var bomb = new MemoryStream();
        using (var zip = new System.IO.Compression.ZipArchive(bomb, System.IO.Compression.ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = zip.CreateEntry("job.yaml").Open();
            var zeros = new byte[1024 * 1024];
            for (var i = 0; i < JobEndpoints.MostUnpacked / zeros.Length; i++)
            {
                entry.Write(zeros);
            }

            entry.WriteByte(0);
        }

        using var body = new ByteArrayContent(bomb.ToArray());
        body.Headers.ContentType = new("application/zip");
        using var answer = await browser.PutAsync("/api/jobs/bomb/zip", body);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("more than", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(server.Data, "jobs", "bomb")));
    }

    [Theory]
    [InlineData("PUT", "/api/jobs/large/zip", "application/zip")]
    [InlineData("POST", "/api/jobs/demo/log", "application/json")]
    public async Task A_body_that_is_too_large_is_refused_before_it_is_read(string method, string route, string type)
    {
        await using var server = await RunningServer.Start(lan: false);
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, server.Anybody().BaseAddress!.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"{method} {route} HTTP/1.1\r\nHost: localhost\r\nX-Fairlead: 1\r\nContent-Type: {type}\r\nContent-Length: {(64 * 1024 * 1024) + 1}\r\n\r\n"));
        using var reader = new StreamReader(stream, Encoding.ASCII);
        Assert.Equal("HTTP/1.1 413 Payload Too Large", await reader.ReadLineAsync());
    }

    // The rights of a file that was copied back are those of who copied it.
    [Fact]
    public async Task What_others_could_read_after_a_copy_is_shut_to_them()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Files have other rights there.");
            return;
        }

        var data = Directory.CreateTempSubdirectory("fairlead-copied").FullName;
        await using (var first = await RunningServer.Start(data: data))
        {
            (await first.Keeper()).Dispose();
        }

        string[] own = ["jobs", "keys", "people.db", "certificate.pfx"];
        foreach (var file in own)
        {
            File.SetUnixFileMode(Path.Combine(data, file), (UnixFileMode)Convert.ToInt32("755", 8));
        }

        await using (await RunningServer.Start(data: data))
        {
            foreach (var file in own)
            {
                Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(Path.Combine(data, file)) & (UnixFileMode)Convert.ToInt32("077", 8));
            }
        }

        Directory.Delete(data, recursive: true);
    }
}
