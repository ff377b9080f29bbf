using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Places joints that the change gives no raceway point, where their circuits take the least mass of wire.</summary>
/// <remarks>
/// Joints that circuits join to each other form a tree. From its leaves to its root, the least mass below a joint is worked out for every
/// point it may stand on: for a fixed end that is a multiple of the shortest distance to it, for a joint below the least over its points of its own
/// mass and the distance from there, which is one run of Dijkstra from all its points at once. So the places are exact for one joint (the
/// 1-median) and for any tree of them. Where circuits close a ring of joints, those that do are left out of the choice: what the places
/// cost without them is then a lower bound.
/// </remarks>
internal sealed class JointPlaces
{
    private const double LeastDensity = 0.001;

    private readonly Raceways raceways;
    private readonly Dictionary<string, List<(string Other, double Density)>> links = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(int Node, double Density)>> anchors = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> places = new(StringComparer.Ordinal);

    private JointPlaces(Raceways raceways) => this.raceways = raceways;

    /// <summary>The raceway point of each joint that has none of its own; a joint that nothing fixed leads to is left out.</summary>
    public static Dictionary<string, string> Of(Job job, Raceways raceways, Dictionary<string, Fixture> fixtures)
    {
        var loose = job.Change.Joints.OrEmpty().Where(j => j.Node is null).Select(j => j.Id).ToHashSet(StringComparer.Ordinal);
        var found = new JointPlaces(raceways);
        if (loose.Count == 0)
        {
            return found.places;
        }

        foreach (var id in loose)
        {
            found.links[id] = [];
            found.anchors[id] = [];
        }

        var thinnest = job.Parts.Wires.OrEmpty().Where(w => w.Family == job.Change.Wiring.Family).MinBy(w => w.Gauge)?.Mass.Si ?? 0;
        foreach (var circuit in job.Change.Circuits.OrEmpty().Where(c => loose.Contains(c.From.Item) || loose.Contains(c.To.Item)))
        {
            found.Join(circuit.From.Item, circuit.To.Item, Math.Max(LeastDensity, DensityOf(job.Parts, circuit, thinnest)), fixtures);
        }

        foreach (var joint in job.Change.Joints.OrEmpty().Where(j => loose.Contains(j.Id) && !found.places.ContainsKey(j.Id)))
        {
            found.Place(joint.Id);
        }

        return found.places;
    }

    private static double DensityOf(PartsCatalog parts, Circuit circuit, double thinnest) =>
        parts.Wires?.Find(circuit.Wire)?.Mass.Si ?? parts.Cables?.Find(circuit.Wire)?.Mass.Si ?? parts.Coax?.Find(circuit.Wire)?.Mass.Si ?? thinnest;

    private void Join(string from, string to, double density, Dictionary<string, Fixture> fixtures)
    {
        if (links.TryGetValue(from, out var a) && links.TryGetValue(to, out var b))
        {
            a.Add((to, density));
            b.Add((from, density));
            return;
        }

        var (joint, other) = links.ContainsKey(from) ? (from, to) : (to, from);
        if (raceways.PointNumber(fixtures.GetValueOrDefault(other)?.Node) is >= 0 and var node)
        {
            anchors[joint].Add((node, density));
        }
    }

    private void Place(string root)
    {
        var (order, parent) = Tree(root);
        if (!order.Any(j => anchors[j].Count > 0))
        {
            return;
        }

        var below = new Dictionary<string, double[]>(StringComparer.Ordinal);
        foreach (var joint in Enumerable.Reverse(order))
        {
            var sum = new double[raceways.Points];
            foreach (var (node, density) in anchors[joint])
            {
                Add(sum, raceways.Tree([(node, 0)], raceways.Metres).Distance, density);
            }

            foreach (var child in order.Where(c => parent.GetValueOrDefault(c).Joint == joint))
            {
                Add(sum, From(below[child], parent[child].Density), 1);
            }

            below[joint] = sum;
        }

        foreach (var joint in order)
        {
            var cost = below[joint];
            if (joint != root && places.TryGetValue(parent[joint].Joint, out var at))
            {
                cost = [.. cost];
                Add(cost, raceways.Tree([(raceways.PointNumber(at), 0)], raceways.Metres).Distance, parent[joint].Density);
            }

            var best = Array.IndexOf(cost, cost.Min());
            if (double.IsFinite(cost[best]))
            {
                places[joint] = raceways.Point(best);
            }
        }
    }

    private double[] From(double[] starts, double density) =>
        raceways.Tree(starts.Select((cost, node) => (node, cost)).Where(s => double.IsFinite(s.cost)), e => raceways.Metres(e) * density).Distance;

    private (List<string> Order, Dictionary<string, (string Joint, double Density)> Parent) Tree(string root)
    {
        var (order, parent) = (new List<string> { root }, new Dictionary<string, (string, double)>(StringComparer.Ordinal));
        for (var i = 0; i < order.Count; i++)
        {
            foreach (var next in links[order[i]].GroupBy(l => l.Other, StringComparer.Ordinal).Where(g => g.Key != root && g.Key != order[i] && !parent.ContainsKey(g.Key)))
            {
                parent.Add(next.Key, (order[i], next.Sum(l => l.Density)));
                order.Add(next.Key);
            }
        }

        return (order, parent);
    }

    private static void Add(double[] sum, double[] more, double factor)
    {
        for (var i = 0; i < sum.Length; i++)
        {
            sum[i] += factor * more[i];
        }
    }
}
