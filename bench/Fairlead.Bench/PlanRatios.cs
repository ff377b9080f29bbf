using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Bench;

/// <summary>The optimiser on a published set, beside its optima or best known bounds.</summary>
internal static class PlanRatios
{
    /// <summary>Plans every instance of a zip of instances and prints how good the plans are.</summary>
    /// <param name="zip">Zip of .sm files.</param>
    /// <param name="bounds">Comma-separated: instance, lower, upper.</param>
    /// <param name="effort">Effort allowed for each.</param>
    /// <param name="output">Where to print.</param>
    /// <param name="most">How many instances at most, spread over the set.</param>
    public static void Print(string zip, string bounds, double effort, TextWriter output, int most = int.MaxValue)
    {
        var known = File.ReadLines(bounds).Skip(1).Select(l => l.Split(',')).ToDictionary(c => c[0], c => (Lower: Whole(c[1]), Upper: Whole(c[2])), StringComparer.Ordinal);
        using var archive = ZipFile.OpenRead(zip);
        ZipArchiveEntry[] entries = [.. archive.Entries.Where(e => e.Name.EndsWith(".sm", StringComparison.Ordinal)).OrderBy(e => e.Name, StringComparer.Ordinal)];
        var step = Math.Max(1, entries.Length / Math.Min(most, entries.Length));
        var (count, best, proved, gap, wrong, list, seconds) = (0, 0, 0, 0.0, 0, 0.0, new List<double>());
        foreach (var entry in entries.Where((_, i) => i % step == 0))
        {
            using var reader = new StreamReader(entry.Open());
            var problem = Psplib.Read(reader.ReadToEnd());
            var (lower, upper) = known[Path.GetFileNameWithoutExtension(entry.Name)];
            var watch = Stopwatch.StartNew();
            var result = Optimiser.Run(problem, new(effort));
            seconds.Add(watch.Elapsed.TotalSeconds);
            var finish = result.Schedule!.Finish;
            (count, best, proved) = (count + 1, best + (finish <= upper ? 1 : 0), proved + (result.Proved ? 1 : 0));
            gap += (finish - upper) / (double)upper;
            list += (new ListScheduler(problem).Run()!.Finish - upper) / (double)upper;
            if (finish < lower || result.Bound > upper || (result.Proved && finish > upper))
            {
                wrong++;
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{entry.Name}: {finish} bound {result.Bound} against {lower}..{upper}"));
            }
        }

        seconds.Sort();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(zip)}, {count} instances, effort {effort}: at best known {100.0 * best / count:0.0} %, proved {100.0 * proved / count:0.0} %, mean over best known {100 * gap / count:0.00} % (list alone {100 * list / count:0.00} %), contradictions {wrong}, seconds: median {seconds[count / 2]:0.00}, greatest {seconds[^1]:0.0}, all {seconds.Sum():0}"));
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
