using Fairlead.Calculations;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Wiring;

/// <summary>Wiring diagrams: the clusters of each system on A3 sheets, with references between the sheets.</summary>
internal static class WiringSheets
{
    private const double Gap = 8;
    private const double Column = DrawingFrame.Bottom - DrawingFrame.Top - 8;
    private const int MostLines = (int)((Column - ClusterPainter.Head) / ClusterPainter.Pitch);

    public static IReadOnlyList<Draft> Of(Assessment assessment)
    {
        var pages = Pages([.. WiringPlan.Of(assessment).SelectMany(Split)]);
        var places = new References();
        Draw(assessment, pages, places);
        return Draw(assessment, pages, new References(places));
    }

    private static Draft[] Draw(Assessment assessment, List<List<Cluster>> pages, References references) => [.. pages.Select((page, i) => Sheet(assessment, page, i + 1, references))];

    private static Draft Sheet(Assessment assessment, List<Cluster> page, int number, References references)
    {
        var canvas = new Canvas();
        var painter = new ClusterPainter(assessment, canvas, number, references);
        var y = DrawingFrame.Top + 4;
        foreach (var cluster in page)
        {
            y += painter.Paint(cluster, y) + Gap;
        }

        canvas.Write(DrawingFrame.Left, DrawingFrame.Bottom + 1.5, "A wire carries: circuit, function letters, gauge (AWG) and cable. A ring is a shield, the line from it its ground; a ring with a tangent is coax; crossed wires are twisted. Dashed boxes were there before. See 4/B3: also on sheet 4, zone B3.", Lettering.Small, Ink.Quiet);
        var system = page[0].System.Length == 0 ? "without function letters" : page[0].System;
        var items = string.Join(", ", page.Select(c => c.Item).Distinct());
        var circuits = page.Sum(c => c.Left.Concat(c.Right).Sum(g => g.Rows.Count));
        return new Draft(
            $"wiring-{NumberFormat.Text(number).PadLeft(2, '0')}", $"Wiring diagram, system {system}: {items}", $"Wiring of {items}: {NumberFormat.Text(circuits)} circuits of system {system}.", "", canvas);
    }

    // What is too tall for a sheet goes on several; the middle is repeated.
    private static IEnumerable<Cluster> Split(Cluster cluster)
    {
        var left = Portions(cluster.Left);
        var right = Portions(cluster.Right);
        for (var i = 0; i < Math.Max(left.Count, right.Count); i++)
        {
            yield return cluster with { Left = i < left.Count ? left[i] : [], Right = i < right.Count ? right[i] : [] };
        }
    }

    private static List<List<Group>> Portions(IReadOnlyList<Group> groups)
    {
        List<List<Group>> portions = [[]];
        var used = 0;
        foreach (var group in groups.SelectMany(g => g.Rows.Chunk((MostLines - 3) / (g.Strap ? 2 : 1)).Select(rows => g with { Rows = rows })))
        {
            if (used + WiringPlan.Height(group) > MostLines)
            {
                portions.Add([]);
                used = 0;
            }

            portions[^1].Add(group);
            used += WiringPlan.Height(group);
        }

        return portions;
    }

    // A system begins a sheet; its clusters follow one another while there is room.
    private static List<List<Cluster>> Pages(IReadOnlyList<Cluster> clusters)
    {
        List<List<Cluster>> pages = [];
        var room = 0.0;
        foreach (var cluster in clusters)
        {
            var height = ClusterPainter.HeightOf(cluster) + Gap;
            if (pages.Count == 0 || room < height || pages[^1][0].System != cluster.System)
            {
                pages.Add([]);
                room = Column + Gap;
            }

            pages[^1].Add(cluster);
            room -= height;
        }

        return pages;
    }
}
