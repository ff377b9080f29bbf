namespace Fairlead.Calculations.Structure;

/// <summary>How shear and tension in one fastener are combined; Rs and Rt are load over allowable.</summary>
public enum Interaction
{
    /// <summary>Rs + Rt ≤ 1: the most severe.</summary>
    Linear,

    /// <summary>Rs² + Rt² ≤ 1.</summary>
    Squares,

    /// <summary>Rs³ + Rt² ≤ 1.</summary>
    CubeSquare,

    /// <summary>Rs^2.5 + Rt^1.5 ≤ 1: full-diameter body in the shear plane.</summary>
    FullBody,
}

/// <summary>Combines shear and tension.</summary>
public static class Interactions
{
    private static readonly Source Handbook = new("NASA RP-1228", "1990", "combined shear and tension", Basis.Memory);
    private static readonly Source Standard = new("NASA-STD-5020", "2012", "combined shear and tension, body in the shear plane", Basis.Memory);

    /// <summary>Exponents of shear and tension, and where they come from.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a known formula.</exception>
    public static (double Shear, double Tension, Source Source) Exponents(Interaction formula) => formula switch
    {
        Interaction.Linear => (1, 1, Handbook),
        Interaction.Squares => (2, 2, Handbook),
        Interaction.CubeSquare => (3, 2, Handbook),
        Interaction.FullBody => (2.5, 1.5, Standard),
        _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "Not a known interaction formula."),
    };

    /// <summary>The sum Rs^a + Rt^b. Check value: Rs 0.6, Rt 0.5 by squares, 0.61.</summary>
    public static double Sum(Interaction formula, double shear, double tension)
    {
        var (a, b, _) = Exponents(formula);
        return Math.Pow(shear, a) + Math.Pow(tension, b);
    }

    /// <summary>The share of its strength a fastener uses: 1/k, where the loads times k just meet the formula. The margin of safety is k − 1.</summary>
    /// <remarks>Both loads grow together. Check value: Rs 0.6, Rt 0.5 by squares: k = 1/√0.61, margin +0.2804.</remarks>
    /// <param name="formula">The formula.</param>
    /// <param name="shear">Shear over its allowable, 0 or more.</param>
    /// <param name="tension">Tension over its allowable, 0 or more.</param>
    public static double Use(Interaction formula, double shear, double tension)
    {
        // At u = max the sum of (R/u)^x is at least 1; at u = Rs + Rt it is at most 1 for exponents of 1 and more. The sum falls as u grows.
        var (low, high) = (Math.Max(shear, tension), shear + tension);
        if (!(low > 0) || !double.IsFinite(high))
        {
            return high;
        }

        for (var i = 0; i < 60 && high - low > 1e-15 * high; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Sum(formula, shear / middle, tension / middle) > 1 ? (middle, high) : (low, middle);
        }

        return high;
    }
}
