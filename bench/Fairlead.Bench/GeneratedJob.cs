using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Bench;

/// <summary>Makes jobs of any size for benchmarks and tests: boxes of twenty circuits each (a power feed, its return and eighteen signals
/// to the next box), spread over a raceway with cross-ways. The same size and seed give the same job.</summary>
public static class GeneratedJob
{
    /// <summary>Circuits of one box.</summary>
    public const int CircuitsPerBox = 20;

    private const int Frames = 24;

    /// <summary>A job.</summary>
    /// <param name="circuits">How many circuits; rounded up to whole boxes.</param>
    /// <param name="seed">Chooses currents and places.</param>
    public static Job Of(int circuits, uint seed = 1)
    {
        var boxes = Math.Max(2, (circuits + CircuitsPerBox - 1) / CircuitsPerBox);
        var chance = new Chance(seed);
        var places = Enumerable.Range(0, boxes).Select(_ => chance.Next(Frames * 2)).ToArray();
        var amperes = Enumerable.Range(0, boxes).Select(_ => 0.5 + (chance.Next(40) / 10.0)).ToArray();
        return new Job(Order(), Aircraft(boxes, places), Parts(amperes), Change(boxes, places, amperes));
    }

    private static WorkOrder Order() => new(
        "WO-1", "Generated change", "A", "Example operator", new Site("Example hangar"), new Approval(ApprovalBasis.Minor, "pending"), new JobFiles());

    private static Aircraft Aircraft(int boxes, int[] places) => new(
        "X9-GEN", "Generated", "1", new Certification("14 CFR 23", "amendment 62", "normal"), Length.Of(25000, "ft"),
        new Catalog<Zone>([new("cabin", "Cabin", Temperature.Of(40, "°C"), Environment: [new("temperature-altitude", "B1")], Surface: Area.Of(400, "m²")), new("tail", "Tail", Temperature.Of(60, "°C"))]),
        new WeighingRecord(new DateOnly(2020, 1, 1), "W-1", Mass.Of(20000, "kg"), Length.Of(100, "in")),
        new Envelope(Mass.Of(30000, "kg"), [new(Mass.Of(15000, "kg"), Length.Of(80, "in")), new(Mass.Of(30000, "kg"), Length.Of(85, "in")), new(Mass.Of(30000, "kg"), Length.Of(120, "in")), new(Mass.Of(15000, "kg"), Length.Of(122, "in"))]),
        LoadFactors: new LoadFactors(3.8, 1.52),
        Structures: new(Enumerable.Range(0, boxes).Select(b => new StructureSheet(Shelf(b), "Shelf", "cabin", "2024-T3", Length.Of(0.063, "in"), Carries: Mass.Zero, Capacity: Mass.Of(5, "kg")))),
        Nodes: new(Enumerable.Range(0, Frames * 2).Select(n => new RacewayNode(Node(n), n / 2 < Frames / 2 ? "cabin" : "tail", Place(n)))),
        Segments: new(Enumerable.Range(0, Frames).SelectMany(Segments)),
        Grounds: new(Enumerable.Range(0, Frames * 2).Select(n => new GroundStud($"GS{Text(n)}", Node(n)))),
        Sources: new([new PowerSource("GEN", "Generator", SourceKind.Generator, "MAIN", Voltage.Of(28, "V"), Current.Of(Math.Min(50 + (boxes * 10), 2000), "A"), Resistance: Resistance.Of(5, "mΩ"))]),
        Buses: new([new Bus("MAIN", "Main bus", Voltage.Of(28, "V"))]),
        Breakers: new(Enumerable.Range(0, boxes).Select(b => new Breaker($"CB{Text(b)}", $"Box {Text(b)}", "MAIN", "B7.5", Node(places[b] % 8)))),
        Conditions: new([new OperatingCondition("cruise", "Cruise", ConditionKind.Normal, ["GEN"])]),
        Compass: new Place(Length.Of(-50, "in"), Length.Of(0, "in"), Length.Of(60, "in")),
        Stations: new([new LoadingStation("crew", "Crew", Length.Of(90, "in"), Mass.Of(200, "kg"), Mass.Of(80, "kg")), new LoadingStation("cabin", "Cabin", Length.Of(105, "in"), Mass.Of(2000, "kg"))]),
        Tanks: new([new Tank("wings", "Wings", Length.Of(102, "in"), Volume.Of(3000, "L"), Density.Of(0.8, "kg/L"))]));

    private static PartsCatalog Parts(double[] amperes) => new(
        Equipment: new(amperes.Distinct().Order().Select(Box)),
        Wires: new([Wire(24, 0.045, 2.4), Wire(22, 0.050, 3.4), Wire(20, 0.058, 5.0), Wire(18, 0.070, 7.6), Wire(16, 0.077, 9.4), Wire(14, 0.094, 14.4), Wire(12, 0.111, 21.4)]),
        Contacts: new([new ContactPart("C20", "20", Gauge.Read("24"), Gauge.Read("20"), Current.Of(7.5, "A")), new ContactPart("C16", "16", Gauge.Read("20"), Gauge.Read("16"), Current.Of(13, "A"))]),
        Connectors: new([new ConnectorPart("K40", "Forty cavities", "C20", [.. Enumerable.Range(1, 40).Select(Text)], Mass.Of(50, "g"), SpecialCavities: [new("1", "C16"), new("2", "C16")])]),
        Breakers: new([new BreakerPart("B7.5", "Breaker 7.5 A", Current.Of(7.5, "A"), [new(2, Duration.Of(3, "s"), Duration.Of(20, "s")), new(6, Duration.Of(0.16, "s"), Duration.Of(0.85, "s")), new(40, Duration.Of(0.008, "s"), Duration.Of(0.022, "s")), new(100, Duration.Of(0.002, "s"), Duration.Of(0.004, "s"))], Resistance.Of(36, "mΩ"))]),
        Fasteners: new([new FastenerPart("SC10", "Screw 10-32", Length.Of(0.19, "in"), Shear: Force.Of(1400, "lbf"), Tension: Force.Of(1900, "lbf"))]),
        Materials: new([new Material("2024-T3", Bearing: Pressure.Of(120, "ksi"))]));

