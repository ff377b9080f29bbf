namespace Fairlead.Calculations.Network;

/// <summary>Factors L·D·Lᵀ of a sparse symmetric matrix of conductances.</summary>
internal sealed class SparseLdl
{
    private readonly double[] pivots;
    private readonly double[] values;

    private SparseLdl(SparsePattern pattern, double[] pivots, double[] values) => (Pattern, this.pivots, this.values) = (pattern, pivots, values);

    /// <summary>Order and places of the factors.</summary>
    public SparsePattern Pattern { get; }

    /// <summary>Whether the matrix is positive definite: every pivot is greater than zero.</summary>
    public bool PositiveDefinite => pivots.All(p => p > 0);

    /// <summary>The pivot of a column.</summary>
    public double Pivot(int position) => pivots[position];

    /// <summary>The value of an entry.</summary>
    public double Value(int entry) => values[entry];

    /// <summary>Factors the matrix of some links, all of them in the pattern; null when a pivot vanishes against the diagonal it came from.</summary>
    public static SparseLdl? Factor(SparsePattern pattern, IEnumerable<Link> links)
    {
        var (pivots, values) = (new double[pattern.Unknowns], new double[pattern.Entries]);
        foreach (var link in links)
        {
            Add(pattern, pivots, values, link);
        }

        var scale = pivots.Select(Math.Abs).ToArray();
        for (var k = 0; k < pivots.Length; k++)
        {
            if (!(Math.Abs(pivots[k]) > 1e-13 * scale[k]))
            {
                return null;
            }

            Eliminate(pattern, pivots, values, k);
        }

        return new SparseLdl(pattern, pivots, values);
    }

    /// <summary>Solves for one right side.</summary>
    public double[] Solve(ReadOnlySpan<double> right)
    {
        var x = new double[pivots.Length];
        for (var i = 0; i < x.Length; i++)
        {
            x[Pattern.Position(i)] = right[i];
        }

        for (var k = 0; k < x.Length; k++)
        {
            var (start, end) = Pattern.Column(k);
            for (var e = start; e < end; e++)
            {
                x[Pattern.Row(e)] -= values[e] * x[k];
            }
        }

        for (var k = x.Length - 1; k >= 0; k--)
        {
            var (start, end) = Pattern.Column(k);
            x[k] /= pivots[k];
            for (var e = start; e < end; e++)
            {
                x[k] -= values[e] * x[Pattern.Row(e)];
            }
        }

        return [.. Enumerable.Range(0, x.Length).Select(i => x[Pattern.Position(i)])];
    }

    private static void Add(SparsePattern pattern, double[] pivots, double[] values, Link link)
    {
        var (from, to) = (link.From < 0 ? -1 : pattern.Position(link.From), link.To < 0 ? -1 : pattern.Position(link.To));
        if (from == to)
        {
            return;
        }

        if (from >= 0)
        {
            pivots[from] += link.Conductance;
        }

        if (to >= 0)
        {
            pivots[to] += link.Conductance;
        }

        if (from >= 0 && to >= 0)
        {
            values[pattern.Entry(Math.Min(from, to), Math.Max(from, to))] -= link.Conductance;
        }
    }

    private static void Eliminate(SparsePattern pattern, double[] pivots, double[] values, int k)
    {
        var (start, end) = pattern.Column(k);
        for (var a = start; a < end; a++)
        {
            var (row, factor) = (pattern.Row(a), values[a] / pivots[k]);
            pivots[row] -= factor * values[a];
            for (var b = a + 1; b < end; b++)
            {
                values[pattern.Entry(row, pattern.Row(b))] -= factor * values[b];
            }

            values[a] = factor;
        }
    }
}
