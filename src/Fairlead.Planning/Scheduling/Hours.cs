using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Stretches of time, as sets of moments at which a piece of work of some length may start.</summary>
internal static class Hours
{
    /// <summary>Stretches in order, those that touch made one.</summary>
    public static Sequence<Slot> Joined(IEnumerable<Slot> slots)
    {
        var joined = new List<Slot>();
        foreach (var slot in slots.Where(s => s.Length > 0).OrderBy(s => s.From))
        {
            if (joined.Count > 0 && slot.From <= joined[^1].To)
            {
                joined[^1] = new(joined[^1].From, Math.Max(joined[^1].To, slot.To));
            }
            else
            {
                joined.Add(slot);
            }
        }

        return joined.ToSequence();
    }

    /// <summary>What two sets of stretches, each in order and apart, have in common.</summary>
    public static Sequence<Slot> Common(Sequence<Slot> one, Sequence<Slot> other)
    {
        var common = new List<Slot>();
        for (var (a, b) = (0, 0); a < one.Count && b < other.Count; (a, b) = one[a].To <= other[b].To ? (a + 1, b) : (a, b + 1))
        {
            Slot both = new(Math.Max(one[a].From, other[b].From), Math.Min(one[a].To, other[b].To));
            if (both.Length > 0)
            {
                common.Add(both);
            }
        }

        return common.ToSequence();
    }

    /// <summary>Earliest start, no sooner than <paramref name="from"/>, of a piece that lies within one of the stretches, which are in order and apart;
    /// <see cref="int.MaxValue"/> when there is none.</summary>
    public static int Earliest(Sequence<Slot> slots, int from, int length)
    {
        var (low, high) = (0, slots.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = slots[middle].To < from ? (middle + 1, high) : (low, middle);
        }

        for (; low < slots.Count; low++)
        {
            var start = Math.Max(from, slots[low].From);
            if (start + length <= slots[low].To)
            {
                return start;
            }
        }

        return int.MaxValue;
    }

    /// <summary>The starts of pieces of some length, as pairs of first and last.</summary>
    public static long[][] Starts(Sequence<Slot> slots, int length) =>
        [.. slots.Where(s => s.Length >= length).Select(s => new long[] { s.From, s.To - length })];
}
