using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>Cards of continuity and isolation: the straight sweep of each connector, with limits.</summary>
internal sealed class HarnessCards(HarnessTakeOff takeOff)
{
    private static readonly Sequence<string> Cold = ["power off, battery disconnected, breakers pulled", "this connector and the far ends unplugged: with one end plugged in the meter reads through the box"];
    private static readonly Sequence<string> Probing = ["Never measure resistance on a live circuit.", "Never put meter leads into sockets: use an adapter contact."];
    private readonly HashSet<string> measured = new(StringComparer.Ordinal);

    public IEnumerable<TestCard> Of(HarnessUnderTest harness)
    {
        var name = harness.Connector.Replace(' ', '-');
        var system = harness.Connector.Split(' ')[0];
        var connectivity = new Connectivity(harness);
        var sound = connectivity.Nets(new(FaultKind.None), shieldsLifted: false);
        var sweep = StraightSweep.Of(harness, sound, connectivity.IndexOf);

        // The sweep measures through to one end of the same net; what is apart is measured against airframe, neighbours or shields.
        var through = sweep.Where(m => m is { ShieldsLifted: false, To.Count: 1 } && sound[connectivity.IndexOf(m.From[0])] == sound[connectivity.IndexOf(m.To[0])]).ToArray();
        var lines = through.Where(m => measured.Add(m.Id) && measured.Add($"{m.To[0]}>{m.From[0]}")).Select(Continuity).ToSequence();
        if (lines.Count > 0)
        {
            yield return new TestCard($"CONT-{name}", TestKind.Continuity, $"Continuity of {harness.Connector}", system, harness.Connector, "milliohmmeter or multimeter, leads zeroed", Cold, Probing, lines);
        }

        var apart = sweep.Except(through).Select(Isolation).ToSequence();
        if (apart.Count > 0)
        {
            yield return new TestCard(
                $"ISO-{name}", TestKind.Isolation, $"Isolation of {harness.Connector}", system, harness.Connector, "insulation tester, 250 or 500 V", Cold,
                [.. Probing, "The tester charges the wire: unplug every box first, keep hands off, discharge afterwards."], apart);
        }
    }

    private TestLine Continuity(Measurement m)
    {
        var greatest = takeOff.Greatest(m.From[0], m.To[0]);
        var most = greatest is { } known ? Math.Ceiling(known * 100) / 100 : TestSources.Run;
        return new TestLine(
            m.Id, m.From[0], m.To[0], "reads through", greatest is null ? TestSources.Short : TestSources.Wire,
            m.To[0] == HarnessUnderTest.Airframe ? "ground there" : "wire whole and in its place", "Ω", 0, most);
    }

    private static TestLine Isolation(Measurement m) => new(
        m.Id, string.Join(", ", m.From), string.Join(", ", m.To) + (m.ShieldsLifted ? " (lifted)" : ""), "open", TestSources.Isolation,
        m.ShieldsLifted ? "no shield strand on a core" : "no short to airframe or neighbour", "MΩ", Least: TestSources.Insulation);
}
