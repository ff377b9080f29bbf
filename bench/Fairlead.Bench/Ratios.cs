using System.Diagnostics;
using System.Globalization;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Bench;

/// <summary>Ratios within one run, which mean the same on any machine: growth of the whole check with size, and whole check against one edit.</summary>
internal static class Ratios
{
    private static readonly int[] Sizes = [100, 500, 1000, 5000, 10_000, 50_000];

    public static void Print(TextWriter writer)
    {
        Measure(GeneratedJob.Of(200));
        writer.WriteLine("circuits | whole, ms | per circuit against the smallest | one edit, ms | whole / one edit | whole, MB | one edit, kB");
        var first = 0.0;
        foreach (var (name, count, job) in Sizes.Select(n => (n.ToString(CultureInfo.InvariantCulture), n, GeneratedJob.Of(n))).Prepend(("demo", 0, BenchJobs.Demo())))
        {
            var (whole, edit, wholeBytes, editBytes) = Measure(job);
            var circuits = job.Change.Circuits!.Count;
            first = count == Sizes[0] ? whole / circuits : first;
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name} ({circuits}) | {whole:0.0} | {(first == 0 ? "-" : (whole / circuits / first).ToString("0.00", CultureInfo.InvariantCulture))} | {edit:0.00} | {whole / edit:0} | {wholeBytes / 1e6:0.0} | {editBytes / 1e3:0}"));
        }
    }

    private static (double Whole, double Edit, long WholeBytes, long EditBytes) Measure(Job job)
    {
        var (whole, wholeBytes) = Best(3, () => new Assessor().Assess(job));
        var assessor = new Assessor();
        assessor.Assess(job);
        var odd = false;
        var (edit, editBytes) = Best(15, () => assessor.Assess(BenchJobs.Edited(job, odd = !odd)));
        return (whole, edit, wholeBytes, editBytes);
    }

    // The best of several: what else the machine does only ever adds.
    private static (double Milliseconds, long Bytes) Best(int times, Func<Assessment> run)
    {
        var (best, bytes) = (double.MaxValue, long.MaxValue);
        for (var i = 0; i < times; i++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var clock = Stopwatch.StartNew();
            GC.KeepAlive(run());
            best = Math.Min(best, clock.Elapsed.TotalMilliseconds);
            bytes = Math.Min(bytes, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return (best, bytes);
    }
}
