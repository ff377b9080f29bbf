using System.Diagnostics;
using System.Globalization;
using Fairlead.Substantiation.Harness.Graphs;

namespace Fairlead.Bench;

/// <summary>Steiner trees against a plain shortest-path tree in one run: over a folder of SteinLib files with a table of optima
/// (<c>set,instance,nodes,edges,terminals,optimum</c>), and growth over random graphs.</summary>
internal static class SteinerRatios
{
    public static void Growth(TextWriter writer)
    {
        writer.WriteLine("nodes | terminals | solved, ms | shortest-path tree, ms | ratio | weight against the bound | tree against the bound");
        foreach (var (nodes, terminals) in new[] { (100, 10), (200, 15), (500, 25), (1000, 35), (2000, 50) })
        {
            var graph = Raceways(nodes, seed: nodes);
            var random = new Random(terminals);
            var joined = Enumerable.Range(0, graph.NodeCount).OrderBy(_ => random.Next()).Take(terminals).ToArray();
            var run = Run(graph, joined);
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{graph.NodeCount} | {terminals} | {run.Milliseconds:0.0} | {run.PlainMilliseconds:0.00} | {run.Milliseconds / run.PlainMilliseconds:0} | {run.Result.Weight / run.Result.LowerBound:0.0000} | {run.Plain / run.Result.LowerBound:0.0000}"));
        }
    }

    public static void Print(TextWriter writer, string folder, string optima)
    {
        writer.WriteLine("set | instances | proved | at the optimum | worst gap, % | worst over the optimum, % | shortest-path tree over the optimum, mean % | worst % | time, s | ratio of times, median");
        var rows = File.ReadLines(optima).Skip(1).Select(line => line.Split(',')).Select(cell => (Set: cell[0], Name: cell[1], Optimum: double.Parse(cell[5], CultureInfo.InvariantCulture)));
        foreach (var set in rows.GroupBy(row => row.Set))
        {
            var runs = set.Select(row => (row.Name, row.Optimum, Path: Find(folder, row.Name))).Where(row => row.Path is not null)
                .Select(row => (row.Name, row.Optimum, Run: Run(SteinLib.Read(row.Path!)))).ToList();
            foreach (var (name, optimum, run) in runs.Where(r => !r.Run.Result.IsOptimal || r.Run.Result.Weight != r.Optimum))
            {
                writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {name}: {run.Result.Weight} bound {run.Result.LowerBound} optimum {optimum}, {run.Milliseconds:0} ms"));
            }

            if (runs.Count > 0)
            {
                writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{set.Key} | {runs.Count} | {runs.Count(r => r.Run.Result.IsOptimal)} | {runs.Count(r => r.Run.Result.Weight <= r.Optimum)} | {100 * runs.Max(r => r.Run.Result.Gap):0.00} | {100 * runs.Max(r => (r.Run.Result.Weight / r.Optimum) - 1):0.00} | {100 * runs.Average(r => (r.Run.Plain / r.Optimum) - 1):0.00} | {100 * runs.Max(r => (r.Run.Plain / r.Optimum) - 1):0.00} | {runs.Sum(r => r.Run.Milliseconds) / 1000:0.0} | {runs.Select(r => r.Run.Milliseconds / r.Run.PlainMilliseconds).Order().ElementAt(runs.Count / 2):0}"));
            }
        }
    }

    private static string? Find(string folder, string name) => Directory.EnumerateFiles(folder, name + ".*", SearchOption.AllDirectories).FirstOrDefault();

    private static (SteinerResult Result, double Milliseconds, double Plain, double PlainMilliseconds) Run((Graph Graph, int[] Terminals) problem) => Run(problem.Graph, problem.Terminals);

    private static (SteinerResult Result, double Milliseconds, double Plain, double PlainMilliseconds) Run(Graph graph, int[] terminals)
    {
        var clock = Stopwatch.StartNew();
        var result = SteinerTree.Solve(graph, terminals);
        var time = clock.Elapsed.TotalMilliseconds;
        clock.Restart();
        var plain = PlainTree(graph, terminals);
        return (result, time, plain, clock.Elapsed.TotalMilliseconds);
    }

    /// <summary>The weight of a tree grown by the shortest path to the nearest terminal left.</summary>
    private static double PlainTree(Graph graph, int[] terminals)
    {
        var left = terminals.Skip(1).ToHashSet();
        var nodes = new HashSet<int> { terminals[0] };
        var weight = 0.0;
        while (left.Count > 0)
        {
            var paths = ShortestPaths.From(graph, [.. nodes]);
            var next = left.MinBy(paths.To);
            weight += paths.To(next);
            foreach (var edge in paths.PathTo(next))
            {
                nodes.Add(graph[edge].From);
                nodes.Add(graph[edge].To);
            }

            left.ExceptWith(nodes);
        }

        return weight;
    }

    /// <summary>A grid of raceways with a third of its segments missing and lengths in mm.</summary>
    private static Graph Raceways(int nodes, int seed)
    {
        var random = new Random(seed);
        var across = (int)Math.Round(Math.Sqrt(nodes / 4.0));
        var along = nodes / across;
        var edges = new List<GraphEdge>();
        for (var node = 0; node < across * along; node++)
        {
            if (node % across != across - 1 && random.Next(3) > 0)
            {
                edges.Add(new GraphEdge(node, node + 1, random.Next(100, 400)));
            }

            if (node + across < across * along)
            {
                edges.Add(new GraphEdge(node, node + across, random.Next(100, 400)));
            }
        }

        edges.AddRange(Enumerable.Range(0, across - 1).Select(node => new GraphEdge(node, node + 1, 250)));
        return new Graph(across * along, edges);
    }
}
