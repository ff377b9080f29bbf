using System.Runtime.InteropServices;

namespace Fairlead.Drawings;

/// <summary>Things on a sheet, found by where they are: each stands in the squares that it touches, so that looking about a place costs only what lies there.</summary>
internal sealed class Cells<T>
{
    private const double Side = 12;
    private readonly Dictionary<(int X, int Y), List<int>> cells = [];
    private readonly List<T> items = [];
    private readonly List<int> seen = [];
    private int round;

    public void Add(Box extent, T item)
    {
        foreach (var cell in Touched(extent))
        {
            (CollectionsMarshal.GetValueRefOrAddDefault(cells, cell, out _) ??= []).Add(items.Count);
        }

        items.Add(item);
        seen.Add(0);
    }

    /// <summary>How many things about a place are of a kind.</summary>
    public int Count(Box about, Func<T, bool> counts)
    {
        // What stands in several squares is looked at once: it bears the number of this round.
        round++;
        var count = 0;
        foreach (var cell in Touched(about))
        {
            foreach (var i in cells.GetValueOrDefault(cell, []))
            {
                if (seen[i] != round)
                {
                    seen[i] = round;
                    count += counts(items[i]) ? 1 : 0;
                }
            }
        }

        return count;
    }

    private static IEnumerable<(int X, int Y)> Touched(Box box)
    {
        for (var x = (int)Math.Floor(box.Left / Side); x <= (int)Math.Floor(box.Right / Side); x++)
        {
            for (var y = (int)Math.Floor(box.Top / Side); y <= (int)Math.Floor(box.Bottom / Side); y++)
            {
                yield return (x, y);
            }
        }
    }
}
