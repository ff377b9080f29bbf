using System.Net;
using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using Fairlead.Model.Editing;
using Fairlead.Substantiation;
using Fairlead.Workbench.Routing;

namespace Fairlead.Client.Worker;

/// <summary>The desk in the browser. It runs in a worker with a runtime of its own, so that the pages never wait for it; <c>worker.js</c> passes on what is asked.</summary>
internal static partial class DeskWorker
{
    private static Workbench.Desk? desk;

    /// <summary>Opens a job.</summary>
    /// <param name="texts">Its texts by file, as JSON.</param>
    /// <param name="steps">The edits it is opened with, step by step, as JSON.</param>
    /// <returns>The status, a space, and the answer.</returns>
    [JSExport]
    internal static string Open(string texts, string steps) => Answer(() =>
    {
        desk = new Workbench.Desk(
            JobTexts.Of(JsonSerializer.Deserialize(texts, DeskJson.Default.IReadOnlyDictionaryStringString)!).ToFiles(), progress: new Told(), steps: JsonSerializer.Deserialize(steps, DeskJson.Default.JobEditArrayArray));
        return DeskRouter.Ask(desk, "GET", "", "");
    });

    /// <summary>Asks something of the desk.</summary>
    [JSExport]
    internal static string Ask(string method, string route, string body) => Answer(() => desk is null ? DeskRouter.Refused(HttpStatusCode.Gone, "No job is open here.") : DeskRouter.Ask(desk, method, route, body));

    [JSImport("tell", "worker")]
    private static partial void Tell(string what, int done, int of, string each);

    // Whatever goes wrong is an answer: nobody reads an exception of the worker.
    private static string Answer(Func<DeskAnswer> ask)
    {
        DeskAnswer answer;
        try
        {
            answer = ask();
        }
#pragma warning disable CA1031 // It is said on the page that asked.
        catch (Exception e)
#pragma warning restore CA1031
        {
            answer = DeskRouter.Refused(HttpStatusCode.InternalServerError, e.Message);
        }

        return $"{(int)answer.Status} {answer.Json}";
    }

    // Told at once: a Progress would wait until the work that it tells of is done.
    private sealed class Told : IProgress<WorkDone>
    {
        public void Report(WorkDone value) => Tell(value.What, value.Done, value.Of, value.Each);
    }
}
