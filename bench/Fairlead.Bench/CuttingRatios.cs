using System.Diagnostics;
using System.Globalization;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Bench;

/// <summary>Cutting plans against longest-first in one run, over files of one-dimensional bin packing in OR-Library's layout (number of problems; for each its
/// name, <c>capacity pieces optimum</c>, and the lengths).</summary>
internal static class CuttingRatios
{
    public static void Print(TextWriter writer, string folder)
    {
        writer.WriteLine("file | problems | proved | at the optimum | worst over the optimum, reels | longest first over the optimum, mean reels | time, s | worst, ms | ratio of times, median");
        foreach (var path in Directory.EnumerateFiles(folder, "*.txt").Order())
        {
            var runs = Read(path).Select(problem => (problem.Optimum, Run: Run(problem))).ToList();
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{Path.GetFileNameWithoutExtension(path)} | {runs.Count} | {runs.Count(r => r.Run.Plan.IsOptimal)} | {runs.Count(r => r.Run.Plan.NewReels == r.Optimum)} | {runs.Max(r => r.Run.Plan.NewReels - r.Optimum)} | {runs.Average(r => (double)(r.Run.First - r.Optimum)):0.00} | {runs.Sum(r => r.Run.Milliseconds) / 1000:0.0} | {runs.Max(r => r.Run.Milliseconds):0} | {runs.Select(r => r.Run.Milliseconds / r.Run.FirstMilliseconds).Order().ElementAt(runs.Count / 2):0}"));
        }
    }

    private static (CuttingPlan Plan, double Milliseconds, int First, double FirstMilliseconds) Run((long Capacity, int Optimum, long[] Pieces) problem)
    {
        Stock[] stock = [new("reel", problem.Capacity, Count: null, IsNew: true)];
        var clock = Stopwatch.StartNew();
        var first = CuttingStock.Solve(problem.Pieces, stock, new CuttingOptions(StepLimit: 0));
        var firstTime = clock.Elapsed.TotalMilliseconds;
        clock.Restart();
        return (CuttingStock.Solve(problem.Pieces, stock), clock.Elapsed.TotalMilliseconds, first.NewReels, firstTime);
    }

    private static IEnumerable<(long Capacity, int Optimum, long[] Pieces)> Read(string path)
    {
        var cells = new Queue<string>(File.ReadAllText(path).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        int Next() => int.Parse(cells.Dequeue(), CultureInfo.InvariantCulture);
        for (var left = Next(); left > 0; left--)
        {
            cells.Dequeue();
            var (capacity, count, optimum) = (Next(), Next(), Next());
            yield return (capacity, optimum, [.. Enumerable.Range(0, count).Select(_ => (long)Next())]);
        }
    }
}
