using System.Diagnostics;
using System.Globalization;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Bench;

/// <summary>Growth of the choice of ways with the number of circuits, in raceways of 2,000 points: with room for all, and with segments too full.</summary>
internal static class RoutingRatios
{
    private const int Frames = 1000;
    private const int Edits = 5;
    private static readonly int[] Sizes = [100, 500, 2000, 5000, 20_000];

    public static void Print(TextWriter writer)
    {
        _ = new Assessor().Assess(Of(100, crowded: true));
        writer.WriteLine("circuits | raceways | whole, ms | one edit, ms (median of five) | whole / one edit | detours | ways changed by five edits | above the bound, % | rounds");
        foreach (var (size, crowded) in Sizes.SelectMany(n => new[] { (n, false), (n, true) }))
        {
            var job = Of(size, crowded);
            var assessor = new Assessor();
            var clock = Stopwatch.StartNew();
            var first = assessor.Assess(job);
            var whole = clock.Elapsed.TotalMilliseconds;
            var (edits, second) = (new List<double>(), first);
            for (var i = 0; i < Edits; i++)
            {
                var circuit = job.Change.Circuits![(size / 2) + i];
                job = job with { Change = job.Change with { Circuits = job.Change.Circuits.With(circuit with { To = circuit.From, From = circuit.To }) } };
                clock.Restart();
                second = assessor.Assess(job);
                edits.Add(clock.Elapsed.TotalMilliseconds);
            }

            var edit = edits.Order().ElementAt(Edits / 2);
            var changed = first.Circuits.Zip(second.Circuits).Count(p => !(p.First.Way?.Segments ?? []).AsSpan().SequenceEqual((p.Second.Way?.Segments ?? []).AsSpan()));
            var above = 100 * ((first.Routing.Mass / first.Routing.Bound) - 1);
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{size} | {(crowded ? "crowded" : "roomy")} | {whole:0} | {edit:0.0} | {whole / edit:0} | {first.Routing.Detours.Length} | {changed} | {above:0.000} | {first.Routing.Rounds}"));
        }
    }

    // A ladder of two rails; circuits of up to 24 frames from stud to stud, evenly spread. Crowded: every fortieth bay of a rail holds three quarters of what would run there.
    private static Job Of(int circuits, bool crowded)
    {
        var small = Length.Of(0.058 * 1.2 * Math.Sqrt(Math.Max(3, circuits * 0.75 * 12 / (2 * Frames))), "in");
        var job = GeneratedJob.Of(40);
        return job with
        {
            Aircraft = job.Aircraft with
            {
                Nodes = new(Enumerable.Range(0, 2 * Frames).Select(n => new RacewayNode(Node(n), "cabin", new Place(Length.Of(4 * (n / 2), "in"), Length.Of(n % 2 == 0 ? -20 : 20, "in"), Length.Of(50, "in"))))),
                Segments = new(Enumerable.Range(0, Frames).SelectMany(f => Bay(f, crowded && f % 40 == 20 ? small : Length.Of(15, "in")))),
                Grounds = new(Enumerable.Range(0, 2 * Frames).Select(n => new GroundStud($"GS{Text(n)}", Node(n)))),
                Breakers = null,
            },
            Change = job.Change with { Fit = null, Power = null, Circuits = new(Enumerable.Range(0, circuits).Select(Wire)) },
        };
    }

    private static Circuit Wire(int i)
    {
        var from = (int)((long)i * 7919 % (2 * (Frames - 24)));
        return new($"C{Text(i)}", new Endpoint($"GS{Text(from)}"), new Endpoint($"GS{Text(from + (2 * (1 + (i % 24))))}"), "W20", Bundle: $"B{Text(i % 40)}");
    }

    private static IEnumerable<RacewaySegment> Bay(int frame, Length left)
    {
        yield return new RacewaySegment($"X{Text(frame)}", Node(2 * frame), Node((2 * frame) + 1), Length.Of(10, "in"), Length.Of(15, "in"));
        if (frame + 1 < Frames)
        {
            yield return new RacewaySegment($"L{Text(frame)}", Node(2 * frame), Node(2 * (frame + 1)), Capacity: left);
            yield return new RacewaySegment($"R{Text(frame)}", Node((2 * frame) + 1), Node((2 * (frame + 1)) + 1), Capacity: Length.Of(15, "in"));
        }
    }

    private static string Node(int n) => $"N{Text(n)}";

    private static string Text(int n) => n.ToString(CultureInfo.InvariantCulture);
}
