using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>The built product serving a copy of the demo, and a browser.</summary>
public partial class Workbench : IAsyncLifetime
{
    private const float Patience = 240_000;
    private static readonly string[] Chromiums = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
    private readonly string data = Directory.CreateTempSubdirectory("fairlead-browser-").FullName;
    private Process? server;
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>Where the browser is; null when there is none.</summary>
    public static string? Chromium { get; } = Chromiums.FirstOrDefault(File.Exists);

    /// <summary>Skips where there is no browser, unless all tools are required.</summary>
    public static void Require() => Assert.SkipWhen(Chromium is null && Environment.GetEnvironmentVariable("FAIRLEAD_REQUIRE_TOOLS") != "1", "There is no Chromium here: eng/install-test-tools installs it.");

    /// <summary>The address.</summary>
    public string Address { get; private set; } = "";

    /// <summary>Whether the hangar's network is served, with sign-in.</summary>
    protected virtual bool Lan => false;

    /// <summary>The key of the console with which the first keeper is made.</summary>
    public string FirstKey { get; private set; } = "";

    /// <summary>A page that fails the test when it asks another host or reports an error, by <see cref="Visit.Sound"/>.</summary>
    public async Task<Visit> Open(string route, int width = 1280, int height = 900)
    {
        var context = await browser!.NewContextAsync(new() { BaseURL = Address, IgnoreHTTPSErrors = Lan, ViewportSize = new() { Width = width, Height = height } });
        context.SetDefaultTimeout(Patience);
        var page = await context.NewPageAsync();
        var visit = new Visit(page, Address);
        await page.GotoAsync(route);
        await visit.Settle();
        return visit;
    }

