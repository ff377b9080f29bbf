using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>Readings of groups of nets against the others: a short or a swap between the groups shows at once, wherever in them it is.</summary>
internal static class GroupScans
{
    public static IEnumerable<Measurement> Of(HarnessUnderTest harness, int[] sound, Func<string, int> index)
    {
        int Net(string terminal) => sound[index(terminal)];
        var airframe = Net(HarnessUnderTest.Airframe);
        var nets = harness.Contacts.Select(Net).Where(n => n != airframe).Distinct().ToArray();
        var ends = harness.Wires.SelectMany(w => new[] { w.From, w.To }).Distinct(StringComparer.Ordinal).Where(t => !harness.Hidden.Contains(t) && !harness.Contacts.Contains(t) && t != HarnessUnderTest.Airframe)
            .GroupBy(HarnessUnderTest.HalfOf, StringComparer.Ordinal).Select(g => g.ToArray()).ToArray();
        foreach (var inside in Halves(nets.Length))
        {
            var group = nets.Where((_, i) => inside(i)).ToHashSet();
            var here = harness.Contacts.Where(c => group.Contains(Net(c))).ToSequence();
            var rest = harness.Contacts.Where(c => !group.Contains(Net(c))).ToSequence();
            if (here.Count == 0)
            {
                continue;
            }

            yield return new(here, [HarnessUnderTest.Airframe]);
            yield return new(here, [HarnessUnderTest.Airframe], ShieldsLifted: true);
            if (rest.Count > 0)
            {
                yield return new(here, rest);
            }

            foreach (var there in ends.Select(e => e.Where(t => !group.Contains(Net(t))).ToSequence()).Where(t => t.Count > 0))
            {
                yield return new(here, there);
            }
        }
    }

    // Nets whose number has a bit, or two bits, set or clear: every two nets stand in different groups of some scan.
    private static IEnumerable<Func<int, bool>> Halves(int count)
    {
        var bits = 0;
        while (1 << bits < count)
        {
            bits++;
        }

        yield return _ => true;
        for (var a = 0; a < 2 * bits; a++)
        {
            for (var b = a; b < 2 * bits; b++)
            {
                var (one, other) = (a, b);
                yield return i => Has(i, one) && Has(i, other);
            }
        }
    }

    private static bool Has(int number, int literal) => ((number >> (literal / 2)) & 1) == literal % 2;
}
