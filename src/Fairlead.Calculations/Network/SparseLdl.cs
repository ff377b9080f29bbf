namespace Fairlead.Calculations.Network;

/// <summary>Factors L·D·Lᵀ of a sparse symmetric matrix, eliminated in the order of least degree.</summary>
/// <remarks>A power network is almost a tree, so that elimination from its leaves inwards fills in almost nothing: the work grows in
/// proportion to the number of nodes.</remarks>
internal sealed class SparseLdl
{
    private readonly int[] order;
    private readonly double[] pivots;
    private readonly (int Row, double Value)[][] columns;

    private SparseLdl(int[] order, double[] pivots, (int Row, double Value)[][] columns) =>
        (this.order, this.pivots, this.columns) = (order, pivots, columns);

    /// <summary>Whether the matrix is positive definite: every pivot is greater than zero.</summary>
    public bool PositiveDefinite => pivots.All(p => p > 0);

    /// <summary>Factors a matrix; null when a pivot vanishes against the diagonal it came from.</summary>
    /// <param name="rows">Entries by row and column, both triangles; they are used up.</param>
    public static SparseLdl? Factor(Dictionary<int, double>[] rows)
    {
        var n = rows.Length;
        var (order, pivots, columns) = (new int[n], new double[n], new (int, double)[n][]);
        var scale = rows.Select((row, i) => Math.Abs(row.GetValueOrDefault(i))).ToArray();
        var waiting = new SortedSet<(int Degree, int Node)>(rows.Select((row, i) => (row.Count, i)));
        for (var k = 0; k < n; k++)
        {
            var (_, node) = waiting.Min;
            waiting.Remove(waiting.Min);
            var pivot = rows[node].GetValueOrDefault(node);
            if (!(Math.Abs(pivot) > 1e-13 * scale[node]))
            {
                return null;
            }

            (order[k], pivots[k]) = (node, pivot);
            columns[k] = Eliminate(rows, node, pivot, waiting);
        }

        return new SparseLdl(order, pivots, columns);
    }

    /// <summary>Solves for one right side.</summary>
    public double[] Solve(ReadOnlySpan<double> right)
    {
        var x = right.ToArray();
        for (var k = 0; k < order.Length; k++)
        {
            var value = x[order[k]];
            if (value != 0)
            {
                foreach (var (row, l) in columns[k])
                {
                    x[row] -= l * value;
                }
            }
        }

        for (var k = order.Length - 1; k >= 0; k--)
        {
            var sum = x[order[k]] / pivots[k];
            foreach (var (row, l) in columns[k])
            {
                sum -= l * x[row];
            }

            x[order[k]] = sum;
        }

        return x;
    }

    private static (int Row, double Value)[] Eliminate(Dictionary<int, double>[] rows, int node, double pivot, SortedSet<(int, int)> waiting)
    {
        var column = rows[node].Where(e => e.Key != node).Select(e => (e.Key, e.Value / pivot)).OrderBy(e => e.Key).ToArray();
        foreach (var (i, li) in column)
        {
            var row = rows[i];
            waiting.Remove((row.Count, i));
            row.Remove(node);
            foreach (var (j, _) in column)
            {
                row[j] = row.GetValueOrDefault(j) - (li * rows[node][j]);
            }

            waiting.Add((row.Count, i));
        }

        rows[node].Clear();
        return column;
    }
}
