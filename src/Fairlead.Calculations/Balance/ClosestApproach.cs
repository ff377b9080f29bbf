namespace Fairlead.Calculations.Balance;

/// <summary>Where an edge of the boundary comes closest to the limit, in closed form. Along an edge M = c + a·W the centre of gravity is c/W + a and the
/// limit is f + b·W, so their distance has its only stationary point at W² = −c/b: that, the ends of the edge and the corners of the envelope are tried.</summary>
internal static class ClosestApproach
{
    /// <summary>The least margin over an edge, and the mass at which it occurs.</summary>
    public static (double Mass, double Margin) Of(BoundaryEdge edge, Side side, EnvelopeLimits limits)
    {
        var best = (Mass: edge.Mass, Margin: double.PositiveInfinity);
        foreach (var slab in limits.Slabs)
        {
            var from = Math.Max(edge.Mass, slab.From);
            var to = Math.Min(edge.EndMass, slab.To);

            // An edge that only touches a slab, rounding aside, is judged by the slab it runs in.
            var touch = 2 * LoadingSpace.Rounding * to;
            if (to < from || (to - from <= touch && edge.Length > 2 * touch))
            {
                continue;
            }

            var line = side == Side.Forward ? slab.Forward : slab.Aft;
            foreach (var mass in (ReadOnlySpan<double>)[from, to, Stationary(edge, line, from, to)])
            {
                var distance = edge.FsAt(mass) - line.At(mass);
                var margin = side == Side.Forward ? distance : -distance;
                best = margin < best.Margin ? (mass, margin) : best;
            }
        }

        return best;
    }

    private static double Stationary(BoundaryEdge edge, LimitLine line, double from, double to)
    {
        var mass = Math.Sqrt(-(edge.Moment - (edge.Arm * edge.Mass)) / line.Slope);
        return mass > from && mass < to ? mass : from;
    }
}
