using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Fairlead.Tests.Browser.Workbench))]

namespace Fairlead.Tests.Browser;

/// <summary>The built product, serving a copy of the demo to each class of tests, and a browser: both are begun by whoever asks first, and serve all.</summary>
public partial class Workbench : IAsyncDisposable
{
    private const float Patience = 240_000;
    private static readonly Lock Copying = new();
    // The one without windows first: with them, every test draws those too.
    private static readonly string[] Chromiums = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
    private readonly string data = Directory.CreateTempSubdirectory("fairlead-browser-").FullName;
    private readonly Lazy<Task> begun;
    private Process? server;
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>A workbench that nobody has asked for yet.</summary>
    public Workbench() => begun = new(Begin);

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

    /// <summary>This, with a job that is a copy of the demo, for one class of tests and no other.</summary>
    public Workbench With(string job)
    {
        var folder = Path.Combine(data, "jobs", job);
        lock (Copying)
        {
            if (!Directory.Exists(folder))
            {
                Copy(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin"), folder);
            }
        }

        return this;
    }

    /// <summary>A page that fails the test when it asks another host or reports an error, by <see cref="Visit.Sound"/>.</summary>
    /// <param name="route">What is looked at.</param>
    /// <param name="width">How wide the page is.</param>
    /// <param name="height">How high the page is.</param>
    /// <param name="away">Whether the program itself is kept by the browser, so that it opens without the network; to keep it takes as long as to load it.</param>
    public async Task<Visit> Open(string route, int width = 1280, int height = 900, bool away = false)
    {
        await begun.Value;
        var context = await browser!.NewContextAsync(new() { BaseURL = Address, IgnoreHTTPSErrors = Lan, ServiceWorkers = away ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block, ViewportSize = new() { Width = width, Height = height } });
        context.SetDefaultTimeout(Patience);
        var page = await context.NewPageAsync();
        var visit = new Visit(page, Address);
        await page.GotoAsync(route);
        await visit.Settle();
        return visit;
    }

    /// <summary>Tells something to the API from nowhere: without a page, and signed in as nobody.</summary>
    public async Task Tell(string route, object body)
    {
        await begun.Value;
        await using var api = await playwright!.APIRequest.NewContextAsync(new() { BaseURL = Address, IgnoreHTTPSErrors = Lan });
        await Visit.Tell(api, route, body);
    }

    /// <summary>Takes the log of a job away, as when an old copy of the data is put back.</summary>
    public void LoseLog(string job)
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(data, "jobs", job), "*.db*"))
        {
            File.Delete(file);
        }
    }

    private async Task Begin()
    {
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
        }

        Directory.Delete(data, recursive: true);
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

/// <summary>A workbench with no other job than those of one class.</summary>
public sealed class OwnWorkbench : Workbench;

/// <summary>The built product serving the hangar's network.</summary>
public sealed class HangarWorkbench : Workbench
{
    /// <inheritdoc/>
    protected override bool Lan => true;
}
