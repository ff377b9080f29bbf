using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>The readings of a connector's cards, one contact after the other: through to each other end of its net; to airframe and neighbours tied together; shields to their cores.</summary>
internal static class StraightSweep
{
    public static ImmutableArray<Measurement> Of(HarnessUnderTest harness, int[] sound, Func<string, int> index)
    {
        int Net(string terminal) => sound[index(terminal)];
        return [.. harness.Contacts.SelectMany(c => Through(harness, c, Net)).DistinctBy(m => m.Id), .. harness.Contacts.Select(c => Around(harness, c, Net)).OfType<Measurement>(), .. Shields(harness)];
    }

    private static IEnumerable<Measurement> Through(HarnessUnderTest harness, string contact, Func<string, int> net)
    {
        var ends = harness.Wires.SelectMany(w => new[] { w.From, w.To }).Distinct(StringComparer.Ordinal).Where(t => !harness.Hidden.Contains(t) && t != contact && net(t) == net(contact)).ToArray();
        if (net(contact) == net(HarnessUnderTest.Airframe))
        {
            yield return Measurement.Between(contact, HarnessUnderTest.Airframe);
            yield break;
        }

        // A net that returns to this connector is measured once, from its first contact here.
        foreach (var end in ends.Where(e => !harness.Contacts.Contains(e) || Place(harness, e) > Place(harness, contact)))
        {
            yield return Measurement.Between(contact, end);
        }
    }

    private static int Place(HarnessUnderTest harness, string contact) => harness.Contacts.Index().First(c => c.Item == contact).Index;

    private static Measurement? Around(HarnessUnderTest harness, string contact, Func<string, int> net)
    {
        var others = harness.Neighbours.Where(n => n.A == contact || n.B == contact).Select(n => n.A == contact ? n.B : n.A).Prepend(HarnessUnderTest.Airframe).Where(t => net(t) != net(contact)).Distinct().ToSequence();
        return others.Count == 0 ? null : new([contact], others);
    }

    private static IEnumerable<Measurement> Shields(HarnessUnderTest harness) => harness.Wires.Where(w => w.Shield.Length > 0).GroupBy(w => w.Shield, StringComparer.Ordinal)
        .Select(g => new Measurement(g.Select(w => harness.Contacts.Contains(w.To) ? w.To : w.From).Distinct().ToSequence(), [g.Key], ShieldsLifted: true));
}
