using System.Globalization;
using Fairlead.Substantiation.Harness.Graphs;

namespace Fairlead.Bench;

/// <summary>Reads a Steiner problem in SteinLib's STP format.</summary>
internal static class SteinLib
{
    public static (Graph Graph, int[] Terminals) Read(string path)
    {
        var (nodes, edges, terminals) = (0, new List<GraphEdge>(), new List<int>());
        foreach (var cell in File.ReadLines(path).Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Where(cell => cell.Length > 1))
        {
            int Number(int place) => int.Parse(cell[place], CultureInfo.InvariantCulture);
            switch (cell[0])
            {
                case "Nodes":
                    nodes = Number(1);
                    break;
                case "E":
                    edges.Add(new GraphEdge(Number(1) - 1, Number(2) - 1, Number(3)));
                    break;
                case "T":
                    terminals.Add(Number(1) - 1);
                    break;
            }
        }

        return (new Graph(nodes, edges), [.. terminals]);
    }
}
