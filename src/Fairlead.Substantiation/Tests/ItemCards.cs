using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Tests;

/// <summary>Cards of what the change fits: looked at, bonded, powered, set.</summary>
internal sealed class ItemCards(Assessment assessment)
{
    private readonly Job job = assessment.Job;

    /// <summary>Security and count of contacts.</summary>
    public IEnumerable<TestCard> Visual(IEnumerable<HarnessUnderTest> harnesses)
    {
        var connectors = harnesses.ToLookup(h => h.Connector.Split(' ')[0], StringComparer.Ordinal);
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            TestLine[] lines =
            [
                new("security", item.Id, "", "secure, marked, not chafing, drip loops, no tool left", TestSources.Survey, "workmanship"),
                .. connectors[item.Id].Select(h => new TestLine($"contacts {h.Connector}", h.Connector, "", "contacts wired", TestSources.Change("circuits"), "no contact missing or too many; unused cavities sealed", ToldResult.Counted, h.Contacts.Count, h.Contacts.Count)),
            ];
            yield return Card($"VIS-{item.Id}", TestKind.Visual, $"{item.Id}: looked over, contacts counted", item.Id, "eyes, mirror and lamp", ["power off"], [], lines.ToSequence());
        }
    }

    /// <summary>Bonding of items and antennas, each with its own limit or the published one; of what is sealed once more after it.</summary>
    public IEnumerable<TestCard> Bonding()
    {
        var items = job.Change.Fit.OrEmpty().Where(f => f.Fixing is not null).Select(f => (f.Id, f.Fixing!.Bond, Purpose: BondPurpose.Rack, To: "structure", Sealed: false));
        var antennas = job.Change.Antennas.OrEmpty().Select(a => (a.Id, a.Bond, Purpose: BondPurpose.Antenna, To: "skin", Sealed: a.Sealant is not null));
        var studs = job.Change.Grounds.OrEmpty().Select(g => (g.Id, Bond: (Resistance?)null, Purpose: BondPurpose.Frame, To: "structure", Sealed: false));
        foreach (var (id, bond, purpose, to, covered) in items.Concat(antennas).Concat(studs))
        {
            var (limit, source) = bond is { } stated ? (stated, TestSources.Change($"bond of {id}")) : BondingResistance.Limit(purpose);
            TestCard Bond(string card, string title, string line, string state) => Card(
                card, TestKind.Bonding, title, id, "milliohmmeter, four wires", ["battery disconnected", state],
                ["A multimeter with two leads cannot measure this."], new TestLine(line, id, to, "bonded", source, "path for faults, static and radio", "mΩ", 0, limit.In("mΩ")));
            yield return Bond($"BOND-{id}", $"Bonding of {id}", "bond", covered ? "surfaces cleaned to bare metal and bolted up, before sealing" : "surfaces cleaned to bare metal and bolted up");

            // Sealant can creep into the joint, and what it covers is not cleaned again: so it is measured once more when it is cured.
            if (covered)
            {
                yield return Bond($"REBOND-{id}", $"Bonding of {id} again, sealed", "bond sealed", "sealant cured; paint not yet touched up") with { Again = true };
            }
        }
    }

    /// <summary>Power at the unplugged connectors.</summary>
    public IEnumerable<TestCard> Power(IEnumerable<HarnessUnderTest> harnesses)
    {
        var contacts = harnesses.SelectMany(h => h.Contacts).ToLookup(c => c.Split(' ')[0], StringComparer.Ordinal);
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            var part = job.Parts.Equipment?.Find(item.Part);
            var inputs = assessment.Feeds.Where(f => f.Feed.Item == item.Id).Select(f => (f.Feed, Input: part?.Power?.Find(f.Feed.Input))).Where(f => f.Input is not null).ToArray();
            var plus = inputs.SelectMany(f => f.Input!.Plus.Select(p => (Pin: $"{item.Id} {p}", f.Feed.Breaker, f.Input))).ToArray();
            var grounds = (part?.Contacts).OrEmpty().Where(c => c.Kind == SignalKind.Ground).Select(c => $"{item.Id} {c.Id}").ToHashSet(StringComparer.Ordinal);
            TestLine[] lines =
            [
                .. plus.Select(p => new TestLine($"{p.Pin} out", p.Pin, "airframe", $"dead, {p.Breaker} pulled", TestSources.Power, "fed from this breaker alone", "V", -TestSources.Dead, TestSources.Dead)),
                .. plus.Select(p => new TestLine($"{p.Pin} in", p.Pin, "airframe", $"alive, {p.Breaker} closed", TestSources.Part(item.Part, $"power input {p.Input!.Id}"), "right voltage and polarity", "V", p.Input.MinVoltage.In("V"), p.Input.MaxVoltage.In("V"))),
                .. contacts[item.Id].Where(c => plus.All(p => p.Pin != c) && !grounds.Contains(c)).Select(c => new TestLine($"{c} none", c, "airframe", "no power, breakers closed", TestSources.Power, "power nowhere else", "V", -TestSources.Dead, TestSources.Dead)),
            ];
            if (plus.Length > 0)
            {
                yield return Card(
                    $"POWER-{item.Id}", TestKind.Power, $"Power at the unplugged connectors of {item.Id}", item.Id, "voltmeter with adapter contacts",
                    ["bonding, continuity and isolation hold", $"{item.Id} and the boxes it is wired to unplugged", "pull the breaker: dead; close it: alive"],
                    ["A wrong power interface destroys the box: plug in only when every line holds.", "Live contacts: guard them."], lines.ToSequence());
            }
        }
    }

    /// <summary>Boxes in: the current that each breaker carries for them.</summary>
    public IEnumerable<TestCard> Connect() => assessment.Feeds.GroupBy(f => f.Feed.Item, StringComparer.Ordinal).Select(g => Card(
        $"CURRENT-{g.Key}", TestKind.Connect, $"{g.Key} connected: current watched", g.Key, "ammeter in the feed", [$"POWER-{g.Key} holds", "battery off while connectors are mated; then breaker in, watching current and smell"],
        ["Pull the breaker at once at smoke, smell or too much current."],
        [.. g.Select(f => new TestLine($"current {f.Feed.Input}", f.Feed.Breaker, f.Feed.Input, "as the load analysis says", TestSources.Part(job.Change.Fit?.Find(g.Key)?.Part ?? g.Key, "greatest current"), "it draws, and no more than it should", "A", TestSources.Drawn, f.Current.In("A")))]));

    /// <summary>Settings, straps and software.</summary>
    public IEnumerable<TestCard> Settings() => job.Change.Settings.OrEmpty().GroupBy(s => s.Item, StringComparer.Ordinal).Select(g => Card(
        $"SET-{g.Key}", TestKind.Settings, $"Settings and software of {g.Key}", g.Key, "set-up pages of the box; meter for straps", [$"CURRENT-{g.Key} holds"],
        [], [.. g.Select(s => new TestLine(s.Id, s.Pin.Length > 0 ? $"{s.Item} {s.Pin}" : s.Item, s.Name, s.Expected, TestSources.Change($"setting {s.Id}"), "set as the change says, absent straps included"))]) with { SecondPerson = Broadcasts(g.Key) });

    // What an aircraft tells of itself is compared by two: most faulty installations broadcast a wrong address, category or identification.
    private bool Broadcasts(string item) => job.Parts.Equipment?.Find(job.Change.Fit?.Find(item)?.Part)?.Radios.OrEmpty().Any(SystemCards.Answers) == true;

    private static TestCard Card(string id, TestKind kind, string title, string subject, string instrument, Sequence<string> before, Sequence<string> cautions, params Sequence<TestLine> lines) =>
        new(id, kind, title, subject, subject, instrument, before, cautions, lines);
}
