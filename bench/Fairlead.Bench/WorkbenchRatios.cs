using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using Fairlead.Model.Storage;
using Fairlead.Workbench;

namespace Fairlead.Bench;

/// <summary>From an edit to the verdict: on the desk itself, and asked of a running server by one client and by fifty at once.</summary>
internal static class WorkbenchRatios
{
    private const string Path = "change/fit/XPD1/mounting";
    private const int Edits = 1000;
    private const int Clients = 50;
    private const int EditsOfClient = 20;

    /// <summary>The demonstration job on a desk: time of each edit, and what is held in memory after so many.</summary>
    public static void Desk(TextWriter writer)
    {
        var desk = new Desk(new FolderFiles(System.IO.Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")));
        var times = new List<double>();
        writer.WriteLine("edits | p50, ms | p95, ms | greatest, ms | held, MB");
        for (var i = 1; i <= Edits; i++)
        {
            var clock = Stopwatch.StartNew();
            desk.Apply([Edit(i)]);
            times.Add(clock.Elapsed.TotalMilliseconds);
            if (i is 10 or 100 or 250 or 500 or 750 or Edits)
            {
                Tell(writer, i.ToString(CultureInfo.InvariantCulture), times, string.Create(CultureInfo.InvariantCulture, $" | {GC.GetTotalMemory(forceFullCollection: true) / 1e6:0.0}"));
                times.Clear();
            }
        }
    }

    /// <summary>A server: one client and then fifty, each with a desk of its own.</summary>
    public static async Task Served(TextWriter writer, Uri address, string job)
    {
        using var http = new HttpClient { BaseAddress = address, DefaultRequestHeaders = { { "X-Fairlead", "1" } }, Timeout = TimeSpan.FromMinutes(10) };
        await Client(http, job, 3);
        writer.WriteLine("clients | p50, ms | p95, ms | greatest, ms | desks gone meanwhile | edits a second");
        foreach (var count in new[] { 1, 10, Clients })
        {
            var clock = Stopwatch.StartNew();
            var runs = await Task.WhenAll(Enumerable.Range(0, count).Select(_ => Client(http, job, EditsOfClient)));
            var times = runs.SelectMany(r => r.Times).ToList();
            Tell(writer, count.ToString(CultureInfo.InvariantCulture), times, string.Create(CultureInfo.InvariantCulture, $" | {runs.Sum(r => r.Gone)} | {times.Count / clock.Elapsed.TotalSeconds:0.0}"));
        }
    }

    // As the pages do: a desk that made room for another is opened anew, which counts into the edit's time.
    private static async Task<(List<double> Times, int Gone)> Client(HttpClient http, string job, int edits)
    {
        var (times, gone, desk) = (new List<double>(), 0, await Open(http, job));
        for (var i = 0; i < edits; i++)
        {
            var clock = Stopwatch.StartNew();
            var answer = await Ask(http, desk, i);
            while (answer.StatusCode == System.Net.HttpStatusCode.Gone)
            {
                gone++;
                answer.Dispose();
                desk = await Open(http, job);
                answer = await Ask(http, desk, i);
            }

            answer.EnsureSuccessStatusCode();
            answer.Dispose();
            if (i > 0)
            {
                times.Add(clock.Elapsed.TotalMilliseconds);
            }
        }

        return (times, gone);
    }

    private static async Task<string> Open(HttpClient http, string job)
    {
        using var opened = await http.PostAsync(new Uri($"/api/jobs/{job}/desk", UriKind.Relative), content: null);
        return (await opened.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>()).GetProperty("desk").GetString()!;
    }

    private static Task<HttpResponseMessage> Ask(HttpClient http, string desk, int i) =>
        http.PostAsJsonAsync(new Uri($"/api/desks/{desk}/edits", UriKind.Relative), new[] { new { kind = nameof(EditKind.Set), path = Path, words = Edit(i).Words } });

    private static JobEdit Edit(int i) => new(EditKind.Set, Path, string.Create(CultureInfo.InvariantCulture, $"{0.4 + (i % 100 / 1000.0):0.000} kg"));

    private static void Tell(TextWriter writer, string what, List<double> times, string more)
    {
        times.Sort();
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what} | {times[times.Count / 2]:0.0} | {times[times.Count * 95 / 100]:0.0} | {times[^1]:0.0}{more}"));
    }
}
