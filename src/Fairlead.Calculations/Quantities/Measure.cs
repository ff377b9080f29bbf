using System.Globalization;

namespace Fairlead.Calculations;

/// <summary>A value with the unit it is to be printed in. Equality is by SI value and unit.</summary>
/// <param name="Si">The SI value.</param>
/// <param name="Unit">The unit to print in.</param>
public readonly record struct Measure(double Si, Unit Unit)
{
    /// <summary>The number in <see cref="Unit"/>.</summary>
    public double Value => Unit.FromSi(Si);

    /// <summary>A pure number.</summary>
    public static Measure Number(double value) => new(value, Units.Default(Dimension.Number));

    /// <summary>The number without its unit, six significant digits at most.</summary>
    public string NumberText => NumberFormat.Text(Value);

    /// <inheritdoc/>
    public override string ToString() => Unit.Symbol.Length == 0 ? NumberText
        : Unit.Symbol is "°" ? NumberText + Unit.Symbol
        : string.Create(CultureInfo.InvariantCulture, $"{NumberText} {Unit.Symbol}");
}

/// <summary>How every number is printed: six significant digits at most, no trailing zeros, exponent only below 1e-4 or from 1e9.</summary>
public static class NumberFormat
{
    /// <summary>The text of a number.</summary>
    public static string Text(double value)
    {
        if (!double.IsFinite(value))
        {
            return double.IsNaN(value) ? "not a number" : value > 0 ? "infinite" : "minus infinite";
        }

        if (value == 0)
        {
            return "0";
        }

        var magnitude = Math.Abs(value);
        if (magnitude is < 1e-4 or >= 1e9)
        {
            return value.ToString("0.#####e0", CultureInfo.InvariantCulture);
        }

        var decimals = Math.Clamp(5 - (int)Math.Floor(Math.Log10(magnitude)), 0, 9);
        var text = Math.Round(value, decimals).ToString("0.#########", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
