using Fairlead.Model;

namespace Fairlead.Substantiation.Tests;

/// <summary>Which cavities of a connector lie next to each other.</summary>
internal static class Cavities
{
    // Of rows set half a pitch aside, the nearest of the next row are a little further away than those of the same row.
    private const double Reach = 1.25;

    /// <summary>The pairs: by the layout, or one after the other where there is none.</summary>
    public static IEnumerable<(string A, string B)> Near(ConnectorPart? connector)
    {
        if (connector is null)
        {
            return [];
        }

        var places = connector.Layout.SelectMany(row => row.Cavities.Select((cavity, i) => (Cavity: cavity, X: row.X.Si + (i * row.Pitch.Si), Y: row.Y.Si))).ToArray();
        if (places.Length < 2)
        {
            return connector.Cavities.Zip(connector.Cavities.Skip(1));
        }

        var pairs = places.SelectMany((a, i) => places.Skip(i + 1).Select(b => (A: a.Cavity, B: b.Cavity, Distance: Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)))))).ToArray();
        var nearest = pairs.Min(p => p.Distance);
        return pairs.Where(p => p.Distance <= Reach * nearest).Select(p => (p.A, p.B));
    }
}