    /// <summary>Takes the log of a job away, as when an old copy of the data is put back.</summary>
    public void LoseLog(string job)
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(data, "jobs", job), "*.db*"))
        {
            File.Delete(file);
        }
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        if (Chromium is null)
        {
            return;
        }

        Copy(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin"), Path.Combine(data, "jobs", "survey-twin"));
        var port = FreePort();
        var fairlead = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", "Fairlead.Cli", "release", "fairlead.dll"));
        server = Process.Start(new ProcessStartInfo("dotnet", [fairlead, "serve", "--data", data, "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture), .. Lan ? new[] { "--lan" } : []]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        Address = (await server.StandardOutput.ReadLineAsync())!.Split(' ')[^1];
        if (Lan)
        {
            // The certificate is for localhost too.
            Address = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"https://localhost:{port}");
            FirstKey = await Key(server.StandardOutput);
        }

        playwright = await Playwright.CreateAsync();
        Assertions.SetDefaultExpectTimeout(Patience);
        var film = Path.Combine(data, "camera.y4m");
        FakeCamera.Write(film, "fairlead:WO-2207/KIT");
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Chromium, Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", .. Lan ? new[] { "--ignore-certificate-errors" } : [], "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream", $"--use-file-for-fake-video-capture={film}"],
        });
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await (browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        playwright?.Dispose();
        if (server is not null)
        {
            server.Kill();
            await server.WaitForExitAsync();
            server.Dispose();
            Directory.Delete(data, recursive: true);
        }
    }

    // The words of the console are broken into lines as wide as it is.
    private static async Task<string> Key(StreamReader console)
    {
        for (var said = ""; ;)
        {
            said += await console.ReadLineAsync() + " ";
            if (Words().Match(said) is { Success: true } found)
            {
                return found.Groups["key"].Value;
            }
        }
    }

    [GeneratedRegex("with\\s+the\\s+key\\s+(?<key>[a-z0-9]{20})", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Words();

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}

/// <summary>The built product serving the hangar's network.</summary>
public sealed class HangarWorkbench : Workbench
{
    /// <inheritdoc/>
    protected override bool Lan => true;
}

/// <summary>A page with what it asked for and reported.</summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly List<string> wrong = [];
    private readonly string address;

    /// <summary>A visit to a page.</summary>
    public Visit(IPage page, string address)
    {
        this.address = address;
        Watch(page);
    }

    /// <summary>The page.</summary>
    public IPage Page { get; private set; } = null!;

    /// <summary>Asserts that the page asked no other host and reported no error.</summary>
    public void Sound() => Assert.Empty(wrong);

    /// <summary>Waits until the page has its heading and awaits nothing.</summary>
    public async Task Settle()
    {
        await Page.Locator("h1").First.WaitForAsync();
        await Page.WaitForFunctionAsync("() => !document.querySelector('.loading')");
    }

    /// <summary>Takes the job along that is on the page.</summary>
    public async Task TakeAlong()
    {
        await Page.GetByRole(AriaRole.Button, new() { Name = "Take this job along" }).ClickAsync();
        await Assertions.Expect(Page.GetByText("On this tablet as of")).ToBeVisibleAsync(new() { Timeout = 300_000 });
        await Assertions.Expect(Page.GetByText("These pages themselves are not kept")).ToHaveCountAsync(0);
    }

    /// <summary>Waits until nothing is being worked out.</summary>
    public Task Idle() => Page.WaitForFunctionAsync("() => !document.querySelector('.bar .loading')");

    /// <summary>Waits until the program itself is kept by the browser, so that it opens without the network.</summary>
    public async Task Installed()
    {
        await Page.WaitForFunctionAsync("() => navigator.serviceWorker.controller");
        await Idle();
    }

    /// <summary>Closes the page and opens another in the same browser.</summary>
    public async Task Again(string route)
    {
        var context = Page.Context;
        await Page.CloseAsync();
        Watch(await context.NewPageAsync());
        await Page.GotoAsync("/" + route);
        await Settle();
        await Idle();
    }

    /// <summary>Goes to a route without loading the pages anew.</summary>
    public async Task Go(string route)
    {
        await Page.EvaluateAsync("route => Blazor.navigateTo(route)", route);
        await Page.WaitForURLAsync("**/" + route);
        await Settle();
    }

    /// <summary>Asks the API that the pages use.</summary>
    public async Task<T> Ask<T>(string route) => System.Text.Json.JsonSerializer.Deserialize<T>(await (await Page.APIRequest.GetAsync("/api/" + route)).TextAsync(), Client.Desk.Server.Json)!;

    /// <summary>Tells something to the API that the pages use, asserts that it was taken, and gives the answer.</summary>
    public async Task<string> Tell(string route, object body)
    {
        var answer = await Page.APIRequest.PostAsync("/api/" + route, new() { DataObject = body, Headers = new Dictionary<string, string> { ["X-Fairlead"] = "1" } });
        var text = await answer.TextAsync();
        Assert.True(answer.Ok, $"{route} {body}: {text}");
        return text;
    }

    /// <summary>Kills the process of the page as it stands, and opens another on the same tablet.</summary>
    public async Task<Visit> Crash(string route)
    {
        var dead = new TaskCompletionSource();
        Page.Crash += (_, _) => dead.TrySetResult();
        var tools = await Page.Context.NewCDPSessionAsync(Page);
        _ = tools.SendAsync("Page.crash").ContinueWith(t => t.Exception, TaskScheduler.Default);
        await dead.Task;
        await Page.CloseAsync();
        var next = new Visit(await Page.Context.NewPageAsync(), address);
        await next.Page.GotoAsync(route);
        await next.Settle();
        return next;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();

    private void Watch(IPage page)
    {
        Page = page;
        page.Request += (_, request) => Note(!request.Url.StartsWith(address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal) && !request.Url.StartsWith("blob:", StringComparison.Ordinal), "asked another host: " + request.Url);
        // A conflict and a refusal are answers of the API, which the browser reports as it does errors.
        page.Console += (_, message) => Note(message.Type == "error" && !message.Text.StartsWith("Failed to load resource", StringComparison.Ordinal), "reported: " + message.Text);
        page.PageError += (_, error) => Note(true, "threw: " + error);
    }

    private void Note(bool matters, string what)
    {
        if (matters)
        {
            wrong.Add(what);
        }
    }
}
