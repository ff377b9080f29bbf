namespace Fairlead.Calculations.Network;

/// <summary>A column of the inverse: how far a current of one ampere at one node raises every node. Only what lies between the node and the
/// last eliminated bears on its own entry; every other entry is worked when it is asked for, and costs its own way.</summary>
internal sealed class InverseColumn
{
    private readonly SparseLdl factor;
    private readonly Dictionary<int, double> forward;
    private readonly Dictionary<int, double> known = [];

    public InverseColumn(SparseLdl factor, int unknown)
    {
        this.factor = factor;
        var pattern = factor.Pattern;
        forward = new() { [pattern.Position(unknown)] = 1 };
        for (var k = pattern.Position(unknown); k >= 0; k = pattern.Next(k))
        {
            var value = forward[k];
            Own += value * value / factor.Pivot(k);
            var (start, end) = pattern.Column(k);
            for (var e = start; e < end; e++)
            {
                forward[pattern.Row(e)] = forward.GetValueOrDefault(pattern.Row(e)) - (factor.Value(e) * value);
            }
        }
    }

    /// <summary>The entry of the node itself.</summary>
    public double Own { get; }

    /// <summary>The entry of a node.</summary>
    public double At(int unknown)
    {
        var (pattern, way) = (factor.Pattern, new Stack<int>());
        for (var k = pattern.Position(unknown); k >= 0 && !known.ContainsKey(k); k = pattern.Next(k))
        {
            way.Push(k);
        }

        while (way.TryPop(out var k))
        {
            var value = forward.GetValueOrDefault(k) / factor.Pivot(k);
            var (start, end) = pattern.Column(k);
            for (var e = start; e < end; e++)
            {
                value -= factor.Value(e) * known[pattern.Row(e)];
            }

            known.Add(k, value);
        }

        return known[pattern.Position(unknown)];
    }
}
