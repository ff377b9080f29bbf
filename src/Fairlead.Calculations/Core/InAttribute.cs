namespace Fairlead.Calculations;

/// <summary>Declares one input of a calculation on its record's parameter: forms, help, checks and sheets are generated from it.</summary>
/// <param name="symbol">The symbol used in formulas and on the command line; an ASCII identifier.</param>
/// <param name="meaning">What it is, in a few words.</param>
/// <param name="unit">The unit it is printed in; the range is stated in it.</param>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class InAttribute(string symbol, string meaning, string unit = "") : Attribute
{
    /// <summary>The symbol.</summary>
    public string Symbol { get; } = symbol;

    /// <summary>The meaning.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>The unit.</summary>
    public string Unit { get; } = unit;

    /// <summary>The least valid value, in <see cref="Unit"/>.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>The greatest valid value, in <see cref="Unit"/>.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>What is used when the input is left out, in words; set only where the parameter has a default.</summary>
    public string Default { get; init; } = "";
}
