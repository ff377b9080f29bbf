using System.Globalization;
using Fairlead.Substantiation.Harness.Graphs;

namespace Fairlead.Tests.Reference.Harness;

/// <summary>Reads the Steiner problems beside the tests, in SteinLib's STP format: nodes numbered from 1.</summary>
internal static class SteinLib
{
    public static (Graph Graph, int[] Terminals) Read(string name)
    {
        using var stream = typeof(SteinLib).Assembly.GetManifestResourceStream($"steiner/{name}.gr")!;
        using var reader = new StreamReader(stream);
        var rows = reader.ReadToEnd().Split('\n').Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Where(cell => cell.Length > 1).ToLookup(cell => cell[0]);
        var edges = rows["E"].Select(cell => new GraphEdge(Number(cell[1]) - 1, Number(cell[2]) - 1, Number(cell[3])));
        return (new Graph(Number(rows["Nodes"].Single()[1]), [.. edges]), [.. rows["T"].Select(cell => Number(cell[1]) - 1)]);
    }

    private static int Number(string cell) => int.Parse(cell, CultureInfo.InvariantCulture);
}
