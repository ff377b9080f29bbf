namespace Fairlead.Calculations.Network;

/// <summary>A conductance between two numbered nodes; -1 is the reference.</summary>
internal readonly record struct Link(int From, int To, double Conductance);

/// <summary>The order in which a sparse symmetric matrix is eliminated, that of least degree, and the places its factors fill. Found once for
/// a network, whatever the values.</summary>
/// <remarks>A power network is almost a tree, so that elimination from its leaves inwards fills in almost nothing: the work grows in
/// proportion to the number of nodes.</remarks>
internal sealed class SparsePattern
{
    private readonly int[] positions;
    private readonly int[] starts;
    private readonly int[] rows;

    private SparsePattern(int[] positions, int[][] columns)
    {
        this.positions = positions;
        starts = new int[columns.Length + 1];
        for (var k = 0; k < columns.Length; k++)
        {
            starts[k + 1] = starts[k] + columns[k].Length;
        }

        rows = [.. columns.SelectMany(c => c)];
    }

    /// <summary>How many unknowns there are.</summary>
    public int Unknowns => positions.Length;

    /// <summary>How many entries lie below the diagonal of the factor.</summary>
    public int Entries => rows.Length;

    /// <summary>The place of an unknown in the order of elimination.</summary>
    public int Position(int unknown) => positions[unknown];

    /// <summary>Where the entries of a column begin and end.</summary>
    public (int Start, int End) Column(int position) => (starts[position], starts[position + 1]);

    /// <summary>The row of an entry; within a column they rise.</summary>
    public int Row(int entry) => rows[entry];

    /// <summary>The first row that a column reaches, which lies on every way from it to the last; -1 where it reaches none.</summary>
    public int Next(int position) => starts[position] < starts[position + 1] ? rows[starts[position]] : -1;

    /// <summary>The entry of a column in a row that it fills.</summary>
    public int Entry(int column, int row) => Array.BinarySearch(rows, starts[column], starts[column + 1] - starts[column], row);

    /// <summary>The pattern of a matrix that some links make.</summary>
    public static SparsePattern Of(int unknowns, IEnumerable<Link> links)
    {
        var neighbours = Enumerable.Range(0, unknowns).Select(_ => new HashSet<int>()).ToArray();
        foreach (var link in links.Where(l => l.From >= 0 && l.To >= 0 && l.From != l.To))
        {
            neighbours[link.From].Add(link.To);
            neighbours[link.To].Add(link.From);
        }

        // A node whose degree changes waits again; its former places in the queue no longer tell its degree.
        var waiting = new PriorityQueue<int, (int Degree, int Node)>(neighbours.Select((n, i) => (i, (n.Count, i))));
        var (positions, columns, place) = (Enumerable.Repeat(-1, unknowns).ToArray(), new int[unknowns][], 0);
        while (waiting.TryDequeue(out var node, out var priority))
        {
            if (positions[node] < 0 && neighbours[node].Count == priority.Degree)
            {
                positions[node] = place;
                columns[place++] = [.. neighbours[node]];
                Eliminate(neighbours, node, waiting);
            }
        }

        return new SparsePattern(positions, [.. columns.Select(c => c.Select(n => positions[n]).Order().ToArray())]);
    }

    private static void Eliminate(HashSet<int>[] neighbours, int node, PriorityQueue<int, (int Degree, int Node)> waiting)
    {
        foreach (var i in neighbours[node])
        {
            neighbours[i].Remove(node);
            foreach (var j in neighbours[node].Where(j => j != i))
            {
                neighbours[i].Add(j);
            }

            waiting.Enqueue(i, (neighbours[i].Count, i));
        }
    }
}
