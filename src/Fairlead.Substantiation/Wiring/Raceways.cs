using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>The raceways as a graph: shortest ways between points. Ways are kept by their ends and conditions.</summary>
internal sealed class Raceways
{
    private readonly ImmutableArray<(string Id, Place Place)> nodes;
    private readonly ImmutableArray<Edge> edges;
    private readonly Dictionary<string, int> nodeIndex;
    private readonly Dictionary<string, int> edgeIndex;
    private readonly int[][] edgesAt;
    private readonly Dictionary<Journey, Way?> ways = [];
    private readonly Dictionary<(int From, Sequence<string> Avoid), int[]> trees = [];

    public Raceways(Aircraft aircraft)
    {
        nodes = Nodes(aircraft);
        nodeIndex = nodes.Select((n, i) => (n.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        edges = Edges(aircraft);
        edgeIndex = edges.Select((e, i) => (e.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        edgesAt = [.. nodes.Select((n, _) => edges.Select((e, i) => (e, i)).Where(x => x.e.From == n.Id || x.e.To == n.Id).Select(x => x.i).ToArray())];
    }

    /// <summary>Whether the raceways of an aircraft are these: a change of, say, a temperature leaves every way as it was.</summary>
    public bool Serves(Aircraft aircraft) => nodes.AsSpan().SequenceEqual(Nodes(aircraft).AsSpan()) && edges.AsSpan().SequenceEqual(Edges(aircraft).AsSpan());

    /// <summary>The shortest way, or null when there is none. Of equally short ways, the one found first in the order of the segments.</summary>
    public Way? Find(Journey journey)
    {
        if (!ways.TryGetValue(journey, out var way))
        {
            ways.Add(journey, way = Travel(journey));
        }

        return way;
    }

    /// <summary>Centre of a way: of the straight lines between its points, each weighing as much as it is long.</summary>
    public Place? Centre(Way? way)
    {
        if (way is null)
        {
            return null;
        }

        var (fs, bl, wl, total) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < way.Segments.Length; i++)
        {
            var (a, b, metres) = (PlaceOf(way.Nodes[i]), PlaceOf(way.Nodes[i + 1]), edges[edgeIndex[way.Segments[i]]].Metres);
            fs += (a.Fs.Si + b.Fs.Si) / 2 * metres;
            bl += (a.Bl.Si + b.Bl.Si) / 2 * metres;
            wl += (a.Wl.Si + b.Wl.Si) / 2 * metres;
            total += metres;
        }

        return total > 0 ? new Place(new(fs / total), new(bl / total), new(wl / total)) : PlaceOf(way.Nodes[0]);
    }

    private Place PlaceOf(string node) => nodes[nodeIndex[node]].Place;

    private static ImmutableArray<Edge> Edges(Aircraft aircraft) =>
    [
        .. aircraft.Segments.OrEmpty()
            .Where(s => aircraft.Nodes.OrEmpty().Contains(s.From) && aircraft.Nodes.OrEmpty().Contains(s.To))
            .Select(s => new Edge(s.Id, s.From, s.To, (s.Length ?? aircraft.Nodes![s.From].Place.To(aircraft.Nodes[s.To].Place)).Si)),
    ];

    private static ImmutableArray<(string Id, Place Place)> Nodes(Aircraft aircraft) => [.. aircraft.Nodes.OrEmpty().Select(n => (n.Id, n.Place))];

    private Way? Travel(Journey journey)
    {
        var (points, segments, metres) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>(), 0.0);
        points.Add(journey.From);
        foreach (var stop in journey.Via.Append(journey.To))
        {
            if (!Leg(points[^1], stop, journey.Avoid, points, segments, ref metres))
            {
                return null;
            }
        }

        return new Way(points.ToImmutable(), segments.ToImmutable(), new Length(metres));
    }

    private bool Leg(string from, string to, Sequence<string> avoid, ImmutableArray<string>.Builder points, ImmutableArray<string>.Builder segments, ref double metres)
    {
        if (!nodeIndex.TryGetValue(from, out var start) || !nodeIndex.TryGetValue(to, out var end))
        {
            return false;
        }

        if (!trees.TryGetValue((start, avoid), out var arrival))
        {
            trees.Add((start, avoid), arrival = Tree(start, avoid));
        }

        var back = new Stack<int>();
        for (var at = end; at != start; at = Other(arrival[at], at))
        {
            if (arrival[at] < 0)
            {
                return false;
            }

            back.Push(arrival[at]);
        }

        foreach (var edge in back)
        {
            metres += edges[edge].Metres;
            segments.Add(edges[edge].Id);
            points.Add(edges[edge].From == points[^1] ? edges[edge].To : edges[edge].From);
        }

        return true;
    }

    // Dijkstra: by which edge each point is first reached from the start; -1 where it is not.
    private int[] Tree(int start, Sequence<string> avoid)
    {
        var (arrival, distance) = (new int[nodes.Length], new double[nodes.Length]);
        Array.Fill(arrival, -1);
        Array.Fill(distance, double.PositiveInfinity);
        distance[start] = 0;
        var queue = new PriorityQueue<int, (double, int)>([(start, (0, start))]);
        while (queue.TryDequeue(out var at, out var reached))
        {
            if (reached.Item1 > distance[at])
            {
                continue;
            }

            foreach (var edge in edgesAt[at].Where(e => !avoid.Contains(edges[e].Id)))
            {
                var (next, far) = (Other(edge, at), distance[at] + edges[edge].Metres);
                if (far < distance[next])
                {
                    (distance[next], arrival[next]) = (far, edge);
                    queue.Enqueue(next, (far, next));
                }
            }
        }

        return arrival;
    }

    private int Other(int edge, int node) => nodeIndex[edges[edge].From == nodes[node].Id ? edges[edge].To : edges[edge].From];

    private readonly record struct Edge(string Id, string From, string To, double Metres);
}

/// <summary>From where to where, and under which conditions.</summary>
internal readonly record struct Journey(string From, string To, Sequence<string> Avoid, Sequence<string> Via);
