using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>The raceways as a graph: shortest ways between points. Ways are kept by their ends and conditions.</summary>
internal sealed class Raceways
{
    private readonly ImmutableArray<(string Id, Place Place)> nodes;
    private readonly ImmutableArray<Edge> edges;
    private readonly (int From, int To)[] ends;
    private readonly Dictionary<string, int> nodeIndex;
    private readonly Dictionary<string, int> edgeIndex;
    private readonly List<int>[] edgesAt;
    private readonly Dictionary<Journey, Way?> ways = [];
    private readonly ConditionalWeakTable<Way, int[]> numbers = [];
    private readonly Dictionary<(int From, Sequence<string> Avoid), int[]> trees = [];

    public Raceways(Aircraft aircraft)
    {
        nodes = Nodes(aircraft);
        nodeIndex = nodes.Select((n, i) => (n.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        edges = Edges(aircraft);
        edgeIndex = edges.Select((e, i) => (e.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        ends = [.. edges.Select(e => (nodeIndex[e.From], nodeIndex[e.To]))];
        edgesAt = [.. nodes.Select(_ => new List<int>())];
        for (var edge = 0; edge < ends.Length; edge++)
        {
            edgesAt[ends[edge].From].Add(edge);
            if (ends[edge].To != ends[edge].From)
            {
                edgesAt[ends[edge].To].Add(edge);
            }
        }
    }

    /// <summary>How many segments join two known points.</summary>
    public int Segments => edges.Length;

    /// <summary>How many points there are.</summary>
    public int Points => nodes.Length;

    /// <summary>The segments by number.</summary>
    public string Segment(int edge) => edges[edge].Id;

    /// <summary>Number of a segment; -1 when it joins no known points.</summary>
    public int Number(string segment) => edgeIndex.GetValueOrDefault(segment, -1);

    /// <summary>The segments of a way by number, each once.</summary>
    public ImmutableArray<int> Numbers(Way way) => ImmutableCollectionsMarshal.AsImmutableArray(numbers.GetValue(way, w => [.. w.Segments.Select(Number).Distinct()]));

    /// <summary>The point by number.</summary>
    public string Point(int node) => nodes[node].Id;

    /// <summary>Number of a point; -1 when there is none of that name.</summary>
    public int PointNumber(string? node) => node is null ? -1 : nodeIndex.GetValueOrDefault(node, -1);

    /// <summary>Length of a segment in metres.</summary>
    public double Metres(int edge) => edges[edge].Metres;

    /// <summary>The two ends of a segment.</summary>
    public (int From, int To) Ends(int edge) => ends[edge];

    /// <summary>The segments that meet at a point.</summary>
    public IReadOnlyList<int> At(int node) => edgesAt[node];

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

    /// <summary>The cheapest way where every segment has a price of its own, infinite where it is barred; null when there is none. Via points are
    /// passed in their order. Of equally cheap ways, the one found first in the order of points and segments.</summary>
    public Way? Cheapest(Journey journey, Func<int, double> price)
    {
        var (points, segments, metres) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>(), 0.0);
        points.Add(journey.From);
        foreach (var stop in journey.Via.Append(journey.To))
        {
            if (!nodeIndex.TryGetValue(points[^1], out var start) || !nodeIndex.TryGetValue(stop, out var end)
                || !Follow(start, end, Tree([(start, 0)], price, end).Arrival, points, segments, ref metres))
            {
                return null;
            }
        }

        return new Way(points.ToImmutable(), segments.ToImmutable(), new Length(metres));
    }

    /// <summary>Where a wire's mass has its centre: what lies along the way on the straight lines between its points, each weighing as much
    /// as it is long, and what lies at each end there.</summary>
    /// <param name="way">The way.</param>
    /// <param name="along">Length of wire along the way.</param>
    /// <param name="from">Length of wire at its first point.</param>
    /// <param name="to">Length of wire at its last point.</param>
    public Place? Centre(Way? way, Length along, Length from, Length to)
    {
        if (way is null)
        {
            return null;
        }

        var (fs, bl, wl, total) = (0.0, 0.0, 0.0, 0.0);
        void Put(Place place, double metres) => (fs, bl, wl, total) =
            (fs + (place.Fs.Si * metres), bl + (place.Bl.Si * metres), wl + (place.Wl.Si * metres), total + metres);

        var stretch = way.Length.Si > 0 ? along.Si / way.Length.Si : 0;
        for (var i = 0; i < way.Segments.Length; i++)
        {
            var half = edges[edgeIndex[way.Segments[i]]].Metres * stretch / 2;
            Put(PlaceOf(way.Nodes[i]), half);
            Put(PlaceOf(way.Nodes[i + 1]), half);
        }

        Put(PlaceOf(way.Nodes[0]), from.Si);
        Put(PlaceOf(way.Nodes[^1]), to.Si);
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
            var barred = avoid.Select(Number).ToHashSet();
            trees.Add((start, avoid), arrival = Tree([(start, 0)], e => barred.Contains(e) ? double.PositiveInfinity : edges[e].Metres).Arrival);
        }

        return Follow(start, end, arrival, points, segments, ref metres);
    }

    private bool Follow(int start, int end, int[] arrival, ImmutableArray<string>.Builder points, ImmutableArray<string>.Builder segments, ref double metres)
    {
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

    /// <summary>Dijkstra from points that each start at a cost: by which segment each point is first reached (-1 where it is not), and how dear that is.
    /// Ends early once a point asked for is reached.</summary>
    public (int[] Arrival, double[] Distance) Tree(IEnumerable<(int Point, double Cost)> starts, Func<int, double> price, int until = -1)
    {
        var (arrival, distance) = (new int[nodes.Length], new double[nodes.Length]);
        Array.Fill(arrival, -1);
        Array.Fill(distance, double.PositiveInfinity);
        var queue = new PriorityQueue<int, (double, int)>();
        foreach (var (point, cost) in starts)
        {
            if (cost < distance[point])
            {
                distance[point] = cost;
                queue.Enqueue(point, (cost, point));
            }
        }

        while (queue.TryDequeue(out var at, out var reached))
        {
            if (at == until)
            {
                break;
            }

            if (reached.Item1 > distance[at])
            {
                continue;
            }

            foreach (var edge in edgesAt[at])
            {
                var (next, far) = (Other(edge, at), distance[at] + price(edge));
                if (far < distance[next])
                {
                    (distance[next], arrival[next]) = (far, edge);
                    queue.Enqueue(next, (far, next));
                }
            }
        }

        return (arrival, distance);
    }

    /// <summary>The other end of a segment.</summary>
    public int Other(int edge, int node) => ends[edge].From == node ? ends[edge].To : ends[edge].From;

    private readonly record struct Edge(string Id, string From, string To, double Metres);
}

/// <summary>From where to where, and under which conditions.</summary>
internal readonly record struct Journey(string From, string To, Sequence<string> Avoid, Sequence<string> Via);
