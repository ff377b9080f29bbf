using System.Collections.Concurrent;
using System.Net;
using Fairlead.Server.People;

namespace Fairlead.Tests.Server;

public sealed class SignInTests
{
    [Fact]
    public async Task The_first_keeper_is_made_with_the_key_of_the_console_and_only_once()
    {
        await using var server = await RunningServer.Start();
        using var anybody = server.Anybody();
        var key = server.FirstKey;

        Assert.Equal(HttpStatusCode.Forbidden, (await First(anybody, "guessed", RunningServer.Password)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await First(anybody, key, "short")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await First(anybody, key, RunningServer.Password)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await First(anybody, key, RunningServer.Password)).StatusCode);
    }

    // OWASP ASVS 4.0.3, 3.4.1 to 3.4.4.
    [Fact]
    public async Task The_cookie_is_hardened_and_bound_to_this_host()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        (await keeper.PostAsync("/api/sign-out", null)).EnsureSuccessStatusCode();
        using var answer = await RunningServer.SignIn(keeper, "keeper.one", RunningServer.Password);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));

        Assert.StartsWith("__Host-fairlead=", cookie, StringComparison.Ordinal);
        Assert.All(["secure", "httponly", "samesite=strict", "path=/"], word => Assert.Contains(word, cookie, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
    }

    // OWASP ASVS 4.0.3, 3.3.1: the cookie of a session that was ended opens nothing, though a browser still holds it.
    [Fact]
    public async Task A_session_ends_at_sign_out_at_a_change_of_roles_and_at_removal()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        var cookies = new CookieContainer();
        using var left = server.Anybody(cookies);
        (await RunningServer.SignIn(left, "keeper.one", RunningServer.Password)).EnsureSuccessStatusCode();
        var kept = cookies.GetCookieHeader(left.BaseAddress!);
        (await left.PostAsync("/api/sign-out", null)).EnsureSuccessStatusCode();
        using var again = new HttpRequestMessage(HttpMethod.Get, "/api/jobs") { Headers = { { "Cookie", kept } } };
        Assert.Equal(HttpStatusCode.Unauthorized, (await server.Anybody().SendAsync(again)).StatusCode);

        using var member = await server.Member(keeper, "tech.one", "", "technician");
        Assert.Equal(HttpStatusCode.OK, (await member.GetAsync("/api/jobs")).StatusCode);
        (await keeper.PutAsJsonAsync("/api/people/tech.one", new MemberAsk("tech.one", "", ["viewer"]))).EnsureSuccessStatusCode();
        Assert.Equal(HttpStatusCode.Unauthorized, (await member.GetAsync("/api/jobs")).StatusCode);
        (await RunningServer.SignIn(member, "tech.one", RunningServer.Password)).EnsureSuccessStatusCode();
        (await keeper.DeleteAsync("/api/people/tech.one")).EnsureSuccessStatusCode();
        Assert.Equal(HttpStatusCode.Unauthorized, (await member.GetAsync("/api/jobs")).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await keeper.DeleteAsync("/api/people/keeper.one")).StatusCode);
    }

    // OWASP ASVS 4.0.3, 7.1.3.
    [Fact]
    public async Task What_a_keeper_does_to_the_way_in_of_somebody_is_in_the_audit()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        (await keeper.PostAsJsonAsync("/api/people", new MemberAsk("tech.one", "", ["technician"]))).EnsureSuccessStatusCode();
        (await keeper.PutAsJsonAsync("/api/people/tech.one", new MemberAsk("tech.one", "", ["certifier"]))).EnsureSuccessStatusCode();
        (await keeper.PostAsync("/api/people/tech.one/code", null)).EnsureSuccessStatusCode();
        (await keeper.DeleteAsync("/api/people/tech.one")).EnsureSuccessStatusCode();
        var told = (await keeper.GetFromJsonAsync<SignInLine[]>("/api/sign-ins"))!.Where(t => t.Name == "tech.one, by keeper.one");
        Assert.Equal(["removed", "new code", "person or roles changed", "added"], told.Select(t => t.Outcome));
    }

    // NIST SP 800-63B 5.2.2 asks for no more than 100 tries; here five.
    [Fact]
    public async Task Five_wrong_passwords_shut_a_name_and_every_try_is_in_the_audit()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var member = await server.Member(keeper, "tech.one", "", "technician");
        using var anybody = server.Anybody();
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(HttpStatusCode.Unauthorized, (await RunningServer.SignIn(anybody, "tech.one", "wrong words here")).StatusCode);
        }

        Assert.Equal(HttpStatusCode.Unauthorized, (await RunningServer.SignIn(anybody, "tech.one", RunningServer.Password)).StatusCode);
        var tried = await keeper.GetFromJsonAsync<SignInLine[]>("/api/sign-ins");
        Assert.Equal(["locked", "locked", "wrong password", "wrong password", "wrong password", "wrong password"], tried!.Take(6).Select(t => t.Outcome));
        Assert.All(tried!.Take(6), t => Assert.True(t.Name == "tech.one" && IPAddress.TryParse(t.From, out _)));
        Assert.True((await keeper.GetFromJsonAsync<MemberLine[]>("/api/people"))!.Single(m => m.Name == "tech.one").Locked);
    }

    // From several addresses, since one alone is refused after ten. The fifth wrong one finds the name shut by itself, and is told so.
    [Fact]
    public async Task Of_many_passwords_guessed_at_once_five_are_looked_at_and_no_more()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var member = await server.Member(keeper, "tech.one", "", "technician");
        var guessers = Enumerable.Range(2, 5).Select(i => server.Anybody(from: IPAddress.Parse($"127.0.0.{i}"))).ToArray();
        await Task.WhenAll(guessers.SelectMany(g => Enumerable.Range(0, 10).Select(i => RunningServer.SignIn(g, "tech.one", $"wrong words, number {i}"))));
        var tried = (await keeper.GetFromJsonAsync<SignInLine[]>("/api/sign-ins"))!.Where(t => t.From.Contains("127.0.0.", StringComparison.Ordinal) && t.From[^1] != '1').ToArray();
        Assert.Equal((4, 46), (tried.Count(t => t.Outcome == "wrong password"), tried.Count(t => t.Outcome == "locked")));
        Array.ForEach(guessers, g => g.Dispose());
    }

    [Fact]
    public async Task A_caller_that_asks_without_end_is_refused_and_others_are_not()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var member = await server.Member(keeper, "tech.one", "", "technician");
        var refused = false;
        for (var i = 0; i < 50 && !refused; i++)
        {
            var answers = await Task.WhenAll(Enumerable.Range(0, 100).Select(_ => keeper.GetAsync("/api/log/none")));
            refused = answers.Any(a => a.StatusCode == HttpStatusCode.TooManyRequests);
            Array.ForEach(answers, a => a.Dispose());
        }

        Assert.True(refused, "5000 requests were answered");
        Assert.Equal(HttpStatusCode.OK, (await member.GetAsync("/api/jobs")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await keeper.GetAsync("/health")).StatusCode);
    }

    [Fact]
    public async Task The_first_key_is_not_used_up_by_a_name_that_cannot_be_one()
    {
        await using var server = await RunningServer.Start();
        using var anybody = server.Anybody();
        var answer = await anybody.PostAsJsonAsync("/api/first-keeper", new FirstAsk(server.FirstKey, "keeper one!", "", RunningServer.Password));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        (await server.Keeper()).Dispose();
    }

    // OWASP ASVS 4.0.3, 2.3.1.
    [Fact]
    public async Task A_code_that_was_handed_out_does_not_become_the_password()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        var added = await keeper.PostAsJsonAsync("/api/people", new MemberAsk("tech.one", "", ["technician"]));
        var code = (await added.Content.ReadFromJsonAsync<HandedCode>())!.Code;
        using var member = server.Anybody();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await RunningServer.SignIn(member, "tech.one", code, code)).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await RunningServer.SignIn(member, "tech.one", code, RunningServer.Password)).StatusCode);
    }

    [Fact]
    public async Task More_than_ten_tries_in_a_minute_from_one_address_are_refused()
    {
        await using var server = await RunningServer.Start();
        using var anybody = server.Anybody();
        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 12; i++)
        {
            answers.Add((await RunningServer.SignIn(anybody, "nobody", "whatever it was")).StatusCode);
        }

        Assert.Contains(HttpStatusCode.TooManyRequests, answers);
    }

    [Fact]
    public async Task A_request_that_changes_something_without_the_header_of_our_page_is_refused()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        keeper.DefaultRequestHeaders.Remove("X-Fairlead");
        Assert.Equal(HttpStatusCode.Forbidden, (await keeper.PostAsJsonAsync("/api/people", new MemberAsk("x", "", ["viewer"]))).StatusCode);
    }

    [Fact]
    public async Task This_machine_alone_is_served_without_sign_in_and_by_its_own_names_only()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var anybody = server.Anybody();
        Assert.Equal("http", anybody.BaseAddress!.Scheme);
        Assert.Equal(HttpStatusCode.OK, (await anybody.GetAsync("/api/jobs")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await anybody.GetAsync("/health")).StatusCode);
        anybody.DefaultRequestHeaders.Host = "elsewhere.example";
        Assert.Equal(HttpStatusCode.BadRequest, (await anybody.GetAsync("/api/jobs")).StatusCode);
    }

    [Fact]
    public async Task Members_and_their_passwords_outlast_a_restart()
    {
        var data = Directory.CreateTempSubdirectory("fairlead-restart").FullName;
        await using (var first = await RunningServer.Start(data: data))
        {
            (await first.Keeper()).Dispose();
        }

        await using var second = await RunningServer.Start(data: data);
        Assert.Equal("", second.FirstKey);
        (await second.Keeper()).Dispose();
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(data, "people.db")));
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(data, "certificate.pfx")));
        }
    }

    [Fact]
    public async Task No_secret_is_ever_logged()
    {
        using var logs = new Kept();
        await using var server = await RunningServer.Start(logs: logs);
        var key = server.FirstKey;
        using var keeper = await server.Keeper("");
        using var wrong = await RunningServer.SignIn(server.Anybody(), "keeper.one", "a wrong password, typed");
        var told = string.Join('\n', logs.Lines);

        Assert.Contains("sign-in 204", told, StringComparison.Ordinal);
        Assert.All([key, RunningServer.Password, "a wrong password, typed", "__Host-fairlead=", "$argon2id$"], secret => Assert.DoesNotContain(secret, told, StringComparison.Ordinal));
        Assert.DoesNotContain(RunningServer.Password, string.Concat(Directory.EnumerateFiles(server.Data, "people.db*").Select(Read)), StringComparison.Ordinal);
    }

    // The server has the file open.
    private static string Read(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
        return reader.ReadToEnd();
    }

    private static Task<HttpResponseMessage> First(HttpClient client, string key, string password) => client.PostAsJsonAsync("/api/first-keeper", new FirstAsk(key, "keeper.one", "", password));

    // Our own words, and those of the framework that are kept when a server runs: warnings and worse.
    private sealed class Kept : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Lines { get; } = new();

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Lines.Enqueue(formatter(state, exception) + exception);

        public void Dispose()
        {
        }
    }
}
