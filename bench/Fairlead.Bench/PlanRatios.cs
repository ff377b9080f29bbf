using System.Globalization;
using System.IO.Compression;
using System.Numerics;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Bench;

/// <summary>The optimiser, or the plain solver, on a published set, beside its optima or best known bounds and the plan made at once.</summary>
internal static class PlanRatios
{
    /// <summary>Plans the instances of a zip; every plan is looked over by the checker. Each gives a row as it ends, and those that have one already are
    /// passed over: a run that was stopped goes on where it was. The effort is counted in work and not in time, so that what else the machine does changes no plan.</summary>
    /// <param name="zip">Zip of .sm files.</param>
    /// <param name="bounds">Comma-separated: instance, lower, upper.</param>
    /// <param name="effort">Effort allowed for each.</param>
    /// <param name="rows">File of rows.</param>
    /// <param name="output">Where to print.</param>
    /// <param name="most">How many instances at most, spread over the set; 0 to sum up what there is.</param>
    /// <param name="plain">Whether the plain solver plans, and not the optimiser.</param>
    public static void Print(string zip, string bounds, double effort, string rows, TextWriter output, int most = int.MaxValue, bool plain = false)
    {
        var known = File.ReadLines(bounds).Skip(1).Select(l => l.Split(',')).ToDictionary(c => c[0], c => (Lower: Whole(c[1]), Upper: Whole(c[2])), StringComparer.Ordinal);
        using var archive = ZipFile.OpenRead(zip);
        ZipArchiveEntry[] entries = [.. archive.Entries.Where(e => e.Name.EndsWith(".sm", StringComparison.Ordinal)).OrderBy(e => e.Name, StringComparer.Ordinal)];
        var what = string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(zip)} | {(plain ? "plain solver" : "optimiser")} | {effort}");
        var done = Begun(rows, what);
        using (var file = new StreamWriter(rows, append: true) { AutoFlush = true })
        {
            foreach (var entry in Spread(entries).Take(most).Where(e => done.All(d => d.Instance != Name(e))))
            {
                done.Add(Planned(entry, known[Name(entry)], new(effort) { Searchers = 1 }, plain));
                file.WriteLine(done[^1]);
                output.WriteLine(done[^1]);
            }
        }

        Sum(output, what, entries.Length, done);
    }

    // The rows of the run before; those of another set, way or effort are not mixed with these. A row that was cut off is left out, and its instance planned again.
    private static List<PlanRow> Begun(string rows, string what)
    {
        string[] lines = File.Exists(rows) ? File.ReadAllLines(rows) : [];
        if (lines.Length > 0 && lines[0] != what)
        {
            throw new InvalidOperationException($"{rows} holds the rows of another run: {lines[0]}");
        }

        List<PlanRow> done = [.. lines.Skip(2).Select(PlanRow.Read).OfType<PlanRow>()];
        File.WriteAllLines(rows, [what, PlanRow.Columns, .. done.Select(d => d.ToString())]);
        return done;
    }

    private static PlanRow Planned(ZipArchiveEntry entry, (int Lower, int Upper) known, OptimiserOptions options, bool plain)
    {
        using var reader = new StreamReader(entry.Open());
        var problem = Psplib.Read(reader.ReadToEnd());
        var atOnce = new ListScheduler(problem).Run()!.Finish;
        var before = Environment.CpuUsage.TotalTime;
        var result = plain ? PlainSolver.Run(problem, options) : Optimiser.Run(problem, options);
        var seconds = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        var faults = result.Schedule is { } plan ? ScheduleChecker.Faults(problem, plan).Count : 0;
        return new(Name(entry), known.Lower, known.Upper, atOnce, result.Schedule?.Finish, result.Bound, result.Proved, faults, seconds);
    }

    private static void Sum(TextWriter output, string what, int all, List<PlanRow> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        double[] times = [.. rows.Select(r => r.Seconds).Order()];
        output.WriteLine("| set | way | effort | instances | at best known | mean over best known | plan made at once, over | proved | contradictions | processor seconds: median | greatest | all |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {rows.Count} of {all} | {Share(rows, r => r.Best)} | {100 * rows.Average(r => r.Over):0.00} % | {100 * rows.Average(r => (r.AtOnce - r.Upper) / (double)r.Upper):0.00} % | {Share(rows, r => r.Proved)} | {rows.Count(r => r.Wrong)} | {times[times.Length / 2]:0.00} | {times[^1]:0.0} | {times.Sum():0} |"));
    }

    private static string Share(List<PlanRow> rows, Func<PlanRow, bool> which) => rows.Count(which) is var many ? string.Create(CultureInfo.InvariantCulture, $"{many} ({100.0 * many / rows.Count:0.0} %)") : "";

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

    private static string Name(ZipArchiveEntry entry) => Path.GetFileNameWithoutExtension(entry.Name);

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
