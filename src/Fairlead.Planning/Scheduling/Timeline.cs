namespace Fairlead.Planning.Scheduling;

/// <summary>How much of something is used when, filled stretch by stretch.</summary>
internal sealed class Timeline(int capacity)
{
    // Use from each moment on until the next; the first holds from the beginning.
    private readonly List<(int At, int Used)> levels = [(0, 0)];

    /// <summary>Earliest moment, no sooner than <paramref name="from"/>, from which on there is room for so much for so long.</summary>
    public int Earliest(int from, int length, int amount)
    {
        if (amount > capacity)
        {
            return int.MaxValue;
        }

        var start = from;
        for (var i = IndexAt(from); i < levels.Count && levels[i].At < start + length; i++)
        {
            if (levels[i].Used + amount > capacity)
            {
                start = i + 1 < levels.Count ? levels[i + 1].At : int.MaxValue - length;
            }
        }

        return start;
    }

    /// <summary>Uses so much for a stretch.</summary>
    public void Use(Slot slot, int amount)
    {
        if (slot.Length <= 0 || amount == 0)
        {
            return;
        }

        var (first, last) = (Cut(slot.From), Cut(slot.To));
        for (var i = first; i < last; i++)
        {
            levels[i] = (levels[i].At, levels[i].Used + amount);
        }
    }

    private int Cut(int at)
    {
        var i = IndexAt(at);
        if (levels[i].At == at)
        {
            return i;
        }

        levels.Insert(i + 1, (at, levels[i].Used));
        return i + 1;
    }

    private int IndexAt(int at)
    {
        var (low, high) = (0, levels.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = levels[middle].At <= at ? (middle, high) : (low, middle - 1);
        }

        return low;
    }
}
