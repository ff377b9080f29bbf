using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Tests;

/// <summary>Cards of coaxial lines, of each system, and of the ramp.</summary>
internal sealed class SystemCards(Assessment assessment)
{
    private static readonly Band Interrogation = new(Frequency.Of(1030, "MHz"), Frequency.Of(1030, "MHz"));
    private static readonly Band Reply = new(Frequency.Of(1090, "MHz"), Frequency.Of(1090, "MHz"));
    private static readonly Sequence<string> Radiating =
    [
        "permit to radiate entered in the log, with its end", "air traffic unit told: start, duration, altitudes, identification, code", "people clear of antennas; one person outside watches",
    ];

    private static readonly Sequence<string> Radiation =
    [
        "Never simulate traffic from an antenna that aircraft or controllers can hear: couple or cover the antenna.", "Between altitude steps go to standby.", "At the end: standby, codes and identification restored, covers off.",
    ];

    private readonly Job job = assessment.Job;

    /// <summary>Coaxial lines.</summary>
    public IEnumerable<TestCard> Coax()
    {
        foreach (var circuit in assessment.Circuits.Where(c => job.Parts.Coax?.Find(c.Part) is not null).Select(c => c.Circuit))
        {
            var port = new[] { circuit.From, circuit.To }.SelectMany(e => Radios(e.Item).Where(r => r.Port.Contacts.Contains(e.Pin))).FirstOrDefault();
            var (from, to) = (circuit.From.ToString(), circuit.To.ToString());
            TestLine[] lines =
            [
                new("centre", from, to, "reads through", TestSources.Coax, "centre whole", "Ω", 0, 0.5),
                new("braid", from, to, "reads through", TestSources.Coax, "braid whole", "Ω", 0, 0.5),
                new("apart", "centre", "braid", "open", TestSources.Isolation, "no short in a connector", "MΩ", Least: TestSources.Insulation),
                .. port.Port?.MaxLoss is { } loss ? [new TestLine("loss", from, to, "loss", TestSources.Part(port.Part, $"radio {port.Port.Id}"), "loss as allowed, connectors included", "dB", port.Port.MinLoss ?? 0, loss)] : Array.Empty<TestLine>(),
            ];
            yield return new TestCard(
                $"COAX-{circuit.Id}", TestKind.Coax, $"Coaxial line {circuit.Id}, {circuit.Signal}", circuit.From.Item, circuit.Id, "ohmmeter; network or cable analyser", ["box and antenna unplugged"],
                ["Never key a transmitter into an open line.", "No pliers on connectors: torque by the connector's data."], lines.ToSequence());
        }
    }

