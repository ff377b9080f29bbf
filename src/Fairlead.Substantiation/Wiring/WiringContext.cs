using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Routing;
using Fairlead.Substantiation.Power;
using WireMaterial = Fairlead.Calculations.Wiring.Conductor;

namespace Fairlead.Substantiation.Wiring;

/// <summary>How hot and how high a wire is at a place.</summary>
internal readonly record struct Surroundings(Temperature Ambient, Length Altitude);

/// <summary>Everything of a job that circuits stand on, looked up once: it serves until something other than a circuit changes.</summary>
internal sealed class WiringContext
{
    /// <summary>The cabin altitude taken where a zone is pressurised: common practice, the greatest cabin altitude in normal operation.</summary>
    public static readonly Length CabinAltitude = Length.Of(8000, "ft");

    private static readonly Surroundings Unknown = new(Temperature.Of(70, "°C"), Length.Of(60000, "ft"));

    private readonly Job job;
    private readonly Dictionary<string, Surroundings> atSegment;
    private readonly Dictionary<string, Surroundings> atNode;
    private readonly Dictionary<string, string> places;

    public WiringContext(Job job, Raceways? known)
    {
        this.job = job;
        Raceways = known?.Serves(job.Aircraft) == true ? known : new Raceways(job.Aircraft);
        Routing = new RoutingTakeOff(this);
        Fixtures = Fixture.Of(job);
        places = JointPlaces.Of(job, Raceways, Fixtures);
        foreach (var (joint, node) in places)
        {
            Fixtures[joint] = Fixtures[joint] with { Node = node };
        }

        Candidates = [.. job.Parts.Wires.OrEmpty().Where(w => w.Family == job.Change.Wiring.Family).OrderBy(w => w.Gauge)];
        CandidateInput = Candidates.Select(w => new CandidateWire(w.Gauge, w.Resistance)).ToSequence();
        StrictestNominal = job.Aircraft.Buses.OrEmpty().Select(b => (Voltage?)b.Nominal).Min() ?? Voltage.Of(14, "V");
        atNode = job.Aircraft.Nodes.OrEmpty().ToDictionary(n => n.Id, At, StringComparer.Ordinal);
        atSegment = job.Aircraft.Segments.OrEmpty().ToDictionary(s => s.Id, At, StringComparer.Ordinal);
        SegmentOrder = job.Aircraft.Segments.OrEmpty().Select((s, i) => (s.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
    }

    public Raceways Raceways { get; }

    /// <summary>Whether joints without a raceway point of their own stand where they would in another job.</summary>
    public bool Places(Job other)
    {
        var found = JointPlaces.Of(other, Raceways, Fixture.Of(other));
        return found.Count == places.Count && found.All(p => places.GetValueOrDefault(p.Key) == p.Value);
    }

    public RoutingTakeOff Routing { get; }

    public Dictionary<string, Fixture> Fixtures { get; }

    /// <summary>The wires 'auto' picks among, thinnest first.</summary>
    public ImmutableArray<WirePart> Candidates { get; }

    public Sequence<CandidateWire> CandidateInput { get; }

    /// <summary>The lowest bus voltage: its allowed drop is the strictest.</summary>
    public Voltage StrictestNominal { get; }

    public Dictionary<string, int> SegmentOrder { get; }

    public PartsCatalog Parts => job.Parts;

    public WiringDefaults Defaults => job.Change.Wiring;

    public Aircraft Aircraft => job.Aircraft;

    public Change Change => job.Change;

    /// <summary>Whether everything but the circuits is the very same in another job.</summary>
    public bool Serves(Job other) => ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Parts, other.Parts)
        && ReferenceEquals(job.Change.Fit, other.Change.Fit) && ReferenceEquals(job.Change.Antennas, other.Change.Antennas)
        && ReferenceEquals(job.Change.Breakers, other.Change.Breakers) && ReferenceEquals(job.Change.Grounds, other.Change.Grounds)
        && ReferenceEquals(job.Change.Joints, other.Change.Joints) && ReferenceEquals(job.Change.Power, other.Change.Power)
        && job.Change.Wiring == other.Change.Wiring
        && (Defaults.AccessHour is null || (ReferenceEquals(job.Change.Remove, other.Change.Remove) && ReferenceEquals(job.Change.Tasks, other.Change.Tasks)));

    public Fixture? FixtureOf(Endpoint end) => Fixtures.GetValueOrDefault(end.Item);

    /// <summary>The contact in which a wire ends, or null where it ends on a point or the catalogue does not say.</summary>
    public ContactPart? ContactOf(Endpoint end)
    {
        var half = end.IsPoint ? null : Parts.Connectors?.Find(FixtureOf(end)?.Part?.Connectors?.Find(end.Connector)?.Part);
        var special = half?.SpecialCavities.FirstOrDefault(c => c.Cavity == end.Contact)?.Contact;
        return Parts.Contacts?.Find(special ?? half?.Contact);
    }

    public Breaker? BreakerOf(string id) => job.BreakerOf(id);

    public BreakerPart? BreakerPartOf(string id) => Parts.Breakers?.Find(BreakerOf(id)?.Part);

    public Bus? BusOf(string breaker) => Aircraft.Buses?.Find(BreakerOf(breaker)?.Bus);

    /// <summary>The battery of least voltage that reaches a bus; null when none does.</summary>
    public Battery? BatteryBehind(Bus bus) => Aircraft.Batteries.OrEmpty().Where(b => Reach.Of(b, Aircraft).Contains(bus.Id)).MinBy(b => b.Voltage.Si);

    /// <summary>The greatest voltage on a bus: its nominal one, or the regulated one of a source that reaches it.</summary>
    public Voltage GreatestVoltage(Bus bus) => Aircraft.Sources.OrEmpty().Where(s => Reach.Of(s, Aircraft).Contains(bus.Id)).Select(s => s.Voltage).Append(bus.Nominal).Max();

    public Surroundings AtSegment(string segment) => atSegment.GetValueOrDefault(segment, Unknown);

    public Surroundings AtNode(string? node) => node is not null ? atNode.GetValueOrDefault(node, Unknown) : Unknown;

    /// <summary>The conductor as the wiring calculations know it: plated copper and copper alloy go by the copper table.</summary>
    public static WireMaterial MaterialOf(WirePart wire) =>
        wire.Conductor == Model.Conductor.Aluminium ? WireMaterial.Aluminium : WireMaterial.Copper;

    private Surroundings At(RacewayNode node)
    {
        var zone = Aircraft.Zones.Find(node.Zone);
        return new(zone?.Hottest ?? Unknown.Ambient, Aircraft.Pressurised && zone?.Pressurised == true ? CabinAltitude : Aircraft.Ceiling);
    }

    private Surroundings At(RacewaySegment segment)
    {
        var (a, b) = (AtNode(segment.From), AtNode(segment.To));
        var hotter = a.Ambient > b.Ambient ? a.Ambient : b.Ambient;
        return new(segment.Hottest ?? hotter, a.Altitude > b.Altitude ? a.Altitude : b.Altitude);
    }
}
