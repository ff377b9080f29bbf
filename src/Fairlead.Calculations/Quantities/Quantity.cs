namespace Fairlead.Calculations;

/// <summary>Names the dimension of a <see cref="Quantity{TKind}"/> in its type.</summary>
public interface IKind
{
    /// <summary>The dimension.</summary>
    static abstract Dimension Dimension { get; }
}

/// <summary>A quantity, whatever it measures.</summary>
public interface IQuantity
{
    /// <summary>The value in the SI unit of the dimension.</summary>
    double Si { get; }
}

/// <summary>A quantity, held in SI. The default value is zero in SI units (for a temperature: absolute zero).</summary>
/// <param name="Si">The value in the SI unit of the dimension.</param>
/// <typeparam name="TKind">The marker that names the dimension; projects use the aliases (Length, Mass, Current ...).</typeparam>
public readonly record struct Quantity<TKind>(double Si) : IComparable<Quantity<TKind>>, IQuantity
    where TKind : IKind
{
    /// <summary>The dimension of this type.</summary>
    public static Dimension Dimension => TKind.Dimension;

    /// <summary>Zero.</summary>
    public static Quantity<TKind> Zero => default;

    /// <summary>The quantity of a number in a unit, for example <c>Length.Of(24.5, "in")</c>.</summary>
    /// <exception cref="ArgumentException">The unit does not measure this dimension.</exception>
    public static Quantity<TKind> Of(double value, string unit) => new(Units.Get(TKind.Dimension, unit).ToSi(value));

    /// <summary>The number in a unit.</summary>
    /// <exception cref="ArgumentException">The unit does not measure this dimension.</exception>
    public double In(string unit) => Units.Get(TKind.Dimension, unit).FromSi(Si);

    /// <summary>The value with a unit to print it in.</summary>
    public Measure As(string unit) => new(Si, Units.Get(TKind.Dimension, unit));

    /// <summary>The value with the dimension's usual unit.</summary>
    public Measure Measure => new(Si, Units.Default(TKind.Dimension));

    /// <inheritdoc/>
    public int CompareTo(Quantity<TKind> other) => Si.CompareTo(other.Si);

    /// <summary>Sum.</summary>
    public static Quantity<TKind> operator +(Quantity<TKind> a, Quantity<TKind> b) => new(a.Si + b.Si);

    /// <summary>Difference.</summary>
    public static Quantity<TKind> operator -(Quantity<TKind> a, Quantity<TKind> b) => new(a.Si - b.Si);

    /// <summary>Opposite.</summary>
    public static Quantity<TKind> operator -(Quantity<TKind> a) => new(-a.Si);

    /// <summary>Multiple.</summary>
    public static Quantity<TKind> operator *(Quantity<TKind> a, double k) => new(a.Si * k);

    /// <summary>Multiple.</summary>
    public static Quantity<TKind> operator *(double k, Quantity<TKind> a) => new(a.Si * k);

    /// <summary>Part.</summary>
    public static Quantity<TKind> operator /(Quantity<TKind> a, double k) => new(a.Si / k);

    /// <summary>Ratio of two quantities of one kind.</summary>
    public static double operator /(Quantity<TKind> a, Quantity<TKind> b) => a.Si / b.Si;

    /// <summary>Smaller.</summary>
    public static bool operator <(Quantity<TKind> a, Quantity<TKind> b) => a.Si < b.Si;

    /// <summary>Greater.</summary>
    public static bool operator >(Quantity<TKind> a, Quantity<TKind> b) => a.Si > b.Si;

    /// <summary>Smaller or equal.</summary>
    public static bool operator <=(Quantity<TKind> a, Quantity<TKind> b) => a.Si <= b.Si;

    /// <summary>Greater or equal.</summary>
    public static bool operator >=(Quantity<TKind> a, Quantity<TKind> b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public override string ToString() => Measure.ToString();
}
