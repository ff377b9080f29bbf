using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Documents;

/// <summary>An invented job with invented results: it has something in every section of the pack.</summary>
internal static class SampleJob
{
    private static readonly OperatingCondition Cruise = new("cruise", "Cruise", ConditionKind.Normal, ["G1"]);
    private static readonly OperatingCondition Landing = new("landing", "Approach and landing", ConditionKind.Normal, ["G1"]);
    private static readonly OperatingCondition OnBattery = new("emergency", "On battery", ConditionKind.Emergency);
    private static readonly PowerSource Generator = new("G1", "Generator 1", SourceKind.Generator, "MAIN", V(28.5), A(160));
    private static readonly Bus Main = new("MAIN", "Main bus", V(28), Essential: true);
    private static readonly Breaker Breaker = new("CB41", "XPDR 2", "MAIN", "B3", "N1");
    private static readonly BreakerPart BreakerPart = new("B3", "3 A push-pull breaker", A(3));
    private static readonly Battery Battery = new("BATT", "Main battery", "MAIN", V(24), Ah(36), CapacityRate.OneHour, Minutes(30), Minutes(5), "emergency");
    private static readonly WirePart Wire = new("W22", "22 gauge", "tin-plated copper, 150 °C", new Gauge(22), Conductor.TinnedCopper, Temperature.Of(150, "°C"), In(0.045), LinearMass.Of(2.8, "lb/1000ft"));

    public static Job Job { get; } = new(
        new WorkOrder(
            "WO-0147", "Second transponder and its antenna", "B", "Operator of X9-FLD", new Site("Hangar 3"),
            new Approval(ApprovalBasis.Minor, "pending", [new DataDocument("FAA AC 43.13-2B", "3/3/08"), new DataDocument("Installation manual of the transponder", "4")]), new JobFiles()),
        new Aircraft(
            "X9-FLD", "Sample 200", "0042", new Certification("14 CFR 23", "amendment 23-55", "normal"), Length.Of(25000, "ft"),
            new Catalog<Zone>([new Zone("NOSE", "Nose bay", Temperature.Of(70, "°C"))]),
            new WeighingRecord(new DateOnly(2024, 5, 2), "WB-031", Lb(4012), In(183.2), In(0.4), In(88)),
            new Fairlead.Model.Envelope(Lb(6300), [Corner(3600, 180), Corner(5200, 180), Corner(6300, 184.5), Corner(6300, 196), Corner(3600, 196)]),
            Sources: new Catalog<PowerSource>([Generator]), Buses: new Catalog<Bus>([Main]), Batteries: new Catalog<Battery>([Battery]),
            Conditions: new Catalog<OperatingCondition>([Cruise, Landing, OnBattery]),
            Equipment: new Catalog<InstalledItem>(
            [
                new InstalledItem("DME1", "Distance measuring equipment", Lb(9.4), new Place(In(98), In(-12), In(102)), EquipmentCategory.Optional),
                new InstalledItem("VT1", "Transponder 1", Lb(3.1), new Place(In(96), In(10), In(104)), EquipmentCategory.Required),
            ])),
        new PartsCatalog(
            Equipment: new Catalog<EquipmentPart>([Transponder()]),
            Wires: new Catalog<WirePart>([Wire]),
            Breakers: new Catalog<BreakerPart>([BreakerPart])),
        new Change(
            "Removes the distance measuring equipment and fits a second transponder in its place",
            new WiringDefaults("tin-plated copper, 150 °C", Fraction.Of(5, "%"), In(6), In(4)),
            Remove: new Catalog<Removal>([new Removal("R1", "DME1")]),
            Fit: new Catalog<FittedItem>([new FittedItem("VT2", "XP", "NOSE", new Place(In(98), In(-11), In(102)), "N1", Mounting: Lb(0.6))]),
            Breakers: new Catalog<Breaker>([Breaker]),
            Circuits: new Catalog<Circuit>([.. Circuits]),
            Settings: new Catalog<Setting>([new Setting("S1", "VT2", "aircraft address", "as assigned"), new Setting("S2", "VT2", "maximum airspeed", "open", "P1-31")]),
            Concessions: new Catalog<Concession>(
            [
                new Concession("K1", "bundle-diameter", "bundle/S4/main", "design engineer", "Clamps replaced by the next size", new DateOnly(2026, 1, 31)),
            ])));

