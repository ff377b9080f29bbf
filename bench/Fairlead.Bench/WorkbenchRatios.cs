using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Workbench;

namespace Fairlead.Bench;

/// <summary>From an edit to the verdict: on the desk itself, and asked of a running server by one client and by fifty at once.</summary>
internal static class WorkbenchRatios
{
    private const string Path = "change/fit/XPD1/mounting";
    private const int Clients = 50;
    private const int EditsOfClient = 20;
    private static readonly TimeSpan Thought = TimeSpan.FromSeconds(5);
    private static readonly int[] Sizes = [100, 500, 1000, 5000];

    /// <summary>From an edit to the verdict, its parts against the whole: the demonstration job and generated ones.</summary>
    public static void Desk(TextWriter writer)
    {
        writer.WriteLine("job (circuits) | first, ms | p50, ms | p95, ms | reading, of p50 | first / p50 | processor an edit, ms | calculations an edit");
        Measure(writer, "demo", Demo, Path, "kg", 300);
        foreach (var size in Sizes)
        {
            var job = GeneratedJob.Of(size);
            var circuit = job.Change.Circuits!.Skip(size / 2).First(c => !c.From.IsPoint && !c.To.IsPoint);
            Measure(writer, size.ToString(CultureInfo.InvariantCulture), JobYaml.Of(job), $"change/circuits/{circuit.Id}/current", "A", size > 1000 ? 30 : 100);
        }
    }

    /// <summary>What is held after so many edits of one desk.</summary>
    public static void Memory(TextWriter writer)
    {
        var desk = new Desk(Demo);
        writer.WriteLine("edits | held, MB | working set, MB | p50, ms | p95, ms");
        var times = new List<double>();
        for (var i = 1; i <= 10_000; i++)
        {
            var clock = Stopwatch.StartNew();
            desk.Apply([Edit(i)]);
            times.Add(clock.Elapsed.TotalMilliseconds);
            if (i is 100 or 1000 or 2500 or 5000 or 7500 or 10_000)
            {
                var held = GC.GetTotalMemory(forceFullCollection: true) / 1e6;
                using var self = Process.GetCurrentProcess();
                writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{i} | {held:0.0} | {self.WorkingSet64 / 1e6:0} | {At(times, 50):0.0} | {At(times, 95):0.0}"));
                times.Clear();
            }
        }
    }

    private static FolderFiles Demo => new(System.IO.Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin"));

    private static void Measure(TextWriter writer, string name, IJobFiles files, string path, string unit, int edits)
    {
        var clock = Stopwatch.StartNew();
        var desk = new Desk(files);
        var first = clock.Elapsed.TotalMilliseconds;
        if (desk.View.Problems is { IsEmpty: false } problems)
        {
            throw new InvalidOperationException(string.Join('\n', problems));
        }

        var (memory, whole, reading, processor, runs) = (new ReadMemory(), new List<double>(), new List<double>(), new List<double>(), 0L);
        JobReader.Read(desk.Texts.ToFiles(), memory);
        for (var i = 0; i < edits + 10; i++)
        {
            var used = Environment.CpuUsage.TotalTime;
            clock.Restart();
            var view = desk.Apply([new JobEdit(EditKind.Set, path, string.Create(CultureInfo.InvariantCulture, $"{0.1 + (i % 100 / 1000.0):0.000} {unit}"))]);
            var time = clock.Elapsed.TotalMilliseconds;
            used = Environment.CpuUsage.TotalTime - used;
            clock.Restart();
            JobReader.Read(desk.Texts.ToFiles(), memory);
            if (i >= 10)
            {
                whole.Add(time);
                processor.Add(used.TotalMilliseconds);
                reading.Add(clock.Elapsed.TotalMilliseconds);
                runs += view.Change!.Calculations;
            }
        }

        writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name} ({desk.Assessment!.Circuits.Length}) | {first:0} | {At(whole, 50):0.0} | {At(whole, 95):0.0} | {At(reading, 50) / At(whole, 50):0.00} | {first / At(whole, 50):0} | {At(processor, 50):0.0} | {runs / edits}"));
    }