    /// <summary>Each system: discretes and data, then the tests that the change names.</summary>
    public IEnumerable<TestCard> Systems()
    {
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            var wired = assessment.Circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }).Where(e => e.Item == item.Id).Select(e => e.Pin).ToHashSet(StringComparer.Ordinal);
            var used = (job.Parts.Equipment?.Find(item.Part)?.Contacts).OrEmpty().Where(c => wired.Contains(c.Id)).ToArray();
            TestLine[] lines =
            [
                .. used.Where(c => c.Kind is SignalKind.DiscreteIn or SignalKind.DiscreteOut).Select(c => new TestLine(c.Id, c.Signal, $"{item.Id} {c.Id}", c.Sense.Length > 0 ? $"follows both states, {c.Sense}" : "follows both states", TestSources.Part(item.Part, "contacts"), "discrete switches as its function says")),
                .. used.Where(c => c.Kind is SignalKind.BusIn or SignalKind.BusBoth).DistinctBy(c => c.Signal).Select(c => new TestLine(c.Id, c.Signal, $"{item.Id} {c.Id}", "valid data, no fault logged", TestSources.Part(item.Part, "contacts"), "bus polarity, speed and label")),
                .. assessment.Feeds.Where(f => f.Feed.Item == item.Id && f.Feed.ShedAt is not null).Select(f => new TestLine($"shed {f.Feed.Id}", f.Feed.Breaker, $"{item.Id} {f.Feed.Input}", "off when it is shed, and nothing else is", TestSources.Change($"feed {f.Feed.Id}"), "the battery lasts as the load analysis counts on")),
                new("log", item.Id, "", "self-test passed, fault log empty", TestSources.Survey, "nothing left over"),
            ];
            yield return new TestCard($"SYS-{item.Id}", TestKind.System, $"System test of {item.Id}", item.Id, item.Id, "the box's own pages", [$"CURRENT-{item.Id} and its settings hold"], [], lines.ToSequence());
        }

        foreach (var test in job.Change.Tests.OrEmpty())
        {
            // What takes test gear or keys transmitters outside radiates; a compass swing does not.
            var outside = test.Stage == WorkStage.Outside;
            var radiates = outside && (test.Receivers.Count > 0 || test.Instruments.Any(i => i != "none"));
            yield return new TestCard(
                $"TEST-{test.Id}", outside ? TestKind.Ramp : TestKind.System, test.Name, "", test.Id, test.Instruments.Count > 0 ? string.Join(", ", test.Instruments) : "as the source says", radiates ? Radiating : [], radiates ? Radiation : [],
                [new TestLine("result", test.Name, "", test.Expected, test.Source.Length > 0 ? new(test.Source, "", "", Basis.Stated) : TestSources.Change($"test {test.Id}"), "as the change asks")])
            {
                Stage = test.Stage, Radiates = radiates,
            };
        }
    }

    /// <summary>The ramp: transponders, and each ramp test of the change.</summary>
    public IEnumerable<TestCard> Ramp()
    {
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            var ports = Radios(item.Id).Select(r => r.Port).Where(Answers).ToArray();
            if (ports.Length > 0)
            {
                yield return new TestCard($"XPDR-{item.Id}", TestKind.Ramp, $"Transponder test of {item.Id}", item.Id, item.Id, "transponder test set, in date", Radiating, Radiation, ports.SelectMany(p => Transponder(item, p)).Append(Isolation(ports)).OfType<TestLine>().ToSequence()) { Stage = WorkStage.Outside, Radiates = true };
            }
        }

        foreach (var card in ScenarioCards.Of(job, Radiating, Radiation))
        {
            yield return card;
        }

        foreach (var check in job.Change.Ramp.OrEmpty())
        {
            yield return new TestCard(
                $"RAMP-{check.Id}", TestKind.Ramp, $"Ramp test {check.Id} at {check.Antenna}, test antenna at {check.Distance.As("ft")}", check.Antenna, check.Antenna, $"test set as sheet ramp/{check.Id} says", Radiating,
                [.. Radiation, "Open apron: walls and vehicles reflect and upset bearings."], check.Range is { } range ? Target(range).ToSequence() : [Level(check)]) { Stage = WorkStage.Outside, Radiates = true };
        }
    }

    private static IEnumerable<TestLine> Transponder(FittedItem item, RadioPort port)
    {
        TestLine Line(string id, string what, string unit, double? least, double? most, string proves, Source? source = null) =>
            new($"{port.Id} {id}", $"{item.Id} {port.Id}", what, what, source ?? TestSources.Transponder, proves, unit, least, most);
        yield return Line("frequency", "reply frequency", "MHz", 1087, 1093, "within 3 MHz of 1090 MHz");
        yield return Line("suppression", "replies with P2 equal to P1", "%", 0, 1, "side lobes are not answered");
        yield return Line("answered", "replies with P2 9 dB below P1", "%", 90, 100, "main lobe is answered");
        yield return Line("sensitivity AC", "sensitivity, modes A and C", "dBm", -77, -69, "-73 dBm, 4 dB each way");
        yield return Line("sensitivity S", "sensitivity, mode S", "dBm", -77, -71, "-74 dBm, 3 dB each way");
        yield return port is { MinPower: { } least, MaxPower: { } most } ? Line("power", "power at the antenna end", "W", least.In("W"), most.In("W"), "within its class", TestSources.Part(item.Part, $"radio {port.Id}"))
            : Line("power", "power at the antenna end", "W", 70, 500, "within the classes");
        yield return new($"{port.Id} address", $"{item.Id} {port.Id}", "address", "answers its own address and no other; two wrong ones tried", TestSources.Transponder, "right address");
    }

    private static TestLine? Isolation(RadioPort[] ports) => ports.Length < 2 ? null : new("diversity", "top antenna", "bottom antenna", "isolation of the antennas", TestSources.Transponder, "diversity answers on one antenna", "dB", Least: 20);

    private static TestLine Level(RampCheck check) => new("level", "test set", check.Antenna, $"answers at {NumberFormat.Text(check.Level ?? 0)} dBm at the antenna", TestSources.Change($"ramp test {check.Id}"), "sensitivity with its cable and antenna");

    // Range within a tenth or 0.2 nmi, bearing within 15 degrees at each quadrant, relative altitude within 200 ft: from memory, so marked.
    private static IEnumerable<TestLine> Target(Length range)
    {
        var (nmi, off) = (range.In("nmi"), Math.Max(0.1 * range.In("nmi"), 0.2));
        foreach (var bearing in new[] { 0, 90, 180, 270 })
        {
            var text = NumberFormat.Text(bearing);
            yield return new($"bearing {text}", $"static target at {text}°", "display", "bearing shown", TestSources.Bearing, "antenna cables in their places", "°", bearing - 15, bearing + 15);
            yield return new($"range {text}", $"static target at {text}°", "display", "range shown", TestSources.Bearing, "delays of cables set", "nmi", Math.Max(0, nmi - off), nmi + off);
        }

        yield return new("altitude", "target 500 ft above", "display", "relative altitude shown", TestSources.Bearing, "own altitude reaches the sensor", "ft", 300, 700);
        yield return new("converging", "converging target", "display and aural", "trend arrow, alert class and timing as the equipment data says; no self-target; silent on the ground", TestSources.Bearing, "alerts");
    }

    /// <summary>Whether a radio answers interrogations: a transponder.</summary>
    internal static bool Answers(RadioPort port) => port.Transmit?.Touches(Reply) == true && port.Receive?.Touches(Interrogation) == true;

    private IEnumerable<(RadioPort Port, string Part)> Radios(string item) =>
        job.Parts.Equipment?.Find(job.Change.Fit?.Find(item)?.Part ?? job.Aircraft.Equipment?.Find(item)?.Part) is { } part ? part.Radios.OrEmpty().Select(r => (r, part.Id)) : [];
}
