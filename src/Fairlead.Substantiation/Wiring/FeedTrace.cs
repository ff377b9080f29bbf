using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Follows a feed through circuits and joints: from the breaker to the plus pins, and from the minus pins to a ground.</summary>
internal static class FeedTrace
{
    /// <summary>Traces a feed: sets its ways, the points seen and what is wrong, and returns the current each circuit carries for it.</summary>
    public static IEnumerable<(CircuitState Circuit, Share Share)> Run(FeedState feed, WiringContext context, Func<Endpoint, IReadOnlyCollection<CircuitState>> at)
    {
        (feed.Feeding, feed.Returning, feed.Loop, feed.Problem) = ([], [], [], null);
        feed.Seen.Clear();
        if (feed.Input is null)
        {
            feed.Problem = feed.Missing("power-input-unknown", $"{feed.Feed.Item} has no power input '{feed.Feed.Input}'.", "Name a power input of the part.");
            return [];
        }

        var there = Spread(new Endpoint(feed.Feed.Breaker), feed, context, at, out var loop);
        var plus = feed.Pins(feed.Input.Plus).ToArray();
        feed.Feeding = [.. plus.Where(there.ContainsKey).Select(p => Path(there, p))];
        feed.Loop = loop?.Circuits ?? [];
        var others = there.Keys.Where(p => p.Item != feed.Feed.Breaker && IsEnd(context, p, FixtureKind.Breaker)).ToArray();
        feed.Problem = others.Length > 0 ? feed.Missing("breakers-joined", $"The line of {feed.Feed.Breaker} is also fed by {Names(others)}: opening one leaves it live, and a fault draws through both.", "Give each breaker a line of its own; where two supplies are wanted, part them inside the box or by diodes.")
            : loop is not null ? Meshed(feed, loop.Why)
            : feed.Feeding.IsEmpty ? feed.Missing("power-not-wired", $"No circuit leads from {feed.Feed.Breaker} to {Names(plus)}.", $"Add circuits from {feed.Feed.Breaker} to {Names(plus)}.")
            : feed.Feeding.Length < plus.Length ? feed.Missing("power-not-wired", $"{Names(plus.Where(p => !there.ContainsKey(p)))} is not wired: the other pins carry its share.", $"Wire {Names(plus.Where(p => !there.ContainsKey(p)))}, or take the pin out of the power input.", Verdict.Caution)
            : null;
        TraceReturn(feed, context, at);
        return Shares(feed);
    }

    private static void TraceReturn(FeedState feed, WiringContext context, Func<Endpoint, IReadOnlyCollection<CircuitState>> at)
    {
        var back = ImmutableArray.CreateBuilder<ImmutableArray<CircuitState>>();
        var missing = new List<Endpoint>();
        foreach (var pin in feed.Pins(feed.Input!.Minus))
        {
            var reached = Spread(pin, feed, context, at, out var loop);
            var grounds = reached.Keys.Where(p => IsEnd(context, p, FixtureKind.Ground)).ToArray();
            feed.Loop = [.. feed.Loop, .. loop?.Circuits ?? []];
            feed.Problem ??= loop is not null ? Meshed(feed, loop.Why) : grounds.Length > 1 ? Meshed(feed, $"{pin} is grounded at {Names(grounds)}") : null;
            if (grounds.Length == 0)
            {
                missing.Add(pin);
                continue;
            }

            back.Add(Path(reached, grounds.MinBy(g => g.Item, StringComparer.Ordinal)));
        }

        feed.Returning = back.ToImmutable();
        if (missing.Count > 0)
        {
            feed.Problem ??= feed.Missing("return-missing", $"No circuit leads from {Names(missing)} to a ground stud.", $"Add circuits from {Names(missing)} to a ground stud.");
        }
    }

    // Pins of one side share the current equally. Circuits near the breaker carry the shares of all pins behind them.
    // In a loop the shares are unknown; no circuit of it carries more than the whole.
    private static List<(CircuitState Circuit, Share Share)> Shares(FeedState feed)
    {
        var shares = new List<(CircuitState, Share)>();
        foreach (var (paths, feeding) in new[] { (feed.Feeding, true), (feed.Returning, false) })
        {
            shares.AddRange(paths.SelectMany(p => p).Where(c => !feed.Loop.Contains(c)).GroupBy(c => c)
                .Select(g => (g.Key, new Share(feed, feed.Current * ((double)g.Count() / paths.Length), feeding))));
        }

        shares.AddRange(feed.Loop.Distinct().Select(c => (c, new Share(feed, feed.Current, true))));
        return shares;
    }

    // Breadth first from a point; ends at grounds and at other breakers. By which circuit each point was reached.
    private static Dictionary<Endpoint, (Endpoint From, CircuitState? By)> Spread(
        Endpoint start, FeedState feed, WiringContext context, Func<Endpoint, IReadOnlyCollection<CircuitState>> at, out Loop? loop)
    {
        loop = null;
        var reached = new Dictionary<Endpoint, (Endpoint From, CircuitState? By)> { [start] = (start, null) };
        var queue = new Queue<Endpoint>([start]);
        feed.Seen.Add(start);
        while (queue.TryDequeue(out var point))
        {
            foreach (var circuit in at(point).Where(c => c.Coax is null && c != reached[point].By).OrderBy(c => c.Order))
            {
                var next = circuit.Circuit.From == point ? circuit.Circuit.To : circuit.Circuit.From;
                var end = IsEnd(context, next, FixtureKind.Ground) || IsEnd(context, next, FixtureKind.Breaker);
                if (!reached.TryAdd(next, (point, circuit)))
                {
                    loop ??= new Loop(end ? $"{circuit.Circuit.Id} is a second way to {next}" : $"{circuit.Circuit.Id} closes a loop at {next}", [circuit, .. Path(reached, point), .. Path(reached, next)]);
                }
                else if (!end)
                {
                    feed.Seen.Add(next);
                    queue.Enqueue(next);
                }
            }
        }

        return reached;
    }

    private static ImmutableArray<CircuitState> Path(Dictionary<Endpoint, (Endpoint From, CircuitState? By)> reached, Endpoint to)
    {
        var path = new List<CircuitState>();
        for (var step = reached[to]; step.By is not null; step = reached[step.From])
        {
            path.Add(step.By);
        }

        path.Reverse();
        return [.. path];
    }

    private sealed record Loop(string Why, ImmutableArray<CircuitState> Circuits);

    private static bool IsEnd(WiringContext context, Endpoint point, FixtureKind kind) => point.IsPoint && context.FixtureOf(point)?.Kind == kind;

    private static Finding Meshed(FeedState feed, string why) =>
        feed.Missing("meshed", $"The feed has more than one way for its current: {why}. The share of each way cannot be told.", "Open the loop, or work out by hand what each way carries and accept it by a concession.", Verdict.CannotTell);

    private static string Names(IEnumerable<Endpoint> ends) => string.Join(", ", ends);
}
