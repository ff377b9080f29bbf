using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Tests;

/// <summary>From an assessed job to the harness of each connector that the change wires, as a meter sees it.</summary>
internal sealed class HarnessTakeOff
{
    private readonly Job job;
    private readonly Dictionary<string, Fixture> fixtures;
    private readonly ILookup<string, (HarnessWire Wire, CircuitResult Circuit)> at;

    public HarnessTakeOff(Assessment assessment)
    {
        job = assessment.Job;
        fixtures = Fixture.Of(job);
        var wires = assessment.Circuits.Where(c => job.Parts.Coax?.Find(c.Part) is null).Select(c => (Wire: WireOf(c), Circuit: c)).ToArray();
        at = wires.SelectMany(w => new[] { w.Wire.From, w.Wire.To }.Distinct().Select(end => (end, w))).ToLookup(e => e.end, e => e.w, StringComparer.Ordinal);
        var contacts = assessment.Circuits.Where(c => job.Parts.Coax?.Find(c.Part) is null).SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }).Where(e => !e.IsPoint).Distinct();
        var fitted = job.Change.Fit.OrEmpty().Index().ToDictionary(f => f.Item.Id, f => f.Index, StringComparer.Ordinal);
        Connectors = [.. contacts.GroupBy(e => (e.Item, e.Connector)).OrderBy(g => fitted.GetValueOrDefault(g.Key.Item, int.MaxValue)).ThenBy(g => g.Key.Item, StringComparer.Ordinal).ThenBy(g => g.Key.Connector, StringComparer.Ordinal).Select(g => Harness(g.Key.Item, g.Key.Connector, [.. g]))];
    }

    /// <summary>The connectors, those of fitted items first.</summary>
    public ImmutableArray<HarnessUnderTest> Connectors { get; }

    /// <summary>Greatest resistance between two ends of one net, in ohm: wires cold at their lengths and each contact; null when a length or wire is not known.</summary>
    public double? Greatest(string from, string to)
    {
        var known = new Dictionary<string, double?>(StringComparer.Ordinal) { [from] = TestSources.Contact };
        var queue = new Queue<string>([from]);
        while (queue.TryDequeue(out var here) && here != to)
        {
            foreach (var (wire, circuit) in here == HarnessUnderTest.Airframe ? [] : at[here])
            {
                var next = wire.From == here ? wire.To : wire.From;
                if (known.TryAdd(next, known[here] + TestSources.Contact + Cold(circuit)))
                {
                    queue.Enqueue(next);
                }
            }
        }

        return known.GetValueOrDefault(to);
    }

    private static double? Cold(CircuitResult circuit) => circuit.Length is { } length ? Supply.ColdOf(circuit.Wire, length)?.Si : null;

    private HarnessWire WireOf(CircuitResult result)
    {
        var circuit = result.Circuit;
        var shielded = circuit.Shield != ShieldEnds.None || job.Parts.Cables?.Find(result.Part) is { Shielded: true };
        return new HarnessWire(circuit.Id, Terminal(circuit.From), Terminal(circuit.To), shielded ? $"shield {(circuit.Cable.Length > 0 ? circuit.Cable : circuit.Id)}" : "", circuit.Twist);
    }

    private string Terminal(Endpoint end) => end.IsPoint && fixtures.GetValueOrDefault(end.Item)?.Kind == FixtureKind.Ground ? HarnessUnderTest.Airframe : end.ToString();

    private HarnessUnderTest Harness(string item, string connector, Endpoint[] ends)
    {
        var cavities = job.Parts.Connectors?.Find(fixtures.GetValueOrDefault(item)?.Part?.Connectors?.Find(connector)?.Part);
        var order = (cavities?.Cavities ?? []).Index().ToDictionary(c => c.Item, c => c.Index, StringComparer.Ordinal);
        var contacts = ends.OrderBy(e => order.GetValueOrDefault(e.Contact, int.MaxValue)).ThenBy(e => e.Contact, StringComparer.Ordinal).Select(e => e.ToString()).ToArray();
        var reached = Reached(contacts);
        var wired = reached.Select(w => w.Wire).ToSequence();
        return new HarnessUnderTest(
            $"{item} {connector}", contacts.ToSequence(), wired,
            Cavities.Near(cavities).Select(n => new Neighbours($"{item} {connector}-{n.A}", $"{item} {connector}-{n.B}")).Where(n => contacts.Contains(n.A) && contacts.Contains(n.B)).ToSequence(),
            reached.Where(w => w.Wire.Shield.Length > 0 && w.Circuit.Circuit.Shield != ShieldEnds.None).Select(w => w.Wire.Shield).Distinct().ToSequence(),
            job.Change.Joints.OrEmpty().Where(j => j.Kind == JointKind.Splice).Select(j => j.Id).ToSequence());
    }

    private List<(HarnessWire Wire, CircuitResult Circuit)> Reached(string[] contacts)
    {
        var seen = contacts.ToHashSet(StringComparer.Ordinal);
        var (queue, wires, found) = (new Queue<string>(contacts), new HashSet<string>(StringComparer.Ordinal), new List<(HarnessWire, CircuitResult)>());
        while (queue.TryDequeue(out var here))
        {
            foreach (var wire in at[here].Where(w => wires.Add(w.Wire.Id)))
            {
                found.Add(wire);
                foreach (var end in new[] { wire.Wire.From, wire.Wire.To }.Where(e => e != HarnessUnderTest.Airframe && seen.Add(e)))
                {
                    queue.Enqueue(end);
                }
            }
        }

        return found;
    }
}