    public static Assessment Assessment { get; } = new Assessor().Assess(Job) with
    {
        Circuits = [.. Circuits.Select((c, i) => new CircuitResult(
            c, i == 2 ? Verdict.Fails : Verdict.Holds, null, In(44.5 + (7 * i)), "raceway", "W22", Wire, true, A(0.4 * i), "power input", A(7.3), Temperature.Of(82, "°C"), V(0.03 * i), null, null, Lb(0.01), null))],
        Feeds = [new FeedResult(new PowerFeed("F1", "VT2", "main", "CB41", []), ["C1"], ["C2"], A(1.2), V(0.11), V(27.89))],
        Bundles = [new BundleResult("S4", "main", ["C1", "C2", "C3"], 14, A(9.3), Fraction.Of(41, "%"))],
        SourceLoads = [new SourceLoad(Generator, Cruise, A(118), A(124.4), Verdict.Holds), new SourceLoad(Generator, Landing, A(150.2), A(162.6), Verdict.Fails)],
        BusLoads = [new BusLoad(Main, Cruise, A(88), A(94.4)), new BusLoad(Main, Landing, A(90), A(86.5))],
        BreakerLoads = [new BreakerLoad(Breaker, BreakerPart, A(1.2), Verdict.Holds)],
        Batteries =
        [
            new BatteryResult(
                Battery, [new(Minutes(0), Minutes(5), A(62), "before shedding"), new(Minutes(5), Minutes(28), A(31), "cabin shed"), new(Minutes(28), Minutes(38), A(44), "approach")],
                Minutes(38), Verdict.Holds),
        ],
        LoadingBefore = [new LoadingExtreme("most forward", Lb(4380), In(181), In(1)), new LoadingExtreme("most aft", Lb(6280), In(195.3), In(0.7))],
        LoadingAfter = [new LoadingExtreme("most forward", Lb(4375.6), In(181.1), In(1.1)), new LoadingExtreme("most aft", Lb(6275.6), In(196.4), In(-0.4)), new LoadingExtreme("heaviest", Lb(6275.6), In(196.4), In(-0.4))],
    };

    public static PackOptions Options { get; } = new(new DateTimeOffset(2026, 3, 14, 9, 26, 53, TimeSpan.Zero), SampleDocument.JobHash, SampleDocument.AttachedBytes.ToImmutableArray());

    private static Circuit[] Circuits =>
    [
        new("C1", new Endpoint("CB41"), new Endpoint("VT2", "P1", "21"), Signal: "28 V power"),
        new("C2", new Endpoint("VT2", "P1", "22"), new Endpoint("GS4"), Signal: "ground"),
        new("C3", new Endpoint("VT2", "P1", "7"), new Endpoint("ADC1", "P101", "33"), Signal: "altitude, serial"),
    ];

    private static EquipmentPart Transponder() => new("XP", "Transponder 2", Lb(3.4), Size: new Size(In(10.6), In(1.6), In(6.3)));

    private static Fairlead.Model.EnvelopePoint Corner(double mass, double fs) => new(Lb(mass), In(fs));

    private static Current A(double x) => Current.Of(x, "A");

    private static Voltage V(double x) => Voltage.Of(x, "V");

    private static Charge Ah(double x) => Charge.Of(x, "Ah");

    private static Mass Lb(double x) => Mass.Of(x, "lb");

    private static Length In(double x) => Length.Of(x, "in");

    private static Duration Minutes(double x) => Duration.Of(x, "min");
}
