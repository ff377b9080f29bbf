namespace Fairlead.Calculations.Structure;

/// <summary>Thin rectangular plate under uniform pressure, small deflections.</summary>
/// <param name="Deflection">Of the centre.</param>
/// <param name="Stress">Greatest bending stress.</param>
public readonly record struct PlateAnswer(Length Deflection, Pressure Stress);

/// <summary>Closed forms of plate theory.</summary>
public static class PlateFormulas
{
    private const int Terms = 99;
    private static readonly TableFile Clamped = TableFile.Load("clamped-plate");

    /// <summary>Flexural rigidity D = E·t³/(12·(1 − μ²)), in N·m. Check value: 10.5 Msi, .063 in, μ .33: 245.53 lb·in.</summary>
    public static Torque Rigidity(Pressure modulus, Length thickness, double poisson) =>
        new(modulus.Si * Math.Pow(thickness.Si, 3) / (12 * (1 - (poisson * poisson))));

    /// <summary>All edges simply supported: Navier's double series. Check value for a square, μ 0.3: 0.04436 q·b⁴/(E·t³), 0.2873 q·b²/t².</summary>
    public static PlateAnswer SimplySupported(Length a, Length b, Length thickness, Pressure modulus, double poisson, Pressure load)
    {
        double w = 0, mx = 0, my = 0;
        for (var m = 1; m <= Terms; m += 2)
        {
            for (var n = 1; n <= Terms; n += 2)
            {
                var (p, r) = (m * m / (a.Si * a.Si), n * n / (b.Si * b.Si));
                var sign = ((m + n) / 2 % 2) == 1 ? 1 : -1;
                var term = sign / (m * n * (p + r) * (p + r));
                w += term;
                mx += term * (p + (poisson * r));
                my += term * (r + (poisson * p));
            }
        }

        var (series, pi2) = (16 * load.Si / Math.Pow(Math.PI, 6), Math.PI * Math.PI);
        var moment = series * pi2 * Math.Max(mx, my);
        return new(new(series * w / Rigidity(modulus, thickness, poisson).Si), new(6 * moment / (thickness.Si * thickness.Si)));
    }

    /// <summary>All edges clamped: handbook coefficients for μ 0.3, linear between printed ratios; the deflection carries over to another μ through the rigidity.</summary>
    public static (PlateAnswer Answer, Source Source) AllClamped(Length a, Length b, Length thickness, Pressure modulus, double poisson, Pressure load)
    {
        var (longer, shorter) = a > b ? (a, b) : (b, a);
        var ratio = longer / shorter;
        var high = 1;
        while (Clamped.Rows[high][0]!.Value < ratio && high < Clamped.Rows.Length - 1)
        {
            high++;
        }

        // Beyond the last printed ratio the long plate is an upper bound.
        var share = high == Clamped.Rows.Length - 1 ? 1 : (ratio - Clamped.Rows[high - 1][0]!.Value) / (Clamped.Rows[high][0]!.Value - Clamped.Rows[high - 1][0]!.Value);
        double At(int column) => Clamped.Rows[high - 1][column]!.Value + (share * (Clamped.Rows[high][column]!.Value - Clamped.Rows[high - 1][column]!.Value));
        var (b2, t2) = (shorter.Si * shorter.Si, thickness.Si * thickness.Si);
        return (new(
            new(At(3) * load.Si * b2 * b2 / (modulus.Si * t2 * thickness.Si) * (1 - (poisson * poisson)) / (1 - 0.09)),
            new(At(1) * load.Si * b2 / t2)), Clamped.Source);
    }

    /// <summary>First natural frequency of a plate of mass per area μ", edges simply supported: (π/2)·√(D/μ")·(1/a² + 1/b²).</summary>
    public static Frequency FirstSimplySupported(Length a, Length b, Torque rigidity, double massPerArea) =>
        new(Math.PI / 2 * Math.Sqrt(rigidity.Si / massPerArea) * ((1 / (a.Si * a.Si)) + (1 / (b.Si * b.Si))));

    /// <summary>First natural frequency, all edges clamped, by Rayleigh's method with the shapes of clamped beams: 22.373/(2π)·√(D/μ")·√(1/a⁴ + 0.6047/(a·b)² + 1/b⁴).</summary>
    public static Frequency FirstClamped(Length a, Length b, Torque rigidity, double massPerArea) =>
        new(22.373 / (2 * Math.PI) * Math.Sqrt(rigidity.Si / massPerArea) * Math.Sqrt(Math.Pow(a.Si, -4) + (0.6047 / (a.Si * a.Si * b.Si * b.Si)) + Math.Pow(b.Si, -4)));
}
