using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

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

    /// <summary>Takes the job along that is on the page, once the program is kept: on a busy machine that takes longer than to take along.</summary>
    public async Task TakeAlong()
    {
        await Installed();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Take this job along" }).ClickAsync();
        await Assertions.Expect(Page.GetByText("On this tablet as of")).ToBeVisibleAsync(new() { Timeout = 300_000 });
        await Assertions.Expect(Page.GetByText("These pages themselves are not kept")).ToHaveCountAsync(0);
    }

    /// <summary>Waits until nothing is being worked out.</summary>
    public Task Idle() => Page.WaitForFunctionAsync("() => !document.querySelector('.bar .loading')");

    /// <summary>Waits until no part of the page is still being drawn or worked out.</summary>
    public async Task Still()
    {
        await Idle();
        await Page.WaitForFunctionAsync("() => ![...document.querySelectorAll('main [role=status]')].some(e => e.textContent.trim().endsWith('…'))");
    }

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
    public Task<string> Tell(string route, object body) => Tell(Page.APIRequest, route, body);

    internal static async Task<string> Tell(IAPIRequestContext api, string route, object body)
    {
        var answer = await api.PostAsync("/api/" + route, new() { DataObject = body, Headers = new Dictionary<string, string> { ["X-Fairlead"] = "1" } });
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
