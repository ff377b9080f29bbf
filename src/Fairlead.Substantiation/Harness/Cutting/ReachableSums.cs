using System.Numerics;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>Which sums up to a capacity some pieces can make, one bit each: so that fillings that cannot come close to full are never begun.</summary>
internal sealed class ReachableSums
{
    /// <summary>Above this capacity in mm the bits cost more than they save.</summary>
    private const long Most = 1_000_000;

    private readonly ulong[] bits;

    private ReachableSums(ulong[] bits) => this.bits = bits;

    /// <summary>The sum of no pieces; null above the capacity this is worth its cost for.</summary>
    public static ReachableSums? None(long capacity)
    {
        if (capacity > Most)
        {
            return null;
        }

        var none = new ulong[(capacity / 64) + 1];
        none[0] = 1;
        return new ReachableSums(none);
    }

    /// <summary>The sums with some more pieces of one size.</summary>
    public ReachableSums With(long size, int count)
    {
        var more = bits.ToArray();
        for (var piece = 0; piece < count && size / 64 < more.Length; piece++)
        {
            var (words, shift) = ((int)(size / 64), (int)(size % 64));
            for (var word = more.Length - 1; word >= words; word--)
            {
                var low = shift == 0 || word == words ? 0 : more[word - words - 1] >> (64 - shift);
                more[word] |= (more[word - words] << shift) | low;
            }
        }

        return new ReachableSums(more);
    }

    /// <summary>The least of some room that is left over.</summary>
    /// <param name="room">0 to the capacity.</param>
    public long LeastRoom(long room)
    {
        var word = (int)(room / 64);
        var part = bits[word] & (ulong.MaxValue >> (63 - (int)(room % 64)));
        while (part == 0)
        {
            part = bits[--word];
        }

        return room - ((word * 64L) + 63 - BitOperations.LeadingZeroCount(part));
    }
}
