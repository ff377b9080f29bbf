namespace Fairlead.Calculations;

/// <summary>A unit of measure: SI value = <c>factor · value + offset</c>.</summary>
/// <param name="Symbol">The symbol printed after a value.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">SI units in one of these.</param>
/// <param name="Offset">SI value of zero; only temperatures on a scale have one.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor, double Offset = 0)
{
    /// <summary>The SI value of a number in this unit.</summary>
    public double ToSi(double value) => (value * Factor) + Offset;

    /// <summary>The number in this unit of an SI value.</summary>
    public double FromSi(double si) => (si - Offset) / Factor;

    /// <inheritdoc/>
    public override string ToString() => Symbol;
}
