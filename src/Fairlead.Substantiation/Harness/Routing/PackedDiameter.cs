using Fairlead.Calculations.Wiring;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>How thick a bundle is for the choice of ways: it never grows thinner by another wire, which the choice relies on.</summary>
/// <remarks>
/// The greatest of 1.2 · √(Σ d²), of the two thickest side by side, and of q(N) · d for every wire diameter d of which N wires are at least as
/// thick: N circles of that size need q(N) · d, and thicker ones no less. It is never below <see cref="BundleDiameter"/>, so what fits here
/// fits there. q(N) exceeds 1.2 · √N for no more than ten wires (circle packings), so only the ten thickest are looked at one by one.
/// </remarks>
internal static class PackedDiameter
{
    private const double Factor = 1.2;
    private const int Most = 10;
    private static readonly double[] Ratio = [.. Enumerable.Range(1, Most).Select(n => BundleDiameter.Of(new([new(Length.Of(1, "mm"), n)])).Si * 1000)];

    /// <summary>Diameter in metres of wires of some diameters in metres.</summary>
    public static double Of(IEnumerable<double> diameters)
    {
        var (square, thickest) = (0.0, new List<double>(Most + 1));
        foreach (var d in diameters)
        {
            square += d * d;
            if (thickest.Count < Most || d > thickest[^1])
            {
                var at = thickest.FindIndex(t => t < d);
                thickest.Insert(at < 0 ? thickest.Count : at, d);
                if (thickest.Count > Most)
                {
                    thickest.RemoveAt(Most);
                }
            }
        }

        var most = Factor * Math.Sqrt(square);
        for (var n = 0; n < thickest.Count; n++)
        {
            most = Math.Max(most, Ratio[n] * thickest[n]);
        }

        return thickest.Count > 1 ? Math.Max(most, thickest[0] + thickest[1]) : most;
    }
}
