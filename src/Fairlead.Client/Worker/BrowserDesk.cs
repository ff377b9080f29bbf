using System.Net;
using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using Fairlead.Client.Desk;
using Fairlead.Workbench;
using Fairlead.Workbench.Routing;

namespace Fairlead.Client.Worker;

/// <summary>The desk in the browser, as the pages see it: they ask, and the worker answers in its own time.</summary>
public sealed partial class BrowserDesk : IDeskPlace
{
    private Task? started;

    /// <summary>How far the work is; empty when none goes on.</summary>
    public string Progress { get; private set; } = "";

    /// <summary>Raised when the work has come further.</summary>
    public event Action? Progressed;

    /// <summary>Starts the runtime of the worker before anything is asked of it.</summary>
    public async Task Warm()
    {
        await Start();
        Worker.Warm();
    }

    /// <summary>Opens a job.</summary>
    /// <param name="texts">Its texts by file, as JSON.</param>
    /// <param name="steps">The edits it is opened with, step by step.</param>
    /// <exception cref="ServerException">It cannot be worked out here.</exception>
    public async Task Open(string texts, IReadOnlyList<JobEdit[]> steps)
    {
        Tell("starting");
        await Answer(() => Worker.Open(texts, JsonSerializer.Serialize([.. steps], DeskJson.Default.JobEditArrayArray)));
    }

    /// <inheritdoc/>
    public Task<string> Ask(string method, string route, string body) => Answer(() => Worker.Ask(method, route, body));

    /// <summary>Ends whatever is being worked out. What was asked is refused, and the job has to be opened again.</summary>
    public async Task End()
    {
        await Start();
        Worker.End("It was stopped.");
    }

    private async Task<string> Answer(Func<Task<string>> ask)
    {
        try
        {
            await Start();
            var answer = await ask();
            var space = answer.IndexOf(' ', StringComparison.Ordinal);
            var (status, json) = ((HttpStatusCode)int.Parse(answer.AsSpan(0, space), System.Globalization.CultureInfo.InvariantCulture), answer[(space + 1)..]);
            return status == HttpStatusCode.OK ? json : throw new ServerException(status, JsonSerializer.Deserialize(json, DeskJson.Default.DeskProblem)!.Detail, json);
        }
        catch (JSException e)
        {
            throw new ServerException(HttpStatusCode.InternalServerError, "The calculations did not run in this browser. " + e.Message.Split('\n')[0]);
        }
        finally
        {
            Tell("");
        }
    }

    private Task Start()
    {
        return started is null or { IsFaulted: true } ? started = Begin() : started;

        async Task Begin()
        {
            await JSHost.ImportAsync("core", "../js/core.js");
            Worker.Watch((what, done, of) => Tell(of > 0 ? $"{what}, {done} of {of}" : what));
        }
    }

    private void Tell(string progress)
    {
        Progress = progress;
        Progressed?.Invoke();
    }

    private static partial class Worker
    {
        [JSImport("warm", "core")]
        public static partial void Warm();

        [JSImport("watch", "core")]
        public static partial void Watch([JSMarshalAs<JSType.Function<JSType.String, JSType.Number, JSType.Number>>] Action<string, int, int> told);

        [JSImport("open", "core")]
        public static partial Task<string> Open(string texts, string steps);

        [JSImport("ask", "core")]
        public static partial Task<string> Ask(string method, string route, string body);

        [JSImport("end", "core")]
        public static partial void End(string why);
    }
}
