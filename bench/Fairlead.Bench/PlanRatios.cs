using System.Globalization;
using System.IO.Compression;
using System.Numerics;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Bench;

/// <summary>The optimiser on a published set, beside its optima or best known bounds, the plan made at once, and the plain solver in the same effort.</summary>
internal static class PlanRatios
{
    /// <summary>Plans the instances of a zip and prints how good the plans are; every plan is looked over by the checker. Each instance is told on standard error as it ends:
    /// name, best known bounds, plan made at once, plan, bound, whether proved, plan of the plain solver, processor seconds of both.</summary>
    /// <param name="zip">Zip of .sm files.</param>
    /// <param name="bounds">Comma-separated: instance, lower, upper.</param>
    /// <param name="effort">Effort allowed for each.</param>
    /// <param name="output">Where to print.</param>
    /// <param name="most">How many instances at most, spread over the set.</param>
    /// <param name="plain">Whether to run the plain solver too, in twice the effort: that of the orders and that of the solver.</param>
    public static void Print(string zip, string bounds, double effort, TextWriter output, int most = int.MaxValue, bool plain = false)
    {
        var known = File.ReadLines(bounds).Skip(1).Select(l => l.Split(',')).ToDictionary(c => c[0], c => (Lower: Whole(c[1]), Upper: Whole(c[2])), StringComparer.Ordinal);
        using var archive = ZipFile.OpenRead(zip);
        ZipArchiveEntry[] entries = [.. archive.Entries.Where(e => e.Name.EndsWith(".sm", StringComparison.Ordinal)).OrderBy(e => e.Name, StringComparer.Ordinal)];
        var (runs, proved, wrong) = (new List<Run>(), 0, 0);
        foreach (var entry in Spread(entries).Take(most))
        {
            using var reader = new StreamReader(entry.Open());
            var problem = Psplib.Read(reader.ReadToEnd());
            var (lower, upper) = known[Path.GetFileNameWithoutExtension(entry.Name)];
            var options = new OptimiserOptions(effort);
            var (result, seconds) = Timed(() => Optimiser.Run(problem, options));
            var (other, slow) = plain ? Timed(() => PlainSolver.Finish(problem, options with { Effort = 2 * effort })) : (null, 0);
            var finish = result.Schedule!.Finish;
            runs.Add(new(upper, new ListScheduler(problem).Run()!.Finish, finish, other, seconds, slow));
            proved += result.Proved ? 1 : 0;
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(entry.Name)},{lower},{upper},{runs[^1].List},{finish},{result.Bound},{result.Proved},{other},{seconds:0.00},{slow:0.00}"));
            if (ScheduleChecker.Faults(problem, result.Schedule).Count > 0 || finish < lower || result.Bound > upper || (result.Proved && finish > upper))
            {
                wrong++;
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{entry.Name}: {finish} bound {result.Bound} against {lower}..{upper}"));
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(zip)}, {runs.Count} of {entries.Length} instances, effort {effort}; proved {100.0 * proved / runs.Count:0.0} %, contradictions {wrong}"));
        output.WriteLine("| way | at best known | mean over best known | processor seconds: median | greatest | all |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- |");
        Row(output, "plan made at once", runs, r => r.List, null);
        Row(output, "optimiser", runs, r => r.Finish, r => r.Seconds);
        if (plain)
        {
            Row(output, "plain solver", runs, r => r.Plain, r => r.PlainSeconds);
        }
    }

    // In steps of about the golden ratio of the set, so that the first few, however many, lie evenly over its families.
    private static IEnumerable<T> Spread<T>(T[] all)
    {
        var step = (int)(all.Length * 0.618);
        while (BigInteger.GreatestCommonDivisor(step, all.Length) > 1)
        {
            step++;
        }

        return all.Select((_, i) => all[(int)((long)i * step % all.Length)]);
    }

    private static void Row(TextWriter output, string way, List<Run> runs, Func<Run, int?> finish, Func<Run, double>? seconds)
    {
        var found = runs.Where(r => finish(r) is not null).ToArray();
        var (best, over) = (100.0 * found.Count(r => finish(r) <= r.Known) / runs.Count, 100 * found.Average(r => (finish(r)!.Value - r.Known) / (double)r.Known));
        double[] times = seconds is null ? [] : [.. runs.Select(seconds).Order()];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {way} | {best:0.0} % | {over:0.00} %{(found.Length < runs.Count ? $" of {found.Length} found" : "")} | {(times.Length == 0 ? "- | - | -" : $"{times[times.Length / 2]:0.00} | {times[^1]:0.0} | {times.Sum():0}")} |"));
    }

    private static (T Result, double Seconds) Timed<T>(Func<T> run)
    {
        var before = Environment.CpuUsage.TotalTime;
        var result = run();
        return (result, (Environment.CpuUsage.TotalTime - before).TotalSeconds);
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private sealed record Run(int Known, int List, int Finish, int? Plain, double Seconds, double PlainSeconds);
}
