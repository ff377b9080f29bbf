using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Workbench.Maps;

/// <summary>Moves on the map, as edits of the stations of what is moved.</summary>
public static class MapMoves
{
    /// <summary>The smallest move, in a unit: about the accuracy with which a place is taken in a hangar.</summary>
    public static double Step(string unit) => unit switch { "m" => 0.01, "cm" => 1, "mm" => 10, "ft" => 0.05, _ => 0.5 };

    /// <summary>The edits of a move.</summary>
    /// <param name="map">The map.</param>
    /// <param name="mark">What is moved.</param>
    /// <param name="right">How far to the right on the drawing, mm.</param>
    /// <param name="down">How far down on the drawing, mm.</param>
    /// <returns>None when it is less than half the smallest move.</returns>
    public static ImmutableArray<JobEdit> Of(MapView map, MapMark mark, double right, double down)
    {
        ArgumentNullException.ThrowIfNull(map);
        var one = Length.Of(1, map.Unit).In("mm") / map.Scale;
        return Steps(map, mark, (int)Math.Round(right / one / Step(map.Unit)), (int)Math.Round(down / one / Step(map.Unit)));
    }

    /// <summary>The edits of some smallest moves.</summary>
    /// <param name="map">The map.</param>
    /// <param name="mark">What is moved.</param>
    /// <param name="right">How many to the right on the drawing.</param>
    /// <param name="down">How many down on the drawing.</param>
    public static ImmutableArray<JobEdit> Steps(MapView map, MapMark mark, int right, int down)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(mark);
        var step = Step(map.Unit);
        // From the side and from above the nose is at the left; from the front the right wing is. Up is up, and right is up from above.
        (string Key, double At, int Steps)[] moves = map.Aspect switch
        {
            "Side" => [("fs", mark.Fs, right), ("wl", mark.Wl, -down)],
            "Plan" => [("fs", mark.Fs, right), ("bl", mark.Bl, -down)],
            _ => [("bl", mark.Bl, -right), ("wl", mark.Wl, -down)],
        };
        return [.. moves.Where(m => m.Steps != 0).Select(m => Edit(map, mark, m.Key, m.At + (m.Steps * step)))];
    }

    private static JobEdit Edit(MapView map, MapMark mark, string key, double value) =>
        new(EditKind.Set, $"{mark.Path}/place/{key}", string.Create(CultureInfo.InvariantCulture, $"{Math.Round(value, 4):0.####} {map.Unit}"));
}
