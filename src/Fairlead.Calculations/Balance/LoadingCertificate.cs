namespace Fairlead.Calculations.Balance;

/// <summary>Proves a boundary by duality. For an edge with arm a every legal loading obeys ±(M − a·W) ≤ h, where h is the sum of multiplier times room over
/// the caps, provided the multipliers are not negative and those over each item sum to at least ±(arm − a). The multipliers come out of the order of
/// loading; that they are valid and that h is attained is computed here afresh, so the proof does not rest on the way the boundary was found.</summary>
internal static class LoadingCertificate
{
    /// <summary>The greatest relative violation or gap over all edges and for the greatest mass; infinite when a multiplier is negative.</summary>
    public static double Gap(LoadingBoundary boundary) => Gap(boundary, boundary.Side);

    /// <summary>The same for a boundary that claims to be that of a side.</summary>
    public static double Gap(LoadingBoundary boundary, Side side)
    {
        var sign = side == Side.Forward ? -1 : 1;
        var items = boundary.Space.Items;
        var end = boundary.Edges[^1].LoadAt(boundary.GreatestMass);
        var gap = Gap(boundary, [.. items.Select(_ => 1.0)], end);
        foreach (var edge in boundary.Edges)
        {
            double[] gain = [.. items.Select(i => sign * (i.Arm - edge.Arm))];
            gap = Math.Max(gap, Math.Max(Gap(boundary, gain, edge.Before), Gap(boundary, gain, edge.LoadAt(edge.EndMass))));
        }

        return gap;
    }

    private static double Gap(LoadingBoundary boundary, double[] gain, IReadOnlyList<double> aboard)
    {
        var space = boundary.Space;
        var multipliers = Multipliers(boundary, gain);
        if (multipliers.Any(y => !(y >= 0)))
        {
            return double.PositiveInfinity;
        }

        var steepest = Math.Max(gain.Max(Math.Abs), double.Epsilon);
        var overloaded = space.Caps.Max(c => c.Items.Sum(i => aboard[i]) - c.Room) / space.LeastMass;
        var uncovered = Enumerable.Range(0, gain.Length).Max(i => gain[i] - space.CapsOf[i].Sum(c => multipliers[c])) / steepest;
        var bound = multipliers.Select((y, c) => y * space.Caps[c].Room).Sum();
        var attained = gain.Select((g, i) => g * aboard[i]).Sum();
        return new[] { overloaded, uncovered, Math.Abs(bound - attained) / (steepest * space.LeastMass), -aboard.Min() / space.LeastMass }.Max();
    }

    // The worth of room under a cap is the gain of the item that used it up; a cap's own multiplier is what it adds to the next one around it.
    private static double[] Multipliers(LoadingBoundary boundary, double[] gain)
    {
        var space = boundary.Space;
        var worth = new double[space.Caps.Length];
        var multipliers = new double[space.Caps.Length];
        for (var cap = space.Caps.Length - 1; cap >= 0; cap--)
        {
            var around = space.CapsOf[space.Caps[cap].Items[0]].Where(c => c > cap).Select(c => worth[c]).FirstOrDefault();
            worth[cap] = boundary.FilledBy[cap] is >= 0 and var item ? Math.Max(around, gain[item]) : around;
            multipliers[cap] = worth[cap] - around;
        }

        return multipliers;
    }
}