    /// <summary>
    /// A server: one client, ten and fifty that never pause, then fifty that think for five seconds before each edit, as people at least do. Each has a desk of its own, edits, and reads a page
    /// and the log between its edits.
    /// </summary>
    public static async Task Served(TextWriter writer, Uri address, string job)
    {
        using var http = new HttpClient { BaseAddress = address, DefaultRequestHeaders = { { "X-Fairlead", "1" } }, Timeout = TimeSpan.FromMinutes(10) };
        await Client(http, job, 3, TimeSpan.Zero, TimeSpan.Zero);
        writer.WriteLine("clients | edit p50, ms | p95, ms | greatest, ms | first edit p50, ms | page p50, ms | log p50, ms | desks gone meanwhile | edits a second");
        foreach (var (count, thought) in new[] { (1, TimeSpan.Zero), (10, TimeSpan.Zero), (Clients, TimeSpan.Zero), (Clients, Thought) })
        {
            var clock = Stopwatch.StartNew();
            var runs = await Task.WhenAll(Enumerable.Range(0, count).Select(i => Client(http, job, EditsOfClient, thought * i / count, thought)));
            var all = runs.Aggregate((a, b) => a.With(b));
            Tell(writer, string.Create(CultureInfo.InvariantCulture, $"{count}{(thought > TimeSpan.Zero ? $", pausing {thought.TotalSeconds} s" : "")}"), all.Edits, string.Create(
                CultureInfo.InvariantCulture, $" | {At(all.First, 50):0.0} | {At(all.Pages, 50):0.0} | {At(all.Logs, 50):0.0} | {all.Gone} | {all.Edits.Count / clock.Elapsed.TotalSeconds:0.0}"));
        }
    }

    private sealed record Asked(List<double> First, List<double> Edits, List<double> Pages, List<double> Logs, int Gone)
    {
        public Asked With(Asked other) => new([.. First, .. other.First], [.. Edits, .. other.Edits], [.. Pages, .. other.Pages], [.. Logs, .. other.Logs], Gone + other.Gone);
    }

    // As the pages do: a desk that made room for another is opened anew, which counts into the edit's time.
    private static async Task<Asked> Client(HttpClient http, string job, int edits, TimeSpan late, TimeSpan thought)
    {
        await Task.Delay(late);
        var (asked, desk) = (new Asked([], [], [], [], 0), await Open(http, job));
        for (var i = 0; i < edits; i++)
        {
            await Task.Delay(thought);
            var clock = Stopwatch.StartNew();
            var answer = await Ask(http, desk, i);
            while (answer.StatusCode == System.Net.HttpStatusCode.Gone)
            {
                asked = asked with { Gone = asked.Gone + 1 };
                answer.Dispose();
                desk = await Open(http, job);
                answer = await Ask(http, desk, i);
            }

            answer.EnsureSuccessStatusCode();
            answer.Dispose();
            (i == 0 ? asked.First : asked.Edits).Add(clock.Elapsed.TotalMilliseconds);
            if (i % 5 == 1)
            {
                asked.Pages.Add(await Read(http, $"/api/desks/{desk}/discipline/Power"));
                asked.Logs.Add(await Read(http, $"/api/jobs/{job}/log"));
            }
        }

        return asked;
    }

    private static async Task<double> Read(HttpClient http, string path)
    {
        var clock = Stopwatch.StartNew();
        using var answer = await http.GetAsync(new Uri(path, UriKind.Relative));
        answer.EnsureSuccessStatusCode();
        return clock.Elapsed.TotalMilliseconds;
    }

    private static async Task<string> Open(HttpClient http, string job)
    {
        using var opened = await http.PostAsync(new Uri($"/api/jobs/{job}/desk", UriKind.Relative), content: null);
        return (await opened.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>()).GetProperty("desk").GetString()!;
    }

    private static Task<HttpResponseMessage> Ask(HttpClient http, string desk, int i) =>
        http.PostAsJsonAsync(new Uri($"/api/desks/{desk}/edits", UriKind.Relative), new[] { new { kind = nameof(EditKind.Set), path = Path, words = Edit(i).Words } });

    private static JobEdit Edit(int i) => new(EditKind.Set, Path, string.Create(CultureInfo.InvariantCulture, $"{0.4 + (i % 100 / 1000.0):0.000} kg"));

    private static void Tell(TextWriter writer, string what, List<double> times, string more) =>
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what} | {At(times, 50):0.0} | {At(times, 95):0.0} | {times[^1]:0.0}{more}"));

    private static double At(List<double> times, int percent)
    {
        times.Sort();
        return times[times.Count * percent / 100];
    }
}