    private static EquipmentPart Box(double ampere) => new(
        Part(ampere), "Box", Mass.Of(2, "kg"),
        Connectors: new([new ConnectorUse("P1", "K40"), new ConnectorUse("P2", "K40")]),
        Power: new([new PowerInput("main", ["P1-1"], ["P1-2"], new([new PowerState("on", Current.Of(ampere, "A"))]), Voltage.Of(22, "V"), Voltage.Of(30.3, "V"))]),
        Heat: Wattage.Of(10, "W"), Qualification: [new("temperature-altitude", "B2")], CompassSafe: Length.Of(0.3, "m"),
        Cg: new Place(Length.Of(6, "in"), Length.Of(2.5, "in"), Length.Of(2, "in")), Size: new Size(Length.Of(12, "in"), Length.Of(5, "in"), Length.Of(4, "in")),
        Holes: [Hole(0.5, 1), Hole(4.5, 1), Hole(0.5, 11), Hole(4.5, 11)]);

    private static MountingHole Hole(double x, double y) => new(Length.Of(x, "in"), Length.Of(y, "in"), Length.Of(0.2, "in"));

    private static WirePart Wire(int gauge, double inches, double pounds) => new(
        $"W{Text(gauge)}", $"Wire {Text(gauge)}", "W", Gauge.Read(Text(gauge)), Conductor.TinnedCopper, Temperature.Of(150, "°C"), Length.Of(inches, "in"), LinearMass.Of(pounds, "lb/1000ft"));

    private static Change Change(int boxes, int[] places, double[] amperes) => new(
        "Generated change", new WiringDefaults("W", Fraction.Of(5, "%"), Length.Of(3, "in"), Length.Of(6, "in")),
        Fit: new(Enumerable.Range(0, boxes).Select(b => new FittedItem(Item(b), Part(amperes[b]), "cabin", Place(places[b]), Node(places[b]), Shelf(b), new Fixing("SC10", 4, EdgeDistance: Length.Of(0.5, "in"))))),
        Circuits: new(Enumerable.Range(0, boxes).SelectMany(b => Circuits(b, (b + 1) % boxes, places[b]))),
        Power: new(Enumerable.Range(0, boxes).Select(b => new PowerFeed($"F{Text(b)}", Item(b), "main", $"CB{Text(b)}", [new ConditionState("cruise", "on")]))));

    private static IEnumerable<Circuit> Circuits(int box, int next, int place)
    {
        var id = Text(box);
        yield return new Circuit($"P{id}", new Endpoint($"CB{id}"), new Endpoint(Item(box), "P1", "1"), Bundle: $"P{Text(box / 6)}");
        yield return new Circuit($"N{id}", new Endpoint(Item(box), "P1", "2"), new Endpoint($"GS{Text(place)}"), Bundle: $"P{Text(box / 6)}");
        for (var pin = 3; pin <= CircuitsPerBox; pin++)
        {
            yield return new Circuit($"S{id}_{Text(pin)}", new Endpoint(Item(box), "P1", Text(pin)), new Endpoint(Item(next), "P2", Text(pin)), Bundle: $"S{id}");
        }
    }

    private static IEnumerable<RacewaySegment> Segments(int frame)
    {
        yield return new RacewaySegment($"X{Text(frame)}", Node(2 * frame), Node((2 * frame) + 1), Capacity: Length.Of(15, "in"), FluidClearance: Length.Of(12, "in"));
        if (frame + 1 < Frames)
        {
            yield return new RacewaySegment($"L{Text(frame)}", Node(2 * frame), Node(2 * (frame + 1)), Capacity: Length.Of(15, "in"), FluidClearance: Length.Of(12, "in"));
            yield return new RacewaySegment($"R{Text(frame)}", Node((2 * frame) + 1), Node((2 * (frame + 1)) + 1), Capacity: Length.Of(15, "in"), FluidClearance: Length.Of(12, "in"));
        }
    }

    private static string Part(double ampere) => string.Create(CultureInfo.InvariantCulture, $"BOX{ampere * 10:0}");

    private static string Item(int box) => $"A{Text(box)}";

    private static string Shelf(int box) => $"SH{Text(box)}";

    private static string Node(int n) => $"N{Text(n)}";

    private static Place Place(int n) => new(Length.Of(20 * (n / 2), "in"), Length.Of(n % 2 == 0 ? -20 : 20, "in"), Length.Of(50, "in"));

    private static string Text(int n) => n.ToString(CultureInfo.InvariantCulture);

    // A linear congruence (Knuth's constants of MMIX): repeatable on every machine and runtime.
    private sealed class Chance(uint seed)
    {
        private ulong state = seed;

        public int Next(int below)
        {
            state = unchecked((state * 6364136223846793005) + 1442695040888963407);
            return (int)((state >> 33) % (ulong)below);
        }
    }
}
