using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Calculations.Network;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Power;
using Fairlead.Substantiation.Survey;
using Fairlead.Tests.Reference.Network;

namespace Fairlead.Bench;

/// <summary>Ratios of the network within one run: a solution against ngspice, as a process and per solution; every single short by rank one against
/// a network factored anew for each; and the stage that judges the shorts of a job.</summary>
internal static class NetworkRatios
{
    private const int Sampled = 20;
    private static readonly int[] Nodes = [30, 1000, 10_000];
    private static readonly int[] Circuits = [100, 1000, 5000];

    public static void Print(TextWriter writer)
    {
        Solutions(writer);
        Shorts(writer);
        Stage(writer);
    }

    private static void Solutions(TextWriter writer)
    {
        var present = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "ngspice")));
        writer.WriteLine(present ? "nodes | solved, ms | per node against the smallest | ngspice as a process, times | ngspice per solution, times" : "nodes | solved, ms | per node against the smallest (ngspice is not on the path: not compared)");
        var first = 0.0;
        foreach (var count in Nodes)
        {
            var network = CircuitDeck.Generated(new Random(count), (count / 2) + 1);
            var nodes = network.Nodes.Length;
            var ours = Best(Math.Max(10, 60_000 / count), () => NetworkSolver.Solve(network) ?? throw new InvalidOperationException("The generated network has no solution."));
            first = first == 0 ? ours / nodes : first;
            var line = string.Create(CultureInfo.InvariantCulture, $"{nodes} | {ours:0.000} | {ours / nodes / first:0.00}");
            if (present)
            {
                var solves = Math.Max(Sampled, 60_000 / count);
                var (once, more) = (Simulated(network, 1), Simulated(network, 1 + solves));
                line += string.Create(CultureInfo.InvariantCulture, $" | {once / ours:0.0} | {(more - once) / solves / ours:0.0}");
            }

            writer.WriteLine(line);
        }
    }

    // Milliseconds of a run of ngspice, start and reading of the deck included.
    private static double Simulated(DcNetwork network, int solves)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, CircuitDeck.Of(network, [network.Nodes[0]], solves: solves));
            return Best(2, () =>
            {
                using var run = Process.Start(new ProcessStartInfo("ngspice", ["-b", file]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
                var errors = run.StandardError.ReadToEndAsync();
                var output = run.StandardOutput.ReadToEnd();
                run.WaitForExit();
                return output.Contains("v(", StringComparison.Ordinal) ? output : throw new InvalidOperationException($"ngspice told nothing: {output}{errors.Result}");
            });
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static void Shorts(TextWriter writer)
    {
        writer.WriteLine("circuits | nodes | shorts | all shorts, ms | per short against the smallest | built and factored anew each time, times");
        var first = 0.0;
        foreach (var (name, job) in Jobs())
        {
            var (network, ends) = Ends(job);
            var before = NetworkSolver.Solve(network)!;
            var all = Best(3, () => Every(before, ends));
            var each = all / ends.Length;
            first = first == 0 && name != "demo" ? each : first;
            var resistive = DcNetwork.Of(network.Sources, network.Branches, network.Loads.Select(l => l with { Current = null, Power = null, Resistance = before.Across(l)!.Value / before.Into(l) }).ToSequence());
            ImmutableArray<string> some = [.. ends.Where((_, i) => i % Math.Max(1, ends.Length / Sampled) == 0)];
            var anew = Best(2, () => some.Select(n => NetworkSolver.Solve(Shorted(resistive, n))!.At(n)!.Value.Si).Sum()) / some.Length;
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name} ({job.Change.Circuits!.Count}) | {network.Nodes.Length} | {ends.Length} | {all:0.0} | {(first == 0 ? "-" : (each / first).ToString("0.00", CultureInfo.InvariantCulture))} | {anew / each:0.0}"));
        }
    }

    private static double Every(NetworkSolution before, ImmutableArray<string> ends)
    {
        var study = FaultStudy.Of(before)!;
        return ends.Sum(n => study.Short(n, default)?.Current.Si ?? 0);
    }

    private static DcNetwork Shorted(DcNetwork network, string node) =>
        DcNetwork.Of(network.Sources, [.. network.Branches, new NetworkBranch("short", node, NetworkNodes.Reference, Resistance.Of(0.001, "mΩ"))], network.Loads);

    // The network of the first condition with sources, and the ends of the wires that feed its boxes.
    private static (DcNetwork Network, ImmutableArray<string> Ends) Ends(Job job)
    {
        var assessment = new Assessor().Assess(job);
        var input = new NetworkTakeOff(job, assessment.Circuits, assessment.Feeds).In(job.Aircraft.Conditions!.First(c => c.Sources.Count > 0), LoadItem.Of(job));
        var network = DcNetwork.Of(input.Sources, input.Branches, input.Loads);
        var wires = assessment.Feeds.SelectMany(f => f.Feeding).ToHashSet(StringComparer.Ordinal);
        return (network, [.. input.Branches.Where(b => wires.Contains(b.Name)).SelectMany(b => new[] { b.From, b.To }).Distinct(StringComparer.Ordinal)]);
    }

    // The edit gives one circuit of one feed, the middle one, a result of its own.
    private static void Stage(TextWriter writer)
    {
        writer.WriteLine("circuits | shorts judged at first, ms | per circuit against the smallest | after an edit behind one breaker, ms | first / edit");
        var first = 0.0;
        foreach (var (name, job) in Jobs())
        {
            var assessment = new Assessor().Assess(job);
            ShortWork Judge(Memo memo, ImmutableArray<FeedResult> feeds, ShortWork? known) => ShortWork.Of(job, memo, assessment.Circuits, feeds, known);
            var known = Judge(new Memo(), assessment.Feeds, null);
            var edited = assessment.Feeds.SetItem(assessment.Feeds.Length / 2, assessment.Feeds[assessment.Feeds.Length / 2] with { });
            var whole = Best(3, () => Judge(new Memo(), assessment.Feeds, null));
            var one = Best(5, () => Judge(new Memo(), edited, known));
            var circuits = job.Change.Circuits!.Count;
            first = first == 0 && name != "demo" ? whole / circuits : first;
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name} ({circuits}) | {whole:0.0} | {(first == 0 ? "-" : (whole / circuits / first).ToString("0.00", CultureInfo.InvariantCulture))} | {one:0.00} | {whole / one:0}"));
        }
    }

    private static IEnumerable<(string Name, Job Job)> Jobs() => Circuits.Select(n => (n.ToString(CultureInfo.InvariantCulture), GeneratedJob.Of(n))).Prepend(("demo", BenchJobs.Demo()));

    // The best of several, in milliseconds: what else the machine does only ever adds.
    private static double Best(int times, Func<object> run)
    {
        var best = double.MaxValue;
        for (var i = 0; i <= times; i++)
        {
            var clock = Stopwatch.StartNew();
            GC.KeepAlive(run());
            best = i == 0 ? best : Math.Min(best, clock.Elapsed.TotalMilliseconds);
        }

        return best;
    }
}
